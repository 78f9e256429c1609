/**
 * Grid lines of an axis: a few round numbers within its range, and never a line at a number that is not
 * round only because the data end there.
 */
export interface Axis {
	readonly min: number;
	readonly max: number;
	readonly ticks: readonly number[];
}

/** The smallest of 1, 2 and 5 times a power of ten that is at least `least`. */
function roundStep(least: number): number {
	const power = 10 ** Math.floor(Math.log10(least));
	const step = [1, 2, 5, 10].find((one) => one * power >= least * (1 - 1e-9)) ?? 10;
	return step * power;
}

/** An axis from `low` to `high` with at most `most` lines; zero is among them if it lies within. */
export function axisOf(low: number, high: number, most: number): Axis {
	if (!(high > low)) return { min: low, max: low + 1, ticks: [low] };
	const step = roundStep((high - low) / Math.max(most - 1, 1));
	const ticks: number[] = [];
	const first = Math.ceil(low / step - 1e-9);
	const last = Math.floor(high / step + 1e-9);
	// Whole multiples, so that no line stands at 0.30000000000000004.
	for (let times = first; times <= last; times++)
		ticks.push(Number((times * step).toPrecision(12)));
	return { min: low, max: high, ticks };
}
