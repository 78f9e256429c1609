/**
 * Which rule holds for which cells of a quantity: one formula for all, one by member of an axis, or none
 * where the value is entered.
 */
import type { Layout, QuantityLayout } from '../layout';

export interface Part {
	/** Null for the one formula, else the case: a member's id or "*". */
	readonly name: string | null;
	readonly text: string;
}

export interface Rules {
	readonly parts: readonly Part[];
	/** The axis by whose members the rules differ; −1 where one holds for all. */
	readonly axis: number;
	/** Part by ordinal along that axis: INPUT takes the entered value, MISSING has no rule. */
	readonly partOfMember: Int32Array;
	/** What cannot be read as rules. */
	readonly faults: readonly { readonly part: string | null; readonly message: string }[];
}

export const INPUT = -1;
export const MISSING = -2;
export const EVERY_OTHER = '*';

export function rulesOf(quantity: QuantityLayout, layout: Layout): Rules {
	const { formula, name } = quantity.quantity;
	const nothing = new Int32Array(0);
	if (formula === undefined) return { parts: [], axis: -1, partOfMember: nothing, faults: [] };
	if (typeof formula === 'string')
		return {
			parts: [{ name: null, text: formula }],
			axis: -1,
			partOfMember: nothing,
			faults: []
		};

	const parts: Part[] = [];
	const faults: { part: string | null; message: string }[] = [];
	const axis = quantity.axes.findIndex((candidate) => candidate.name === formula.by);
	const set = quantity.axes[axis]?.set;
	if (set === undefined) {
		const message = `${name} has rules by ${formula.by}, but is not per ${formula.by}: choose one of its own sets.`;
		return {
			parts: [{ name: null, text: '' }],
			axis: -1,
			partOfMember: nothing,
			faults: [{ part: null, message }]
		};
	}
	const size = quantity.sizes[axis] ?? 0;
	const partOfMember = new Int32Array(size).fill(MISSING);
	const numberOfCase = (text: string, part: string) =>
		text.trim() === 'input' ? INPUT : parts.push({ name: part, text }) - 1;
	const cases = Object.keys(formula.cases);
	if (cases.includes(EVERY_OTHER))
		partOfMember.fill(numberOfCase(formula.cases[EVERY_OTHER] ?? '', EVERY_OTHER));
	for (const id of cases) {
		if (id === EVERY_OTHER) continue;
		const ordinal = layout.ordinals.get(set)?.get(id);
		if (ordinal !== undefined) partOfMember[ordinal] = numberOfCase(formula.cases[id] ?? '', id);
		else
			faults.push({
				part: id,
				message: `${name} has a rule for ${id}, but ${set} has no such member: take the rule out, or write it for another.`
			});
	}
	const without = (layout.sets.get(set)?.members ?? []).filter(
		(_member, ordinal) => partOfMember[ordinal] === MISSING
	);
	if (without.length > 0)
		faults.push({
			part: null,
			message: `${name} has no rule for ${without[0]?.id ?? ''}${without.length > 1 ? ` and ${without.length - 1} more` : ''}: write one for it, or one for * that holds for every other member.`
		});
	return { parts, axis, partOfMember, faults };
}

/** The part that holds for a cell, or INPUT or MISSING. */
export function partOfCell(rules: Rules, quantity: QuantityLayout, cell: number): number {
	if (rules.parts.length === 0 && rules.axis < 0) return INPUT;
	if (rules.axis < 0) return 0;
	const ordinal = quantity.members[(cell - quantity.base) * quantity.axes.length + rules.axis] ?? 0;
	return rules.partOfMember[ordinal] ?? MISSING;
}
