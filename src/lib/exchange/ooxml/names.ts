/**
 * Names of sheets as ISO/IEC 29500 files take them: at most 31 characters, none of []:*?/\, no
 * apostrophe at either end, no two alike whatever their case.
 */

const LONGEST = 31;
/** Kept by some programs for themselves. */
const TAKEN = ['history'];

/** One name for each title, in their order. */
export function sheetNames(titles: readonly string[]): string[] {
	const taken = new Set(TAKEN);
	return titles.map((title) => {
		const plain = title
			.replace(/[[\]:*?/\\\p{Cc}]/gu, ' ')
			.replace(/\s+/g, ' ')
			.replace(/^[' ]+|[' ]+$/g, '');
		let name = cut(plain || 'Sheet', LONGEST);
		for (let n = 2; taken.has(name.toLowerCase()); n++)
			name = `${cut(plain || 'Sheet', LONGEST - String(n).length - 1)} ${n}`;
		taken.add(name.toLowerCase());
		return name;
	});
}

/** As it stands in a reference. */
export const quoted = (name: string): string => `'${name.replaceAll("'", "''")}'`;

/** Without half a character at the end. */
function cut(text: string, length: number): string {
	let kept = '';
	for (const character of text) {
		if (kept.length + character.length > length) break;
		kept += character;
	}
	return kept.trimEnd().replace(/'+$/, '');
}
