/**
 * A number with two readings, 1.955 in a German page: which can be meant is judged by what is permitted and usual, by what
 * stands there and by the other members. Where the reading that the locale gives is hardly meant, the entry is asked about;
 * else it is said in words beside the field.
 */
import { isPermitted } from '$lib/workbook/range';
import type { FieldSpec } from './entry';
import { permittedText } from './permitted';
import { decimalsWritten, formatNumber, formatUnit, marksOf } from './format';
import { inWords } from './number-in-words';
import { quoted } from './number-reading';

/** In the field's own unit, and the digits as they were read of what was typed. */
export interface Reading {
	readonly value: number;
	readonly digits: string;
}

/** As many times what stands there, or as many times less, nobody changes a figure unasked. */
const MANY = 5;

/** What both readings say, where one of them has to be written in another way; null where the first can be taken. */
export function askedOf(
	typed: string,
	taken: Reading,
	other: Reading & { readonly isOwnMark: boolean },
	spec: FieldSpec
): string | null {
	const doubt = doubtOf(taken.value, other.value, spec);
	if (doubt === '') return null;
	// By the reader's own mark it is what it says, unless only the other can be meant.
	if (other.isOwnMark && doubtOf(other.value, taken.value, spec) !== '') return null;
	if (!isPermitted(other.value, spec.range) && isPermitted(taken.value, spec.range)) return null;
	const whole = taken.digits.includes('.') ? other.digits : taken.digits;
	const decimal = taken.digits.includes('.') ? taken.digits : other.digits;
	const unmistakable = `${decimal}0`.replace('.', marksOf(spec.locale).decimal);
	return `${quoted(typed)} has two readings: ${told(taken, spec)}, or ${told(other, spec)}. ${doubt} Write ${whole} or ${unmistakable}.`.replace(
		/-(?=\d)/g,
		'−'
	);
}

/** "one thousand nine hundred fifty-five, not 1.955": beside an entry with two readings. */
export const saidInWords = (taken: Reading, other: Reading, spec: FieldSpec): string =>
	`${inWords(taken.digits)}, not ${number(Number(other.digits), spec)}`;

const number = (value: number, { locale }: FieldSpec) =>
	formatNumber(value, decimalsWritten(value, 9), locale);

const withUnit = (value: number, spec: FieldSpec) =>
	[number(value, spec), formatUnit(spec.unit)].filter(Boolean).join(' ');

const told = ({ digits, value }: Reading, spec: FieldSpec) =>
	`${withUnit(value, spec)} (${inWords(digits)})`;

/** Why a value is hardly meant; empty where nothing speaks against it. */
function doubtOf(value: number, other: number, spec: FieldSpec): string {
	const { range, usual, unit, locale, stands, siblings } = spec;
	if (!isPermitted(value, range)) return `Permitted is ${permittedText(range, unit, locale)}.`;
	if (!isPermitted(value, usual ?? null))
		return `Usual is ${permittedText(usual ?? null, unit, locale)}.`;
	// What is usual, where the other would not be, needs no other witness.
	if (usual && !isPermitted(other, usual)) return '';
	if (typeof stands === 'number' && stands !== 0)
		return isFar(value, stands, stands) ? `${withUnit(stands, spec)} stands there.` : '';
	const sizes = (siblings?.() ?? []).filter((one) => one !== 0).sort((a, b) => a - b);
	const [low, high] = [sizes[0], sizes.at(-1)];
	if (low === undefined || high === undefined || !isFar(value, low, high)) return '';
	const reach =
		low === high ? withUnit(low, spec) : `${number(low, spec)} to ${withUnit(high, spec)}`;
	return `The others are ${reach}.`;
}

function isFar(value: number, low: number, high: number): boolean {
	const size = Math.abs(value);
	const ends = [Math.abs(low), Math.abs(high)];
	return size * MANY <= Math.min(...ends) || size >= MANY * Math.max(...ends);
}
