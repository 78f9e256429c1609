/**
 * Numbers as people read them: the reader's locale, a true minus, as many digits as the quantity bears.
 *
 * Reading what a person typed belongs to `entry.ts`; which value stands where, to `cells.ts`.
 */
import type { Writing } from '$lib/engine/number-words';

/** A number cut at its decimal mark, so that columns align on it. */
export interface Parts {
	readonly whole: string;
	readonly fraction: string;
}

const formats = new Map<string, Intl.NumberFormat>();

function formatOf(locale: string, decimals: number): Intl.NumberFormat {
	const key = `${locale}|${decimals}`;
	const known = formats.get(key);
	if (known) return known;
	const made = new Intl.NumberFormat(locale, {
		minimumFractionDigits: decimals,
		maximumFractionDigits: decimals
	});
	formats.set(key, made);
	return made;
}

const marks = new Map<string, { decimal: string; group: string }>();

/** The decimal mark and the grouping mark of a locale. */
export function marksOf(locale: string): { decimal: string; group: string } {
	const known = marks.get(locale);
	if (known) return known;
	const parts = new Intl.NumberFormat(locale).formatToParts(-1234567.5);
	const made = {
		decimal: parts.find((part) => part.type === 'decimal')?.value ?? '.',
		group: parts.find((part) => part.type === 'group')?.value ?? ','
	};
	marks.set(locale, made);
	return made;
}

export const MOST_DECIMALS = 12;

/** Decimals that give `digits` significant digits to the largest of a row; none below the unit. */
export function decimalsFor(largest: number, digits: number): number {
	const size = Math.abs(largest);
	if (!Number.isFinite(size) || size === 0) return Math.min(Math.max(digits - 1, 0), 2);
	const magnitude = Math.floor(Math.log10(size));
	return Math.min(Math.max(digits - 1 - magnitude, 0), MOST_DECIMALS);
}

/** Decimals that a number needs to be written in full, up to `most`: 3 for 0.055. */
export function decimalsWritten(value: number, most: number): number {
	if (!Number.isFinite(value)) return 0;
	const [mantissa = '', exponent = '0'] = Math.abs(value).toExponential().split('e');
	const written = (mantissa.split('.')[1] ?? '').length - Number(exponent);
	return Math.min(Math.max(written, 0), most);
}

/** A value much smaller than its row keeps two digits of its own, as far as it has them. */
function ownDecimals(value: number, decimals: number): number {
	const two = decimalsFor(value, 2);
	if (two <= decimals) return decimals;
	return Math.max(decimals, Math.min(two, decimalsWritten(rounded(value), MOST_DECIMALS)));
}
/** Without the last bits that a subtraction leaves: 1.95 − 2.02 is −0.07. */
const rounded = (value: number) => Number(value.toPrecision(12));

/** Below this nobody measures, plans or pays anything in the units on screen: it is what rounding leaves of none. */
const NOTICED = 1e-8;

/** Digits that a person writes of one number at most; what is computed or solved for has more. */
const WRITTEN_BY_HAND = 9;

/** Whether a number is short enough to have been entered. */
export const isWritten = (value: number) => Number(value.toPrecision(WRITTEN_BY_HAND)) === value;

/** Whether nothing but rounding gave it; of what a formula gave, its size alone tells. */
export const isNoise = (value: number, isComputed = false) =>
	Math.abs(value) < NOTICED && (isComputed || !isWritten(value));

const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹';

function inPowers(value: number, digits: number, locale: string): string {
	const [mantissa = '0', exponent = '0'] = value.toExponential(Math.max(digits - 1, 0)).split('e');
	const power = [...exponent.replace('+', '')]
		.map((sign) => (sign === '-' ? '⁻' : (superscripts[Number(sign)] ?? '')))
		.join('');
	return `${formatOf(locale, Math.max(digits - 1, 0)).format(Number(mantissa))}×10${power}`;
}

/** 1234.5 with one decimal is "1,234.5"; far too small or large for the row, a power of ten; what rounding left, none. */
export function formatNumber(given: number, decimals: number, locale: string): string {
	const value = isNoise(given) ? 0 : given;
	const size = Math.abs(value);
	const own = ownDecimals(value, decimals);
	const text =
		size !== 0 && (size >= 1e15 || own > 9)
			? inPowers(value, 4, locale)
			: formatOf(locale, own).format(value === 0 ? 0 : value);
	return text.replace('-', '−');
}

/** With its sign: "+0.4", "−0.052". */
export function formatDifference(value: number, decimals: number, locale: string): string {
	const text = formatNumber(value, decimals, locale);
	return value > 0 && !isNoise(value) ? `+${text}` : text;
}

/** The change in percent of what it differs from; empty where that is zero or the change beyond telling. */
export function formatRelative(value: number, from: number, locale: string): string {
	if (from === 0 || !Number.isFinite(from)) return '';
	const percent = ((value - from) / Math.abs(from)) * 100;
	if (!Number.isFinite(percent) || Math.abs(percent) >= 10000) return '';
	return `${formatDifference(percent, Math.abs(percent) >= 1000 ? 0 : 1, locale)} %`;
}

const fullFormats = new Map<string, Intl.NumberFormat>();

function fullFormatOf(locale: string): Intl.NumberFormat {
	const known = fullFormats.get(locale);
	if (known) return known;
	const made = new Intl.NumberFormat(locale, {
		maximumSignificantDigits: 17,
		maximumFractionDigits: 20
	});
	fullFormats.set(locale, made);
	return made;
}

/** Every digit that the number holds. */
export function formatInFull(value: number, locale: string): string {
	const size = Math.abs(value);
	if (size !== 0 && (size >= 1e21 || size < 1e-15)) return inPowers(value, 17, locale);
	const text = fullFormatOf(locale).format(
		Number(value.toPrecision(15)) === value ? Number(value.toPrecision(15)) : value
	);
	return text.replace('-', '−');
}

/** As a field holds it: every digit, the reader's own mark before decimals, none between thousands. */
export const asTyped = (value: number, locale: string): string =>
	String(value).replace('.', marksOf(locale).decimal);

/** Numbers inside of sentences that a layer below words: six digits of them, or every digit. */
export function writingIn(locale: string): Writing {
	const six = new Intl.NumberFormat(locale, { maximumSignificantDigits: 6 });
	return {
		short: (value) => six.format(value).replace('-', '−'),
		full: (value) => formatInFull(value, locale)
	};
}

/** Cut at the decimal mark: "1,234" and ".50". */
export function cut(text: string, locale: string): Parts {
	const at = text.lastIndexOf(marksOf(locale).decimal);
	if (at < 0 || /×/.test(text)) return { whole: text, fraction: '' };
	return { whole: text.slice(0, at), fraction: text.slice(at) };
}

/** The unit beside a quantity's figures; a date needs none. */
export const unitShown = (quantity: {
	readonly unit?: string | undefined;
	readonly shown?: string | undefined;
}) => (quantity.shown === 'date' ? '' : formatUnit(quantity.unit));

const raised: Readonly<Record<string, string>> = { '-': '⁻' };

/** A unit as printed: "mm²", "EUR/(person·h)"; nothing for a plain number. */
export function formatUnit(unit: string | undefined): string {
	if (!unit || unit === '1') return '';
	return unit
		.replace(/\^(-?\d+)/g, (_, power: string) =>
			[...power].map((sign) => raised[sign] ?? superscripts[Number(sign)] ?? sign).join('')
		)
		.replace(/\*/g, '·');
}
