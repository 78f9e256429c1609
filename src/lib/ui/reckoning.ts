/**
 * What a person lets a field work out: "2.02 * 1.09", and from what stands there "+9%", "* 1.09", "/ 2". Only what can be
 * read in one way is taken; anything else is left to who reads values.
 */

/** What it gives, or the sentence that says why it gives nothing; null where the text is no reckoning. */
export type Reckoned =
	{ readonly ok: true; readonly value: number } | { readonly ok: false; readonly message: string };

/** Reads the digits of a plain number by the reader's locale. */
type ReadDigits = (text: string) => Reckoned;

const MINUS = /[−–]/g;
const CHANGE = /^([+-])\s*([\d.,]+)\s*%$/;
const ALLOWED = /^[\d.,'’\s+\-*×·/÷()]+$/;
/** A sign between two numbers needs room on both sides: "3-4" may be a range, "2026-11" a month. */
const HAS_OPERATION = /[*×·/÷]|\d\s+[+-]\s+[\d(]/;
const BEGINS_WITH_OPERATION = /^[*×·/÷]/;

/** `stands`: what stands in the field; `isShare`: it holds a plain number or %, where "+9%" has two readings. */
export function reckon(
	typed: string,
	stands: number | null,
	isShare: boolean,
	digits: ReadDigits
): Reckoned | null {
	const text = typed.trim().replace(MINUS, '-');
	const change = CHANGE.exec(text);
	if (change) {
		const [, sign, size = ''] = change;
		const by = digits(size);
		if (!by.ok) return by;
		if (isShare && sign === '-') return null;
		if (isShare)
			return {
				ok: false,
				message: `"${typed.trim()}" can be the value or a change. Write ${size} % for the value, * ${1 + by.value / 100} for ${size} % more.`
			};
		return ofWhatStands(
			stands,
			(value) => value * (1 + (sign === '-' ? -by.value : by.value) / 100)
		);
	}
	if (!ALLOWED.test(text) || !HAS_OPERATION.test(text)) return null;
	if (!BEGINS_WITH_OPERATION.test(text)) return worked(text, digits);
	if (stands === null) return NOTHING_STANDS;
	const factor = worked(`1${text}`, digits);
	return factor.ok ? { ok: true, value: rounded(stands * factor.value) } : factor;
}

const NOTHING_STANDS: Reckoned = {
	ok: false,
	message: 'Nothing stands here that could be changed. Write the value itself.'
};

const ofWhatStands = (stands: number | null, change: (value: number) => number): Reckoned =>
	stands === null ? NOTHING_STANDS : { ok: true, value: rounded(change(stands)) };

/** Without the last bits that binary fractions leave: 2.02 × 1.09 is 2.2018. */
const rounded = (value: number) => Number(value.toPrecision(13));

/** Sums of products, brackets first. */
function worked(text: string, digits: ReadDigits): Reckoned {
	const tokens = text.match(/[\d.,'’]+|\S/g) ?? [];
	let at = 0;
	let problem = '';
	const fail = (message: string) => {
		problem ||= message;
		return NaN;
	};
	function part(): number {
		const token = tokens[at++];
		if (token === '-') return -part();
		if (token === '(') {
			const inner = sum();
			return tokens[at++] === ')' ? inner : fail(`"${text}" opens a bracket that is not closed.`);
		}
		if (token === undefined) return fail(`"${text}" ends where a number is missing.`);
		if (!/[\d]/.test(token)) return fail(`"${text}" has "${token}" where a number is missing.`);
		const read = digits(token);
		return read.ok ? read.value : fail(read.message);
	}
	function product(): number {
		let value = part();
		for (let sign = tokens[at]; sign && /[*×·/÷]/.test(sign); sign = tokens[at]) {
			at++;
			const next = part();
			if (/[/÷]/.test(sign) && next === 0) return fail('Nothing can be divided by 0.');
			value = /[/÷]/.test(sign) ? value / next : value * next;
		}
		return value;
	}
	function sum(): number {
		let value = product();
		for (let sign = tokens[at]; sign === '+' || sign === '-'; sign = tokens[at]) {
			at++;
			value += sign === '+' ? product() : -product();
		}
		return value;
	}
	const value = sum();
	if (!problem && at < tokens.length) fail(`"${text}" goes on after its end, at "${tokens[at]}".`);
	if (!problem && !Number.isFinite(value)) fail(`"${text}" is larger than a number can be here.`);
	return problem ? { ok: false, message: problem } : { ok: true, value: rounded(value) };
}
