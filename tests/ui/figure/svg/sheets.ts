/** Sheets to draw on without a browser's brush: every letter is 8 wide, 9 above the baseline and 3 below. */
import { expect } from 'vitest';
import { SvgContext } from '$lib/ui/figure/svg/context';
import { SvgFile, type Ruler, type Description } from '$lib/ui/figure/svg/svg-file';

const ABOVE: Readonly<Record<string, number>> = { alphabetic: 9, top: 0, middle: 6, bottom: 12 };

const ruler: Ruler = {
	font: '',
	textBaseline: 'alphabetic',
	measureText(text) {
		const above = ABOVE[this.textBaseline] ?? NaN;
		return {
			...{ width: 8 * text.length, fontBoundingBoxAscent: above },
			fontBoundingBoxDescent: 12 - above
		} as TextMetrics;
	}
};

/** Any notation unknown to the sheet becomes this grey, half seen through. */
const resolve = () => ({ colour: 'rgb(9, 9, 9)', opacity: 0.5 });

export function newSheet() {
	const sheet = new SvgFile(200, 100, { ruler, resolve });
	const brush = new SvgContext(sheet);
	const told = { title: 'A title', description: 'A sentence.' };
	return {
		sheet,
		brush,
		svg: (words: Description = told) => parse(sheet.file(brush.markup, '#fff', words))
	};
}

/** The file as XML; a text that is none fails here. */
export function parse(file: string): SVGSVGElement {
	const parsed = new DOMParser().parseFromString(file, 'image/svg+xml');
	expect(parsed.querySelector('parsererror')?.textContent ?? '').toBe('');
	return parsed.documentElement as unknown as SVGSVGElement;
}

/** The marks alone, without the paper. */
export const marksOf = (svg: Element) => [...(svg.lastElementChild?.children ?? [])];

export const attributesOf = (one: Element | undefined) =>
	Object.fromEntries([...(one?.attributes ?? [])].map(({ name, value }) => [name, value]));
