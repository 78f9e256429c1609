/**
 * A number as files of any nation write it: digits with signs between them, a unit before or behind.
 *
 * Which sign stands before the decimals is told by the whole column (`decimals.ts`); a number that says otherwise is
 * refused here, and one that has two readings too where nobody has said which holds.
 */
export type DecimalSign = '.' | ',';

export interface NumberParts {
	readonly negative: boolean;
	/** Digits, points and commas; spaces and apostrophes between thousands are gone. */
	readonly body: string;
	readonly exponent: string;
	readonly unit: string;
}

export type NumberRead =
	| { readonly ok: true; readonly value: number; readonly unit: string }
	| { readonly ok: false; readonly message: string };

/** What people put between thousands beside point and comma. */
const SPACED = /[\s\u00a0\u2009\u202f'’]/g;
const MINUS = '[-−–]';
/** "€ 26.90", "−1 234,5 kg", "12,5-": merchandise systems write the sign of a negative amount behind it. */
const NUMBER = new RegExp(
	String.raw`^(${MINUS}|\+)?\s*([€£$]?)\s*(${MINUS})?((?:\d|[.,](?=\d)|[\s\u00a0\u2009\u202f'’](?=\d{3}(?!\d)))+|[.,]\d+)([.,](?![\d.,]))?(e[+\-−]?\d+(?![\p{L}/*^]))?(${MINUS}(?!\S))?\s*(.*)$`,
	'iu'
);

/** Null where the text is no number. */
export function numberParts(text: string): NumberParts | null {
	const found = NUMBER.exec(text.trim().slice(0, 200));
	if (!found) return null;
	const [, sign = '', before = '', second = '', digits = '', end = '', exponent = '', behind = ''] =
		found;
	const unit = found[8] ?? '';
	if (/^[.,\d]/.test(unit) || (before !== '' && unit !== '')) return null;
	const minus = [sign, second, behind].filter((one) => one !== '' && one !== '+');
	if (minus.length > 1) return null;
	return {
		negative: minus.length === 1,
		body: digits.replace(SPACED, '') + end,
		exponent: exponent.replace('−', '-'),
		unit: before || unit
	};
}

/** What a number's digits say of the sign before its decimals; null: nothing, 'none': they are no number. */
export function signSaid(body: string): DecimalSign | 'either' | 'none' | null {
	const commas = count(body, ',');
	const points = count(body, '.');
	if (commas + points === 0) return null;
	if (commas > 0 && points > 0) {
		const last = body.lastIndexOf(',') > body.lastIndexOf('.') ? ',' : '.';
		const group = last === ',' ? '.' : ',';
		const [whole = '', ...more] = body.split(last);
		return more.length === 1 && inThrees(whole, group) ? last : 'none';
	}
	const sign = commas > 0 ? ',' : '.';
	if (commas + points > 1) return inThrees(body, sign) ? (sign === ',' ? '.' : ',') : 'none';
	return inThrees(body, sign) ? 'either' : sign;
}

const count = (text: string, mark: string) => text.split(mark).length - 1;

function inThrees(text: string, mark: string): boolean {
	const [first = '', ...rest] = text.split(mark);
	return /^[1-9]\d{0,2}$/.test(first) && rest.every((group) => /^\d{3}$/.test(group));
}

const NAMES: Readonly<Record<DecimalSign, string>> = { '.': 'a point', ',': 'a comma' };

/** Longest text that is quoted back. */
export const quoted = (text: string) => `"${text.length > 24 ? `${text.slice(0, 24)}…` : text}"`;

/** The number, as the column writes decimals; null: nothing in the file says how. */
export function readNumber(text: string, decimal: DecimalSign | null): NumberRead {
	const refused = (message: string): NumberRead => ({ ok: false, message });
	if (text.trimStart().startsWith('='))
		return refused(
			`${quoted(text)} is a formula, and only values are brought in. Save the file with its values, then choose it again.`
		);
	const parts = numberParts(text);
	if (!parts)
		return refused(
			`${quoted(text)} is not a number. Write digits, with a unit behind them if need be.`
		);
	const { body, exponent, negative, unit } = parts;
	const said = signSaid(body);
	if (said === 'none')
		return refused(
			`${quoted(text)} has points and commas that part no thousands. Write one, before the decimals.`
		);
	if (said === 'either' && decimal === null)
		return refused(
			`${quoted(text)} has two readings. Say in which way this column writes decimals.`
		);
	const sign = decimal ?? (said === null || said === 'either' ? '.' : said);
	if (said !== null && said !== 'either' && said !== sign)
		return refused(
			`${quoted(text)} has ${NAMES[said]} before its decimals, and this column ${NAMES[sign]}. Write all of them alike.`
		);
	const group = sign === ',' ? '.' : ',';
	const digits = body.split(group).join('').replace(sign, '.');
	const size = Number(digits + exponent);
	if (!Number.isFinite(size))
		return refused(`${quoted(text)} is larger than a number can be here.`);
	return { ok: true, value: negative ? -size : size, unit };
}
