/**
 * The words of a unit's text: symbols, numbers, operators, brackets, exponents. Never fails: what it does not
 * know becomes a token of kind "other", and the parser says what to do about it.
 */
export type TokenKind =
	'symbol' | 'number' | 'raised' | '*' | '/' | '^' | '(' | ')' | 'other' | 'end';

export interface Token {
	readonly kind: TokenKind;
	readonly text: string;
	readonly start: number;
	readonly end: number;
}

/** What a symbol looks like, whether the workbook defines it or not. */
export const SYMBOL = /^[\p{L}\p{Sc}_°µ][\p{L}\p{M}\p{Sc}\p{Nd}_]*$/u;

const PATTERN =
	/(?<space>\s+)|(?<symbol>[%‰]|[\p{L}\p{Sc}_°µ][\p{L}\p{M}\p{Sc}\p{Nd}_]*)|(?<number>\d+(?:[.,]\d+)*)|(?<raised>⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹]+)|(?<operator>[*·⋅×/^()])|(?<other>.)/suy;

export function tokens(text: string): Token[] {
	const found: Token[] = [];
	PATTERN.lastIndex = 0;
	for (let at = 0; at < text.length; at = PATTERN.lastIndex) {
		PATTERN.lastIndex = at;
		const groups = PATTERN.exec(text)?.groups ?? {};
		const end = PATTERN.lastIndex;
		if (groups.space === undefined)
			found.push({ kind: kindOf(groups), text: text.slice(at, end), start: at, end });
	}
	found.push({ kind: 'end', text: '', start: text.length, end: text.length });
	return found;
}

/** The whole number that superscript digits show. */
export function raisedNumber(text: string): number {
	const plain = [...text].map((digit) =>
		digit === '⁻' ? '-' : String('⁰¹²³⁴⁵⁶⁷⁸⁹'.indexOf(digit))
	);
	return Number(plain.join(''));
}

function kindOf(groups: Readonly<Record<string, string | undefined>>): TokenKind {
	if (groups.symbol !== undefined) return 'symbol';
	if (groups.number !== undefined) return 'number';
	if (groups.raised !== undefined) return 'raised';
	switch (groups.operator) {
		case undefined:
			return 'other';
		case '/':
		case '^':
		case '(':
		case ')':
			return groups.operator;
		default:
			return '*';
	}
}
