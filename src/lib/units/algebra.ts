/**
 * Unit arithmetic: products, quotients, powers, and whether two units measure the same thing.
 * Factors between units belong to `convert.ts`, words to `print.ts`.
 */
import { NO_DIMENSION, baseDimension, equalDimensions, sumDimensions } from './dimension';
import { exactly, logTen, times, toNumber, toPower, type Fraction } from './fraction';
import { factorsText, printOrder } from './print';
import type { Unit, UnitPart } from './unit';

/** Exponents in a unit stay within this, either way. */
export const LARGEST_EXPONENT = 9;
/** Scales stay between 1e-150 and 1e150, so that the ratio of two is still a number. */
const LARGEST_SCALE_DIGITS = 150;
/** Beyond so many digits exact arithmetic would take forever. */
const MOST_DIGITS = 6000;

/** The plain number one. */
export const ONE: Unit = { text: '1', dimension: NO_DIMENSION, scale: 1, parts: [] };

export function multiply(a: Unit, b: Unit): Unit {
	return unitOf([...partsOf(a), ...partsOf(b)]);
}

export function divide(a: Unit, b: Unit): Unit {
	return unitOf([...partsOf(a), ...raised(partsOf(b), -1)]);
}

/** The exponent must be whole. A large one gives a unit that `withinLimits` refuses. */
export function power(unit: Unit, exponent: number): Unit {
	return unitOf(raised(partsOf(unit), exponent));
}

/** The unit whose power this is: mm² gives mm. Null where no symbol's exponent allows it, as for m*mm; try its `coherent` then. */
export function root(unit: Unit, degree: number): Unit | null {
	const parts = partsOf(unit);
	return parts.every((part) => part.exponent % degree === 0)
		? unitOf(raised(parts, 1 / degree))
		: null;
}

/** The unit of the same dimension made of base units alone, so with scale 1: of km/h it is m/s. */
export function coherent(unit: Unit): Unit {
	return unitOf(
		Object.entries(unit.dimension).map(([symbol, exponent]) => ({
			symbol,
			exponent,
			dimension: baseDimension(symbol),
			numerator: 1n,
			denominator: 1n
		}))
	);
}

/** Whether one converts into the other: h and min do, h and year do not, EUR and USD do not. */
export function sameDimension(a: Unit, b: Unit): boolean {
	return equalDimensions(a.dimension, b.dimension);
}

/** Whether a unit that arithmetic made is still one to compute with: no exponent beyond 9, a scale that is a number. */
export function withinLimits(unit: Unit): boolean {
	const exponents = [
		...Object.values(unit.dimension),
		...partsOf(unit).map((part) => part.exponent)
	];
	return (
		exponents.every((exponent) => Math.abs(exponent) <= LARGEST_EXPONENT) &&
		Math.abs(magnitude(partsOf(unit))) <= LARGEST_SCALE_DIGITS &&
		digitsIn(partsOf(unit)) <= MOST_DIGITS
	);
}

/** The unit that a list of symbols makes; the same symbol may stand in it twice. `text` says how a person wrote it. */
export function unitOf(given: readonly UnitPart[], text?: string): Unit {
	const parts = merged(given);
	return {
		text: text ?? factorsText(parts),
		dimension: sumDimensions(parts),
		scale: scaleOf(parts),
		parts
	};
}

export function raised(parts: readonly UnitPart[], exponent: number): UnitPart[] {
	return parts.map((part) => ({ ...part, exponent: part.exponent * exponent }));
}

/** The symbols that make up a unit; a unit made by hand is one symbol. */
export function partsOf(unit: Unit): readonly UnitPart[] {
	if (unit.parts) return unit.parts;
	const symbol = `(${unit.text})`;
	return [{ symbol, exponent: 1, dimension: unit.dimension, ...exactly(unit.scale) }];
}

/** One of the unit in base units, exactly. */
export function exactScale(parts: readonly UnitPart[]): Fraction {
	return parts.reduce<Fraction>((scale, part) => times(scale, toPower(part, part.exponent)), {
		numerator: 1n,
		denominator: 1n
	});
}

function scaleOf(parts: readonly UnitPart[]): number {
	// Far beyond the limits nobody computes with the result.
	if (digitsIn(parts) <= MOST_DIGITS) return toNumber(exactScale(parts));
	return 10 ** magnitude(parts);
}

/** The scale as a power of ten. */
function magnitude(parts: readonly UnitPart[]): number {
	return parts.reduce(
		(sum, part) => sum + part.exponent * (logTen(part.numerator) - logTen(part.denominator)),
		0
	);
}

/** How many decimal digits the exact scale has, at most. */
function digitsIn(parts: readonly UnitPart[]): number {
	return parts.reduce(
		(digits, part) =>
			digits + Math.abs(part.exponent) * (logTen(part.numerator) + logTen(part.denominator)),
		0
	);
}

function merged(given: readonly UnitPart[]): readonly UnitPart[] {
	const parts = new Map<string, UnitPart>();
	for (const part of given) {
		const exponent = (parts.get(part.symbol)?.exponent ?? 0) + part.exponent;
		parts.set(part.symbol, { ...part, exponent });
	}
	return [...parts.values()].filter((part) => part.exponent !== 0).sort(printOrder);
}
