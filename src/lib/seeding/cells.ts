/** What there is to put faults into: entries and formulas of a workbook. */
import { INPUT } from '$lib/workbook/cells';
import { filledQuantities } from '$lib/workbook/plans';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';
import { treeOf } from '$lib/formula/tree-of';
import type { Expression } from '$lib/formula/tree';
import { printFormula } from '$lib/formula/print';
import type { Command } from '$lib/workbook/commands';

export interface NumberEntry {
	readonly quantity: Quantity;
	readonly at: readonly string[];
	readonly value: number;
}

const numbers = new WeakMap<Workbook, readonly Quantity[]>();

/** Quantities with an entered number other than 0. */
export function enteredQuantities(workbook: Workbook): readonly Quantity[] {
	const before = numbers.get(workbook);
	if (before) return before;
	const filled = filledQuantities(workbook);
	const found = workbook.sheets
		.flatMap(({ quantities }) => quantities)
		.filter((quantity) => !filled.has(quantity.name) && numberEntries(quantity).length > 0);
	numbers.set(workbook, found);
	return found;
}

export const numberEntries = (quantity: Quantity): NumberEntry[] =>
	(quantity.type ?? 'number') !== 'number' || quantity.shown
		? []
		: flatten(quantity.value).flatMap(({ at, value }) =>
				typeof value === 'number' && value !== 0 ? [{ quantity, at, value }] : []
			);

/** One formula of a quantity: null the one, else the case of a member. */
export interface FormulaPart {
	readonly quantity: Quantity;
	readonly part: string | null;
	readonly tree: Expression;
}

const parts = new WeakMap<Workbook, readonly FormulaPart[]>();

export function formulaParts(workbook: Workbook): readonly FormulaPart[] {
	const before = parts.get(workbook);
	if (before) return before;
	const found = workbook.sheets.flatMap(({ quantities }) => quantities.flatMap(partsOf));
	parts.set(workbook, found);
	return found;
}

function partsOf(quantity: Quantity): FormulaPart[] {
	const { formula } = quantity;
	if (formula === undefined) return [];
	const texts: readonly (readonly [string | null, string])[] =
		typeof formula === 'string' ? [[null, formula]] : Object.entries(formula.cases);
	return texts.flatMap(([part, text]) => {
		const tree = text.trim() === INPUT ? null : treeOf(text);
		return tree ? [{ quantity, part, tree }] : [];
	});
}

/** The edit that puts another formula in the place of this one. */
export function withFormula({ quantity, part }: FormulaPart, tree: Expression): Command {
	const text = printFormula(tree);
	const { formula } = quantity;
	const next =
		typeof formula === 'object' && part !== null
			? { ...formula, cases: { ...formula.cases, [part]: text } }
			: text;
	return {
		kind: 'replace_quantity',
		name: quantity.name,
		quantity: { ...quantity, formula: next }
	};
}
