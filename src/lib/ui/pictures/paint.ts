/**
 * Paints a figure of the page onto a canvas as it stands there: words, hairlines, fields of colour, SVG
 * shapes and charts. So a picture taken along has its title, its table and its type. Parts marked
 * `data-not-in-picture`, and what only screen readers get, stay behind.
 */
const SCALE = 2;
const MARGIN = 24;

export function paintFigure(figure: HTMLElement): HTMLCanvasElement {
	const frame = figure.getBoundingClientRect();
	const canvas = document.createElement('canvas');
	canvas.width = Math.ceil((frame.width + 2 * MARGIN) * SCALE);
	canvas.height = Math.ceil((lowestOf(figure) - frame.top + 2 * MARGIN) * SCALE);
	const brush = canvas.getContext('2d');
	if (!brush) return canvas;
	brush.scale(SCALE, SCALE);
	brush.fillStyle = getComputedStyle(document.documentElement).backgroundColor;
	brush.fillRect(0, 0, canvas.width, canvas.height);
	brush.translate(MARGIN - frame.left, MARGIN - frame.top);
	paint(brush, figure);
	return canvas;
}

/** Where the last part ends that the picture takes along. */
function lowestOf(figure: HTMLElement): number {
	const kept = [...figure.children].filter((part) => !leftBehind(part, getComputedStyle(part)));
	return Math.max(...kept.map((part) => part.getBoundingClientRect().bottom));
}

const leftBehind = (element: Element, style: CSSStyleDeclaration) =>
	element.hasAttribute('data-not-in-picture') ||
	element.classList.contains('unseen') ||
	style.display === 'none' ||
	style.visibility === 'hidden';

function paint(brush: CanvasRenderingContext2D, element: Element): void {
	const style = getComputedStyle(element);
	if (leftBehind(element, style)) return;
	if (element instanceof SVGSVGElement) return paintSvg(brush, element);
	const box = element.getBoundingClientRect();
	if (element instanceof HTMLCanvasElement) {
		brush.drawImage(element, box.left, box.top, box.width, box.height);
		return;
	}
	paintBox(brush, box, style);
	for (const node of element.childNodes) {
		if (node instanceof Text) paintWords(brush, node, style);
		else if (node instanceof Element) paint(brush, node);
	}
}

function paintBox(brush: CanvasRenderingContext2D, box: DOMRect, style: CSSStyleDeclaration): void {
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

/** Word by word, so that lines break where the page broke them. */
function paintWords(brush: CanvasRenderingContext2D, node: Text, style: CSSStyleDeclaration): void {
	brush.font = fontOf(style);
	brush.fillStyle = style.color;
	brush.textBaseline = 'alphabetic';
	brush.textAlign = 'left';
	const range = document.createRange();
	for (const word of node.data.matchAll(/\S+/g)) {
		range.setStart(node, word.index);
		range.setEnd(node, word.index + word[0].length);
		const box = range.getBoundingClientRect();
		if (box.width === 0) continue;
		const { fontBoundingBoxAscent: ascent, fontBoundingBoxDescent: descent } =
			brush.measureText('x');
		const baseline = box.top + (box.height - ascent - descent) / 2 + ascent;
		brush.fillText(word[0], box.left, baseline);
	}
}

const SHAPES = 'path, rect, circle, line, text';

function paintSvg(brush: CanvasRenderingContext2D, svg: SVGSVGElement): void {
	for (const shape of svg.querySelectorAll<SVGGraphicsElement>(SHAPES)) {
		const matrix = shape.getScreenCTM();
		const style = getComputedStyle(shape);
		if (!matrix || style.display === 'none') continue;
		if (shape instanceof SVGTextElement) {
			brush.save();
			brush.transform(matrix.a, matrix.b, matrix.c, matrix.d, matrix.e, matrix.f);
			paintSvgText(brush, shape, style);
			brush.restore();
		} else paintShape(brush, shape, matrix, style);
	}
}

/** The path is moved to the page first, so that its stroke keeps its width where the drawing is stretched. */
function paintShape(
	brush: CanvasRenderingContext2D,
	shape: Element,
	matrix: DOMMatrix,
	style: CSSStyleDeclaration
): void {
	const path = new Path2D();
	path.addPath(pathOf(shape), matrix);
	if (style.fill !== 'none' && !(shape instanceof SVGLineElement)) {
		brush.fillStyle = style.fill;
		brush.fill(path);
	}
	if (style.stroke === 'none') return;
	brush.strokeStyle = style.stroke;
	const fixed = style.vectorEffect === 'non-scaling-stroke';
	const scale = fixed ? 1 : Math.sqrt(Math.abs(matrix.a * matrix.d - matrix.b * matrix.c));
	brush.lineWidth = parseFloat(style.strokeWidth) * scale;
	const dashes = style.strokeDasharray.match(/[\d.]+/g) ?? [];
	brush.setLineDash(dashes.map((dash) => Number(dash) * scale));
	brush.stroke(path);
	brush.setLineDash([]);
}

function pathOf(shape: Element): Path2D {
	const number = (name: string) => Number(shape.getAttribute(name) ?? 0);
	const path = new Path2D(shape.getAttribute('d') ?? '');
	if (shape instanceof SVGCircleElement)
		path.arc(number('cx'), number('cy'), number('r'), 0, 2 * Math.PI);
	else if (shape instanceof SVGRectElement)
		path.rect(number('x'), number('y'), number('width'), number('height'));
	else if (shape instanceof SVGLineElement) {
		path.moveTo(number('x1'), number('y1'));
		path.lineTo(number('x2'), number('y2'));
	}
	return path;
}

const ANCHORS: Readonly<Record<string, CanvasTextAlign>> = { middle: 'center', end: 'right' };

function paintSvgText(
	brush: CanvasRenderingContext2D,
	text: SVGTextElement,
	style: CSSStyleDeclaration
) {
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
