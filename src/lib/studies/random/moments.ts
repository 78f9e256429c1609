/**
 * Mean and deviation of many numbers, and how two lists go together. Sums are compensated, and deviations taken
 * from the mean, so that numbers that differ in their last digits only still have a deviation.
 */

/** Neumaier's compensated sum of what `term` gives for 0 … count − 1. */
export function sumOf(count: number, term: (i: number) => number): number {
	let sum = 0;
	let lost = 0;
	for (let i = 0; i < count; i++) {
		const x = term(i);
		const next = sum + x;
		lost += Math.abs(sum) >= Math.abs(x) ? sum - next + x : x - next + sum;
		sum = next;
	}
	return sum + lost;
}

export interface Moments {
	readonly count: number;
	/** NaN of none. */
	readonly mean: number;
	/** The sample's (n − 1); NaN of fewer than two. */
	readonly sd: number;
}

export function momentsOf(values: ArrayLike<number>, count = values.length): Moments {
	if (count === 0) return { count, mean: NaN, sd: NaN };
	// From the first value, so that what all have in common costs no digits.
	const origin = values[0]!;
	const shift = sumOf(count, (i) => values[i]! - origin) / count;
	const mean = origin + shift;
	if (count < 2) return { count, mean, sd: NaN };
	const off = (i: number) => values[i]! - origin - shift;
	const rest = sumOf(count, off);
	const squares = sumOf(count, (i) => off(i) ** 2) - rest ** 2 / count;
	return { count, mean, sd: Math.sqrt(Math.max(0, squares) / (count - 1)) };
}

/** Pearson's correlation; 0 where one of the two does not vary. */
export function correlationOf(x: ArrayLike<number>, y: ArrayLike<number>): number {
	const [one, two] = [momentsOf(x), momentsOf(y)];
	if (!(one.sd > 0) || !(two.sd > 0)) return 0;
	const product = sumOf(x.length, (i) => (x[i]! - one.mean) * (y[i]! - two.mean));
	const correlation = product / (x.length - 1) / one.sd / two.sd;
	return Math.min(1, Math.max(-1, correlation));
}
