/**
 * Sums over a block of columns, term after term. A filter that is the same in every column keeps its term in all of
 * them or in none.
 */
import type { Kernels } from './kernels/kernels';
import type { Memory } from './memory';

/** Where a term's filter stands: DROPPED counts in no column, KEPT in every one, else the place of a wide filter. */
export const DROPPED = -2;
export const KEPT = -1;

export function filterOf({ values, at, by }: Memory, term: number): number {
	const filter = at[3 * term + 1]!;
	if (filter < 0) return KEPT;
	if (by[3 * term + 1] === 1) return filter;
	return values[filter] === 0 ? DROPPED : KEPT;
}

export function sumBlock(
	{ addTo, addToIf }: Kernels,
	memory: Memory,
	to: number,
	count: number,
	terms: number
): boolean {
	const { values, at, by } = memory;
	const end = 8 * (to + count);
	values.fill(0, to, to + count);
	for (let term = 0; term < terms; term++) {
		const filter = filterOf(memory, term);
		if (filter === DROPPED) continue;
		const a = 8 * at[3 * term]!;
		const kind = 1 - by[3 * term]!;
		const good =
			filter === KEPT ? addTo[kind]!(8 * to, end, a) : addToIf[kind]!(8 * to, end, a, 8 * filter);
		if (good === 0) return false;
	}
	return true;
}
