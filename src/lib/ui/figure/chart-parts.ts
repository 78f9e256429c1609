/**
 * The parts of Chart.js that the pictures use, registered once; nothing else of it is fetched.
 */
import {
	BarController,
	BarElement,
	Chart,
	Filler,
	LinearScale,
	LineController,
	LineElement,
	PointElement,
	Tooltip,
	type ChartConfiguration,
	type ChartType
} from 'chart.js';
import type { Colours } from './colour-tokens';

Chart.register(
	...[BarController, BarElement, LineController, LineElement, PointElement],
	...[Filler, LinearScale, Tooltip]
);

export interface XY {
	x: number;
	y: number;
}
export type BarChart = ChartConfiguration<'bar', XY[]>;
export type LineChart = ChartConfiguration<'line', XY[]>;
/** A chart on the page. */
export type Drawn = Chart<ChartType, XY[]>;
export { Chart };

export const FONT = "'Ysabeau Office Variable', Candara, Optima, sans-serif";

/** Bars move to their new length in this time; not at all where the reader wants no motion. */
export const MOTION_MS = 180;

/** What a tooltip looks like: a plain slip of the page's ink. */
export const tooltipLook = (colours: Colours) => ({
	...{ backgroundColor: colours.ink, titleColor: colours.ground, bodyColor: colours.ground },
	...{ cornerRadius: 0, displayColors: false, caretSize: 0, padding: 8 },
	titleFont: { family: FONT, size: 14, weight: 600 },
	bodyFont: { family: FONT, size: 14, weight: 500 }
});

/**
 * Gives a chart its new sets in place of the old ones. The library knows a set by its object, and moves
 * bars and lines from where they stood only if that stays.
 */
export function takeUp(chart: Drawn, next: Drawn['data']['datasets']): void {
	const { datasets } = chart.data;
	datasets.length = Math.min(datasets.length, next.length);
	next.forEach((set, i) => {
		const kept = datasets[i];
		if (kept) Object.assign(kept, set);
		else datasets.push(set);
	});
}

/** Whether a grid line or tick is that of zero; the library also asks before there are ticks. */
export const isZero = (at: { readonly tick?: { readonly value: number } }) => at.tick?.value === 0;
