/** Words of a file as messages show them, whatever they are. */

/** A word of the file as a message may show it: short, on one line. */
export function shown(text: string, most = 40): string {
	const flat = oneLine(text.slice(0, 3 * most));
	const characters = [...flat];
	return characters.length > most ? `${characters.slice(0, most - 1).join('')}…` : flat;
}

/** The same whole: where a file lies is found by its path, however long. */
export const oneLine = (text: string): string => text.replace(/[\p{Cc}\p{Zl}\p{Zp}]/gu, ' ');
