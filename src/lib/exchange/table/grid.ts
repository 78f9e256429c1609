/** A table as it comes out of a file, of whatever kind: heads of columns, and rows with their place in the file. */

/** A text as it was written; a number where the file keeps numbers as such. */
export type Cell = string | number;

export interface Row {
	/** The line of the file that it begins on. */
	readonly line: number;
	readonly cells: readonly Cell[];
}

export interface Grid {
	readonly head: readonly string[];
	/** The line of the head. */
	readonly headLine: number;
	readonly rows: readonly Row[];
	/** The mark that parts columns of a text; null where the file parts cells by itself. */
	readonly parter: string | null;
}

export type GridRead =
	{ readonly ok: true; readonly grid: Grid } | { readonly ok: false; readonly message: string };

/** The cells of one column that hold something, from the top, at most so many. */
export function sampleOf({ rows }: Grid, column: number, most = Infinity): Cell[] {
	const cells: Cell[] = [];
	for (const row of rows) {
		if (cells.length >= most) break;
		const cell = row.cells[column] ?? '';
		if (cell !== '') cells.push(cell);
	}
	return cells;
}

/** A column as a sentence names it. */
export const columnName = ({ head }: Grid, column: number): string =>
	head[column] ? `"${head[column]}"` : `column ${column + 1}`;
