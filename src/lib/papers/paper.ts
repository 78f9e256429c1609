/**
 * A paper that leaves the house, before anything is drawn: its parts in reading order, every number already in the words of
 * the screen. The screen, a PDF and a test read the same paper, so no digit can differ between them.
 *
 * It is plain data: it goes between threads and to the server as it is.
 */

export interface Paper {
	readonly title: string;
	/** BCP 47: "en". */
	readonly language: string;
	/** Of whom and of what; both go into the file's properties, so an offer leaves them out unless they are the customer's to read. */
	readonly subject?: string;
	readonly author?: string;
	/** At the foot of every page, beside its number. */
	readonly foot?: string;
	/** Wide tables turn the page. */
	readonly landscape?: boolean;
	readonly blocks: readonly Block[];
}

export type Block = Heading | Paragraph | List | Table | Figure;

export interface Heading {
	readonly kind: 'heading';
	/** The title of the paper is level 1 and stands in no block. */
	readonly level: 2 | 3;
	readonly text: string;
}

/** What a paragraph is to its reader: `strong` decides, `small` explains, `caution` warns. */
export type Weight = 'strong' | 'small' | 'caution';

export interface Paragraph {
	readonly kind: 'paragraph';
	readonly text: string;
	readonly weight?: Weight;
}

export interface List {
	readonly kind: 'list';
	readonly items: readonly string[];
}

export interface Column {
	readonly title: string;
	/** Numbers stand at the right. */
	readonly isNumber?: boolean;
	/** Its share of the width, where the widest words should not decide. */
	readonly width?: number;
}

export interface Row {
	readonly cells: readonly string[];
	/** The first cell names the row, unless it says otherwise. `total` is set apart, `group` is a heading across the table. */
	readonly kind?: 'total' | 'group';
}

export interface Table {
	readonly kind: 'table';
	readonly caption: string;
	readonly columns: readonly Column[];
	readonly rows: readonly Row[];
	/** Below it, in small letters. */
	readonly note?: string;
}

export interface Figure {
	readonly kind: 'figure';
	readonly caption?: string;
	/** The figure in words, for whoever does not see it. */
	readonly alt: string;
	readonly drawing: Drawing;
}

/** In points of an area that is scaled to the width of the text. */
export interface Drawing {
	readonly width: number;
	readonly height: number;
	readonly marks: readonly Mark[];
}

export type Ink = 'ink' | 'soft' | 'rule' | 'first' | 'second' | 'third' | 'good' | 'bad';

export type Mark =
	| {
			readonly kind: 'line';
			readonly points: readonly (readonly [x: number, y: number])[];
			readonly ink: Ink;
			readonly width?: number;
			readonly isDashed?: boolean;
	  }
	| {
			readonly kind: 'bar';
			readonly x: number;
			readonly y: number;
			readonly width: number;
			readonly height: number;
			readonly ink: Ink;
	  }
	| { readonly kind: 'dot'; readonly x: number; readonly y: number; readonly ink: Ink }
	| {
			readonly kind: 'text';
			readonly x: number;
			/** Of the line that letters stand on. */
			readonly y: number;
			readonly text: string;
			readonly at?: 'start' | 'middle' | 'end';
			readonly ink?: Ink;
	  };

export const heading = (text: string, level: 2 | 3 = 2): Heading => ({
	kind: 'heading',
	level,
	text
});
export const paragraph = (text: string, weight?: Weight): Paragraph =>
	weight === undefined ? { kind: 'paragraph', text } : { kind: 'paragraph', text, weight };
export const list = (items: readonly string[]): List => ({ kind: 'list', items });

/** All words of a paper in reading order, one part a line: what tests and copies read. */
export function paperText(paper: Paper): string {
	return [paper.title, ...paper.blocks.flatMap(blockLines)].join('\n');
}

function blockLines(block: Block): readonly string[] {
	switch (block.kind) {
		case 'heading':
		case 'paragraph':
			return [block.text];
		case 'list':
			return block.items;
		case 'table':
			return [
				block.caption,
				block.columns.map(({ title }) => title).join('\t'),
				...block.rows.map(({ cells }) => cells.join('\t')),
				...(block.note === undefined ? [] : [block.note])
			];
		case 'figure':
			return [
				...(block.caption === undefined ? [] : [block.caption]),
				block.alt,
				...block.drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
			];
	}
}
