/** What is derived of a programme: one linear programme for each member, with what its columns and rows stand for. */
import { cellAt, type QuantityLayout } from '$lib/engine/layout';
import type { Plan } from '$lib/engine/plan';
import type { LinearProgramme } from './linear';

/** The programme of one member of `each`. */
export interface Part {
	/** Member ids in the order of `each`. */
	readonly members: readonly string[];
	readonly programme: LinearProgramme;
	/** By column: its cell, and the place of its quantity among the decisions. */
	readonly cells: Int32Array;
	readonly named: Uint8Array;
	/** By row: the cell of the constraint, or of a computed value that has a range; its two sides. */
	readonly rows: readonly Row[];
	readonly objectiveCell: number;
}

export interface Row {
	readonly cell: number;
	/** The two sides' nodes; −1 where the row is the range of the cell. */
	readonly left: number;
	readonly right: number;
}

export interface Derived {
	readonly parts: readonly Part[];
	readonly digest: string;
	/** The cells that the parts read, in the order in which they are computed. */
	readonly formulas: Int32Array;
}

export type Derivation =
	| { readonly ok: true; readonly derived: Derived }
	/** `isLate`: only because the time was up. */
	| { readonly ok: false; readonly problems: readonly string[]; readonly isLate?: true };

export const cellsOf = ({ base, count }: QuantityLayout): number[] =>
	Array.from({ length: count }, (_, at) => base + at);

/** The cell of another quantity for the same members, −1 where there is none. */
export function cellBeside(plan: Plan, cell: number, name: string): number {
	const { layout } = plan;
	const from = layout.quantities[layout.quantityOfCell[cell]!]!;
	const to = layout.byName.get(name);
	if (!to) return -1;
	const start = (cell - from.base) * from.axes.length;
	return cellAt(
		to,
		to.axes.map((axis) => {
			const at = from.axes.findIndex(({ name }) => name === axis.name);
			return at < 0 ? -1 : from.members[start + at]!;
		})
	);
}
