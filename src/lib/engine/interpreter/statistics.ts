/**
 * The statistics that aggregates take of the values they gathered: sample deviation, median, place.
 * Each is given a list with at least one value; what holds for none is the aggregate's own rule.
 */

/** The sample standard deviation (n − 1). NaN for fewer than two values. */
export function sampleDeviation(values: ArrayLike<number>, count: number): number {
	if (count < 2) return NaN;
	// Measured from the first value, so that equal values deviate by exactly nothing.
	const first = values[0]!;
	let shift = 0;
	for (let i = 0; i < count; i++) shift += (values[i]! - first) / count;
	const mean = first + shift;
	let squares = 0;
	for (let i = 0; i < count; i++) squares += (values[i]! - mean) ** 2;
	return Math.sqrt(squares / (count - 1));
}

/** The middle value, or the mean of the two in the middle. */
export function median(values: Float64Array, count: number): number {
	const sorted = values.slice(0, count).sort();
	const middle = count >> 1;
	if (count % 2 === 1) return sorted[middle]!;
	// Halves are added, so that two large values do not overflow on the way.
	return sorted[middle - 1]! / 2 + sorted[middle]! / 2;
}

/** The place of x among the values, largest first, equal ones sharing the lower number. */
export function placeAmong(x: number, values: ArrayLike<number>, count: number): number {
	let larger = 0;
	for (let i = 0; i < count; i++) if (values[i]! > x) larger++;
	return larger + 1;
}
