/**
 * Reads the text of a formula into a tree, or says what is wrong and where.
 *
 * Here stand operators and numbers, weakest first; references are read in `read-reference.ts`, function calls in
 * `read-call.ts`. Names are not resolved and units not proven. Two readings are refused, never decided quietly.
 */
import { printFormula } from './print';
import { readCall } from './read-call';
import { readReference } from './read-reference';
import { TokenReader, type Explain } from './reader';
import { clip, problem } from './problems';
import type { Mark } from './token';
import { FORMULA_LIMITS } from './tokens';
import type { BinaryOperator, Expression, ParseResult } from './tree';

const COMPARISONS = ['=', '<>', '<', '<=', '>', '>='] as const;
const SUMS = ['+', '-'] as const;
const PRODUCTS = ['*', '/'] as const;

/** A leading = is dropped. `explain` says what a token out of place means. */
export function readTree(text: string, explain: Explain): ParseResult {
	const reader = new TokenReader(text, readComparison, explain);
	reader.skipLeadingEquals();
	const expression = readComparison(reader);
	if (expression !== null && reader.token.kind !== 'end') reader.unexpected();
	if (reader.problem !== null) return { ok: false, problem: reader.problem };
	// Without a problem there is an expression: every null is recorded with one.
	return fitsWhenPrinted(text, expression!);
}

/** A formula is kept as it is printed, spaces and all; text written without any may outgrow the limit. */
function fitsWhenPrinted(text: string, expression: Expression): ParseResult {
	const most = FORMULA_LIMITS.characters;
	const length = text.length > most / 4 ? printFormula(expression).length : 0;
	if (length <= most) return { ok: true, expression };
	const message = `Written out with its spaces this formula has ${length} characters; ${most} is the most. Give its parts quantities of their own.`;
	return { ok: false, problem: problem('too-long', { start: 0, end: text.length }, message) };
}

function readComparison(reader: TokenReader): Expression | null {
	const { start } = reader;
	const left = readSum(reader);
	if (left === null || !isOperator(reader, COMPARISONS)) return left;
	const first = reader.wordsFrom(start);
	const operator = reader.take().text as BinaryOperator;

	const middle = reader.start;
	const right = readSum(reader);
	if (right === null) return null;
	if (!isOperator(reader, COMPARISONS)) return binary(reader, operator, left, right, start);

	const second = reader.wordsFrom(middle);
	const then = reader.take().text;
	const last = reader.start;
	if (readSum(reader) === null) return null;
	const third = reader.wordsFrom(last);
	const both = `AND(${first} ${operator} ${second}; ${second} ${then} ${third})`;
	const message = `Comparisons do not chain: write ${clip(both, 80)}.`;
	return reader.fail('chained-comparison', reader.spanFrom(start), message, both);
}

function readSum(reader: TokenReader): Expression | null {
	return readLeftToRight(reader, SUMS, readProduct);
}

function readProduct(reader: TokenReader): Expression | null {
	return readLeftToRight(reader, PRODUCTS, readPower);
}

function readLeftToRight(
	reader: TokenReader,
	operators: readonly (BinaryOperator & Mark)[],
	readOperand: (reader: TokenReader) => Expression | null
): Expression | null {
	const { start } = reader;
	let left = readOperand(reader);
	while (left !== null && isOperator(reader, operators)) {
		const operator = reader.take().text as BinaryOperator;
		const right = readOperand(reader);
		left = right && binary(reader, operator, left, right, start);
	}
	return left;
}

/** A power, or its base alone; `-x^2` and `2^3^2` are refused because two people read them in two ways. */
function readPower(reader: TokenReader): Expression | null {
	const { start } = reader;
	const signed = readSigned(reader);
	if (signed === null || !reader.isMark('^')) return signed?.value ?? null;
	const baseWords = reader.wordsFrom(signed.operandStart);
	reader.take();

	const exponentStart = reader.start;
	const exponent = readSigned(reader);
	if (exponent === null) return null;
	const exponentWords = reader.wordsFrom(exponentStart);
	if (signed.negative) {
		const readings = `(-${baseWords})^${exponentWords} or -(${baseWords}^${exponentWords})`;
		return twoReadings(reader, start, readings);
	}
	if (reader.takeMark('^')) {
		const lastStart = reader.start;
		if (readSigned(reader) === null) return null;
		const last = reader.wordsFrom(lastStart);
		const readings = `(${baseWords}^${exponentWords})^${last} or ${baseWords}^(${exponentWords}^${last})`;
		return twoReadings(reader, start, readings);
	}
	return binary(reader, '^', signed.value, exponent.value, start);
}

function twoReadings(reader: TokenReader, start: number, readings: string): null {
	const words = clip(reader.wordsFrom(start));
	const message = `${words} has two readings: ${clip(readings, 90)}. Write the brackets.`;
	return reader.fail('two-readings', reader.spanFrom(start), message);
}

interface Signed {
	readonly value: Expression;
	readonly negative: boolean;
	/** Where the operand begins, its signs left out. */
	readonly operandStart: number;
}

function readSigned(reader: TokenReader): Signed | null {
	const starts: number[] = [];
	let signs = 0;
	for (; isOperator(reader, SUMS); signs++) {
		if (!reader.enter(reader.token.span)) return null;
		const sign = reader.take();
		if (sign.text === '-') starts.push(sign.span.start);
	}
	const operandStart = reader.start;
	let value = readPercent(reader);
	for (; signs > 0; signs--) reader.leave();
	for (const start of starts.reverse()) {
		if (value === null) return null;
		const span = reader.spanFrom(start);
		value = reader.built({ kind: 'negation', of: value, span }, [value]);
	}
	return value && { value, negative: starts.length > 0, operandStart };
}

function readPercent(reader: TokenReader): Expression | null {
	const { start } = reader;
	let value = readPrimary(reader);
	while (value !== null && reader.isMark('%')) {
		reader.take();
		const span = reader.spanFrom(start);
		value = reader.built({ kind: 'percent', of: value, span }, [value]);
	}
	// A reference has taken its brackets; what is left follows a number, a bracket or a call.
	if (value !== null && reader.isMark('[')) return reader.unexpected();
	return value;
}

function readPrimary(reader: TokenReader): Expression | null {
	const { token } = reader;
	if (token.kind === 'number') {
		reader.take();
		const { value, text, unit, span, unitSpan } = token;
		return reader.built({ kind: 'number', value, text, unit, span, unitSpan }, []);
	}
	if (token.kind === 'name' && isOpening(reader)) return readCall(reader, token);
	if (token.kind === 'name' || token.kind === 'quoted') return readReference(reader, token);
	if (!reader.isMark('(')) return reader.unexpected();

	if (!reader.enter(token.span)) return null;
	reader.take();
	const value = reader.expression();
	if (value === null || !reader.close(token, ')')) return null;
	reader.leave();
	return value;
}

function isOpening({ next }: TokenReader): boolean {
	return next.kind === 'mark' && next.text === '(';
}

function isOperator(reader: TokenReader, operators: readonly Mark[]): boolean {
	return reader.isMark(...operators);
}

function binary(
	reader: TokenReader,
	operator: BinaryOperator,
	left: Expression,
	right: Expression,
	start: number
): Expression | null {
	const span = reader.spanFrom(start);
	return reader.built({ kind: 'binary', operator, left, right, span }, [left, right]);
}
