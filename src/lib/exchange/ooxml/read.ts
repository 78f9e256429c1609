/**
 * The sheets of an OOXML spreadsheet file (ISO/IEC 29500) as rows of cells: stored values, never computed anew, with
 * what a reader should know of them. With `write.ts` the only module that knows the library.
 */
import { readXlsx } from 'hucre/xlsx';
import { listed } from '$lib/engine/number-words';
import { MOST_ROWS } from '../csv/rows';
import type { Cell, GridRead, Row } from '../table/grid';

export interface SheetRead {
	readonly name: string;
	readonly grid: GridRead;
	/** What was done to read it, in sentences. */
	readonly remarks: readonly string[];
}

type Stored = string | number | boolean | Date | null;
type Sheet = Awaited<ReturnType<typeof readXlsx>>['sheets'][number];

/** Sheets in view come first; a message where the bytes are no such file. */
export async function readOoxml(
	bytes: Uint8Array,
	name: string
): Promise<
	| { readonly ok: true; readonly sheets: readonly SheetRead[] }
	| { readonly ok: false; readonly message: string }
> {
	try {
		const { sheets } = await readXlsx(bytes, { maxRows: MOST_ROWS + 1000 });
		const hidden = (sheet: Sheet) => Number(sheet.hidden ?? sheet.veryHidden ?? false);
		const ordered = [...sheets].sort((a, b) => hidden(a) - hidden(b));
		return { ok: true, sheets: ordered.map((sheet) => sheetRead(sheet, name)) };
	} catch {
		return {
			ok: false,
			message: `"${name}" is no spreadsheet file of OOXML (.xlsx), or it is locked or broken. Save it anew as .xlsx or as CSV, then choose it again.`
		};
	}
}

function sheetRead(sheet: Sheet, file: string): SheetRead {
	const rows: Cell[][] = sheet.rows.map((row) => row.map(cellOf));
	const filled = fillMerged(rows, sheet);
	const formulas = [...(sheet.cells ?? [])].filter(([, { formula }]) => formula !== undefined);
	const empty = formulas.filter(([, { formulaResult }]) => (formulaResult ?? null) === null);
	const count = (many: number, one: string, more: string) =>
		many === 1 ? `One ${one}` : `${many} ${more}`;
	const remarks = [
		...(formulas.length > empty.length
			? [
					`${count(formulas.length - empty.length, 'cell holds a formula', 'cells hold formulas')}: the values that the file keeps of them are taken.`
				]
			: []),
		...(empty.length > 0
			? [
					`${count(empty.length, 'formula has', 'formulas have')} no value in the file (${listed(empty.slice(0, 5).map(([at]) => addressOf(at)))}). Open the file in the program that it comes from, save it, and choose it again.`
				]
			: []),
		...(filled > 0
			? [
					`${count(filled, 'merged cell is', 'merged cells are')} read as holding its value in each row and column.`
				]
			: [])
	];
	return { name: sheet.name, grid: gridOf(rows, `${file}, ${sheet.name}`), remarks };
}

function cellOf(stored: Stored): Cell {
	if (stored === null || stored === undefined) return '';
	if (typeof stored === 'boolean') return stored ? 'yes' : 'no';
	if (stored instanceof Date)
		return stored.toISOString().slice(0, 16).replace('T00:00', '').replace('T', ' ');
	return typeof stored === 'string' ? stored.trim() : stored;
}

/** How many merged cells there are; each of their cells gets what the first holds. */
function fillMerged(rows: Cell[][], { merges = [] }: Sheet): number {
	let filled = 0;
	for (const { startRow, startCol, endRow, endCol } of merges) {
		const value = rows[startRow]?.[startCol] ?? '';
		if (value === '') continue;
		filled++;
		for (let row = startRow; row <= Math.min(endRow, rows.length - 1); row++)
			for (let column = startCol; column <= endCol; column++) {
				const cells = rows[row]!;
				while (cells.length <= column) cells.push('');
				cells[column] = value;
			}
	}
	return filled;
}

/** A title may stand above the table: the head is the first row with more than one cell. */
function gridOf(cells: readonly Cell[][], name: string): GridRead {
	const rows: Row[] = cells
		.map((row, at) => ({ line: at + 1, cells: row }))
		.filter((row) => row.cells.some((cell) => cell !== ''));
	const isHead = (row: Row) => new Set(row.cells.filter((cell) => cell !== '')).size > 1;
	const at = Math.max(rows.findIndex(isHead), 0);
	const [head, ...rest] = rows.slice(at);
	const refused = (message: string): GridRead => ({ ok: false, message: `"${name}" ${message}` });
	if (!head || rest.length === 0)
		return refused('holds no rows below the names of its columns. Choose another sheet or file.');
	if (rest.length > MOST_ROWS)
		return refused(
			`has more than ${MOST_ROWS} rows, which is the most taken at once. Part it, and bring the parts in one by one.`
		);
	const names = head.cells.map(String);
	return { ok: true, grid: { head: names, headLine: head.line, rows: rest, parter: null } };
}

/** "2,1" as rows and columns are counted from 0: "B3". */
function addressOf(at: string): string {
	const [row = 0, column = 0] = at.split(',').map(Number);
	let letters = '';
	for (let rest = column; rest >= 0; rest = Math.floor(rest / 26) - 1)
		letters = String.fromCharCode(65 + (rest % 26)) + letters;
	return `${letters}${row + 1}`;
}
