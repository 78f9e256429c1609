/**
 * Digits as people type them, read by the reader's locale: marks between thousands, one before the decimals, a unit behind.
 *
 * A number with one mark and three digits behind it has two readings; which of them can be meant is `two-readings.ts`'s.
 * Files are read by `exchange/table/number-text.ts`, where a whole column tells.
 */
import { marksOf } from './format';

/** Spaces and apostrophes that people put between thousands. */
export const thinSeparators = /[\s\u00a0\u2009\u202f'’]/g;

/** Longest text that is quoted back. */
export const quoted = (text: string) => `"${text.length > 24 ? `${text.slice(0, 24)}…` : text}"`;

const groupsOfThree = (text: string, mark: string) => {
	const [first = '', ...rest] = text.split(mark);
	return /^[1-9]\d{0,2}$/.test(first) && rest.every((group) => /^\d{3}$/.test(group));
};

/** The reading that was not taken of a number with one mark and three digits behind it. */
export interface OtherReading {
	readonly digits: string;
	/** The mark is the reader's own before decimals; else it is the one that others use. */
	readonly isOwnMark: boolean;
}

type Digits = { ok: true; digits: string; other?: OtherReading } | { ok: false; message: string };

const count = (text: string, mark: string) => text.split(mark).length - 1;
const nameOf = (mark: string) => (mark === ',' ? 'comma' : 'point');

/** The digits of a number with at most one decimal mark, as JavaScript reads them. */
export function plainDigits(text: string, locale: string): Digits {
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
	if (owns === 1) {
		const digits = text.replace(own, '.');
		return groupsOfThree(text, own)
			? { ok: true, digits, other: { digits: text.replace(own, ''), isOwnMark: true } }
			: { ok: true, digits };
	}
	if (others === 0) return { ok: true, digits: text };
	// One or more foreign marks: thousands if they stand so, else they can only be the decimal mark.
	if (groupsOfThree(text, other)) {
		const digits = text.split(other).join('');
		const another = { digits: text.replace(other, '.'), isOwnMark: false };
		return { ok: true, digits, ...(others === 1 && { other: another }) };
	}
	return { ok: true, digits: text.replace(other, '.') };
}

const numberHead =
	/^([+\-−–]?)\s*((?:\d|[.,](?=\d)|[\s\u00a0\u2009\u202f'’](?=\d{3})|[.,](?!\S))+|[.,]\d+)((?:e[+\-−]?\d+(?![\p{L}/*^]))?)\s*(.*)$/iu;

export type NumberRead =
	| {
			readonly ok: true;
			readonly value: number;
			readonly unit: string;
			/** As JavaScript reads them, with their sign. */
			readonly digits: string;
			readonly other?: OtherReading;
	  }
	| { readonly ok: false; readonly message: string };

/** The number and the text of the unit behind it. */
export function readNumber(text: string, locale: string): NumberRead {
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
	const minus = /^[-−–]$/.test(sign) ? '-' : '';
	const { other } = digits;
	return {
		...{ ok: true, value: minus ? -size : size, unit, digits: minus + digits.digits },
		...(other && exponent === '' && { other: { ...other, digits: minus + other.digits } })
	};
}
