/**
 * Cuts the text of a formula into tokens. The list ends with an "end" token, or with a "bad" one that
 * carries its problem, so that the parser meets mistakes in the order in which they stand.
 *
 * Other spellings of an operator (× · ÷ − ≤ ≥ ≠) become the plain one here. What order of tokens makes
 * sense is for the parser.
 */
import { lookalike } from './lookalikes';
import { clip, place, problem, show } from './problems';
import { readNumber } from './numbers';
import type { Mark, Token } from './token';
import type { FormulaProblem } from './tree';

/** What a formula may at most hold; far above any that a person reads. */
export const FORMULA_LIMITS = {
	characters: 8000,
	tokens: 5000,
	/** Brackets within brackets. */
	nesting: 200,
	/** Levels of the tree: a sum of 500 terms has 500. */
	height: 500
} as const;

const marks: ReadonlyMap<string, Mark> = new Map<string, Mark>([
	...(['<>', '<=', '>=', '+', '-', '*', '/', '^', '%', '=', '<', '>'] as const).map(
		(mark) => [mark, mark] as const
	),
	...(['(', ')', '[', ']', ';', ',', '.'] as const).map((mark) => [mark, mark] as const),
	['×', '*'],
	['·', '*'],
	['⋅', '*'],
	['÷', '/'],
	['−', '-'],
	['≤', '<='],
	['≥', '>='],
	['≠', '<>']
]);

const SPACE = /\s+/uy;
const NAME = /\p{L}[\p{L}\p{N}_]*/uy;
const MEMBER = /^(?! )[^'"\p{Cc}]+(?<! )$/u;

/** The tokens of a formula, in order; the last is an "end" or a "bad" one. */
export function tokenize(text: string): readonly Token[] {
	const { characters, tokens: most } = FORMULA_LIMITS;
	if (text.length > characters) {
		const message = `This formula has ${text.length} characters; ${characters} is the most. Give its parts quantities of their own.`;
		return [bad(problem('too-long', { start: characters, end: text.length }, message))];
	}
	const tokens: Token[] = [];
	let at = 0;
	for (;;) {
		at += matchAt(SPACE, text, at)?.length ?? 0;
		if (at >= text.length) {
			const end = tokens.at(-1)?.span.end ?? text.length;
			tokens.push({ kind: 'end', text: '', span: { start: end, end } });
			return tokens;
		}
		const token = readToken(text, at, tokens.at(-1));
		tokens.push(token);
		if (token.kind === 'bad') return tokens;
		if (tokens.length > most) {
			const message = `This formula has more than ${most} parts. Give some of them quantities of their own.`;
			tokens[tokens.length - 1] = bad(problem('too-many-parts', token.span, message));
			return tokens;
		}
		at = token.span.end;
	}
}

function readToken(text: string, at: number, previous: Token | undefined): Token {
	const name = matchAt(NAME, text, at);
	if (name !== null)
		return { kind: 'name', text: name, span: { start: at, end: at + name.length } };

	const afterName =
		previous !== undefined &&
		(previous.kind === 'name' || previous.kind === 'quoted') &&
		previous.span.end === at;
	if (/[0-9]/.test(text[at]!) || (!afterName && /^\.[0-9]/.test(text.slice(at, at + 2)))) {
		const number = readNumber(text, at);
		return 'code' in number ? bad(number) : number;
	}
	if (text[at] === "'") return readQuoted(text, at);

	const wrong = lookalike(text, at, previous);
	if (wrong !== null) return bad(wrong);

	for (const length of [2, 1]) {
		const written = text.slice(at, at + length);
		const mark = marks.get(written);
		const afloat = mark === '.' && !afterName;
		if (mark !== undefined && !afloat)
			return { kind: 'mark', text: mark, span: { start: at, end: at + written.length } };
	}
	const character = String.fromCodePoint(text.codePointAt(at)!);
	const span = { start: at, end: at + character.length };
	const message = `${show(character)} has no meaning in a formula: take it out.`;
	return bad(problem('unknown-character', span, message));
}

function readQuoted(text: string, at: number): Token {
	const close = text.indexOf("'", at + 1);
	if (close < 0) {
		const message = `The quote at ${place(at)} is not closed: a member in quotes ends with ', as in '5x24'.`;
		return bad(problem('unclosed-quote', { start: at, end: at + 1 }, message));
	}
	const span = { start: at, end: close + 1 };
	const inside = text.slice(at + 1, close);
	if (MEMBER.test(inside)) return { kind: 'quoted', text: inside, span };
	const trimmed = inside.trim();
	if (MEMBER.test(trimmed)) {
		const message = `A member has no space at either end: write '${clip(trimmed)}'.`;
		return bad(problem('bad-member', span, message, `'${trimmed}'`));
	}
	const message =
		trimmed === ''
			? "Nothing stands between the quotes: write a member there, as in '5x24'."
			: `What stands between the quotes is no member: a member has no quotes and no line breaks.`;
	return bad(problem('bad-member', span, message));
}

function bad(found: FormulaProblem): Token {
	return { kind: 'bad', text: '', problem: found, span: found.span };
}

function matchAt(pattern: RegExp, text: string, at: number): string | null {
	pattern.lastIndex = at;
	return pattern.exec(text)?.[0] ?? null;
}
