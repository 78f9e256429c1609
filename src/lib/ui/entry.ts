/**
 * What a person types into a field, read: a number by the reader's locale, with a unit if one is
 * written, a yes or no, a member of a set. Nothing is guessed where two readings are possible. Every field that takes a
 * number reads it here.
 *
 * Digits are read by `number-reading.ts`. Units are converted by the caller's function; showing numbers belongs to `format.ts`.
 */
import { readDate } from '$lib/workbook/date-text';
import { isPermitted } from '$lib/workbook/range';
import type { Range, Scalar } from '$lib/workbook/schema';
import { decimalsWritten, formatNumber, formatUnit } from './format';
import { plainDigits, quoted, readNumber, thinSeparators } from './number-reading';
import { permittedText } from './permitted';
import { reckon, type Reckoned } from './reckoning';
import { askedOf, saidInWords } from './two-readings';

export type Converted =
	{ readonly ok: true; readonly value: number } | { readonly ok: false; readonly message: string };

/** What a field takes. */
export interface FieldSpec {
	readonly type: 'number' | 'yes_no' | 'member';
	/** A number of days that is written as a date. */
	readonly date: boolean;
	readonly unit: string;
	readonly range: Range | null;
	/** For a choice: the members that may be taken. */
	readonly members: readonly { readonly id: string; readonly label: string }[];
	readonly locale: string;
	/** A number with a unit, in the field's own unit. */
	readonly convert: (value: number, unit: string) => Converted;
	/** What stands there, where a person may reckon: "+9%" of it, "2.02 * 1.09". Left out, only values are read. */
	readonly stands?: number | null;
	/** Where values usually lie, and what the other members hold: what a number with two readings is judged by. */
	readonly usual?: Range | null;
	readonly siblings?: () => readonly number[];
	/** Of a path in time: what takes a share by which it is moved from here on, "+3 %". */
	readonly moves?: FieldSpec;
}

export type Entry =
	| {
			readonly ok: true;
			/** Null: the field was cleared. */
			readonly value: Scalar;
			/** The unit that was written, if it is another than the field's. */
			readonly from: string | null;
			/** A share by which a path in time is moved from here on. */
			readonly isMove?: boolean;
			/** It was worked out of what was typed. */
			readonly isReckoned?: boolean;
			/** Of a number with two readings, the one that was taken: "one thousand nine hundred fifty-five, not 1.955". */
			readonly inWords?: string;
	  }
	| { readonly ok: false; readonly message: string };

const refused = (message: string): Entry => ({ ok: false, message });

const yes = new Set(['yes', 'y', 'true', '1', 'on']);
const no = new Set(['no', 'n', 'false', '0', 'off']);

function readYesNo(text: string): Entry {
	const word = text.toLowerCase();
	if (yes.has(word)) return { ok: true, value: true, from: null };
	if (no.has(word)) return { ok: true, value: false, from: null };
	return refused(`${quoted(text)} is neither yes nor no. Write yes or no.`);
}

function readMember(text: string, spec: FieldSpec): Entry {
	const wanted = text.toLowerCase();
	const found =
		spec.members.find((member) => member.id === text) ??
		spec.members.find((member) => member.id.toLowerCase() === wanted) ??
		spec.members.find((member) => member.label.toLowerCase() === wanted);
	if (found) return { ok: true, value: found.id, from: null };
	const some = spec.members.slice(0, 4).map((member) => member.id);
	return refused(
		`${quoted(text)} is not one of the choices. Take ${some.join(', ')}${spec.members.length > 4 ? ' …' : ''}.`
	);
}

const DAY_FIRST = /^(\d{1,2})([/.-])(\d{1,2})\2(\d{2}|\d{4})$/;
const YEAR_FIRST = /^\d{4}([/.-])(\d{1,2})\1(\d{1,2})$/;

/** "1/2/2027", "01.02.27", "2027-02-01": day and month in either order, without room between. */
function looksLikeDate(text: string): boolean {
	const [, one, , other] = DAY_FIRST.exec(text) ?? [];
	const [, , month, day] = YEAR_FIRST.exec(text) ?? [];
	const [low, high] = [one ?? month, other ?? day].map(Number).sort((a, b) => a - b);
	return low! >= 1 && low! <= 12 && high! <= 31;
}

const noDate = (text: string) => `${quoted(text)} is no date. Write one as in 2027-05-06.`;

/** Whether something written behind a number can be the field's unit. */
const isKnown = (unit: string, { convert }: FieldSpec) => unit === '' || convert(0, unit).ok;

function notADateHere(text: string, { date, unit }: FieldSpec): string {
	if (date)
		return `${quoted(text)} can be read in two ways. Write year, month and day: 2027-05-06.`;
	const own = formatUnit(unit) ? ` in ${formatUnit(unit)}` : '';
	const parted = text.split('/');
	const otherwise =
		parted.length > 1 ? ` To divide, leave room around the signs: ${parted.join(' / ')}.` : '';
	return `${quoted(text)} looks like a date, and this quantity is a number${own}. Write the number.${otherwise}`;
}

/** What was typed, as a value of the field in the field's own unit, or why it cannot be one. */
export function readEntry(text: string, spec: FieldSpec): Entry {
	const trimmed = text.trim();
	if (trimmed === '') return { ok: true, value: null, from: null };
	if (spec.type === 'yes_no') return readYesNo(trimmed);
	if (spec.type === 'member') return readMember(trimmed, spec);
	const date = spec.date ? readDate(trimmed) : null;
	if (date !== null) return { ok: true, value: date, from: null };
	if (spec.date && /^\d{4}-\d/.test(trimmed)) return refused(noDate(trimmed));
	if (looksLikeDate(trimmed)) return refused(notADateHere(trimmed, spec));
	if (spec.moves && /%$/.test(trimmed)) return readMove(trimmed, spec.moves);
	if (!spec.date && spec.stands !== undefined) {
		const reckoned = reckonedEntry(trimmed, spec);
		if (reckoned) return reckoned;
	}
	const read = readNumber(trimmed, spec.locale);
	// "5-Mai-2027" is meant as a date, not as a number with a unit.
	if (spec.date && (!read.ok || !isKnown(read.unit, spec))) return refused(noDate(trimmed));
	if (!read.ok) return refused(read.message);
	const sameUnit =
		read.unit === '' || read.unit === spec.unit || read.unit === formatUnit(spec.unit);
	const own = (value: number): Converted =>
		sameUnit ? { ok: true, value } : spec.convert(value, read.unit);
	const converted = own(read.value);
	if (!converted.ok) return refused(converted.message);
	const { value } = converted;
	const other = spec.date || !read.other ? null : own(Number(read.other.digits));
	const taken = { value, digits: read.digits };
	const another = read.other && other?.ok ? { ...read.other, value: other.value } : null;
	const asked = another && askedOf(trimmed, taken, another, spec);
	if (asked) return refused(asked);
	return (
		outside(value, spec) ?? {
			...{ ok: true, value, from: sameUnit ? null : read.unit },
			...(another && !another.isOwnMark && { inWords: saidInWords(taken, another, spec) })
		}
	);
}

const SHARE = /^([+-])\s*(.+)$/;

/** "+3 %", "-2.5 %": its sign says that it is a change, and no level. */
function readMove(text: string, spec: FieldSpec): Entry {
	const [, sign, share = ''] = SHARE.exec(text.replace(/^[−–]/, '-')) ?? [];
	if (sign === undefined)
		return refused(
			`${quoted(text)} can be read in two ways. Write +${text} for so much more from this month on, -${text} for less.`
		);
	const read = readEntry(sign === '-' ? `-${share}` : share, spec);
	return read.ok ? { ...read, from: null, isMove: true } : read;
}

/** What was worked out, as an entry; null where nothing is to be worked out. */
function reckonedEntry(text: string, spec: FieldSpec): Entry | null {
	const marks = { other: false };
	const reckoned = reckonedIn(text, spec, marks);
	if (!reckoned) return null;
	if (!reckoned.ok) return refused(reckoned.message);
	if (marks.other)
		return refused(
			`${quoted(text)} holds a number with two readings. Write its thousands without a mark between them.`
		);
	return (
		outside(reckoned.value, spec) ?? {
			...{ ok: true, value: reckoned.value, from: null, isReckoned: true }
		}
	);
}

/** `marks.other` is set where one of its numbers has the mark of others with three digits behind it. */
function reckonedIn(text: string, spec: FieldSpec, marks: { other: boolean }): Reckoned | null {
	const isShare = spec.convert(1, '%').ok;
	return reckon(text, spec.stands ?? null, isShare, (part) => {
		const digits = plainDigits(part.replace(thinSeparators, ''), spec.locale);
		if (!digits.ok) return digits;
		if (digits.other && !digits.other.isOwnMark) marks.other = true;
		const value = Number(digits.digits);
		return Number.isFinite(value)
			? { ok: true, value }
			: { ok: false, message: `${quoted(part)} is not a number.` };
	});
}

/** The refusal of what is not permitted; null where it is. */
export function outside(value: number, spec: FieldSpec): Entry | null {
	if (isPermitted(value, spec.range)) return null;
	const shown = formatNumber(value, decimalsWritten(value, 9), spec.locale);
	const units = formatUnit(spec.unit) ? ` ${formatUnit(spec.unit)}` : '';
	return refused(
		`${shown}${units} is outside what is permitted: ${permittedText(spec.range, spec.unit, spec.locale)}.`
	);
}
