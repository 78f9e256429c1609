/**
 * Functions of dates. A date is a number of days in the unit `day`, so one less another is days, and a day more
 * is `+ 1[day]`. Year, month and day of the month may come as plain numbers or in the units of those names, as
 * sets carry them: DATE(calendar_year; NUMBER(month); NUMBER(day_of_month)).
 */
import type { Call } from '$lib/formula/tree';
import { sameDimension } from '$lib/units/algebra';
import type { Unit } from '$lib/units/unit';
import { Op } from '../operations';
import { binary } from './arithmetic';
import { constant } from './constant';
import { asNumber, asPlain, inUnit, type TypedNumber } from './convert-typed';
import type { Proof } from './proof';
import { numberIn, PLAIN, type Typed } from './types';

export function weekday(proof: Proof, source: Call, [of, kind]: readonly Typed[]): Typed | null {
	const date = of ? asDate(proof, source, of) : null;
	if (!date) return null;
	const type = kind ? asPlain(proof, kind, 'a type of week') : constant(source, 1, PLAIN);
	return type && binary(source, Op.Weekday, date, type, PLAIN);
}

export function dateOf(
	proof: Proof,
	source: Call,
	[year, month, day]: readonly Typed[]
): Typed | null {
	const parts = [
		year ? partOf(proof, year, 'year') : null,
		month ? partOf(proof, month, 'month') : null,
		day ? partOf(proof, day, 'day') : null
	];
	const [y, m, d] = parts;
	if (!y || !m || !d) return null;
	const days = numberIn(unitNamed(proof, 'day'));
	// A written 0 would give the whole date any unit.
	const first = { ...binary(source, Op.FirstOfMonth, y, m, PLAIN), type: days, source: null };
	return { ...binary(source, Op.DayFrom, first, d, PLAIN), type: days };
}

/** A plain number, or one in the unit that the part is named by. */
function partOf(proof: Proof, value: Typed, name: 'year' | 'month' | 'day'): TypedNumber | null {
	const number = asNumber(proof, value);
	if (!number) return null;
	const unit = unitNamed(proof, name);
	if (!number.type.any && sameDimension(number.type.unit, unit))
		return { ...inUnit(number, unit), type: PLAIN };
	return asPlain(proof, value, `the ${name} of a date`);
}

export function asDate(proof: Proof, source: Call, value: Typed): TypedNumber | null {
	const number = asNumber(proof, value);
	if (!number) return null;
	const unit = unitNamed(proof, 'day');
	if (!number.type.any && sameDimension(number.type.unit, unit)) return inUnit(number, unit);
	const words = proof.words(value.source);
	proof.report(
		'not-a-date',
		`${source.name} takes a date, which is in day, and ${words} is in ${number.type.unit.text}: write DATE(year; month; day), or a quantity in day.`,
		value.source?.span ?? source.span
	);
	return null;
}

function unitNamed(proof: Proof, symbol: string): Unit {
	const parsed = proof.context.units.parse(symbol);
	if (!parsed.ok) throw new RangeError(`Every workbook knows the unit ${symbol}.`);
	return parsed.unit;
}
