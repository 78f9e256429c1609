/** The pages of a paper: how much room is left on the page in hand, the next page, and what stands in all margins. */
import type PDFDocument from 'pdfkit';
import { INKS } from '../inks';
import type { Letters, Style } from './letters';
import { LEADING } from './letters';

/** Width and height in points of 1/72 inch: A4 of ISO 216, and the letter of ANSI Y14.1. */
export const FORMATS = { a4: [595.28, 841.89], letter: [612, 792] } as const;
export type Format = keyof typeof FORMATS;
export const FORMAT_NAMES = Object.keys(FORMATS) as Format[];

const MARGIN = { side: 56, top: 60, bottom: 64 };
const FOOT: Style = { weight: 'regular', size: 8, colour: INKS.soft };

export class Sheets {
	readonly left = MARGIN.side;
	readonly width: number;
	readonly #height: number;
	#pages = 0;
	/** Where the next thing begins, from the top of the page. */
	y = 0;

	constructor(
		readonly doc: PDFDocument,
		readonly letters: Letters,
		size: readonly [width: number, height: number]
	) {
		this.width = size[0] - 2 * MARGIN.side;
		this.#height = size[1];
		this.next();
	}

	next(): void {
		this.doc.addPage();
		this.#pages++;
		this.y = MARGIN.top;
	}

	get room(): number {
		return this.#height - MARGIN.bottom - this.y;
	}
	get whole(): number {
		return this.#height - MARGIN.bottom - MARGIN.top;
	}
	get isFresh(): boolean {
		return this.y === MARGIN.top;
	}

	/** Goes to the next page where so much would not fit; what is higher than a page begins where it is. */
	need(height: number): void {
		if (!this.isFresh && height > this.room && height <= this.whole) this.next();
	}

	/** Draws what is no part of the text and is not read out. */
	beside(draw: () => void, type: 'Layout' | 'Pagination' = 'Layout'): void {
		this.doc.markContent('Artifact', { type });
		draw();
		this.doc.endMarkedContent();
	}

	rule(y: number, from: number, to: number, colour: string, width: number): void {
		this.beside(() => {
			this.doc.lineWidth(width).strokeColor(colour).moveTo(from, y).lineTo(to, y).stroke();
		});
	}

	/** What stands at the foot of each page, once it is known how many there are. */
	number(foot: string, page: (page: number, of: number) => string): void {
		for (let i = 0; i < this.#pages; i++) {
			this.doc.switchToPage(i);
			const y = this.#height - MARGIN.bottom + 22;
			const count = page(i + 1, this.#pages);
			const room = this.letters.widthOf(count, FOOT);
			this.beside(() => {
				const lines = this.letters.lines(foot, FOOT, this.width - room - 16).slice(0, 2);
				lines.forEach((line, at) =>
					this.letters.draw(line, this.left, y + at * FOOT.size * LEADING, FOOT)
				);
				const [line] = this.letters.lines(count, FOOT, this.width);
				if (line) this.letters.draw(line, this.left + this.width - room, y, FOOT);
			}, 'Pagination');
		}
	}
}
