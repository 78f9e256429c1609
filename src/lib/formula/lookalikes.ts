/**
 * Marks that other notations use and this one does not: what they would mean there, and how it is written here.
 */
import { quoteIfNeeded } from './names';
import { clip, problem } from './problems';
import type { Token } from './token';
import type { FormulaProblem } from './tree';

const written: readonly (readonly [mark: string, message: string, suggestion?: string])[] = [
	['==', 'Equality is written with one =.', '='],
	['!=', 'Not equal is written <>.', '<>'],
	['><', 'Not equal is written <>.', '<>'],
	['=<', 'Less or equal is written <=.', '<='],
	['=>', 'Greater or equal is written >=.', '>='],
	['&&', 'Both conditions at once are written AND(a; b).'],
	['||', 'One condition or the other is written OR(a; b).'],
	['**', 'A power is written x^n.', '^'],
	[
		'&',
		'There is no text arithmetic here, so & joins nothing. Two conditions are written AND(a; b).'
	],
	['|', 'One condition or the other is written OR(a; b).'],
	['!', 'The opposite of a condition is written NOT(a).'],
	['?', 'A choice between two values is written IF(condition; if_yes; if_no).'],
	['~', 'The opposite of a condition is written NOT(a).'],
	['–', 'This is a dash. Minus is written -.', '-'],
	['—', 'This is a dash. Minus is written -.', '-'],
	['²', 'A square is written x^2.', '^2'],
	['³', 'A cube is written x^3.', '^3'],
	['√', 'A root is written SQRT(x).'],
	['{', 'Curly brackets have no meaning here: group with ( ) and choose a member with [ ].'],
	['}', 'Curly brackets have no meaning here: group with ( ) and choose a member with [ ].']
];

const CELL_MARK = /[:$]/;
const DOUBLE_QUOTES = /["“”„«»]/u;
const SINGLE_QUOTES = /[‘’‚`´]/u;

/** What is wrong with the mark at `at`, or null if it is none of these. */
export function lookalike(
	text: string,
	at: number,
	previous: Token | undefined
): FormulaProblem | null {
	const mark = text[at]!;
	if (CELL_MARK.test(mark) || isSheetMark(text, at, previous)) return cells(text, at, previous);
	if (DOUBLE_QUOTES.test(mark)) return doubleQuoted(text, at);
	if (SINGLE_QUOTES.test(mark)) {
		const message = "A member in quotes takes the straight single quote: '5x24'.";
		return problem('text', { start: at, end: at + 1 }, message, "'");
	}
	for (const [wrong, message, suggestion] of written) {
		if (text.startsWith(wrong, at))
			return problem('wrong-operator', { start: at, end: at + wrong.length }, message, suggestion);
	}
	return null;
}

/** `Sheet1!A1`, but not the `!` of `a != b`. */
function isSheetMark(text: string, at: number, previous: Token | undefined): boolean {
	const touches = previous?.span.end === at && previous.kind !== 'mark';
	return text[at] === '!' && touches && /^[\p{L}$]/u.test(text.slice(at + 1));
}

function cells(text: string, at: number, previous: Token | undefined): FormulaProblem {
	const joined = previous !== undefined && previous.span.end === at;
	const start = joined && previous.kind !== 'mark' ? previous.span.start : at;
	const rest = /^[\p{L}\p{N}_:$!]*/u.exec(text.slice(at))![0];
	const span = { start, end: at + rest.length };
	const message = `There are no cells here, so ${clip(text.slice(span.start, span.end))} points at nothing: gather with SUM(x over set) or SUM(x where …), choose with x[choice].`;
	return problem('no-cells', span, message);
}

function doubleQuoted(text: string, at: number): FormulaProblem {
	const length = /^[^"“”„«»]*["“”„«»]/u.exec(text.slice(at + 1))?.[0].length;
	if (length === undefined) {
		const message =
			"There is no text in formulas. A member's name stands bare or in single quotes: '5x24'.";
		return problem('text', { start: at, end: at + 1 }, message);
	}
	const inside = text.slice(at + 1, at + length).trim();
	const span = { start: at, end: at + 1 + length };
	const usable = inside !== '' && !/['\p{Cc}]/u.test(inside);
	const member = usable ? quoteIfNeeded(inside) : "'5x24'";
	const message = `There is no text in formulas. A member's name stands bare or in single quotes: ${clip(member)}.`;
	return problem('text', span, message, usable ? member : undefined);
}
