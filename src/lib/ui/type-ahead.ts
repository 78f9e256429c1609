/**
 * Typing on a choice: the letters are kept, however slowly they come, and find the choices whose id or label begins with
 * them. Only letters that mean one choice enter it. What a field does with it belongs to `grid/CellField.svelte`.
 */

export interface Choice {
	readonly id: string;
	readonly label: string;
}

/** The letters after a key, from which Backspace takes one; null where the key is none of theirs. */
export function typeOn(letters: string, key: string): string | null {
	if (key === 'Backspace') return letters === '' ? null : [...letters].slice(0, -1).join('');
	if ([...key].length !== 1 || (key === ' ' && letters === '')) return null;
	return letters + key;
}

/** Those whose id begins so, else those whose label does; one that is written in full stands alone. */
export function choicesBeginning(text: string, choices: readonly Choice[]): readonly Choice[] {
	const wanted = text.trimStart().toLowerCase();
	if (wanted === '') return [];
	const full = choices.filter(({ id }) => id.toLowerCase() === wanted.trimEnd());
	if (full.length > 0) return full;
	const begins = (words: string) => words.toLowerCase().startsWith(wanted);
	const byId = choices.filter(({ id }) => begins(id));
	if (byId.length > 0) return byId;
	const labelled = choices.filter(({ label }) => label.toLowerCase() === wanted.trimEnd());
	return labelled.length > 0 ? labelled : choices.filter(({ label }) => begins(label));
}
