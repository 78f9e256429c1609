/**
 * Paints a figure of the page as it stands there: words, hairlines, fields of colour, SVG shapes and
 * charts. So a picture taken along has its title, its table and its type. Parts marked
 * `data-not-in-picture`, and what only screen readers get, stay behind.
 */
import { linesOf } from './lines';

/** What a canvas and an SVG are painted with alike. */
export type Brush = Pick<
	CanvasRenderingContext2D,
	| 'fillStyle'
	| 'fillRect'
	| 'font'
	| 'textAlign'
	| 'textBaseline'
	| 'fillText'
	| 'measureText'
	| 'save'
	| 'restore'
	| 'transform'
>;

export interface Painter {
	readonly brush: Brush;
	/** A shape of SVG; `matrix` leads from its own plane to the page. */
	shape(shape: Element, matrix: DOMMatrix, style: CSSStyleDeclaration): void;
	chart(canvas: HTMLCanvasElement, box: DOMRect): void;
}

const MARGIN = 24;

/** What a picture shows of the page: the figure down to the last part taken along, and a margin. */
export function frameOf(figure: HTMLElement) {
	const { left, top, width } = figure.getBoundingClientRect();
	const kept = [...figure.children].filter((part) => !leftBehind(part, getComputedStyle(part)));
	const lowest = Math.max(...kept.map((part) => part.getBoundingClientRect().bottom));
	return {
		...{ left: left - MARGIN, top: top - MARGIN },
		...{ width: width + 2 * MARGIN, height: lowest - top + 2 * MARGIN }
	};
}

export const paperOf = () => getComputedStyle(document.documentElement).backgroundColor;

const leftBehind = (element: Element, style: CSSStyleDeclaration) =>
	element.hasAttribute('data-not-in-picture') ||
	element.classList.contains('unseen') ||
	style.display === 'none' ||
	style.visibility === 'hidden';

export function paint(painter: Painter, element: Element): void {
	const style = getComputedStyle(element);
	if (leftBehind(element, style)) return;
	if (element instanceof SVGSVGElement) return paintSvg(painter, element);
	const box = element.getBoundingClientRect();
	if (element instanceof HTMLCanvasElement) return painter.chart(element, box);
	paintBox(painter.brush, box, style);
	for (const node of element.childNodes) {
		if (node instanceof Text) paintWords(painter.brush, node, style);
		else if (node instanceof Element) paint(painter, node);
	}
}

function paintBox(brush: Brush, box: DOMRect, style: CSSStyleDeclaration): void {
	if (style.backgroundColor !== 'rgba(0, 0, 0, 0)') {
		brush.fillStyle = style.backgroundColor;
		brush.fillRect(box.left, box.top, box.width, box.height);
	}
	const side = (width: string, colour: string, x: number, y: number, w: number, h: number) => {
		if (!(parseFloat(width) > 0)) return;
		brush.fillStyle = colour;
		brush.fillRect(x, y, w, h);
	};
	const [top, right, bottom, left] = [
		style.borderTopWidth,
		style.borderRightWidth,
		style.borderBottomWidth,
		style.borderLeftWidth
	].map(parseFloat) as [number, number, number, number];
	const { left: x, top: y, width, height } = box;
	side(style.borderTopWidth, style.borderTopColor, x, y, width, top);
	side(style.borderBottomWidth, style.borderBottomColor, x, y + height - bottom, width, bottom);
	side(style.borderLeftWidth, style.borderLeftColor, x, y, left, height);
	side(style.borderRightWidth, style.borderRightColor, x + width - right, y, right, height);
}

const fontOf = (style: CSSStyleDeclaration) =>
	`${style.fontStyle} ${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;

function paintWords(brush: Brush, node: Text, style: CSSStyleDeclaration): void {
	const lines = linesOf(node);
	if (!lines.length) return;
	brush.font = fontOf(style);
	brush.fillStyle = style.color;
	brush.textBaseline = 'alphabetic';
	brush.textAlign = 'left';
	const { fontBoundingBoxAscent: ascent, fontBoundingBoxDescent: descent } = brush.measureText('x');
	for (const { words, left, right, top, height } of lines)
		brush.fillText(words, left, top + (height - ascent - descent) / 2 + ascent, right - left);
}

const SHAPES = 'path, rect, circle, line, text';

function paintSvg(painter: Painter, svg: SVGSVGElement): void {
	const { brush } = painter;
	for (const shape of svg.querySelectorAll<SVGGraphicsElement>(SHAPES)) {
		const matrix = shape.getScreenCTM();
		const style = getComputedStyle(shape);
		if (!matrix || style.display === 'none') continue;
		if (shape instanceof SVGTextElement) {
			brush.save();
			brush.transform(matrix.a, matrix.b, matrix.c, matrix.d, matrix.e, matrix.f);
			paintSvgText(brush, shape, style);
			brush.restore();
		} else painter.shape(shape, matrix, style);
	}
}

const ANCHORS: Readonly<Record<string, CanvasTextAlign>> = { middle: 'center', end: 'right' };

function paintSvgText(brush: Brush, text: SVGTextElement, style: CSSStyleDeclaration) {
	brush.font = fontOf(style);
	brush.fillStyle = style.fill;
	brush.textBaseline = 'alphabetic';
	brush.textAlign = ANCHORS[style.textAnchor] ?? 'left';
	brush.fillText(
		text.textContent ?? '',
		Number(text.getAttribute('x') ?? 0),
		Number(text.getAttribute('y') ?? 0)
	);
}
