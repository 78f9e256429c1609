/**
 * What an order's choice brings along: an input of the order that the workbook's formulas hold against what each member
 * has of it, as the length asked for against the length that a product is sold in, or the product against that of an item.
 * With another member that of it is taken. Where the input is then entered otherwise, a choice that brings a choice along is
 * no longer what is asked for, and is left.
 */
import { visit } from '$lib/formula/walk';
import type { Expression, Reference } from '$lib/formula/tree';
import { readFormulas } from '$lib/review/formulas';
import { axesOf } from '$lib/workbook/axes';
import type { InputEntry } from '$lib/workbook/commands/command';
import { findQuantity } from '$lib/workbook/lookup';
import { inputAt } from '$lib/workbook/scenario';
import type { Workbook } from '$lib/workbook/schema';

const COMPARES = new Set(['=', '<>', '<', '<=', '>', '>=']);

export interface Companion {
	/** Of the order, and what each member of the choice has of it. */
	readonly order: string;
	readonly own: string;
}

/** What stands beside a choice among the inputs of an order. */
export function companionsOf(
	workbook: Workbook,
	order: readonly string[],
	choice: string
): Companion[] {
	const found = new Map<string, Companion>();
	for (const { quantities } of workbook.sheets)
		for (const quantity of quantities) {
			const { trees, names } = readFormulas(quantity);
			if (!names.has(choice)) continue;
			for (const tree of trees)
				visit(tree, (node) => {
					if (node.kind !== 'binary' || !COMPARES.has(node.operator)) return;
					for (const [a, b] of [
						[node.left, node.right],
						[node.right, node.left]
					] as const) {
						const own = ownOf(b, choice);
						if (own === null || a.kind !== 'reference' || a.indices.length > 0) continue;
						if (order.includes(a.name) && isOwn(workbook, a.name, own, choice))
							found.set(a.name, { order: a.name, own });
					}
				});
		}
	return [...found.values()];
}

/** Whether a choice names what is asked for as a whole, as an item does its product and length: an order may be of none. */
export function namesWhole(workbook: Workbook, order: readonly string[], choice: string): boolean {
	const isChoice = ({ order: name }: Companion) =>
		typeof findQuantity(workbook, name)?.type === 'object';
	return companionsOf(workbook, order, choice).some(isChoice);
}

/** The name of what is read at the member that the choice holds; null where the node is none such. */
function ownOf(node: Expression, choice: string): string | null {
	if (node.kind !== 'reference' || node.indices.length !== 1) return null;
	const [index] = node.indices as readonly [Reference['indices'][number]];
	const at = index.kind === 'member' && index.value.kind === 'reference' ? index.value : null;
	return at?.name === choice && at.indices.length === 0 ? node.name : null;
}

/** Both are entered, one value and one for each member of the choice. */
function isOwn(workbook: Workbook, name: string, own: string, choice: string): boolean {
	const set = findQuantity(workbook, choice)?.type;
	const [of, each] = [findQuantity(workbook, name), findQuantity(workbook, own)];
	if (!of || !each || typeof set !== 'object' || of.formula !== undefined) return false;
	const axes = axesOf(each);
	return (
		axesOf(of).length === 0 &&
		each.formula === undefined &&
		axes.length === 1 &&
		axes[0]!.set === set.member_of
	);
}

/** What is entered with the choice, where it differs from what stands. */
export function broughtAlong(
	workbook: Workbook,
	scenario: string,
	companions: readonly Companion[],
	member: string
): InputEntry[] {
	return companions.flatMap(({ order, own }) => {
		const { value } = inputAt(workbook, scenario, own, [member]);
		const stands = inputAt(workbook, scenario, order, []).value;
		return (typeof value !== 'number' && typeof value !== 'string') || value === stands
			? []
			: [{ quantity: order, at: [], value }];
	});
}

/** Choices of the order that these entries make it no longer be of: they are emptied with them. */
export function leftBehind(
	workbook: Workbook,
	scenario: string,
	order: readonly string[],
	entries: readonly InputEntry[]
): InputEntry[] {
	return order.flatMap((choice) => {
		if (entries.some(({ quantity }) => quantity === choice)) return [];
		const member = inputAt(workbook, scenario, choice, []).value;
		if (typeof member !== 'string' || !namesWhole(workbook, order, choice)) return [];
		const fits = companionsOf(workbook, order, choice).every(({ order: name, own }) => {
			const entered = entries.find(({ quantity }) => quantity === name);
			return !entered || entered.value === inputAt(workbook, scenario, own, [member]).value;
		});
		return fits ? [] : [{ quantity: choice, at: [], value: null }];
	});
}
