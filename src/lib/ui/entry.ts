/**
 * What a person types into a field, read: a number by the reader's locale, with a unit if one is
 * written, a yes or no, a member of a set. Nothing is guessed where two readings are possible.
 *
 * Units are converted by the caller's function; showing numbers belongs to `format.ts`.
 */
import { readDate } from '$lib/workbook/date-text';
import { isPermitted } from '$lib/workbook/range';
import type { Range, Scalar } from '$lib/workbook/schema';
import { formatNumber, formatUnit, marksOf, decimalsWritten } from './format';
import { reckon } from './reckoning';

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
}

export type Entry =
	| {
			readonly ok: true;
			/** Null: the field was cleared. */
			readonly value: Scalar;
			/** The unit that was written, if it is another than the field's. */
			readonly from: string | null;
			/** It was worked out of what was typed. */
			readonly isReckoned?: boolean;
	  }
	| { readonly ok: false; readonly message: string };

const refused = (message: string): Entry => ({ ok: false, message });

/** Spaces and apostrophes that people put between thousands. */
const thinSeparators = /[\s\u00a0\u2009\u202f'’]/g;

/** Longest text that is quoted back. */
const quoted = (text: string) => `"${text.length > 24 ? `${text.slice(0, 24)}…` : text}"`;

const groupsOfThree = (text: string, mark: string) => {
	const [first = '', ...rest] = text.split(mark);
	return /^[1-9]\d{0,2}$/.test(first) && rest.every((group) => /^\d{3}$/.test(group));
};

type Digits = { ok: true; digits: string } | { ok: false; message: string };

const count = (text: string, mark: string) => text.split(mark).length - 1;
const nameOf = (mark: string) => (mark === ',' ? 'comma' : 'point');

/** The digits of a number with at most one decimal mark, as JavaScript reads them. */
function plainDigits(text: string, locale: string): Digits {
	const { decimal } = marksOf(locale);
	const own = decimal === ',' ? ',' : '.';
	const other = own === ',' ? '.' : ',';
	const owns = count(text, own);
	const others = count(text, other);
	if (owns > 1 && !(others <= 1 && groupsOfThree(text.split(other)[0] ?? '', own)))
		return {
			ok: false,
			message: `${quoted(text)} has ${owns === 2 ? 'two' : owns} ${nameOf(own)}s. Write one, before the decimals.`
		};
	if (others > 1 && !groupsOfThree(text.split(own)[0] ?? '', other))
		return {
			ok: false,
			message: `${quoted(text)} has ${others === 2 ? 'two' : others} ${nameOf(other)}s, and they do not part thousands. Write ${owns ? '' : 'one mark before the decimals, as in '}1${own}95.`
		};
	if (owns && others) {
		const last = text.lastIndexOf(own) > text.lastIndexOf(other) ? own : other;
		const grouping = last === own ? other : own;
		const [whole = '', fraction = ''] = [
			text.slice(0, text.lastIndexOf(last)),
			text.slice(text.lastIndexOf(last) + 1)
		];
		if (!groupsOfThree(whole, grouping))
			return {
				ok: false,
				message: `In ${quoted(text)} the ${nameOf(grouping)}s do not part thousands. Write it without them.`
			};
		return { ok: true, digits: `${whole.split(grouping).join('')}.${fraction}` };
	}
	if (owns > 1) return { ok: true, digits: text.split(own).join('') };
	if (owns === 1) return { ok: true, digits: text.replace(own, '.') };
	if (others === 0) return { ok: true, digits: text };
	// One or more foreign marks: thousands if they stand so, else they can only be the decimal mark.
	if (groupsOfThree(text, other)) return { ok: true, digits: text.split(other).join('') };
	return { ok: true, digits: text.replace(other, '.') };
}

const numberHead =
	/^([+\-−–]?)\s*((?:\d|[.,](?=\d)|[\s\u00a0\u2009\u202f'’](?=\d{3})|[.,](?!\S))+|[.,]\d+)((?:e[+\-−]?\d+(?![\p{L}/*^]))?)\s*(.*)$/iu;

/** The number and the text of the unit behind it. */
export function readNumber(
	text: string,
	locale: string
): { ok: true; value: number; unit: string } | { ok: false; message: string } {
	const trimmed = text.trim();
	if (trimmed.startsWith('='))
		return {
			ok: false,
			message:
				'A field takes a value. A formula belongs to the whole quantity: open it with "Edit quantity".'
		};
	const found = numberHead.exec(trimmed.slice(0, 400));
	if (!found)
		return {
			ok: false,
			message: `${quoted(trimmed)} is not a number. Write digits, with a unit behind them if you like.`
		};
	const [, sign = '', body = '', exponent = '', unit = ''] = found;
	const digits = plainDigits(body.replace(thinSeparators, ''), locale);
	if (!digits.ok) return digits;
	if (/^[.,\d]/.test(unit))
		return {
			ok: false,
			message: `${quoted(trimmed)} has a mark too many. Write one mark, before the decimals.`
		};
	const size = Number(digits.digits + exponent.replace('−', '-'));
	if (!Number.isFinite(size))
		return { ok: false, message: `${quoted(trimmed)} is larger than a number can be here.` };
	return { ok: true, value: /^[-−–]$/.test(sign) ? -size : size, unit };
}

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

/** "0.5 to 6 h", "above 0", "at most 100 %"; empty where everything is permitted. */
export function permittedText(range: Range | null, unit: string, locale: string): string {
	if (!range) return '';
	const show = (value: number) => formatNumber(value, decimalsWritten(value, 9), locale);
	const { min, max, above, below } = range;
	const units = formatUnit(unit) ? ` ${formatUnit(unit)}` : '';
	if (min !== undefined && max !== undefined) return `${show(min)} to ${show(max)}${units}`;
	const low =
		min !== undefined ? `at least ${show(min)}` : above !== undefined ? `above ${show(above)}` : '';
	const high =
		max !== undefined ? `at most ${show(max)}` : below !== undefined ? `below ${show(below)}` : '';
	const both = [low, high].filter(Boolean).join(', ');
	return both ? `${both}${units}` : '';
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
	const reckoned = spec.date || spec.stands === undefined ? null : reckonedIn(trimmed, spec);
	if (reckoned && !reckoned.ok) return refused(reckoned.message);
	if (reckoned)
		return (
			outside(reckoned.value, spec) ?? {
				...{ ok: true, value: reckoned.value, from: null, isReckoned: true }
			}
		);
	const read = readNumber(trimmed, spec.locale);
	// "5-Mai-2027" is meant as a date, not as a number with a unit.
	if (spec.date && (!read.ok || !isKnown(read.unit, spec))) return refused(noDate(trimmed));
	if (!read.ok) return refused(read.message);
	const sameUnit =
		read.unit === '' || read.unit === spec.unit || read.unit === formatUnit(spec.unit);
	const converted: Converted = sameUnit
		? { ok: true, value: read.value }
		: spec.convert(read.value, read.unit);
	if (!converted.ok) return refused(converted.message);
	return (
		outside(converted.value, spec) ?? {
			...{ ok: true, value: converted.value, from: sameUnit ? null : read.unit }
		}
	);
}

function reckonedIn(text: string, spec: FieldSpec) {
	const isShare = spec.convert(1, '%').ok;
	return reckon(text, spec.stands ?? null, isShare, (part) => {
		const digits = plainDigits(part.replace(thinSeparators, ''), spec.locale);
		if (!digits.ok) return digits;
		const value = Number(digits.digits);
		return Number.isFinite(value)
			? { ok: true, value }
			: { ok: false, message: `${quoted(part)} is not a number.` };
	});
}

/** The refusal of what is not permitted; null where it is. */
function outside(value: number, spec: FieldSpec): Entry | null {
	if (isPermitted(value, spec.range)) return null;
	const shown = formatNumber(value, decimalsWritten(value, 9), spec.locale);
	const units = formatUnit(spec.unit) ? ` ${formatUnit(spec.unit)}` : '';
	return refused(
		`${shown}${units} is outside what is permitted: ${permittedText(spec.range, spec.unit, spec.locale)}.`
	);
}
