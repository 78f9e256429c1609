/**
 * The file around a drawing: its size, its words for those who do not see it, its paper, and the parts
 * that marks refer to. It stands alone: nothing of the page is needed to show it.
 */
import { paintColourOf, type Resolve } from './paint-colour';
import { element, escapeXml, type Attributes } from './xml';

/** What measures words: a brush of the browser, which knows the page's fonts. */
export type Ruler = Pick<CanvasRenderingContext2D, 'font' | 'textBaseline' | 'measureText'>;

/** What only the browser knows. */
export interface Tools {
	readonly ruler: Ruler;
	readonly resolve: Resolve;
}

export interface Description {
	readonly title: string;
	/** What the picture shows, in a sentence. */
	readonly description: string;
}

export class SvgFile {
	#shared = new Map<string, string>();

	constructor(
		readonly width: number,
		readonly height: number,
		readonly tools: Tools
	) {}

	/** The id of a part that marks refer to; what looks the same is written once. */
	share(name: string, attributes: Attributes, content: string): string {
		const key = element(name, attributes, content);
		const id = this.#shared.get(key) ?? `part-${this.#shared.size + 1}`;
		this.#shared.set(key, id);
		return id;
	}

	/** The whole file. */
	file(body: string, paper: string, { title, description }: Description): string {
		const { width, height } = this;
		const paperInk = paintColourOf(paper, this.tools.resolve).colour;
		const parts = [...this.#shared].map(([key, id]) => key.replace(/^<\w+/, `$& id="${id}"`));
		const content = [
			element('title', { id: 'title' }, escapeXml(title)),
			element('desc', { id: 'description' }, escapeXml(description)),
			...(parts.length ? [element('defs', {}, parts.join(''))] : []),
			element('rect', { width, height, fill: paperInk }),
			// A canvas cuts sharp corners later than SVG does.
			element('g', { 'stroke-miterlimit': 10 }, body)
		];
		const head = { xmlns: 'http://www.w3.org/2000/svg', width, height };
		const view = { viewBox: `0 0 ${width} ${height}`, role: 'img' };
		const words = { 'aria-labelledby': 'title', 'aria-describedby': 'description' };
		const svg = element('svg', { ...head, ...view, ...words }, `\n${content.join('\n')}\n`);
		return `<?xml version="1.0" encoding="UTF-8"?>\n${svg}\n`;
	}
}
