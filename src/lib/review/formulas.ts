/** A quantity's formulas as trees, each read once; what they name, and their shape without names. */
import { pieces } from '$lib/formula/print';
import { referencedNames } from '$lib/formula/rename';
import type { Expression } from '$lib/formula/tree';
import { treeOf } from '$lib/formula/tree-of';
import { INPUT } from '$lib/workbook/cells';
import { formulasOf } from '$lib/workbook/formula-names';
import type { Quantity } from '$lib/workbook/schema';

export interface Read {
	readonly trees: readonly Expression[];
	readonly names: ReadonlySet<string>;
}

/** An edit leaves the other quantities the same objects. */
const known = new WeakMap<Quantity, Read>();

export function readFormulas(quantity: Quantity): Read {
	const before = known.get(quantity);
	if (before) return before;
	const trees = formulasOf(quantity).flatMap((text) =>
		text.trim() === INPUT ? [] : (treeOf(text) ?? [])
	);
	const names = new Set(trees.flatMap((tree) => [...referencedNames(tree)]));
	const read = { trees, names };
	known.set(quantity, read);
	return read;
}

/** The formula with a stroke for each name: a new name for something makes it no other formula. */
export const shapeOf = (tree: Expression): string =>
	pieces(tree)
		.map(({ text, role }) => (role === 'name' ? '_' : text))
		.join('');
