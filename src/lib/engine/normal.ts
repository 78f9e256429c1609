/**
 * The standard normal distribution: its density, the share below a value, and the value below which a share lies.
 * Cells reach the same by other ways (`cells/normal.ts`), so that one engine proves the other. Written here because the
 * packages that are exact in the tails bring a hundred others with them.
 */

const SQRT_2PI = Math.sqrt(2 * Math.PI);
/** Up to here the series from the middle is exact enough, beyond it the fraction from the tail. */
const MIDDLE_END = 2.5;
/** Steps of the fraction after which nothing changes from there on. */
const FRACTION_STEPS = 60;

export const normalDensity = (z: number): number => exponential(z) / SQRT_2PI;

/** The share of all values that lie below z. */
export function normalShare(z: number): number {
	const size = Math.abs(z);
	if (size > MIDDLE_END) {
		const beyond = normalDensity(size) / tailFraction(size);
		return z < 0 ? beyond : 1 - beyond;
	}
	return 0.5 + normalDensity(z) * middleSum(z);
}

/** e^(-z²/2), with z² in two parts: the square of a large z alone would lose the digits that count. */
function exponential(z: number): number {
	if (Math.abs(z) > 40) return 0;
	const coarse = Math.round(z * 16) / 16;
	return Math.exp((-coarse * coarse) / 2) * Math.exp((-(z - coarse) * (z + coarse)) / 2);
}

/** z + z³/3 + z⁵/(3·5) + …: all of one sign, so that no digits are lost. */
function middleSum(z: number): number {
	let sum = 0;
	let term = z;
	for (let odd = 3; sum + term !== sum; odd += 2) {
		sum += term;
		term *= (z * z) / odd;
	}
	return sum;
}

/** Laplace's continued fraction z + 1/(z + 2/(z + 3/(z + …))), from its far end. */
function tailFraction(z: number): number {
	let fraction = z;
	for (let step = FRACTION_STEPS; step > 0; step--) fraction = z + step / fraction;
	return fraction;
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
