/**
 * A number with a unit after it, as workbooks write it outside formulas: "1 year", "1000 EUR", "12 coil".
 * Stored text, so the decimal mark is a point; numbers as a reader types them belong to the screens.
 */
import { fractionOf, toNumber, type Fraction } from './fraction';
import { parseUnit, type LookUp } from './parse';
import type { Unit, UnitProblem } from './unit';
import { amountNotPositive } from './wording';

export type AmountResult =
	| {
			readonly ok: true;
			readonly value: number;
			readonly unit: Unit;
			/** The number exactly. */
			readonly number: Fraction;
	  }
	| { readonly ok: false; readonly problem: UnitProblem };

const NUMBER = /^\s*([+-]?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?(?![\d.,]))\s*\*?\s*/;

/** Without a number it is one of the unit, without a unit a plain number. The number must be above 0. */
export function parseAmount(text: string, lookUp: LookUp): AmountResult {
	const written = NUMBER.exec(text);
	// "1/h" is a unit from its first character on.
	const isUnit = written === null || /^[/^]/.test(text.slice(written[0].length));
	const from = isUnit ? 0 : written[0].length;
	const digits = isUnit ? '1' : (written[1] ?? '1');
	const number = fractionOf(digits.replace(/^\+/, ''));
	if (!number) {
		const message = amountNotPositive(digits);
		return { ok: false, problem: { code: 'bad-unit', message, start: 0, end: from } };
	}
	const result = parseUnit(text.slice(from), lookUp);
	if (result.ok) return { ok: true, value: toNumber(number), unit: result.unit, number };
	const { start, end, ...rest } = result.problem;
	return { ok: false, problem: { ...rest, start: start + from, end: end + from } };
}
