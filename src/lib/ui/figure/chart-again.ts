/**
 * A chart drawn once as SVG: a second one, still and deaf, on a canvas that hands out the SVG context.
 */
import type { ChartConfiguration, ChartType } from 'chart.js';
import type { SvgContext } from './svg/context';
import { Chart, type XY } from './chart-parts';

export interface Size {
	readonly width: number;
	readonly height: number;
}

export function drawAgain(
	made: ChartConfiguration<ChartType, XY[]>,
	{ width, height }: Size,
	onto: SvgContext
): void {
	const canvas = Object.assign(document.createElement('canvas'), { width, height });
	const inset = onto.inset(0, 0);
	inset.canvas = canvas;
	Object.assign(canvas, { getContext: () => inset });
	// A line with a word on its segments is drawn by calls; without, as a path that nobody can read back.
	const datasets = made.data.datasets.map((set) => ({ ...set, segment: {} }));
	const still = { animation: false as const, responsive: false, devicePixelRatio: 1, events: [] };
	const chart = new Chart(canvas, {
		...made,
		data: { ...made.data, datasets },
		options: { ...made.options, ...still }
	});
	// Going, a chart clears its canvas.
	onto.take(inset);
	chart.destroy();
}
