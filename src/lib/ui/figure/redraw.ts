/**
 * The charts of the page, ready to be drawn once more onto another ground. A canvas holds only its
 * pixels, so what drew it is remembered beside it.
 */
import type { SvgContext } from './svg/context';

export type Redraw = (onto: SvgContext) => void;

const known = new WeakMap<HTMLCanvasElement, Redraw>();

export const rememberChart = (canvas: HTMLCanvasElement, redraw: Redraw) =>
	void known.set(canvas, redraw);

export function redrawChart(canvas: HTMLCanvasElement, onto: SvgContext): void {
	const redraw = known.get(canvas);
	if (!redraw) throw new Error('A canvas of the figure is no chart that can be drawn once more.');
	redraw(onto);
}
