/**
 * A font as a canvas states it, as attributes of SVG. Whoever opens the file may not have the page's
 * type, so the list of families always ends with one that every reader has.
 */
import type { Attributes } from './xml';

const GENERIC = /(?:^|,)\s*(?:sans-serif|serif|monospace|cursive|fantasy|system-ui)\s*$/;
const FONT = /^(.*?)([\d.]+)px(?:\s*\/\s*\S+)?\s+(.+)$/;

export function fontAttributes(font: string): Attributes {
	const [, before = '', size = '10', family = 'sans-serif'] = FONT.exec(font.trim()) ?? [];
	const words = before.split(/\s+/);
	const weight = words.find((word) => /^(?:\d+|bold|bolder|lighter)$/.test(word));
	return {
		'font-family': GENERIC.test(family) ? family : `${family}, sans-serif`,
		'font-size': Number(size),
		'font-weight': weight === '400' ? undefined : weight,
		'font-style': words.find((word) => /^(?:italic|oblique)$/.test(word))
	};
}
