/**
 * Figures onto a canvas: what differs there from other grounds.
 */
import type { Painter } from './paint';

export const canvasPainter = (brush: CanvasRenderingContext2D): Painter => ({
	brush,
	shape: (shape, matrix, style) => paintShape(brush, shape, matrix, style),
	chart: (canvas, box) => brush.drawImage(canvas, box.left, box.top, box.width, box.height)
});

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
