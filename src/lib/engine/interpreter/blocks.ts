/**
 * Tight loops over a block of columns for operations whose operands all have a value in it. They give up,
 * and say so, at the first result that is not finite: the careful loop in `machine.ts` then does the
 * block again and finds the reason.
 */
import { Op } from '$lib/engine/plan';
import type { Memory } from './memory';

const MOST = Number.MAX_VALUE;

/** Two numbers to one, `count` columns from place `to` on; false where it has no loop or a result is not finite. */
export function binaryBlock(
	op: number,
	v: Float64Array,
	to: number,
	count: number,
	a: number,
	da: number,
	b: number,
	db: number
): boolean {
	const end = to + count;
	switch (op) {
		case Op.Add:
			for (; to < end; to++, a += da, b += db) {
				const x = v[a]! + v[b]!;
				if (!(Math.abs(x) <= MOST)) return false;
				v[to] = x;
			}
			return true;
		case Op.Subtract:
			for (; to < end; to++, a += da, b += db) {
				const x = v[a]! - v[b]!;
				if (!(Math.abs(x) <= MOST)) return false;
				v[to] = x;
			}
			return true;
		case Op.Multiply:
			for (; to < end; to++, a += da, b += db) {
				const x = v[a]! * v[b]!;
				if (!(Math.abs(x) <= MOST)) return false;
				v[to] = x;
			}
			return true;
		case Op.Divide:
			for (; to < end; to++, a += da, b += db) {
				const x = v[a]! / v[b]!;
				// A zero divisor gives infinity or NaN, never a number.
				if (!(Math.abs(x) <= MOST)) return false;
				v[to] = x;
			}
			return true;
		case Op.Equal:
			for (; to < end; to++, a += da, b += db) v[to] = v[a] === v[b] ? 1 : 0;
			return true;
		case Op.NotEqual:
			for (; to < end; to++, a += da, b += db) v[to] = v[a] !== v[b] ? 1 : 0;
			return true;
		case Op.Less:
			for (; to < end; to++, a += da, b += db) v[to] = v[a]! < v[b]! ? 1 : 0;
			return true;
		case Op.LessOrEqual:
			for (; to < end; to++, a += da, b += db) v[to] = v[a]! <= v[b]! ? 1 : 0;
			return true;
		case Op.Greater:
			for (; to < end; to++, a += da, b += db) v[to] = v[a]! > v[b]! ? 1 : 0;
			return true;
		case Op.GreaterOrEqual:
			for (; to < end; to++, a += da, b += db) v[to] = v[a]! >= v[b]! ? 1 : 0;
			return true;
		case Op.Negate:
			for (; to < end; to++, a += da) v[to] = -v[a]!;
			return true;
		case Op.Abs:
			for (; to < end; to++, a += da) v[to] = Math.abs(v[a]!);
			return true;
		case Op.Not:
			for (; to < end; to++, a += da) v[to] = v[a] === 0 ? 1 : 0;
			return true;
		case Op.Sqrt:
			for (; to < end; to++, a += da) {
				const x = Math.sqrt(v[a]!);
				if (!(x <= MOST)) return false;
				v[to] = x;
			}
			return true;
		case Op.Power:
			for (; to < end; to++, a += da, b += db) {
				const x = Math.pow(v[a]!, v[b]!);
				if (!(Math.abs(x) <= MOST)) return false;
				v[to] = x;
			}
			return true;
		default:
			return false;
	}
}

/** The aggregates that take one term after the other; filters must have a value, as must all terms. */
export function aggregateBlock(
	op: number,
	memory: Memory,
	to: number,
	count: number,
	terms: number
): boolean {
	const { values: v, at, by } = memory;
	if (op === Op.Any || op === Op.All) return conditionBlock(op, memory, to, count, terms);
	if (op !== Op.Sum && op !== Op.Min && op !== Op.Max) return false;
	if (terms === 0) return false;
	v.fill(op === Op.Sum ? 0 : op === Op.Min ? Infinity : -Infinity, to, to + count);
	for (let term = 0; term < terms; term++) {
		let a = at[3 * term]!;
		const da = by[3 * term]!;
		let f = at[3 * term + 1]!;
		const df = f < 0 ? 0 : by[3 * term + 1]!;
		if (f >= 0 && df === 0) {
			// The filter is the same in every column: the term counts in all of them or in none.
			if (v[f] === 0) continue;
			f = -1;
		}
		if (f < 0) {
			if (op === Op.Sum) for (let i = 0; i < count; i++, a += da) v[to + i]! += v[a]!;
			else if (op === Op.Min)
				for (let i = 0; i < count; i++, a += da) v[to + i] = Math.min(v[to + i]!, v[a]!);
			else for (let i = 0; i < count; i++, a += da) v[to + i] = Math.max(v[to + i]!, v[a]!);
		} else {
			for (let i = 0; i < count; i++, a += da, f += df) {
				if (v[f] === 0) continue;
				if (op === Op.Sum) v[to + i]! += v[a]!;
				else if (op === Op.Min) v[to + i] = Math.min(v[to + i]!, v[a]!);
				else v[to + i] = Math.max(v[to + i]!, v[a]!);
			}
		}
	}
	// A least or greatest value of nothing is still infinite: no answer, which the careful loop gives.
	for (let i = to; i < to + count; i++) if (!(Math.abs(v[i]!) <= MOST)) return false;
	return true;
}

/** Whether any, or all, of the kept terms say yes. */
function conditionBlock(
	op: number,
	{ values: v, at, by }: Memory,
	to: number,
	count: number,
	terms: number
): boolean {
	const any = op === Op.Any;
	v.fill(any ? 0 : 1, to, to + count);
	for (let term = 0; term < terms; term++) {
		let a = at[3 * term]!;
		const da = by[3 * term]!;
		let f = at[3 * term + 1]!;
		const df = f < 0 ? 0 : by[3 * term + 1]!;
		const isFiltered = f >= 0;
		for (let i = 0; i < count; i++, a += da, f += df) {
			if (isFiltered && v[f] === 0) continue;
			if (any ? v[a] !== 0 : v[a] === 0) v[to + i] = any ? 1 : 0;
		}
	}
	return true;
}
