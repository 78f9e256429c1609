/**
 * Colours as every reader of SVG knows them: red, green and blue, with opacity apart. Newer notations
 * of CSS are for the browser to resolve.
 */
export interface PaintColour {
	readonly colour: string;
	/** From 0 to 1. */
	readonly opacity: number;
}

/** Resolves a notation that is not read here. */
export type Resolve = (css: string) => PaintColour;

const NUMBERS = /^rgba?\(\s*([\d.]+)[\s,]+([\d.]+)[\s,]+([\d.]+)\s*(?:[,/]\s*([\d.]+)(%?)\s*)?\)$/;
const HEX = /^#(?:[\da-f]{3,4}|[\da-f]{6}|[\da-f]{8})$/i;

export function paintColourOf(css: string, resolve: Resolve): PaintColour {
	const text = css.trim();
	if (text === 'transparent' || text === 'none') return { colour: 'none', opacity: 0 };
	if (HEX.test(text)) return fromHex(text);
	const found = NUMBERS.exec(text);
	if (!found) return resolve(text);
	const [, red, green, blue, share = '1', percent] = found;
	const colour = `rgb(${[red, green, blue].map((part) => Math.round(Number(part))).join(', ')})`;
	return { colour, opacity: Number(share) / (percent ? 100 : 1) };
}

function fromHex(hex: string): PaintColour {
	const digits = hex.slice(1);
	const long = digits.length < 6 ? digits.replace(/./g, '$&$&') : digits;
	const opacity = long.length === 8 ? parseInt(long.slice(6), 16) / 255 : 1;
	return { colour: `#${long.slice(0, 6).toLowerCase()}`, opacity };
}
