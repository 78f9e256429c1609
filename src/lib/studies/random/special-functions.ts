/**
 * The functions behind distributions: the quantile of the normal distribution, and the cumulative and quantile
 * functions of the beta distribution.
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

/**
 * Wichura's algorithm AS 241 (Applied Statistics 37, 1988, 477), relative accuracy about 1e-16: the value that
 * a standard normal stays below with probability p.
 */
export function normalQuantile(p: number): number {
	const q = p - 0.5;
	if (Math.abs(q) <= 0.425) return q * ratio(0.180625 - q * q, CENTRE, CENTRE_BELOW);
	const tail = q < 0 ? p : 1 - p;
	if (tail <= 0) return q < 0 ? -Infinity : Infinity;
	const r = Math.sqrt(-Math.log(tail));
	const size = r <= 5 ? ratio(r - 1.6, MIDDLE, MIDDLE_BELOW) : ratio(r - 5, FAR, FAR_BELOW);
	return q < 0 ? -size : size;
}

const CENTRE = [
	2509.0809287301227, 33430.57558358813, 67265.7709270087, 45921.95393154987, 13731.69376550946,
	1971.5909503065513, 133.14166789178438, 3.3871328727963665
];
const CENTRE_BELOW = [
	5226.495278852854, 28729.085735721943, 39307.89580009271, 21213.794301586597, 5394.196021424751,
	687.1870074920579, 42.31333070160091, 1
];
const MIDDLE = [
	0.0007745450142783414, 0.022723844989269184, 0.2417807251774506, 1.2704582524523684,
	3.6478483247632045, 5.769497221460691, 4.630337846156546, 1.4234371107496835
];
const MIDDLE_BELOW = [
	1.0507500716444169e-9, 0.0005475938084995345, 0.015198666563616457, 0.14810397642748008,
	0.6897673349851, 1.6763848301838038, 2.053191626637759, 1
];
const FAR = [
	2.0103343992922881e-7, 2.7115555687434876e-5, 0.0012426609473880784, 0.026532189526576124,
	0.29656057182850487, 1.7848265399172913, 5.463784911164114, 6.657904643501103
];
const FAR_BELOW = [
	2.0442631033899397e-15, 1.421511758316446e-7, 1.8463183175100548e-5, 0.0007868691311456133,
	0.014875361290850615, 0.1369298809227358, 0.599832206555888, 1
];

function ratio(x: number, above: readonly number[], below: readonly number[]): number {
	let top = 0;
	let bottom = 0;
	for (let i = 0; i < 8; i++) {
		top = top * x + above[i]!;
		bottom = bottom * x + below[i]!;
	}
	return top / bottom;
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
