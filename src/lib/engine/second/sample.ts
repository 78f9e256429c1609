/**
 * What the second engine checks of a workbook that is too large for it: the base alone, and of the base, if
 * that is still too much, some members of every quantity with all that they are computed from.
 */
import { ownersOf, type Source } from '$lib/engine/cells/reach';
import type { Plan } from '$lib/engine/plan';
import type { Conditions } from '$lib/engine/presence';

/**
 * Cells, helper cells included. The shipped plant has 1,100,000 in nine scenarios, as each has a plan of its own: built in
 * some 70 s of processor time and 1.7 GB, after which an edit of a price is followed in 0.1 s. Nobody waits for it; the
 * memory is what sets the limit, with room for some scenarios more.
 */
export const LIMIT = 1_300_000;
/** For a machine that says that it has less than 8 GB: some 0.9 GB. */
const SMALL_LIMIT = 600_000;

/** `gigabytes`: what the machine says that it has, as far as it does. */
export const limitOf = (gigabytes: number | undefined): number =>
	gigabytes !== undefined && gigabytes < 8 ? SMALL_LIMIT : LIMIT;

export interface Sample {
	/** Places among the scenarios. */
	readonly scenarios: readonly number[];
	/** By cell: whether it is checked. Null: all are. */
	readonly included: Uint8Array | null;
}

/** Null where everything can be checked. */
export function sampleOf(
	plan: Plan,
	sources: readonly Source[],
	conditions: Conditions,
	limit = LIMIT
): Sample | null {
	const weights = weightsOf(plan);
	const owners = ownersOf(plan, sources);
	let base = 0;
	let all = 0;
	sources.forEach((source, i) => {
		owners[i]!.forEach((owner, cell) => {
			if (owner !== i) return;
			all += weights[cell]!;
			if (source.parent < 0) base += weights[cell]!;
		});
	});
	if (all <= limit) return null;
	const scenarios = [sources.findIndex((source) => source.parent < 0)];
	return { scenarios, included: base <= limit ? null : someOf(plan, weights, conditions, limit) };
}

/** A cell, and one for each thing it reads where that needs a column. */
function weightsOf(plan: Plan): Float64Array {
	const { starts } = plan.precedents;
	return Float64Array.from({ length: plan.cells }, (_, cell) => {
		const reads = starts[cell + 1]! - starts[cell]!;
		return 1 + (reads > 16 ? reads : 0);
	});
}

/** Rounds over all quantities, another member each time, as long as there is room. */
function someOf(
	plan: Plan,
	weights: Float64Array,
	conditions: Conditions,
	limit: number
): Uint8Array {
	const included = new Uint8Array(plan.cells);
	const { starts, targets } = plan.precedents;
	let room = limit;
	/** The cell and all that it is computed from, if there is room for that. */
	const take = (wanted: number): boolean => {
		const taken: number[] = [];
		const stack = [wanted];
		let cost = 0;
		for (let cell = stack.pop(); cell !== undefined; cell = stack.pop()) {
			if (included[cell]) continue;
			included[cell] = 1;
			taken.push(cell);
			cost += weights[cell]!;
			if (cost > room) {
				for (const back of taken) included[back] = 0;
				return false;
			}
			for (let i = starts[cell]!; i < starts[cell + 1]!; i++) stack.push(targets[i]!);
			stack.push(...(conditions.get(cell) ?? []));
		}
		room -= cost;
		return taken.length > 0;
	};
	const open = plan.layout.quantities.filter((quantity) => quantity.count > 0);
	const given = new Set<number>();
	for (let round = 0; given.size < open.length && room > 0; round++)
		open.forEach((quantity, i) => {
			if (given.has(i)) return;
			// Strides that have no factor in common with the count visit every member once.
			const at = round < quantity.count ? (round * strideOf(quantity.count)) % quantity.count : -1;
			if (at < 0) given.add(i);
			else if (!take(quantity.base + at) && !included[quantity.base + at]) given.add(i);
		});
	return included;
}

/** About the golden section of the count, prime to it. */
function strideOf(count: number): number {
	const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));
	let stride = Math.max(1, Math.round(count * 0.618));
	while (divisor(stride, count) !== 1) stride++;
	return stride;
}
