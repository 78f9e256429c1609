/**
 * The functions behind distributions: the cumulative and quantile functions of the beta distribution. Those of the
 * normal distribution are the engine's, as formulas have them too.
 */

/** Lanczos's approximation with g = 7 and nine terms; relative error below 1e-14 for x > 0. */
const LANCZOS = [
	0.9999999999998099, 676.5203681218851, -1259.1392167224028, 771.3234287776531, -176.6150291621406,
	12.507343278686905, -0.13857109526572012, 9.984369578019572e-6, 1.5056327351493116e-7
];

export function logGamma(x: number): number {
	const z = x - 1;
	let sum = LANCZOS[0]!;
	for (let i = 1; i < LANCZOS.length; i++) sum += LANCZOS[i]! / (z + i);
	const t = z + 7.5;
	return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(t) - t + Math.log(sum);
}

/** The probability that a beta variable stays below x (the regularised incomplete beta function). */
export function betaBelow(x: number, a: number, b: number, logBeta = logBetaOf(a, b)): number {
	if (x <= 0) return 0;
	if (x >= 1) return 1;
	const front = Math.exp(a * Math.log(x) + b * Math.log1p(-x) - logBeta);
	// The continued fraction converges fast on this side; the other is its mirror image.
	return x < (a + 1) / (a + b + 2)
		? (front * fraction(x, a, b)) / a
		: 1 - (front * fraction(1 - x, b, a)) / b;
}

export const logBetaOf = (a: number, b: number) => logGamma(a) + logGamma(b) - logGamma(a + b);

/** Lentz's method for the continued fraction of the incomplete beta function. */
function fraction(x: number, a: number, b: number): number {
	const least = 1e-300;
	const kept = (value: number) => (Math.abs(value) < least ? least : value);
	let c = 1;
	let d = 1 / kept(1 - ((a + b) * x) / (a + 1));
	let value = d;
	for (let m = 1; m <= 300; m++) {
		const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
		d = 1 / kept(1 + even * d);
		c = kept(1 + even / c);
		value *= d * c;
		const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
		d = 1 / kept(1 + odd * d);
		c = kept(1 + odd / c);
		const step = d * c;
		value *= step;
		if (Math.abs(step - 1) < 1e-16) break;
	}
	return value;
}
