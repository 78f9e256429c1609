/** A list of prices as a sheet of a file: numbers as numbers, and what they are said above them. */
import type { PlainTable } from '$lib/exchange/csv/write';
import { at, type FileCell, type FileSheet } from '$lib/exchange/ooxml/cell';

export function listSheet(
	title: string,
	says: readonly string[],
	{ columns, rows }: Pick<PlainTable, 'columns' | 'rows'>
): FileSheet {
	const cells = new Map<string, FileCell>();
	const put = (
		row: number,
		column: number,
		value: string | number | null,
		look: FileCell['look']
	) => value !== null && cells.set(at(row, column), { value, look });
	put(0, 0, title, 'title');
	says.forEach((text, i) => put(i + 1, 0, text, 'words'));
	const head = says.length + 2;
	columns.forEach((text, i) => put(head, i, text, 'head'));
	rows.forEach((row, r) =>
		row.forEach((value, c) => put(head + 1 + r, c, value, c === 0 ? 'label' : 'result'))
	);
	const widths = columns.map((_, i) => (i === 0 ? 44 : 12));
	return { name: title, widths, frozenRows: head + 1, cells };
}
