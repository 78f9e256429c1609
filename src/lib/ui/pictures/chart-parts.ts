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
