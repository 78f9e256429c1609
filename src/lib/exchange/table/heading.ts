/** What a column's heading may be made of: words that name something, and a unit: "Price (EUR/100 m)". */

export interface HeadingReading {
	/** As compared: lower case, single spaces, no signs. */
	readonly words: string;
	/** Empty: none is written. */
	readonly unit: string;
	/** It stands in brackets or behind a comma, where people write units alone. */
	readonly marked: boolean;
}

/** The words of a name, a label or a heading, alike however they are written. */
export const wordsOf = (text: string): string =>
	text
		.toLowerCase()
		.normalize('NFC')
		.replace(/[^\p{L}\p{N}%]+/gu, ' ')
		.trim();

/** What looks like a unit though none is known by it: "USDX/m", "per 100". */
const UNIT_LIKE = /[/%€£$]|(?<!\p{L})(?:per|je|pro)(?!\p{L})/iu;
export const looksLikeUnit = (text: string): boolean => UNIT_LIKE.test(text);

/** "EUR/(100 m)" as "EUR/100 m": how many of what, in brackets of its own. */
export const unbracketed = (text: string): string =>
	text.replace(/\/\s*\(\s*(\d[\d.,]*\s*\p{L}*)\s*\)/gu, '/$1');

/** Every way to read it, the likeliest first: all words, a unit that is marked as one, a unit behind the words. */
export function headingReadings(heading: string): HeadingReading[] {
	const text = unbracketed(heading.slice(0, 200)).replaceAll('_', ' ').replace(/\s+/g, ' ').trim();
	const readings: HeadingReading[] = [{ words: wordsOf(text), unit: '', marked: false }];
	const marked =
		/^(.*\S)\s*[([{]([^()[\]{}]+)[)\]}]$/.exec(text) ??
		/^(.*\S)\s*(?:,|;|:|\bin\b)\s+(\S.*)$/.exec(text);
	if (marked) {
		const [, words = '', unit = ''] = marked;
		// "Price per 100 m (EUR)": what it is for stands among the words.
		const per = /^(.*\S)\s+(?:per|je|pro)\s+(\d[\d.,]*\s*\p{L}*)$/iu.exec(words);
		if (per && !UNIT_LIKE.test(unit.replace(/[€$£]/g, '')))
			readings.push({ words: wordsOf(per[1]!), unit: `${unit}/${per[2]}`, marked: true });
		readings.push({ words: wordsOf(words), unit: unit.replace(/^in\s+/, ''), marked: true });
	}
	const ends = [...text.matchAll(/(?<=\S)(?=\/)|\s+/g)].map(({ index }) => index);
	for (const at of ends.reverse()) {
		const words = wordsOf(text.slice(0, at));
		if (words) readings.push({ words, unit: text.slice(at).trim(), marked: false });
	}
	return readings;
}
