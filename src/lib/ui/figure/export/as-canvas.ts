/** A figure of the page as a canvas, fine enough for paper. */
import { canvasPainter } from './canvas-painter';
import { frameOf, paint, paperOf } from './paint';

const SCALE = 2;

export function figureAsCanvas(figure: HTMLElement): HTMLCanvasElement {
	const { left, top, width, height } = frameOf(figure);
	const canvas = document.createElement('canvas');
	canvas.width = Math.ceil(width * SCALE);
	canvas.height = Math.ceil(height * SCALE);
	const brush = canvas.getContext('2d');
	if (!brush) return canvas;
	brush.scale(SCALE, SCALE);
	brush.fillStyle = paperOf();
	brush.fillRect(0, 0, canvas.width, canvas.height);
	brush.translate(-left, -top);
	paint(canvasPainter(brush), figure);
	return canvas;
}
