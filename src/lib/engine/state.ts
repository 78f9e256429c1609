/**
 * What a computed value can be, as the engines carry it: a number beside a small state code.
 *
 * Yes and no are 1 and 0; a member is its place in its set, from 0. A value whose state is not
 * `OK` has no number (the slot holds NaN, and nobody may read it as one).
 */

export const OK = 0;
/** The four kinds of nothing. */
export const ABSENT = 1; // a pair that does not exist, a member not present, a `where` that says no
export const NOT_ENTERED = 2; // an input that nobody entered
export const OFF_END = 3; // a neighbour off the end
export const NO_ANSWER = 4; // a question without an answer: no rate of return, never pays back
/** Errors. */
export const DIVIDES_BY_ZERO = 10;
export const NOT_A_REAL = 11; // root or logarithm of a negative number, zero to a negative power
export const TOO_LARGE = 12; // beyond what a number can hold
export const HITS_NOTHING = 13; // a lookup that meets an absent pair, or arithmetic on an absent value
export const USES_EMPTY = 14; // something was computed with an input that nobody entered
export const OUT_OF_RANGE = 15; // outside the quantity's permitted range
export const CIRCULAR = 16;
export const BAD_FORMULA = 17; // the formula could not be proven; the plan's problems say why
export const BAD_ARGUMENT = 18; // a function was given what it cannot take: MOD by zero, a fraction of a digit

export type State = number;

export type NothingKind = 'absent' | 'not-entered' | 'off-end' | 'no-answer';
export type ErrorCode =
	| 'divides-by-zero'
	| 'not-a-real'
	| 'too-large'
	| 'hits-nothing'
	| 'uses-empty'
	| 'out-of-range'
	| 'circular'
	| 'bad-formula'
	| 'bad-argument';

export const NOTHING_KINDS: Readonly<Record<State, NothingKind>> = {
	[ABSENT]: 'absent',
	[NOT_ENTERED]: 'not-entered',
	[OFF_END]: 'off-end',
	[NO_ANSWER]: 'no-answer'
};

export const ERROR_CODES: Readonly<Record<State, ErrorCode>> = {
	[DIVIDES_BY_ZERO]: 'divides-by-zero',
	[NOT_A_REAL]: 'not-a-real',
	[TOO_LARGE]: 'too-large',
	[HITS_NOTHING]: 'hits-nothing',
	[USES_EMPTY]: 'uses-empty',
	[OUT_OF_RANGE]: 'out-of-range',
	[CIRCULAR]: 'circular',
	[BAD_FORMULA]: 'bad-formula',
	[BAD_ARGUMENT]: 'bad-argument'
};

export const isError = (state: State) => state >= 10;

/**
 * What an operand's state becomes when arithmetic, comparison, logic or a function meets it.
 * An empty input turns into an error that its origin explains; an absent value likewise; a neighbour
 * off the end and a question without an answer travel on as what they are; errors travel on.
 */
export function carried(state: State): State {
	if (state === NOT_ENTERED) return USES_EMPTY;
	if (state === ABSENT) return HITS_NOTHING;
	return state;
}
