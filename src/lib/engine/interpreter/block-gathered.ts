/** Aggregates over a block of columns that are rarer than sums: means, counts, the best place, ends, present values. */
import { Op } from '$lib/engine/operations';
import { DROPPED, filterOf, KEPT, sumBlock } from './block-terms';
import type { Kernels } from './kernels/kernels';
import type { Memory } from './memory';

export function averageBlock(
	kernels: Kernels,
	memory: Memory,
	to: number,
	count: number,
	terms: number
): boolean {
	const kept = settledCount(memory, terms);
	if (kept < 1 || !sumBlock(kernels, memory, to, count, terms)) return false;
	for (let i = to; i < to + count; i++) memory.values[i]! /= kept;
	return true;
}

export function countBlock(memory: Memory, to: number, count: number, terms: number): boolean {
	const { values } = memory;
	values.fill(0, to, to + count);
	for (let term = 0; term < terms; term++) {
		const filter = filterOf(memory, term);
		if (filter === DROPPED) continue;
		for (let i = 0; i < count; i++)
			if (filter === KEPT || values[filter + i] !== 0) values[to + i]!++;
	}
	return true;
}

let best = new Float64Array(64);

/** The position of the first best. Nothing kept in some column is no answer, which the careful way gives. */
export function bestBlock(
	op: number,
	memory: Memory,
	to: number,
	count: number,
	terms: number
): boolean {
	const { values: v, at, by } = memory;
	if (count > best.length) best = new Float64Array(count);
	const sign = op === Op.ArgMax ? 1 : -1;
	best.fill(-Infinity, 0, count);
	v.fill(NaN, to, to + count);
	for (let term = 0; term < terms; term++) {
		const filter = filterOf(memory, term);
		if (filter === DROPPED) continue;
		let a = at[3 * term]!;
		const da = by[3 * term]!;
		const position = at[3 * term + 2]!;
		const dp = position < 0 ? 0 : by[3 * term + 2]!;
		for (let i = 0; i < count; i++, a += da) {
			if (filter !== KEPT && v[filter + i] === 0) continue;
			const x = sign * v[a]!;
			if (!(x > best[i]!)) continue;
			best[i] = x;
			v[to + i] = position < 0 ? term : v[position + i * dp]!;
		}
	}
	for (let i = to; i < to + count; i++) if (Number.isNaN(v[i])) return false;
	return true;
}

/** The first or last of what is kept. */
export function endBlock(
	op: number,
	memory: Memory,
	to: number,
	count: number,
	terms: number
): boolean {
	const { values: v, at, by } = memory;
	const first = op === Op.First;
	v.fill(NaN, to, to + count);
	// The one that is wanted is written last.
	for (let k = 0; k < terms; k++) {
		const term = first ? terms - 1 - k : k;
		const filter = filterOf(memory, term);
		if (filter === DROPPED) continue;
		let a = at[3 * term]!;
		const da = by[3 * term]!;
		for (let i = 0; i < count; i++, a += da)
			if (filter === KEPT || v[filter + i] !== 0) v[to + i] = v[a]!;
	}
	for (let i = to; i < to + count; i++) if (Number.isNaN(v[i])) return false;
	return true;
}

/** At one rate for all columns, with the same flows kept in each: `npv` of `finance.ts` says what is meant. */
export function npvBlock(memory: Memory, to: number, count: number, terms: number): boolean {
	const { values: v, at, by } = memory;
	if (by[3 * terms] === 1 || settledCount(memory, terms) < 1) return false;
	const rate = v[at[3 * terms]!]!;
	if (!(rate > -1)) return false;
	let period = 0;
	v.fill(0, to, to + count);
	for (let term = 0; term < terms; term++) {
		if (filterOf(memory, term) === DROPPED) continue;
		const factor = Math.pow(1 + rate, ++period);
		let a = at[3 * term]!;
		const da = by[3 * term]!;
		for (let i = 0; i < count; i++, a += da) v[to + i]! += v[a]! / factor;
	}
	for (let i = to; i < to + count; i++) if (!Number.isFinite(v[i])) return false;
	return true;
}

/** How many terms count in every column; −1 where that differs from column to column. */
function settledCount(memory: Memory, terms: number): number {
	let kept = 0;
	for (let term = 0; term < terms; term++) {
		const filter = filterOf(memory, term);
		if (filter >= 0) return -1;
		if (filter === KEPT) kept++;
	}
	return kept;
}
