/**
 * Where each value stands: every pair of a quantity and its members is one cell, numbered from 0,
 * quantity after quantity in sheet order, members in set order (last axis fastest), pairs that no
 * relation allows left out. All scenarios share one layout. Pure structure: no formula is read, so the
 * page and the worker can both derive it from the same workbook.
 */
import type { Quantity, Workbook } from '$lib/workbook/schema';

export interface Axis {
	/** The set's name, or the name before the colon in "from: product". */
	readonly name: string;
	readonly set: string;
}

export interface QuantityLayout {
	readonly quantity: Quantity;
	/** Its place among all quantities. */
	readonly index: number;
	readonly sheet: number;
	readonly axes: readonly Axis[];
	/** First cell. */
	readonly base: number;
	/** Number of cells. */
	readonly count: number;
	/** Number of members along each axis. */
	readonly sizes: readonly number[];
	/** For each cell from `base`, the member ordinals, axis by axis: count × axes. */
	readonly members: Int32Array;
	/** Cell by row-major place among all combinations, −1 where the pair does not exist; null when all exist. */
	readonly cellOfPlace: Int32Array | null;
}

export interface Layout {
	readonly workbook: Workbook;
	readonly quantities: readonly QuantityLayout[];
	readonly byName: ReadonlyMap<string, QuantityLayout>;
	/** Ordinal by member id, by set name. */
	readonly ordinals: ReadonlyMap<string, ReadonlyMap<string, number>>;
	readonly cells: number;
	/** Quantity index of each cell. */
	readonly quantityOfCell: Int32Array;
}
