/**
 * Typing on a choice: the letters of one go find the choice whose id or label begins with them.
 * What a field does with it belongs to `grid/CellField.svelte`.
 */

export interface Choice {
	readonly id: string;
	readonly label: string;
}

/** The letters so far, and when the last of them came, in milliseconds. */
export interface Typing {
	readonly text: string;
	readonly at: number;
}

/** A pause longer than this begins anew. */
const PAUSE = 1000;

export function typeOn(before: Typing | null, letter: string, at: number): Typing {
	const goesOn = before !== null && at - before.at <= PAUSE;
	return { text: goesOn ? before.text + letter : letter, at };
}

/** The first choice whose id begins so, else the first whose label does; null if there is none. */
export function choiceBeginning(text: string, choices: readonly Choice[]): string | null {
	const wanted = text.trimStart().toLowerCase();
	if (wanted === '') return null;
	const begins = (words: string) => words.toLowerCase().startsWith(wanted);
	const found = choices.find(({ id }) => begins(id)) ?? choices.find(({ label }) => begins(label));
	return found?.id ?? null;
}
