/**
 * Factors between units of one dimension. Whether two units meet is asked of `sameDimension` first;
 * to convert across dimensions is a mistake of the program, not of a person, and is thrown.
 */
import { exactScale, partsOf, raised, sameDimension } from './algebra';
import { exactly, times, toNumber, toSmall } from './fraction';
import type { Unit } from './unit';

export class UnitMismatchError extends Error {
	override name = 'UnitMismatchError';
	constructor(
		readonly from: Unit,
		readonly to: Unit
	) {
		super(`Cannot convert ${from.text} to ${to.text}: they do not measure the same thing.`);
	}
}

/** How many `to` one `from` is: from h to min 60. The nearest double to the true factor. */
export function factor(from: Unit, to: Unit): number {
	return toNumber(exactFactor(from, to));
}

/** A value in `from` given in `to`, as exact as a double can be: 114 min is 1.9 h. */
export function convert(value: number, from: Unit, to: Unit): number {
	const exact = exactFactor(from, to);
	const small = toSmall(exact);
	const product = small ? value * small.numerator : Infinity;
	if (small && Number.isFinite(product)) return product / small.denominator;
	if (value === 0 || !Number.isFinite(value)) return value;
	const size = toNumber(times(exactly(Math.abs(value)), exact));
	return value < 0 ? -size : size;
}

function exactFactor(from: Unit, to: Unit) {
	if (!sameDimension(from, to)) throw new UnitMismatchError(from, to);
	return exactScale([...partsOf(from), ...raised(partsOf(to), -1)]);
}
