/**
 * A table on pages: its head is repeated at the top of each, no row is cut, and numbers stand under each other. Of a
 * repeated head the first alone is read out; every cell of a head says what it is the head of (ISO 32000-1, 14.8.5.7).
 */
import type { StructureElement } from 'pdfkit';
import { INKS } from '../inks';
import type { Column, Row, Table } from '../paper';
import { LEADING, type Letters, type Line, type Style } from './letters';
import type { Sheets } from './sheets';

const PAD = { x: 5, y: 2.6 };
const { ink: INK, soft: SOFT, rule: RULE } = INKS;
const SIZES = [9, 8, 7, 6];

interface Laid {
	readonly lines: readonly (readonly Line[])[];
	readonly height: number;
}

export function drawTable(sheets: Sheets, parent: StructureElement, table: Table): void {
	const { doc, letters } = sheets;
	const element = doc.struct('Table');
	parent.add(element);
	const styles = fitting(letters, table, sheets.width);
	const { widths, head: headStyle, strong } = styles;
	const caption: Style = { weight: 'strong', size: 9.5, colour: INK };
	const captionLines = letters.lines(table.caption, caption, sheets.width);
	const captionHeight = captionLines.length * caption.size * LEADING + 3;
	const head = layCells(
		letters,
		table.columns.map(({ title }) => title),
		() => headStyle,
		widths
	);
	const first = table.rows[0] ? layRow(letters, table.rows[0], table, styles) : null;
	const second = table.rows[1] ? layRow(letters, table.rows[1], table, styles) : null;
	sheets.need(captionHeight + head.height + (first?.height ?? 0) + (second?.height ?? 0));

	const title = doc.struct('Caption');
	element.add(title);
	title.add(() => {
		for (const line of captionLines) {
			letters.draw(line, sheets.left, sheets.y, caption);
			sheets.y += caption.size * LEADING;
		}
	});
	title.end();
	sheets.y += 3;

	const top = doc.struct('THead');
	element.add(top);
	drawRow(sheets, top, head, {
		widths,
		columns: table.columns,
		styleOf: () => headStyle,
		tagOf: () => ['TH', 'Column']
	});
	top.end();
	sheets.rule(sheets.y, sheets.left, sheets.left + sheets.width, INK, 0.8);

	const rows = doc.struct('TBody');
	element.add(rows);
	for (const [at, row] of table.rows.entries()) {
		const laid = layRow(letters, row, table, styles);
		// A group's heading stays with the row below it.
		const next = row.kind === 'group' ? table.rows[at + 1] : undefined;
		const needed = laid.height + (next ? layRow(letters, next, table, styles).height : 0);
		if (needed > sheets.room && !sheets.isFresh) {
			sheets.next();
			sheets.beside(
				() => drawCells(sheets, head, table.columns, widths, () => headStyle),
				'Pagination'
			);
			sheets.y += head.height;
			sheets.rule(sheets.y, sheets.left, sheets.left + sheets.width, INK, 0.8);
		}
		if (row.kind === 'total')
			sheets.rule(sheets.y, sheets.left, sheets.left + sheets.width, INK, 0.8);
		if (row.kind === 'group') drawGroup(sheets, rows, laid, strong, table.columns.length);
		else
			drawRow(sheets, rows, laid, {
				widths,
				columns: table.columns,
				styleOf: () => styleOf(row, styles),
				tagOf: (i) => (i === 0 ? ['TH', 'Row'] : ['TD'])
			});
		sheets.rule(sheets.y, sheets.left, sheets.left + sheets.width, RULE, 0.5);
	}
	rows.end();
	element.end();
	sheets.y += 4;
}

interface Styles {
	readonly widths: readonly number[];
	readonly head: Style;
	readonly body: Style;
	readonly strong: Style;
}

const styleOf = ({ kind }: Row, { body, strong }: Pick<Styles, 'body' | 'strong'>): Style =>
	kind === undefined ? body : strong;

/** The largest letters with which every word has room, and the widths of the columns then. */
function fitting(letters: Letters, table: Table, width: number): Styles {
	const styles = (size: number) => ({
		head: { weight: 'strong', size: size - 0.5, colour: SOFT } as const,
		body: { weight: 'regular', size, colour: INK } as const,
		strong: { weight: 'strong', size, colour: INK } as const
	});
	for (const size of SIZES) {
		const own = styles(size);
		const { least, wanted } = widthsOf(letters, table, own);
		const sum = (list: readonly number[]) => list.reduce((all, one) => all + one, 0);
		if (sum(least) > width && size !== SIZES.at(-1)) continue;
		if (sum(least) > width)
			return { ...own, widths: least.map((one) => (one / sum(least)) * width) };
		const over = Math.min(1, (width - sum(least)) / Math.max(1e-9, sum(wanted) - sum(least)));
		const taken = least.map((one, i) => one + (wanted[i]! - one) * over);
		const rest = (width - sum(taken)) / sum(taken);
		return { ...own, widths: taken.map((one) => one * (1 + rest)) };
	}
	throw new RangeError('A table has a smallest size.');
}

/** Per column: the longest word, and the longest text up to a good line. */
function widthsOf(letters: Letters, table: Table, { head, strong }: Omit<Styles, 'widths'>) {
	const least: number[] = [];
	const wanted: number[] = [];
	const most = 190;
	table.columns.forEach(({ title }, i) => {
		const texts = table.rows.flatMap(({ kind, cells }) =>
			kind === 'group' ? [] : [cells[i] ?? '']
		);
		const words = (text: string) => text.split(/[ \n]/);
		const measure = (list: readonly string[], style: Style) =>
			Math.max(0, ...list.map((text) => letters.widthOf(text, style)));
		const word = Math.max(
			measure(words(title), head),
			measure([...new Set(texts.flatMap(words))], strong)
		);
		const whole = Math.max(measure([title], head) / 2, measure(texts, strong));
		least.push(word + 2 * PAD.x + 1);
		wanted.push(Math.max(word, Math.min(whole, most)) + 2 * PAD.x + 1);
	});
	return { least, wanted };
}

function layRow(letters: Letters, row: Row, table: Table, styles: Styles): Laid {
	const { widths } = styles;
	if (row.kind === 'group')
		return layCells(letters, [row.cells[0] ?? ''], () => styleOf(row, styles), [
			widths.reduce((all, one) => all + one, 0)
		]);
	const cells = table.columns.map((_, i) => row.cells[i] ?? '');
	return layCells(letters, cells, () => styleOf(row, styles), widths);
}

function layCells(
	letters: Letters,
	cells: readonly string[],
	styleOf: (column: number) => Style,
	widths: readonly number[]
): Laid {
	const lines = cells.map((text, i) =>
		text === '' ? [] : letters.lines(text, styleOf(i), widths[i]! - 2 * PAD.x + 0.5)
	);
	const heights = lines.map((list, i) => list.length * styleOf(i).size * LEADING);
	return { lines, height: Math.max(styleOf(0).size * LEADING, ...heights) + 2 * PAD.y };
}

interface Drawing {
	readonly widths: readonly number[];
	readonly columns: readonly Column[];
	readonly styleOf: (column: number) => Style;
	readonly tagOf: (column: number) => readonly ['TH', 'Row' | 'Column'] | readonly ['TD'];
}

function drawRow(sheets: Sheets, parent: StructureElement, laid: Laid, drawing: Drawing): void {
	const { doc } = sheets;
	const row = doc.struct('TR');
	parent.add(row);
	laid.lines.forEach((lines, i) => {
		const [tag, scope] = drawing.tagOf(i);
		const cell = doc.struct(tag, scope === undefined ? {} : { scope });
		row.add(cell);
		if (lines.length > 0)
			cell.add(() =>
				drawCell(sheets, lines, i, drawing.columns, drawing.widths, drawing.styleOf(i))
			);
		cell.end();
	});
	row.end();
	sheets.y += laid.height;
}

/** A heading across the table. */
function drawGroup(
	sheets: Sheets,
	parent: StructureElement,
	laid: Laid,
	style: Style,
	columns: number
): void {
	const row = sheets.doc.struct('TR');
	parent.add(row);
	const cell = sheets.doc.struct('TH', { scope: 'Row' });
	// The library knows the scope alone: without the span, rows would differ in length (ISO 14289-1, 7.5).
	cell.dictionary.data.A = { O: 'Table', Scope: 'Row', ColSpan: columns };
	row.add(cell);
	cell.add(() => drawCell(sheets, laid.lines[0] ?? [], 0, [], [sheets.width], style));
	cell.end();
	row.end();
	sheets.y += laid.height;
}

function drawCells(
	sheets: Sheets,
	laid: Laid,
	columns: readonly Column[],
	widths: readonly number[],
	styleOf: (column: number) => Style
): void {
	laid.lines.forEach((lines, i) => drawCell(sheets, lines, i, columns, widths, styleOf(i)));
}

function drawCell(
	sheets: Sheets,
	lines: readonly Line[],
	at: number,
	columns: readonly Column[],
	widths: readonly number[],
	style: Style
): void {
	const left = sheets.left + widths.slice(0, at).reduce((all, one) => all + one, 0);
	lines.forEach((line, i) => {
		const x = columns[at]?.isNumber
			? left + widths[at]! - PAD.x - line.width
			: left + (at === 0 ? 0 : PAD.x);
		sheets.letters.draw(line, x, sheets.y + PAD.y + i * style.size * LEADING, style);
	});
}
