/**
 * A short mark of a text: two FNV-like runs with different factors. Enough to tell two workbooks apart, no more;
 * it keeps no one out.
 */
export function hashOfText(text: string): string {
	let high = 0x811c9dc5;
	let low = 0x9747b28c;
	for (let i = 0; i < text.length; i++) {
		const code = text.charCodeAt(i);
		high = Math.imul(high ^ code, 0x01000193);
		low = Math.imul(low ^ code, 0x5bd1e995);
		low ^= low >>> 15;
	}
	return [high, low].map((part) => (part >>> 0).toString(16).padStart(8, '0')).join('');
}
