/**
 * A drawing context that writes SVG: what Chart.js and the pictures call on a canvas, and no more. What
 * they do not call is left out, so that a call for it fails and is noticed; a test reads the library's
 * source for it.
 */
import { fontAttributes } from './font';
import { paintColourOf } from './paint-colour';
import { ElementList } from './element-list';
import { growth, IDENTITY, moved, onlyMoves, placeOf, through, written } from './matrix';
import type { Matrix } from './matrix';
import { PathBuilder } from './path-builder';
import { CanvasState } from './canvas-state';
import type { SvgFile } from './svg-file';
import { tileOf } from './tiles';
import { element, escapeXml, short, type Attributes } from './xml';

const ANCHORS: Readonly<Partial<Record<CanvasTextAlign, string>>> = {
	...{ center: 'middle', right: 'end', end: 'end' }
};

const evenOdd = (rule: CanvasFillRule) => (rule === 'evenodd' ? rule : undefined);

export class SvgContext extends CanvasState {
	/** The canvas that a library believes to draw on. */
	canvas: HTMLCanvasElement | null = null;
	#sheet: SvgFile;
	#marks = new ElementList();

	constructor(sheet: SvgFile, base = IDENTITY) {
		super(base);
		this.#sheet = sheet;
	}

	/** All marks so far. */
	get markup(): string {
		return this.#marks.markup;
	}

	/** A context of its own whose origin stands here; `take` puts what it drew among these marks. */
	inset(x: number, y: number): SvgContext {
		return new SvgContext(this.#sheet, through(this.matrix, moved(x, y)));
	}
	take(inset: SvgContext): void {
		this.#add(inset.markup);
	}

	/** An element of SVG as it is; `matrix` leads from its own plane to this one. */
	place(name: string, attributes: Attributes, matrix: Matrix): void {
		const transform = written(through(this.matrix, matrix));
		this.#add(element(name, { ...attributes, transform }));
	}
	/** Fill or stroke as attributes. */
	ink(use: 'fill' | 'stroke', style: string | CanvasPattern | CanvasGradient): Attributes {
		if (typeof style !== 'string') return { [use]: `url(#${this.#tile(style)})` };
		const { colour, opacity } = paintColourOf(style, this.#sheet.tools.resolve);
		const share = opacity * this.globalAlpha;
		return {
			[use]: colour,
			[`${use}-opacity`]: colour === 'none' || share === 1 ? undefined : short(share, 4)
		};
	}

	fill(rule: CanvasFillRule = 'nonzero'): void {
		this.#fill(this.outline, rule);
	}
	stroke(): void {
		this.#stroke(this.outline);
	}
	/** With sharp edges, as the page draws its fields and hairlines. */
	fillRect(x: number, y: number, width: number, height: number): void {
		const sharp = { 'shape-rendering': 'crispEdges' };
		this.#fill(this.#rectangle(x, y, width, height), 'nonzero', sharp);
	}
	strokeRect(x: number, y: number, width: number, height: number): void {
		this.#stroke(this.#rectangle(x, y, width, height));
	}

	/** All or nothing, which is how a chart clears its canvas; a hole cannot be cut into marks. */
	clearRect(x: number, y: number, width: number, height: number): void {
		if (x > 0 || y > 0 || width < (this.canvas?.width ?? 0) || height < (this.canvas?.height ?? 0))
			throw new Error('Only the whole of a drawing can be cleared.');
		this.#marks.clear();
	}

	clip(rule: CanvasFillRule = 'nonzero'): void {
		const path = element('path', { d: this.outline.data, 'clip-rule': evenOdd(rule) });
		this.clips = [...this.clips, this.#sheet.share('clipPath', {}, path)];
	}

	fillText(text: string, x: number, y: number, widest = Infinity): void {
		this.#write(text, [x, y], widest, this.ink('fill', this.fillStyle));
	}
	strokeText(text: string, x: number, y: number, widest = Infinity): void {
		const pen = { 'stroke-width': this.lineWidth, 'stroke-linejoin': this.#join };
		const ink = { fill: 'none', ...this.ink('stroke', this.strokeStyle), ...pen };
		this.#write(text, [x, y], widest, ink);
	}
	measureText(text: string): TextMetrics {
		return this.#measured(text, this.textBaseline);
	}

	#add(markup: string): void {
		if (markup) this.#marks.add(markup, this.clips);
	}

	#fill(outline: PathBuilder, rule: CanvasFillRule, more: Attributes = {}): void {
		if (!outline.data) return;
		const ink = this.ink('fill', this.fillStyle);
		if (ink['fill'] === 'none') return;
		this.#add(element('path', { d: outline.data, 'fill-rule': evenOdd(rule), ...ink, ...more }));
	}

	#stroke(outline: PathBuilder): void {
		if (!outline.data) return;
		const ink = this.ink('stroke', this.strokeStyle);
		if (ink['stroke'] === 'none') return;
		// The path stands in the sheet's own plane, so its stroke grows as the transform does.
		const scale = growth(this.matrix);
		const dashes = this.dash.map((length) => short(length * scale));
		const dash = dashes.length ? dashes.join(' ') : undefined;
		const offset = dash && this.lineDashOffset ? this.lineDashOffset * scale : undefined;
		this.#add(
			element('path', {
				...{ d: outline.data, fill: 'none', ...ink, 'stroke-width': this.lineWidth * scale },
				...{ 'stroke-dasharray': dash, 'stroke-dashoffset': offset },
				'stroke-linecap': this.lineCap === 'butt' ? undefined : this.lineCap,
				'stroke-linejoin': this.#join
			})
		);
	}

	get #join(): string | undefined {
		return this.lineJoin === 'miter' ? undefined : this.lineJoin;
	}

	#rectangle(x: number, y: number, width: number, height: number): PathBuilder {
		const outline = new PathBuilder();
		outline.rect(this.matrix, x, y, width, height);
		return outline;
	}

	/**
	 * The baseline is worked out here, since not every reader knows others than the alphabetic one. The
	 * width is stated, so that words keep their room in whatever type the reader has.
	 */
	#write(text: string, [x, y]: readonly [number, number], widest: number, ink: Attributes): void {
		if (!text.trim()) return;
		const { width, fontBoundingBoxAscent: above } = this.#measured(text, 'alphabetic');
		const down = above - this.measureText(text).fontBoundingBoxAscent;
		const matrix = onlyMoves(this.matrix) ? IDENTITY : this.matrix;
		const [left, base] = matrix === IDENTITY ? placeOf(this.matrix, x, y + down) : [x, y + down];
		const attributes = {
			...{ x: left, y: base, ...fontAttributes(this.font), ...ink },
			'text-anchor': ANCHORS[this.textAlign],
			...{ textLength: Math.min(width, widest), lengthAdjust: 'spacingAndGlyphs' },
			transform: written(matrix)
		};
		this.#add(element('text', attributes, escapeXml(text)));
	}

	#measured(text: string, baseline: CanvasTextBaseline): TextMetrics {
		const { ruler } = this.#sheet.tools;
		ruler.font = this.font;
		ruler.textBaseline = baseline;
		return ruler.measureText(text);
	}

	/** The id of a field of tiles, drawn anew as marks. */
	#tile(pattern: CanvasPattern | CanvasGradient): string {
		const tile = tileOf(pattern);
		if (!tile) throw new Error('A fill was handed over that is neither a colour nor a known tile.');
		const inner = new SvgContext(this.#sheet);
		tile.draw(inner.asCanvas());
		const { size } = tile;
		const frame = { width: size, height: size, patternUnits: 'userSpaceOnUse' };
		const patternTransform = written(this.matrix);
		return this.#sheet.share('pattern', { ...frame, patternTransform }, inner.markup);
	}

	/** For a library that asks for a canvas's context; it calls only what stands here. */
	asCanvas(): CanvasRenderingContext2D {
		return this as unknown as CanvasRenderingContext2D;
	}
}
