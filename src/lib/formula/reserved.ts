/** What to say of a word of the language where a name should stand. */
import { problem } from './problems';
import type { FormulaProblem, Span } from './tree';

export function reserved(word: string, span: Span): FormulaProblem {
	const messages: Readonly<Record<string, string>> = {
		base: 'base is a word of the language: x[base] is the value of x in the base scenario.',
		reference:
			'reference is a word of the language: x[reference] is the value of x in the scenario, or the frozen copy, that this one is measured against.',
		yes: "yes is no value of its own here: compare, or write TRUE(). A member so named stands in quotes: 'yes'.",
		no: "no is no value of its own here: compare, or write FALSE(). A member so named stands in quotes: 'no'."
	};
	const fallback = `${word} is a word of the language and cannot be a name here. A member so named stands in quotes: '${word}'.`;
	const message = Object.hasOwn(messages, word) ? messages[word]! : fallback;
	return problem('reserved-word', span, message);
}
