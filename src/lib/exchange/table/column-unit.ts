/**
 * Units as tables write them beside or above their numbers: "EUR/100 m", "per 1000", "ct/m", "je 100 m". A unit of
 * the workbook may have a number on either side, and cents stand for a hundredth of the quantity's currency.
 */
import { partsOf, sameDimension } from '$lib/units/algebra';
import { convert } from '$lib/units/convert';
import { CURRENCIES } from '$lib/units/dimension';
import type { UnitSystem } from '$lib/units/system';
import type { Unit } from '$lib/units/unit';
import { durationUnit } from './duration';
import { unbracketed } from './heading';

export type UnitRead =
	| {
			readonly ok: true;
			/** A value as written, in the quantity's own unit. */
			readonly toOwn: (value: number) => number;
	  }
	| { readonly ok: false; readonly message: string };

const PER = /\s*(?:\/|(?<![\p{L}])(?:per|je|pro)(?![\p{L}]))\s*/iu;
const CENTS = /^(?:ct|cts|cent|cents)$/i;
const PENCE = /^(?:p|pence|penny)$/i;
const THOUSANDS = /^T\s?(€|EUR|£|GBP|CHF|USD)$/;
const SAME: UnitRead = { ok: true, toOwn: (value) => value };

/** `own` is the quantity's unit; '1' for a plain number. */
export function readUnit(written: string, own: string, units: UnitSystem): UnitRead {
	// "h:min" counts in hours.
	const text = durationUnit(written) ?? unbracketed(written.trim());
	if (text === '' || text === own) return SAME;
	const to = units.parse(own);
	if (!to.ok) return { ok: false, message: to.problem.message };
	const plain = units.parse(text);
	if (plain.ok) return between(plain.unit, 1, to.unit, text, own);

	const [above = '', below, ...more] = text.split(PER);
	if (more.length > 0) return { ok: false, message: plain.problem.message };
	const top = counted(above, to.unit, units);
	const bottom = counted(below ?? '', to.unit, units);
	const [ownTop = '1', ...ownBelow] = own.split('/');
	const divisor = bottom.unit || ownBelow.join('*');
	const name = `${top.unit || ownTop}${divisor ? `/(${divisor})` : ''}`;
	const from = units.parse(below === undefined ? top.unit : name);
	if (!from.ok) return { ok: false, message: from.problem.message };
	return between(from.unit, top.count / bottom.count, to.unit, text, own);
}

function between(from: Unit, times: number, to: Unit, written: string, own: string): UnitRead {
	if (!sameDimension(from, to))
		return {
			ok: false,
			message: `${written} cannot become ${own === '1' ? 'a plain number' : own}: they measure different things. Write a unit that ${own === '1' ? 'is a plain number, such as %' : `can be turned into ${own}`}.`
		};
	if (times === 1) return { ok: true, toOwn: (value) => convert(value, from, to) };
	// 26.9 hundredths are 0.269, which neither a product nor a quotient of doubles gives.
	const toOwn = (value: number) => Number((convert(value, from, to) * times).toPrecision(15));
	return { ok: true, toOwn };
}

/** "100 m", "1.000", "ct": how many of which unit. */
function counted(text: string, own: Unit, units: UnitSystem): { count: number; unit: string } {
	const [, digits = '', unit = ''] =
		/^(\d{1,3}(?:[.,' \u00a0\u202f]\d{3})+(?!\d)|\d+)?\s*(.*)$/.exec(text.trim()) ?? [];
	const count = digits === '' ? 1 : Number(digits.replace(/\D/g, ''));
	if (unit === '' || units.parse(unit).ok) return { count, unit };
	const currency = CENTS.test(unit) ? currencyOf(own) : PENCE.test(unit) ? 'GBP' : null;
	if (currency) return { count: count / 100, unit: currency };
	const thousand = THOUSANDS.exec(unit)?.[1];
	return thousand ? { count: count * 1000, unit: thousand } : { count, unit };
}

const currencyOf = (unit: Unit): string | null =>
	partsOf(unit)
		.flatMap(({ dimension }) => Object.keys(dimension))
		.find((symbol) => (CURRENCIES as readonly string[]).includes(symbol)) ?? null;
