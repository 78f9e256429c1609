/** A text of separated values as rows, whatever parts them; the first row names the columns. */
import Papa from 'papaparse';

export interface CsvGrid {
	readonly head: readonly string[];
	/** Each with the line of the file that it began on. */
	readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[];
}

export type CsvRead =
	{ readonly ok: true; readonly grid: CsvGrid } | { readonly ok: false; readonly message: string };

/** Far more than any log that a plant keeps for a year of values entered by hand. */
export const MOST_ROWS = 200_000;

export function readCsv(text: string, name: string): CsvRead {
	const refused = (message: string): CsvRead => ({ ok: false, message: `"${name}" ${message}` });
	if (text.includes('\0'))
		return refused('is not a text file. Save it as CSV with UTF-8, then choose it again.');
	const { data, errors } = Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), {
		delimiter: parterOf(text),
		skipEmptyLines: false
	});
	const quotes = errors.find(({ type }) => type === 'Quotes');
	if (quotes)
		return refused(
			`has a quotation mark that is not closed, near row ${(quotes.row ?? 0) + 1}. Close it, then choose the file again.`
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
	if (rest.length > MOST_ROWS)
		return refused(
			`has ${rest.length} rows; at most ${MOST_ROWS} are taken at once. Part it, and bring the parts in one by one.`
		);
	return { ok: true, grid: { head: head.cells, rows: rest } };
}

/** What the names of the columns are parted by: whichever mark stands there most often outside quotes. */
function parterOf(text: string): string {
	const [head = ''] = text.replace(/"(?:[^"]|"")*"/g, '').split(/\r?\n/, 1);
	const count = (mark: string) => head.split(mark).length;
	return [',', ';', '\t', '|'].reduce((most, mark) => (count(mark) > count(most) ? mark : most));
}
