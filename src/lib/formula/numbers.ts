/**
 * Reads one number with its unit, `0.5[h]`, at a place in a formula, and refuses the ways of writing a
 * number that could mean two things. The unit's text is taken as it stands; whether it is a unit is for units.
 */
import { clip, place, problem } from './problems';
import type { NumberToken } from './token';
import type { FormulaProblem } from './tree';

const NUMBER = /(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+-]?[0-9]+)?/y;
const GROUPED = /[0-9.]+(?:[eE][+-]?[0-9]+)?(?:,[0-9.]+)+/y;

/** The number at `at`, where a digit or a point with a digit stands; or what is wrong with it. */
export function readNumber(text: string, at: number): NumberToken | FormulaProblem {
	NUMBER.lastIndex = at;
	const digits = NUMBER.exec(text)![0];
	const end = at + digits.length;
	const span = { start: at, end };

	if (text[end] === ',' && /[0-9]/.test(text[end + 1] ?? '')) return comma(text, at);
	if (text[end] === '.') {
		const whole = /^[0-9.]+/.exec(text.slice(at))![0];
		const message = `${clip(whole)} has more than one decimal point: a number has one, as in 1.5.`;
		return problem('bad-number', { start: at, end: at + whole.length }, message);
	}
	if (/\.(?![0-9])/.test(digits)) {
		const better = digits.replace('.', '');
		return problem(
			'bad-number',
			span,
			`Write ${clip(better)}: a point needs a digit after it.`,
			better
		);
	}
	const value = Number(digits);
	if (!Number.isFinite(value))
		return problem('bad-number', span, `${clip(digits)} is larger than a number can be.`);
	if (value === 0 && /[1-9]/.test(digits.split(/[eE]/)[0]!))
		return problem(
			'bad-number',
			span,
			`${clip(digits)} is smaller than a number can be: write 0.`,
			'0'
		);

	if (text[end] !== '[')
		return { kind: 'number', text: digits, value, unit: null, unitSpan: null, span };
	return withUnit(text, at, digits, value);
}

function withUnit(text: string, at: number, digits: string, value: number) {
	const open = at + digits.length;
	const inside = /^[^[\]\r\n]*/.exec(text.slice(open + 1))![0];
	const close = open + 1 + inside.length;
	if (text[close] !== ']') {
		const message = `The [ at ${place(open)} is not closed: a unit ends with ], as in 5[kg].`;
		return problem('unclosed-bracket', { start: open, end: open + 1 }, message);
	}
	const unit = inside.trim();
	const span = { start: at, end: close + 1 };
	if (unit === '') {
		const message = `No unit stands in the brackets after ${clip(digits)}: write one, as in ${clip(digits)}[kg], or leave the brackets out.`;
		return problem('unit-brackets', span, message, digits);
	}
	const start = open + 1 + inside.indexOf(unit);
	const unitSpan = { start, end: start + unit.length };
	return { kind: 'number' as const, text: digits, value, unit, unitSpan, span };
}

/** Digits, comma, digits: the reader's locale must not decide what a formula means. */
function comma(text: string, at: number) {
	GROUPED.lastIndex = at;
	const all = GROUPED.exec(text)![0];
	const span = { start: at, end: at + all.length };
	const parts = all.split(',');
	const shown = clip(all);
	if (parts.length > 2 || parts[1]!.includes('.')) {
		const message = `${shown} can be a list or one number with grouped digits: separate arguments by ; and write a number without grouping, as in 1234567.8.`;
		return problem('decimal-comma', span, message);
	}
	const [left, right] = parts as [string, string];
	if (!/^[0-9]+$/.test(left)) {
		const better = `${left}; ${right}`;
		const message = `Arguments are separated by ; here: ${clip(better)}.`;
		return problem('comma-separator', span, message, better);
	}
	const readings = [`the number ${clip(left)}.${clip(right)}`];
	if (/^[1-9][0-9]{0,2}$/.test(left) && /^[0-9]{3}$/.test(right))
		readings.push(`the number ${left}${right}`);
	const last = `the two arguments ${clip(left)}; ${clip(right)}`;
	const count = readings.length === 1 ? 'two' : 'three';
	const message = `${shown} has ${count} readings: ${readings.join(', ')} or ${last}. Numbers take a point, arguments are separated by ; here.`;
	return problem('decimal-comma', span, message);
}
