/**
 * The straight line of least squares through pairs, and percentiles: what aggregates take of sorted or paired
 * values. They answer with a number or a state (see `state.ts`) in `fault`.
 *
 * Sums of squares are of deviations from the means, so that figures far from zero lose nothing.
 */
import { BAD_ARGUMENT, DIVIDES_BY_ZERO, NO_ANSWER, OK, TOO_LARGE } from '$lib/engine/state';
import type { FinanceValue } from './finance';

const none = (fault: number): FinanceValue => ({ value: NaN, fault });
const finite = (value: number): FinanceValue =>
	Number.isFinite(value) ? { value, fault: OK } : none(TOO_LARGE);

/** No answer for fewer than two pairs; division by zero where all x are the same. */
export function slope(ys: ArrayLike<number>, xs: ArrayLike<number>, count: number): FinanceValue {
	if (count < 2) return none(NO_ANSWER);
	const x = meanOf(xs, count);
	const y = meanOf(ys, count);
	let together = 0;
	let alone = 0;
	let differ = false;
	for (let i = 0; i < count; i++) {
		if (xs[i] !== xs[0]) differ = true;
		together += (xs[i]! - x) * (ys[i]! - y);
		alone += (xs[i]! - x) ** 2;
	}
	if (!differ || alone === 0) return none(DIVIDES_BY_ZERO);
	return finite(together / alone);
}

export function intercept(
	ys: ArrayLike<number>,
	xs: ArrayLike<number>,
	count: number
): FinanceValue {
	const { value, fault } = slope(ys, xs, count);
	return fault === OK ? finite(meanOf(ys, count) - value * meanOf(xs, count)) : none(fault);
}

/** Measured from the first value, so that equal values have exactly themselves as their mean. */
function meanOf(values: ArrayLike<number>, count: number): number {
	const first = values[0]!;
	let shift = 0;
	for (let i = 0; i < count; i++) shift += (values[i]! - first) / count;
	return first + shift;
}

/** The value at place share × (n − 1), counted from 0 in order of size, on a straight line between two. */
export function percentile(values: Float64Array, count: number, share: number): FinanceValue {
	if (count === 0) return none(NO_ANSWER);
	if (!(share >= 0 && share <= 1)) return none(BAD_ARGUMENT);
	const sorted = values.slice(0, count).sort();
	const place = share * (count - 1);
	const below = Math.floor(place);
	const low = sorted[below]!;
	const high = sorted[Math.min(below + 1, count - 1)]!;
	return finite(low + (place - below) * (high - low));
}
