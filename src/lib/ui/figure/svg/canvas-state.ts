/**
 * The half of a drawing context that leaves no marks: where things stand, with what they are to be
 * drawn, and the path being built.
 */
import { IDENTITY, moved, through, turned, type Matrix } from './matrix';
import { PathBuilder } from './path-builder';

type Six = [number, number, number, number, number, number];

/** What `save` keeps. */
const KEPT = [
	...['matrix', 'clips', 'dash', 'fillStyle', 'strokeStyle', 'globalAlpha', 'font', 'textAlign'],
	...['textBaseline', 'lineWidth', 'lineCap', 'lineJoin', 'lineDashOffset']
] as (keyof CanvasState)[];

export class CanvasState {
	/** As on a new canvas. */
	fillStyle: string | CanvasPattern | CanvasGradient = '#000000';
	strokeStyle: string | CanvasPattern | CanvasGradient = '#000000';
	globalAlpha = 1;
	font = '10px sans-serif';
	textAlign: CanvasTextAlign = 'start';
	textBaseline: CanvasTextBaseline = 'alphabetic';
	lineCap: CanvasLineCap = 'butt';
	lineJoin: CanvasLineJoin = 'miter';
	lineDashOffset = 0;

	protected matrix: Matrix;
	/** Ids of the outlines that cut what is drawn, the outermost first. */
	protected clips: readonly string[] = [];
	protected dash: readonly number[] = [];
	protected outline = new PathBuilder();
	#lineWidth = 1;
	#base: Matrix;
	#saved: Partial<CanvasState>[] = [];

	/** Resetting the transform leads back to `base`. */
	constructor(base = IDENTITY) {
		this.#base = base;
		this.matrix = base;
	}

	get lineWidth(): number {
		return this.#lineWidth;
	}
	/** A width that is none leaves the one before, as on a canvas. */
	set lineWidth(width: number) {
		if (width > 0 && Number.isFinite(width)) this.#lineWidth = width;
	}
	/** An odd number of lengths is gone through twice. */
	setLineDash(lengths: readonly number[]): void {
		this.dash = lengths.length % 2 ? [...lengths, ...lengths] : [...lengths];
	}

	save(): void {
		this.#saved.push(Object.fromEntries(KEPT.map((name) => [name, this[name]])));
	}
	restore(): void {
		Object.assign(this, this.#saved.pop());
	}

	setTransform(...matrix: Six): void {
		this.matrix = through(this.#base, matrix);
	}
	resetTransform(): void {
		this.matrix = this.#base;
	}
	transform(...matrix: Six): void {
		this.matrix = through(this.matrix, matrix);
	}
	translate(x: number, y: number): void {
		this.matrix = through(this.matrix, moved(x, y));
	}
	rotate(angle: number): void {
		this.matrix = through(this.matrix, turned(angle));
	}

	beginPath(): void {
		this.outline = new PathBuilder();
	}
	closePath(): void {
		this.outline.closePath();
	}
	moveTo(x: number, y: number): void {
		this.outline.moveTo(this.matrix, x, y);
	}
	lineTo(x: number, y: number): void {
		this.outline.lineTo(this.matrix, x, y);
	}
	quadraticCurveTo(...points: [number, number, number, number]): void {
		this.outline.quadraticCurveTo(this.matrix, ...points);
	}
	bezierCurveTo(...points: Six): void {
		this.outline.bezierCurveTo(this.matrix, ...points);
	}
	rect(x: number, y: number, width: number, height: number): void {
		this.outline.rect(this.matrix, x, y, width, height);
	}
	arc(x: number, y: number, radius: number, from: number, to: number, backwards = false): void {
		this.ellipse(x, y, radius, radius, 0, from, to, backwards);
	}
	ellipse(
		x: number,
		y: number,
		radiusX: number,
		radiusY: number,
		turn: number,
		from: number,
		to: number,
		backwards = false
	): void {
		const span = [from, to] as const;
		this.outline.ellipse(this.matrix, [x, y], [radiusX, radiusY], turn, span, backwards);
	}
}
