/**
 * What changed of one quantity, in words: "Resin price: 1.95 to 2.10 EUR/kg". Apart from the words for the rest of a
 * change list, because the first screen needs these alone, for what undo takes back.
 */
import { listed } from '../commands/lists';
import { jumpBetween } from '../jump';
import { FIELD_WORDS } from '../quantity-words';
import type { Scalar } from '../schema';
import type { QuantityChange } from './change';

/** How a number is written; its quantity may have it read as a date or a year. */
export type WriteNumber = (value: number, shown?: 'date' | 'year') => string;

export function quantityChangeWords(change: QuantityChange, write: WriteNumber = String): string {
	switch (change.kind) {
		case 'value':
			return valueWords(change, write);
		case 'values':
			return `${listed(change.labels)}: ${change.count} values${inScenario(change)}`;
		case 'quantity_renamed':
			return `${change.from}: renamed to ${change.to}`;
		case 'quantity_changed':
			return change.fields.length === 0
				? `describe ${change.label}`
				: `${change.label}: ${listed(change.fields.map((field) => FIELD_WORDS[field]))} changed`;
	}
}

const inScenario = ({ scenario }: { scenario?: string }) =>
	scenario === undefined ? '' : ` (${scenario})`;

function valueWords(
	change: Extract<QuantityChange, { kind: 'value' }>,
	write: WriteNumber
): string {
	const { label, at, was, now, unit, shown } = change;
	const words = (value: Scalar) => scalarWords(value, (number) => write(number, shown));
	const place = at.length > 0 ? ` of ${at.join(', ')}` : '';
	const head = `${label}${place}${inScenario(change)}`;
	if (change.step) return `${head}: ${stepChangeWords(change, change.step, write)}`;
	if (change.inherits) return `${head}: ${words(was)} back to that of the parent`;
	const withUnit = (text: string) =>
		unit === undefined || shown !== undefined ? text : `${text} ${unit}`;
	// The unit stands once: with the new number, else with the old one.
	if (typeof now === 'number')
		return `${head}: ${words(was)} to ${withUnit(words(now))}${shown ? '' : jumpWords(was, now)}`;
	const from = typeof was === 'number' ? withUnit(words(was)) : words(was);
	return `${head}: ${from} to ${words(now)}`;
}

/** "from April 2027 +3 % instead of +2 %". */
function stepChangeWords(
	{ was, now, unit, inherits }: Extract<QuantityChange, { kind: 'value' }>,
	{ from, isShare }: { readonly from: string; readonly isShare?: true },
	write: WriteNumber
): string {
	const words = (value: Scalar) =>
		typeof value === 'number' ? stepWords(value, isShare ? '%' : (unit ?? ''), isShare, write) : '';
	if (inherits) return `from ${from} as the parent has it, instead of ${words(was) || 'no step'}`;
	if (now === null) return `no step from ${from} any more, it was ${words(was)}`;
	return `from ${from} ${words(now)}${was === null ? '' : ` instead of ${words(was)}`}`;
}

/** A share with its sign, "+3 %"; a level with its unit, "19 EUR/h". */
export function stepWords(
	value: number,
	unit: string,
	isShare: boolean | undefined,
	write: WriteNumber
): string {
	const number = write(value);
	const signed = isShare && value >= 0 ? `+${number}` : number;
	return unit ? `${signed} ${unit}` : signed;
}

/** Marks a value that doubled, halved or turned in sign: a slip of a digit or a unit looks so. */
function jumpWords(was: Scalar, now: number): string {
	const ratio = typeof was === 'number' ? jumpBetween(was, now) : null;
	if (ratio === null) return '';
	if (ratio < 0) return ', sign turned';
	const times = (factor: number) => String(Number(factor.toPrecision(3)));
	return ratio > 1 ? `, times ${times(ratio)}` : `, divided by ${times(1 / ratio)}`;
}

function scalarWords(value: Scalar, write: (value: number) => string): string {
	if (value === null) return 'nothing entered';
	if (typeof value === 'boolean') return value ? 'yes' : 'no';
	return typeof value === 'number' ? write(value) : value;
}
