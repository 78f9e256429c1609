/**
 * How the kinds of nothing and the errors are written in cells, so that they stay apart on their way through
 * formulas. A cell program carries one error code unchanged through arithmetic, and that is all we need: each
 * class has a code of its own, and `=A1+1` passes it on as the interpreter does.
 *
 * An absent value is text, not an error: arithmetic on text is an error of its own (as it is here), while
 * ISTEXT tells it from a value that is there but failed. Classes are coarser than states: what an empty input
 * is and what was computed with one are the same code, and so are all faults but division by zero.
 */
import {
	ABSENT,
	CIRCULAR,
	DIVIDES_BY_ZERO,
	HITS_NOTHING,
	NO_ANSWER,
	NOT_ENTERED,
	OFF_END,
	OK,
	USES_EMPTY,
	type State
} from '$lib/engine/state';

/** Formula text for each class. */
export interface Literals {
	readonly absent: string;
	readonly empty: string;
	readonly offEnd: string;
	readonly noAnswer: string;
	readonly fault: string;
	readonly dividesByZero: string;
	readonly circular: string;
	/** Stands where cells cannot judge a value that the interpreter can; whoever reads it inherits that. */
	readonly notCompared: string;
}

/**
 * The codes that keep every class apart. OFF_END and NO_ANSWER are both #N/A, because IFNA is the only
 * function that looks for one code, and `else` must catch these two and no other; the message that comes
 * with the code tells them apart.
 */
export const EXACT: Literals = {
	absent: '"absent"',
	empty: '#REF!',
	offEnd: 'NA()',
	noAnswer: 'SWITCH(1,2,3)',
	fault: '#VALUE!',
	dividesByZero: '#DIV/0!',
	circular: '#CYCLE!',
	notCompared: '#SPILL!'
};

/** The class that a state belongs to, named by one of its states. */
export function classOf(state: State): State {
	switch (state) {
		case OK:
		case ABSENT:
		case OFF_END:
		case NO_ANSWER:
		case DIVIDES_BY_ZERO:
		case CIRCULAR:
			return state;
		case NOT_ENTERED:
		case USES_EMPTY:
			return USES_EMPTY;
		default:
			return HITS_NOTHING;
	}
}

/** What stands for a state that has no value. */
export function literalOf(literals: Literals, state: State): string {
	switch (classOf(state)) {
		case ABSENT:
			return literals.absent;
		case USES_EMPTY:
			return literals.empty;
		case OFF_END:
			return literals.offEnd;
		case NO_ANSWER:
			return literals.noAnswer;
		case DIVIDES_BY_ZERO:
			return literals.dividesByZero;
		case CIRCULAR:
			return literals.circular;
		default:
			return literals.fault;
	}
}
