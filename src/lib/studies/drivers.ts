/**
 * Which inputs drive the spread of a result: each one's rank correlation with it, and the share of its variance
 * that goes with the input alone, Var(E[y | x]) / Var(y), the first-order index of Sobol' (Mathematics and
 * Computers in Simulation 55, 2001, 271), from the draws that are there: the means of y over slices of x.
 */
import { correlationOf, momentsOf } from './random/moments';
import { ranksOf } from './ordering';

const MOST_SLICES = 64;

export interface Drive {
	readonly rank: number;
	readonly share: number;
}

/** `ranks(input)` gives the ranks of an input's values, 1 … n, over the same draws as `values`. */
export function drivesOf(
	values: Float64Array,
	inputs: number,
	ranks: (input: number) => Float64Array
): Drive[] {
	const ofResult = ranksOf(values);
	return Array.from({ length: inputs }, (_, input) => {
		const own = ranks(input);
		return { rank: correlationOf(own, ofResult), share: shareOf(values, own) };
	});
}

/** Corrected for what slices of unrelated draws would explain by chance; never below zero. */
export function shareOf(values: Float64Array, ranks: Float64Array): number {
	const count = values.length;
	const { mean, sd } = momentsOf(values);
	if (!(sd > 0)) return 0;
	const slices = Math.max(2, Math.min(MOST_SLICES, Math.floor(Math.sqrt(count) / 2)));
	const sums = new Float64Array(slices);
	const counts = new Float64Array(slices);
	for (let i = 0; i < count; i++) {
		const slice = Math.min(slices - 1, Math.floor(((ranks[i]! - 0.5) / count) * slices));
		sums[slice]! += values[i]! - mean;
		counts[slice]!++;
	}
	let between = 0;
	let used = 0;
	for (let slice = 0; slice < slices; slice++) {
		if (counts[slice] === 0) continue;
		used++;
		between += sums[slice]! ** 2 / counts[slice]!;
	}
	const total = sd * sd * (count - 1);
	if (count <= used || used < 2) return 0;
	const within = Math.max(0, total - between) / (count - used);
	return Math.min(1, Math.max(0, (between - (used - 1) * within) / total));
}
