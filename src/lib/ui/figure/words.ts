/**
 * Small pieces of the sentences under and over pictures. Numbers come in as text.
 */

/** "a", "a and b", "a, b and c". */
export function listed(items: readonly string[]): string {
	const last = items.at(-1) ?? '';
	if (items.length < 2) return last;
	return `${items.slice(0, -1).join(', ')} and ${last}`;
}

/** A label inside a sentence: "Batch time" gives "batch time"; "EVOH" and "PX15B" stay. */
export function midSentence(label: string): string {
	return /^\p{Lu}[\p{Ll} ]/u.test(label) ? label.charAt(0).toLowerCase() + label.slice(1) : label;
}

/** A label where a sentence begins: "slow running" gives "Slow running". */
export const sentenceStart = (label: string): string =>
	label.charAt(0).toUpperCase() + label.slice(1);

/** "52 to 68 %", or "52 %" where both are alike; the unit stays with its number. */
export function spanOf(low: string, high: string, unit: string): string {
	return `${low === high ? low : `${low} to ${high}`}\u00a0${unit}`;
}

/** Up to ten in words. */
export function count(value: number): string {
	const words = [
		'no',
		'one',
		'two',
		'three',
		'four',
		'five',
		'six',
		'seven',
		'eight',
		'nine',
		'ten'
	];
	return words[value] ?? String(value);
}

/** A word for one or for several: "1 year", "12 years". Units that are symbols stay as they are. */
export function years(text: string, unit: string): string {
	const word = unit === 'year' || unit === 'month' || unit === 'week' || unit === 'day';
	return `${text} ${unit}${word && text !== '1' ? 's' : ''}`;
}
