/**
 * Where things stand on a sheet of values: below a head, one value a row, with what it is to its left and its
 * unit, formula in words and note to its right; a title above each part of the workbook. Helper cells
 * stand in columns of their own, right of all that.
 */
import type { Arrangement } from '$lib/engine/cells/book';
import { columnName, ROWS } from '$lib/engine/cells/grid';
import type { Layout } from '$lib/engine/layout';

/** Rows above the first: title, a line on how to read, a blank one, the names of the columns. */
export const HEAD = 4;
/** Columns that one column of values takes, the last of them left blank. */
export const BLOCK = 7;
/** Within a block. */
export const LABEL = 0;
export const MEMBERS = 1;
export const VALUE = 2;
export const UNIT = 3;
export const FORMULA = 4;
export const NOTE = 5;

export interface Spot {
	readonly row: number;
	readonly column: number;
}

/** Row and column of a place, from 0. */
export function spotOf(place: number, valueColumns: number): Spot {
	const column = Math.floor(place / ROWS);
	return {
		row: HEAD + (place % ROWS),
		column:
			column < valueColumns ? column * BLOCK + VALUE : valueColumns * BLOCK + column - valueColumns
	};
}

/** Two rows above the first quantity of each part: a blank one and its title. */
export function arrangementOf(layout: Layout): Arrangement {
	return {
		rowsAbove: (quantity) => (opensSheet(layout, quantity) ? 2 : 0),
		address(place, valueColumns) {
			const { row, column } = spotOf(place, valueColumns);
			return `${columnName(column)}${row + 1}`;
		}
	};
}

/** Whether a quantity is the first of its part that has values. What helps several stands under a title too. */
export function opensSheet(layout: Layout, quantity: number): boolean {
	const here = layout.quantities[quantity];
	if (!here || here.count === 0) return false;
	for (let before = quantity - 1; before >= 0; before--) {
		const other = layout.quantities[before]!;
		if (other.sheet !== here.sheet) return true;
		if (other.count > 0) return false;
	}
	return true;
}
