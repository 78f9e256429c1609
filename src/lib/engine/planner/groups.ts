/**
 * Gathering by a fixed grouping, as in `where line_of = line`: the members of each group are listed once, so that
 * nobody looks at all the others for every group. With `IFERROR(line_of = line; FALSE())` a member without a group is in none.
 */
import { Op } from '../operations';
import { OK } from '../state';
import type { Context } from './context';
import type { Read, Terms, Typed } from './types';

export interface Grouping {
	/** The gathered variable. */
	readonly slot: number;
	/** What says which group is wanted; it does not depend on what is gathered. */
	readonly wanted: Typed;
	/** Ordinals by group, ascending. Those whose own group is in fault are in every one, unless that is caught: the fault counts. */
	readonly groups: ReadonlyMap<number, readonly number[]>;
	readonly faulty: readonly number[];
}

const known = new WeakMap<Terms, Grouping | null>();

export function groupingOf(context: Context, terms: Terms): Grouping | null {
	const before = known.get(terms);
	if (before !== undefined) return before;
	const found = find(context, terms);
	known.set(terms, found);
	return found;
}

/** The members that can be of the wanted group. */
export function membersOf(grouping: Grouping, wanted: number): readonly number[] {
	return grouping.groups.get(wanted) ?? grouping.faulty;
}

function find(context: Context, { gathered, where }: Terms): Grouping | null {
	if (!where) return null;
	const mask = gathered.reduce((bits, variable) => bits | (1 << variable.slot), 0);
	for (const held of conditionsIn(where)) {
		const caught = caughtIn(held);
		const condition = caught ?? held;
		if (condition.kind !== 'binary' || condition.op !== Op.Equal) continue;
		for (const [group, wanted] of [
			[condition.left, condition.right],
			[condition.right, condition.left]
		] as const) {
			if (group.kind !== 'read' || (wanted.free & mask) !== 0 || !wanted.fixed) continue;
			const [index] = group.indices;
			if (group.indices.length !== 1 || index?.kind !== 'variable') continue;
			if ((mask & (1 << index.slot)) === 0) continue;
			const grouping = list(context, group, index.slot, wanted, caught !== null);
			if (grouping) return grouping;
		}
	}
	return null;
}

/** Conditions that must all hold. */
function conditionsIn(where: Typed): readonly Typed[] {
	return where.kind === 'list' && where.op === Op.And ? where.items : [where];
}

/** The condition that counts as a no where it is in fault. */
function caughtIn(condition: Typed): Typed | null {
	if (condition.kind !== 'binary' || condition.op !== Op.IfError) return null;
	const { left, right } = condition;
	return right.kind === 'constant' && right.value === 0 ? left : null;
}

function list(
	context: Context,
	group: Read,
	slot: number,
	wanted: Typed,
	isCaught: boolean
): Grouping | null {
	const fixed = context.at(group.quantity.index)?.fixed;
	// A member that comes and goes has its condition besides its group.
	const comes = context.sets.get(group.quantity.axes[0]?.set ?? '')?.present;
	const isConditional = group.quantity.quantity.where !== undefined;
	if (!fixed || comes || isConditional || group.quantity.cellOfPlace) return null;
	const groups = new Map<number, number[]>();
	const faulty: number[] = [];
	fixed.states.forEach((state, ordinal) => {
		if (state !== OK && !isCaught) faulty.push(ordinal);
		else if (state === OK) groups.set(fixed.values[ordinal] ?? NaN, []);
	});
	fixed.states.forEach((state, ordinal) => {
		if (state === OK) groups.get(fixed.values[ordinal] ?? NaN)?.push(ordinal);
	});
	if (faulty.length > 0)
		for (const members of groups.values()) {
			members.push(...faulty);
			members.sort((a, b) => a - b);
		}
	return { slot, wanted, groups, faulty };
}
