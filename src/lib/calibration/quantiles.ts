/** Quantiles of Student's t and of chi-squared, by bisection of their distributions. */
import { betaBelow, logGamma } from '$lib/studies/random/special-functions';

const TURNS = 200;

/** The t that is exceeded with the probability given, 0 to 0.5, at so many degrees of freedom. */
export function studentAbove(probability: number, freedom: number): number {
	return bisected(0, 1, (t) => studentTail(t, freedom) < probability);
}

export function chiSquaredBelow(probability: number, freedom: number): number {
	return bisected(0, freedom + 1, (x) => gammaBelow(freedom / 2, x / 2) > probability);
}

/** The place where `isBeyond` turns true; `high` is doubled until it is. */
function bisected(low: number, high: number, isBeyond: (at: number) => boolean): number {
	while (!isBeyond(high) && high < 1e12) [low, high] = [high, 2 * high];
	for (let turn = 0; turn < TURNS && high - low > 1e-14 * high; turn++) {
		const middle = (low + high) / 2;
		if (isBeyond(middle)) high = middle;
		else low = middle;
	}
	return (low + high) / 2;
}

const studentTail = (t: number, freedom: number) =>
	betaBelow(freedom / (freedom + t * t), freedom / 2, 0.5) / 2;

/** The regularised lower incomplete gamma function: a series below, a continued fraction above. */
function gammaBelow(a: number, x: number): number {
	if (x <= 0) return 0;
	const front = Math.exp(a * Math.log(x) - x - logGamma(a));
	if (x < a + 1) {
		let term = 1 / a;
		let sum = term;
		for (let i = 1; i < 2000 && Math.abs(term) > 1e-17 * Math.abs(sum); i++)
			sum += term *= x / (a + i);
		return front * sum;
	}
	let b = x + 1 - a;
	let c = 1e300;
	let d = 1 / b;
	let value = d;
	for (let i = 1; i < 2000; i++) {
		const an = -i * (i - a);
		b += 2;
		d = 1 / nonZero(an * d + b);
		c = nonZero(b + an / c);
		const change = d * c;
		value *= change;
		if (Math.abs(change - 1) < 1e-16) break;
	}
	return 1 - front * value;
}
const nonZero = (value: number) => (Math.abs(value) < 1e-300 ? 1e-300 : value);
