/**
 * Exact positive fractions, so that a conversion is one rounding at most: from m/min to m/h the factor is 60, not
 * 59.99999999999999, and 745.69987158227022 keeps all its digits. Nothing here knows about units.
 */

export interface Fraction {
	readonly numerator: bigint;
	readonly denominator: bigint;
}

/** A fraction whose parts are whole numbers that a double holds exactly. */
export interface SmallFraction {
	readonly numerator: number;
	readonly denominator: number;
}

/** Not in lowest terms: what is made of it is reduced once, by `reduced`. */
export function times(a: Fraction, b: Fraction): Fraction {
	return {
		numerator: a.numerator * b.numerator,
		denominator: a.denominator * b.denominator
	};
}

export function toPower(base: Fraction, exponent: number): Fraction {
	const size = BigInt(Math.abs(exponent));
	const numerator = base.numerator ** size;
	const denominator = base.denominator ** size;
	return exponent < 0
		? { numerator: denominator, denominator: numerator }
		: { numerator, denominator };
}

export function reduced({ numerator, denominator }: Fraction): Fraction {
	let [a, b] = [numerator, denominator];
	while (b > 0n) [a, b] = [b, a % b];
	return { numerator: numerator / a, denominator: denominator / a };
}

/** The same fraction in plain numbers, or null where a double would not hold its parts. */
export function toSmall(fraction: Fraction): SmallFraction | null {
	const { numerator, denominator } = reduced(fraction);
	const largest = BigInt(Number.MAX_SAFE_INTEGER);
	if (numerator > largest || denominator > largest) return null;
	return { numerator: Number(numerator), denominator: Number(denominator) };
}

const QUOTIENT_BITS = 80;

/** The nearest double. */
export function toNumber(fraction: Fraction): number {
	const small = toSmall(fraction);
	if (small) return small.numerator / small.denominator;
	const { numerator, denominator } = fraction;
	const shift = QUOTIENT_BITS - (bitLength(numerator) - bitLength(denominator));
	const dividend = shift > 0 ? numerator << BigInt(shift) : numerator;
	const divisor = shift < 0 ? denominator << BigInt(-shift) : denominator;
	// The lowest bit says whether anything was cut off, so that a tie is never taken for exact.
	const sticky = dividend % divisor === 0n ? 0n : 1n;
	const quotient = Number((dividend / divisor) | sticky);
	// In two steps, as 2^-1074 is the smallest power that exists.
	const half = Math.trunc(-shift / 2);
	return quotient * 2 ** half * 2 ** (-shift - half);
}

/** Every double above 0 is a whole number over a power of two, exactly. */
export function exactly(value: number): Fraction {
	let [numerator, halvings] = [value, 0n];
	for (; !Number.isInteger(numerator); halvings++) numerator *= 2;
	return { numerator: BigInt(numerator), denominator: 2n ** halvings };
}

/** How many digits a whole number above 0 has, as its logarithm: 2 for a hundred. */
export function logTen(whole: bigint): number {
	const number = Number(whole);
	if (Number.isFinite(number)) return Math.log10(number);
	const digits = whole.toString();
	return digits.length - 15 + Math.log10(Number(digits.slice(0, 15)));
}

/** A decimal such as "0.45359237" or "1e3" as a fraction; null if it is not above 0 or longer than any real one. */
export function fractionOf(decimal: string): Fraction | null {
	const match = /^(\d{1,40})(?:\.(\d{1,40}))?(?:[eE]([+-]?\d{1,2}))?$/.exec(decimal);
	if (!match) return null;
	const [, whole = '', decimals = '', power = '0'] = match;
	const digits = BigInt(whole + decimals);
	const exponent = Number(power) - decimals.length;
	if (digits === 0n) return null;
	const tens = 10n ** BigInt(Math.abs(exponent));
	return exponent < 0
		? reduced({ numerator: digits, denominator: tens })
		: { numerator: digits * tens, denominator: 1n };
}

function bitLength(value: bigint): number {
	return value.toString(16).length * 4;
}
