/**
 * Tight loops over a block of columns for operations that choose among operands which all have a value in it, and
 * for those that ask only whether one has. What they cannot do is left to `choices.ts`.
 */
import { Op } from '$lib/engine/plan';
import { ABSENT, HITS_NOTHING, OUT_OF_RANGE } from '$lib/engine/state';
import type { Memory } from './memory';

/** What became of a block: not done here, done with all values good, done with some bad. */
export const LEFT = 0;
export const GOOD = 1;
export const MIXED = 2;

/** Every operand must have a value in every column. States of good results are the caller's to set. */
export function choiceBlock(
	op: number,
	memory: Memory,
	to: number,
	count: number,
	operands: number
): number {
	switch (op) {
		case Op.If:
			return ifBlock(memory, to, count);
		case Op.And:
		case Op.Or:
			return logicBlock(op, memory, to, count, operands);
		case Op.IfError:
		case Op.OrElse:
			return copyBlock(memory, to, count);
		case Op.Guard:
			return guardBlock(memory, to, count);
		case Op.InRange:
			return rangeBlock(memory, to, count);
		case Op.Pick:
			return pickBlock(memory, to, count, operands);
		default:
			return LEFT;
	}
}

/** Whether each value is present, whatever else it is; never bad. */
export function presentBlock({ values, states, at, by }: Memory, to: number, count: number): void {
	let a = at[0]!;
	const da = by[0]!;
	for (let i = 0; i < count; i++, a += da) values[to + i] = states[a] === ABSENT ? 0 : 1;
}

/** Condition, then, else. */
function ifBlock({ values: v, at, by }: Memory, to: number, count: number): number {
	let [c, a, b] = [at[0]!, at[1]!, at[2]!];
	const [dc, da, db] = [by[0]!, by[1]!, by[2]!];
	for (let i = 0; i < count; i++, c += dc, a += da, b += db) v[to + i] = v[c] !== 0 ? v[a]! : v[b]!;
	return GOOD;
}

function logicBlock(
	op: number,
	{ values: v, at, by }: Memory,
	to: number,
	count: number,
	operands: number
): number {
	const all = op === Op.And;
	v.fill(all ? 1 : 0, to, to + count);
	for (let which = 0; which < operands; which++) {
		let a = at[which]!;
		const da = by[which]!;
		if (all) {
			for (let i = 0; i < count; i++, a += da) if (v[a] === 0) v[to + i] = 0;
		} else for (let i = 0; i < count; i++, a += da) if (v[a] !== 0) v[to + i] = 1;
	}
	return GOOD;
}

function copyBlock({ values: v, at, by }: Memory, to: number, count: number): number {
	let a = at[0]!;
	const da = by[0]!;
	for (let i = 0; i < count; i++, a += da) v[to + i] = v[a]!;
	return GOOD;
}

function guardBlock({ values: v, states, at, by }: Memory, to: number, count: number): number {
	let [c, a] = [at[0]!, at[1]!];
	const [dc, da] = [by[0]!, by[1]!];
	let done = GOOD;
	for (let i = 0; i < count; i++, c += dc, a += da) {
		if (v[c] !== 0) v[to + i] = v[a]!;
		else done = MIXED;
	}
	if (done === GOOD) return GOOD;
	for (let i = 0, here = at[0]!; i < count; i++, here += dc) {
		const absent = v[here] === 0;
		states[to + i] = absent ? ABSENT : 0;
		if (absent) v[to + i] = NaN;
	}
	return MIXED;
}

/** Operands 1 to 4 are min, max, above, below. */
function rangeBlock({ values: v, states, at, by }: Memory, to: number, count: number): number {
	const limit = (which: number, none: number) => (at[which]! < 0 ? none : v[at[which]!]!);
	const [min, max] = [limit(1, -Infinity), limit(2, Infinity)];
	const [above, below] = [limit(3, -Infinity), limit(4, Infinity)];
	const da = by[0]!;
	let done = GOOD;
	for (let i = 0, a = at[0]!; i < count; i++, a += da) {
		const x = v[a]!;
		if (x >= min && x <= max && x > above && x < below) v[to + i] = x;
		else done = MIXED;
	}
	if (done === GOOD) return GOOD;
	for (let i = 0, a = at[0]!; i < count; i++, a += da) {
		const x = v[a]!;
		const inside = x >= min && x <= max && x > above && x < below;
		states[to + i] = inside ? 0 : OUT_OF_RANGE;
		if (!inside) v[to + i] = NaN;
	}
	return MIXED;
}

function pickBlock(
	{ values: v, states, at, by }: Memory,
	to: number,
	count: number,
	operands: number
): number {
	let c = at[0]!;
	const dc = by[0]!;
	let done = GOOD;
	for (let i = 0; i < count; i++, c += dc) {
		const choice = v[c]!;
		const inside = Number.isInteger(choice) && choice >= 0 && choice < operands - 1;
		states[to + i] = inside ? 0 : HITS_NOTHING;
		v[to + i] = inside ? v[at[choice + 1]! + i * by[choice + 1]!]! : NaN;
		if (!inside) done = MIXED;
	}
	return done;
}
