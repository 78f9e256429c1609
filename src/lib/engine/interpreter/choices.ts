/**
 * Operations that choose among their operands, column by column. What is chosen passes as it stands,
 * nothing and errors included; what is not chosen does not count.
 */
import { Op, type ChoiceOp } from '$lib/engine/operations';
import {
	ABSENT,
	carried,
	HITS_NOTHING,
	NO_ANSWER,
	OFF_END,
	OK,
	OUT_OF_RANGE,
	type State
} from '$lib/engine/state';
import { copy, put, type Memory } from './memory';

type Choosing = Exclude<ChoiceOp, typeof Op.Present>;

/** Writes `count` columns from place `to` on; returns whether any of them is bad. */
export function choose(
	op: Choosing,
	memory: Memory,
	operands: number,
	to: number,
	count: number
): boolean {
	let bad = false;
	for (let i = 0; i < count; i++) if (chooseOne(op, memory, operands, to + i, i)) bad = true;
	return bad;
}

/** Whether each value is present, whatever else it is; never bad. */
export function present({ values, states, at, by }: Memory, to: number, count: number): void {
	let a = at[0]!;
	const da = by[0]!;
	for (let i = 0; i < count; i++, a += da) {
		values[to + i] = states[a] === ABSENT ? 0 : 1;
		states[to + i] = OK;
	}
}

function chooseOne(op: Choosing, memory: Memory, operands: number, to: number, i: number): boolean {
	const { values, states, at, by } = memory;
	const a = at[0]! + i * by[0]!;
	const state = states[a]!;
	switch (op) {
		case Op.If:
			if (state !== 0) return put(memory, to, 0, carried(state));
			return copy(memory, to, operand(memory, values[a] !== 0 ? 1 : 2, i));
		case Op.Guard:
			if (state !== 0) return put(memory, to, 0, carried(state));
			if (values[a] === 0) return put(memory, to, 0, ABSENT);
			return copy(memory, to, operand(memory, 1, i));
		case Op.IfError:
			return copy(memory, to, state === 0 ? a : operand(memory, 1, i));
		case Op.OrElse:
			return copy(memory, to, state === OFF_END || state === NO_ANSWER ? operand(memory, 1, i) : a);
		case Op.InRange:
			return state !== 0 || inside(memory, values[a]!)
				? copy(memory, to, a)
				: put(memory, to, 0, OUT_OF_RANGE);
		case Op.Pick: {
			if (state !== 0) return put(memory, to, 0, carried(state));
			const choice = values[a]!;
			// A choice that is no member of its set picks nothing.
			if (!Number.isInteger(choice) || choice < 0 || choice >= operands - 1)
				return put(memory, to, 0, HITS_NOTHING);
			return copy(memory, to, operand(memory, choice + 1, i));
		}
		case Op.And:
		case Op.Or:
			return put(memory, to, ...allOf(op, memory, operands, i));
	}
}

const operand = (memory: Memory, which: number, i: number) =>
	memory.at[which]! + i * memory.by[which]!;

/** Operands 1 to 4 are min, max, above, below. */
function inside(memory: Memory, value: number): boolean {
	const { values, at } = memory;
	return (
		(at[1]! < 0 || value >= values[at[1]!]!) &&
		(at[2]! < 0 || value <= values[at[2]!]!) &&
		(at[3]! < 0 || value > values[at[3]!]!) &&
		(at[4]! < 0 || value < values[at[4]!]!)
	);
}

/** AND and OR look at every operand, so that an error is never hidden by order; the leftmost bad one wins. */
function allOf(op: Choosing, memory: Memory, operands: number, i: number): [number, State] {
	let all = 1;
	let any = 0;
	for (let which = 0; which < operands; which++) {
		const place = operand(memory, which, i);
		const state = memory.states[place]!;
		if (state !== 0) return [0, carried(state)];
		if (memory.values[place] !== 0) any = 1;
		else all = 0;
	}
	return [op === Op.And ? all : any, 0];
}
