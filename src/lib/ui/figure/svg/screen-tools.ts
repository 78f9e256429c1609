/**
 * The browser's own brush as the tools of a sheet: it measures words in the page's fonts, and shows
 * what any notation of a colour looks like.
 */
import type { PaintColour } from './paint-colour';
import type { Ruler, Tools } from './svg-file';

/** Null where the browser has no canvas. */
export function screenTools(): Tools | null {
	const ruler: Ruler | null = document.createElement('canvas').getContext('2d');
	const pixel = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
	if (!ruler || !pixel) return null;
	const known = new Map<string, PaintColour>();
	const resolve = (css: string): PaintColour => {
		const ink = known.get(css) ?? shown(pixel, css);
		known.set(css, ink);
		return ink;
	};
	return { ruler, resolve };
}

function shown(pixel: CanvasRenderingContext2D, css: string): PaintColour {
	pixel.clearRect(0, 0, 1, 1);
	pixel.fillStyle = css;
	pixel.fillRect(0, 0, 1, 1);
	const [red = 0, green = 0, blue = 0, alpha = 0] = pixel.getImageData(0, 0, 1, 1).data;
	return { colour: `rgb(${red}, ${green}, ${blue})`, opacity: alpha / 255 };
}
