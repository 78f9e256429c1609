/** Words of a file as messages show them, whatever they are. */

/** A word of the file as a message may show it: short, on one line. */
export function shown(text: string): string {
	const flat = text.replace(/[\p{Cc}\p{Zl}\p{Zp}]/gu, ' ');
	const characters = [...flat.slice(0, 120)];
	return characters.length > 40 ? `${characters.slice(0, 39).join('')}…` : flat;
}
