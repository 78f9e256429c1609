/**
 * The text of a file, whatever it was written in: UTF-8 and UTF-16 by their mark or by what stands in them, else
 * Windows-1252, in which every byte is a letter.
 */
export type Encoding = 'UTF-8' | 'UTF-16' | 'Windows-1252';

export interface TextRead {
	readonly text: string;
	readonly encoding: Encoding;
}

export function textOfBytes(bytes: Uint8Array): TextRead {
	const [first, second] = bytes;
	if (first === 0xff && second === 0xfe) return decoded(bytes, 'utf-16le', 'UTF-16');
	if (first === 0xfe && second === 0xff) return decoded(bytes, 'utf-16be', 'UTF-16');
	// Latin letters in UTF-16 have a zero in every pair: which half it is, tells the order.
	const zeros = zerosIn(bytes);
	if (zeros.odd > zeros.pairs / 2) return decoded(bytes, 'utf-16le', 'UTF-16');
	if (zeros.even > zeros.pairs / 2) return decoded(bytes, 'utf-16be', 'UTF-16');
	try {
		const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
		return { text, encoding: 'UTF-8' };
	} catch {
		const { text, encoding } = decoded(bytes, 'windows-1252', 'Windows-1252');
		return {
			text: text.replace(CONTROLS, (letter) => LETTERS[letter.charCodeAt(0) - 128]!),
			encoding
		};
	}
}

/** Some decoders leave these as they are, as in ISO 8859-1. */
const CONTROLS = /[\u0080-\u009f]/g;
/** WHATWG Encoding, index windows-1252, 0x80 to 0x9F. */
const LETTERS = [...'€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ'];

const LOOKED_AT = 2000;

function zerosIn(bytes: Uint8Array) {
	const pairs = Math.floor(Math.min(bytes.length, LOOKED_AT) / 2);
	let even = 0;
	let odd = 0;
	for (let pair = 0; pair < pairs; pair++) {
		if (bytes[2 * pair] === 0) even++;
		if (bytes[2 * pair + 1] === 0) odd++;
	}
	return { pairs, even, odd };
}

const decoded = (bytes: Uint8Array, label: string, encoding: Encoding): TextRead => ({
	text: new TextDecoder(label).decode(bytes),
	encoding
});
