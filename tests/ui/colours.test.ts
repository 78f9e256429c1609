/**
 * What a bar is cut into can be told from the empty bar and from its neighbours, in every theme: contrast as WCAG 2.2
 * defines it (success criterion 1.4.11 asks 3:1 of graphics), oklch as CSS Color Module Level 4 converts it.
 */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const css = readFileSync('src/lib/ui/tokens.css', 'utf8');
const [light = '', dark = '', , print = ''] = css.split('@media');

function colour(theme: string, token: string): readonly [number, number, number] {
	const found = new RegExp(`--${token}: oklch\\(([\\d.]+) ([\\d.]+) ([\\d.]+)\\)`).exec(theme);
	if (!found) throw new RangeError(`--${token} is no oklch here`);
	return [Number(found[1]), Number(found[2]), Number(found[3])];
}

/** Relative luminance, from the linear light of sRGB. */
function luminance([lightness, chroma, hue]: readonly [number, number, number]): number {
	const a = chroma * Math.cos((hue * Math.PI) / 180);
	const b = chroma * Math.sin((hue * Math.PI) / 180);
	const l = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3;
	const m = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3;
	const s = (lightness - 0.0894841775 * a - 1.291485548 * b) ** 3;
	const red = 4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s;
	const green = -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s;
	const blue = -0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s;
	return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(theme: string, one: string, other: string): number {
	const pair = [luminance(colour(theme, one)), luminance(colour(theme, other))];
	return (Math.max(...pair) + 0.05) / (Math.min(...pair) + 0.05);
}

it.each([
	['light', light],
	['dark', dark],
	['print', print]
])('every piece of a bar stands out in the %s theme', (_, theme) => {
	const cuts = ['cut-0', 'cut-1', 'cut-2', 'cut-3'];
	for (const [at, cut] of cuts.entries()) {
		expect(contrast(theme, cut, 'cut-empty'), `${cut} from an empty bar`).toBeGreaterThanOrEqual(3);
		for (const next of cuts.slice(at + 1))
			expect(contrast(theme, cut, next), `${cut} from ${next}`).toBeGreaterThan(1.45);
	}
});
