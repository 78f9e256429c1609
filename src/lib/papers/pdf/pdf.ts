/**
 * A paper as a tagged PDF: its parts in reading order in a tree of structure, language, title and fonts within, by the
 * requirements of PDF/UA-1 (ISO 14289-1) as far as a machine can tell. The same paper, fonts and time give the same bytes.
 */
import PDFDocument, { type StructureElement } from 'pdfkit';
import { CAUTION, INKS } from '../inks';
import type { Block, Paper, Weight } from '../paper';
import { drawFigure } from './figure';
import { LEADING, Letters, type FontFiles, type Line, type Style } from './letters';
import { withProperties } from './properties';
import { FORMATS, Sheets, type Format } from './sheets';
import { drawTable } from './table';
import { texts } from './texts';

export interface PdfOptions {
	readonly fonts: FontFiles;
	readonly format?: Format;
	/** When it was made: there is no clock here. */
	readonly made: Date;
}

export interface Pdf {
	readonly bytes: Uint8Array<ArrayBuffer>;
	/** Signs that the fonts do not have, for which a question mark stands. */
	readonly missing: readonly string[];
}

const { ink: INK, soft: SOFT } = INKS;
const TITLE: Style = { weight: 'strong', size: 19, colour: INK };
const HEADINGS: Readonly<Record<2 | 3, Style>> = {
	2: { weight: 'strong', size: 13, colour: INK },
	3: { weight: 'strong', size: 10.5, colour: INK }
};
const TEXT: Style = { weight: 'regular', size: 10, colour: INK };
const WEIGHTS: Readonly<Record<Weight, Style>> = {
	strong: { weight: 'strong', size: 11.5, colour: INK },
	small: { weight: 'regular', size: 8.5, colour: SOFT },
	caution: { weight: 'strong', size: 10, colour: CAUTION }
};

export async function paperPdf(
	paper: Paper,
	{ fonts, format = 'a4', made }: PdfOptions
): Promise<Pdf> {
	const [width, height] = FORMATS[format];
	const size = paper.landscape ? ([height, width] as const) : ([width, height] as const);
	const doc = new PDFDocument({
		size: [...size],
		margin: 0,
		font: null,
		autoFirstPage: false,
		// Numbers of pages are written once all are there.
		bufferPages: true,
		pdfVersion: '1.7',
		subset: 'PDF/UA',
		tagged: true,
		lang: paper.language,
		displayTitle: true,
		info: {
			Title: paper.title,
			...(paper.subject !== undefined && { Subject: paper.subject }),
			...(paper.author !== undefined && { Author: paper.author }),
			Creator: texts.producer,
			Producer: texts.producer,
			CreationDate: made
		}
	});
	withProperties(doc, {
		...{ title: paper.title, language: paper.language, producer: texts.producer },
		...(paper.subject !== undefined && { subject: paper.subject }),
		...(paper.author !== undefined && { author: paper.author }),
		made: `${made.toISOString().slice(0, 19)}Z`
	});
	const chunks: Uint8Array[] = [];
	const done = new Promise<void>((resolve, reject) => {
		doc.on('data', (chunk) => chunks.push(chunk));
		doc.on('end', resolve);
		doc.on('error', reject);
	});
	const letters = new Letters(doc, fonts);
	const sheets = new Sheets(doc, letters, size);
	const root = doc.struct('Document', { lang: paper.language, title: paper.title });
	doc.addStructure(root);
	drawText(sheets, root, 'H1', paper.title, TITLE);
	sheets.y += 6;
	paper.blocks.forEach((block, i) => drawBlock(sheets, root, block, paper.blocks[i + 1]));
	root.end();
	sheets.number(paper.foot ?? paper.title, texts.page);
	doc.end();
	await done;
	return { bytes: joined(chunks), missing: [...letters.missing] };
}

function joined(chunks: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
	const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
	let at = 0;
	for (const chunk of chunks) {
		bytes.set(chunk, at);
		at += chunk.length;
	}
	return bytes;
}

function drawBlock(sheets: Sheets, parent: StructureElement, block: Block, next?: Block): void {
	switch (block.kind) {
		case 'heading': {
			const style = HEADINGS[block.level];
			if (!sheets.isFresh) sheets.y += style.size * 0.9;
			// A heading stays with what it is of.
			sheets.need(style.size * LEADING + 4 + startOf(sheets, next));
			sheets.doc.outline.addItem(block.text);
			drawText(sheets, parent, `H${block.level}`, block.text, style);
			sheets.y += 2;
			return;
		}
		case 'paragraph':
			drawText(sheets, parent, 'P', block.text, block.weight ? WEIGHTS[block.weight] : TEXT);
			sheets.y += 4;
			return;
		case 'list':
			drawList(sheets, parent, block.items);
			sheets.y += 4;
			return;
		case 'table':
			drawTable(sheets, parent, block);
			if (block.note !== undefined) drawText(sheets, parent, 'P', block.note, WEIGHTS.small);
			sheets.y += 6;
			return;
		case 'figure':
			drawFigure(sheets, parent, block);
	}
}

/** What must stand below a heading at least. */
function startOf({ width, whole }: Sheets, next: Block | undefined): number {
	if (next?.kind === 'table') return 76;
	if (next?.kind === 'figure')
		return Math.min((width / next.drawing.width) * next.drawing.height, whole - 60) + 26;
	return next ? 2 * TEXT.size * LEADING : 0;
}

/** Lines that go on over pages, as one thing. */
function drawText(
	sheets: Sheets,
	parent: StructureElement,
	tag: string,
	text: string,
	style: Style
): void {
	const element = sheets.doc.struct(tag);
	parent.add(element);
	drawLines(sheets, element, sheets.letters.lines(text, style, sheets.width), style, sheets.left);
	element.end();
}

function drawLines(
	sheets: Sheets,
	element: StructureElement,
	lines: readonly Line[],
	style: Style,
	x: number
): void {
	const high = style.size * LEADING;
	let rest = lines;
	while (rest.length > 0) {
		if (high > sheets.room) sheets.next();
		const fits = Math.max(1, Math.floor(sheets.room / high));
		const here = rest.slice(0, fits);
		element.add(() => {
			here.forEach((line, i) => sheets.letters.draw(line, x, sheets.y + i * high, style));
		});
		sheets.y += here.length * high;
		rest = rest.slice(here.length);
	}
}

function drawList(sheets: Sheets, parent: StructureElement, items: readonly string[]): void {
	const { doc, letters, left } = sheets;
	const indent = 12;
	const list = doc.struct('L');
	parent.add(list);
	for (const text of items) {
		const lines = letters.lines(text, TEXT, sheets.width - indent);
		sheets.need(Math.min(lines.length, 3) * TEXT.size * LEADING);
		const item = doc.struct('LI');
		list.add(item);
		const mark = doc.struct('Lbl');
		item.add(mark);
		const [sign] = letters.lines('•', TEXT, indent);
		mark.add(() => sign && letters.draw(sign, left, sheets.y, TEXT));
		mark.end();
		const body = doc.struct('LBody');
		item.add(body);
		drawLines(sheets, body, lines, TEXT, left + indent);
		body.end();
		item.end();
		sheets.y += 1.5;
	}
	list.end();
}
