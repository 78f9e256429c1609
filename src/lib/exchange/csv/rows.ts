/** A text of separated values as rows, whatever parts them; the first row names the columns. */
import Papa from 'papaparse';
import type { GridRead } from '../table/grid';

/** Far more than any log that a plant keeps for a year of values entered by hand. */
export const MOST_ROWS = 200_000;

/** Letters that are taken up together. */
const AT_ONCE = 1_000_000;
/** Rows between two words on how far it is. */
const ROWS_AT_ONCE = 5000;

/** `told` hears how much of the text is read, from 0 to 1. */
export function readCsv(text: string, name: string, told?: (share: number) => void): GridRead {
	const refused = (message: string): GridRead => ({ ok: false, message: `"${name}" ${message}` });
	if (text.includes('\0'))
		return refused('is not a text file. Save it as CSV with UTF-8, then choose it again.');
	const parter = parterOf(text);
	const data: string[][] = [];
	let filled = 0;
	let unclosed = -1;
	Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), {
		delimiter: parter,
		skipEmptyLines: false,
		chunkSize: AT_ONCE,
		step: ({ data: row, errors, meta }, parser) => {
			data.push(row);
			if (row.some((cell) => cell.trim() !== '')) filled++;
			// A million rows are not taken up only to be refused.
			if (filled > MOST_ROWS + 1) parser.abort();
			if (unclosed < 0 && errors.some(({ type }) => type === 'Quotes')) unclosed = data.length;
			if (data.length % ROWS_AT_ONCE === 0) told?.(meta.cursor / text.length);
		}
	});
	if (filled > MOST_ROWS + 1)
		return refused(
			`has more than ${MOST_ROWS} rows, which is the most taken at once. Part it, and bring the parts in one by one.`
		);
	if (unclosed > 0)
		return refused(
			`has a quotation mark that is not closed, near row ${unclosed}. Close it, then choose the file again.`
		);
	let line = 1;
	const rows: { line: number; cells: string[] }[] = [];
	for (const cells of data) {
		if (cells.some((cell) => cell.trim() !== ''))
			rows.push({ line, cells: cells.map((cell) => cell.trim()) });
		line += 1 + cells.reduce((breaks, cell) => breaks + cell.split('\n').length - 1, 0);
	}
	const [head, ...rest] = rows;
	if (!head || rest.length === 0)
		return refused('holds no rows below the names of its columns. Choose another file.');
	return { ok: true, grid: { head: head.cells, headLine: head.line, rows: rest, parter } };
}

/** Cells of one line; a mark in quotation marks does not part. */
export const cellsOf = (line: string, parter: string): string[] =>
	(Papa.parse<string[]>(line, { delimiter: parter }).data[0] ?? []).map((cell) => cell.trim());

/** What lines are looked at to find what parts them. */
const LOOKED_AT = 20;

/**
 * What parts the columns: the mark that stands as often in each of the first lines as in the head, outside of quotes.
 * Where a comma does so as well as another mark, it is the one before decimals.
 */
function parterOf(text: string): string {
	const lines = text
		.slice(0, 100_000)
		.replace(/"(?:[^"]|"")*"/g, '')
		.split(/\r?\n/)
		.filter((line) => line.trim() !== '')
		.slice(0, LOOKED_AT);
	let best = ',';
	let most = 0;
	for (const mark of ['\t', ';', '|', ',']) {
		const [head = 0, ...counts] = lines.map((line) => line.split(mark).length - 1);
		const alike = head === 0 ? 0 : 1 + counts.filter((count) => count === head).length;
		if (alike > most) [best, most] = [mark, alike];
	}
	return best;
}
