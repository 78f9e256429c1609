/**
 * A piece of a plan taken from where it runs and put down where it shall run instead: where that may be, and what is
 * entered for it.
 */
import { cellAt, type Layout, type QuantityLayout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { ABSENT, OK } from '$lib/engine/state';
import { findRelation } from '$lib/workbook/lookup';
import type { Board, Resource } from './board';
import { texts } from './texts';

/** A place on the board. */
export interface Spot {
	/** Of the resources, and of the columns. */
	readonly resource: number;
	readonly column: number;
}

export interface Piece {
	readonly from: Spot;
	readonly quantity: QuantityLayout;
	/** What runs, in words. */
	readonly label: string;
	readonly at: readonly string[];
	readonly amount: number;
}

export type Landing =
	| {
			readonly ok: true;
			readonly at: readonly string[];
			/** What runs there already. */
			readonly value: number;
	  }
	| { readonly ok: false; readonly because: string };

/** What runs at a place of the board in one of its rows; null where nothing does. */
export function pieceAt({ resources }: Board, from: Spot, row: number): Piece | null {
	const found = resources[from.resource]?.rows[row];
	const cell = found?.cells[from.column];
	if (!found || !cell || !(Math.abs(cell.value) > 0)) return null;
	const { quantity, label } = found;
	// A yes is no amount that could be added to another.
	if (quantity.quantity.type === 'yes_no') return null;
	return { from, quantity, label, at: cell.at, amount: cell.value };
}

/** Whether a piece may be put down at a place, or why not. */
export function landingAt(
	{ layout, results }: { readonly layout: Layout; readonly results: Results },
	{ resources, columns }: Board,
	across: string,
	piece: Piece,
	to: Spot
): Landing {
	const resource = resources[to.resource];
	const column = columns[to.column];
	if (!resource || !column) return { ok: false, because: '' };
	if (piece.from.resource === to.resource && piece.from.column === to.column)
		return { ok: false, because: texts.standsHere };
	const { axes } = piece.quantity;
	const at = axes.map(({ name, set }, i) =>
		set === across ? column.id : (resource.at[name] ?? piece.at[i]!)
	);
	const ordinals = axes.map(({ set }, i) => layout.ordinals.get(set)?.get(at[i]!) ?? -1);
	const cell = cellAt(piece.quantity, ordinals);
	if (cell < 0)
		return {
			ok: false,
			because: texts.cannotRun(piece.label, resource.label, relationOf(layout, piece.quantity))
		};
	if (results.states[cell] === ABSENT)
		return { ok: false, because: texts.notThere(piece.label, placeText(resource, column.label)) };
	const value = results.states[cell] === OK ? results.values[cell]! : 0;
	return { ok: true, at, value };
}

/** What is entered: nothing is left at the one place, all of it stands at the other. */
export const entriesFor = ({ at, amount }: Piece, landing: Extract<Landing, { ok: true }>) => [
	{ at, value: 0 },
	{ at: landing.at, value: landing.value + amount }
];

/** "L2, February". */
export const placeText = ({ label }: Pick<Resource, 'label'>, column: string): string =>
	column ? `${label}, ${column}` : label;

/** What a piece is of and where from: "A of L1, January". */
export const pieceText = (board: Board, { label, from }: Piece): string =>
	texts.pieceOf(
		label,
		placeText(
			board.resources[from.resource] ?? { label: '' },
			board.columns[from.column]?.label ?? ''
		)
	);

/** The label of what says which combinations there are. */
function relationOf(layout: Layout, { quantity }: QuantityLayout): string {
	const [name] = quantity.in ?? [];
	return name === undefined ? '' : (findRelation(layout.workbook, name)?.label ?? name);
}
