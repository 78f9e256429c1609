/** The one value that most studies ask about, and what is said where a study means several. */
import type { Columns, ResultOfStudy } from './columns/columns';
import { answer, refuse, type Answer } from './problem';

export function oneResult({ results }: Columns, quantity: string): Answer<ResultOfStudy> {
	const [first] = results;
	return first && results.length === 1
		? answer(first)
		: refuse(
				'no-such-member',
				`${quantity} has ${results.length} values. Say for which members the study asks.`,
				quantity
			);
}
