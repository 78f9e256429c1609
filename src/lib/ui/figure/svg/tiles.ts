/**
 * Fields filled by repeating a small square. A canvas forgets how its pattern was drawn, and an SVG
 * needs to draw it again, so each is remembered with its drawing.
 */
export interface Tile {
	/** Width and height, in pixels. */
	readonly size: number;
	readonly draw: (brush: CanvasRenderingContext2D) => void;
}

const known = new WeakMap<object, Tile>();

/** Null where the browser draws no patterns. */
export function patternOf(tile: Tile): CanvasPattern | null {
	const canvas = document.createElement('canvas');
	canvas.width = canvas.height = tile.size;
	const brush = canvas.getContext('2d');
	if (!brush) return null;
	tile.draw(brush);
	const pattern = brush.createPattern(canvas, 'repeat');
	if (pattern) known.set(pattern, tile);
	return pattern;
}

export const tileOf = (pattern: object): Tile | undefined => known.get(pattern);
