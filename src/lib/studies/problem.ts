/**
 * What keeps a study from being computed, as a value: which rule was broken, in words for the person who
 * made the study, and which of its inputs or results is at fault.
 */
export interface StudyProblem {
	readonly code:
		| 'no-such-quantity'
		| 'no-such-member'
		| 'no-such-scenario'
		| 'not-an-input'
		| 'fixed-input'
		| 'no-value'
		| 'nothing-asked'
		| 'bad-distribution'
		| 'bad-correlation'
		| 'bad-range'
		| 'bad-count'
		| 'too-many'
		| 'no-such-study'
		| 'engines-differ'
		| 'cancelled'
		| 'stopped';
	readonly message: string;
	/** The quantity at fault, where it is one. */
	readonly quantity?: string;
}

export type Answer<T> =
	{ readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: StudyProblem };

export const answer = <T>(value: T): Answer<T> => ({ ok: true, value });

export function refuse(
	code: StudyProblem['code'],
	message: string,
	quantity?: string
): { readonly ok: false; readonly problem: StudyProblem } {
	return {
		ok: false,
		problem: quantity === undefined ? { code, message } : { code, message, quantity }
	};
}
