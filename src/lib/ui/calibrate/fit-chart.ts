/** The picture of a fit for Chart.js: points as dots, far ones as crosses, the fit as a line. */
import { axisOf, type Axis } from '../figure/axis';
import { FONT, MOTION_MS, tooltipLook, type LineChart } from '../figure/chart-parts';
import type { Colours } from '../figure/colour-tokens';
import { decimalsFor, formatNumber } from '../format';
import type { FitDrawn } from './fit-drawn';
import { texts } from './texts';

export interface AxisTitles {
	readonly x: string;
	readonly y: string;
}

/** As many decimals as its steps have. */
function decimalsOf({ ticks: [first = 0, second = 1] }: Axis): number {
	return Math.max(0, -Math.floor(Math.log10(Math.abs(second - first) || 1) + 1e-9));
}

export function fitChart(
	drawn: FitDrawn,
	titles: AxisTitles,
	colours: Colours,
	locale: string
): LineChart {
	const font = { family: FONT, size: 14, weight: 500 } as const;
	const number = (value: number) => formatNumber(value, decimalsFor(value, 4), locale);
	const axis = (low: number, high: number, most: number) => axisOf(low, high, most);
	const [x, y] = [axis(drawn.x.low, drawn.x.high, 8), axis(drawn.y.low, drawn.y.high, 7)];
	const scale = (of: typeof x, title: string) => ({
		...{ type: 'linear' as const, min: of.min, max: of.max },
		border: { display: false },
		grid: { drawTicks: false, color: colours.rule },
		title: { display: title !== '', text: title, color: colours.muted, font },
		ticks: {
			padding: 8,
			color: colours.muted,
			font,
			callback: (value: string | number) => formatNumber(Number(value), decimalsOf(of), locale)
		},
		afterBuildTicks: (built: { ticks: { value: number }[] }) => {
			built.ticks = of.ticks.map((value) => ({ value }));
		}
	});
	const dots = { showLine: false, borderWidth: 0, pointHitRadius: 8 } as const;
	return {
		type: 'line',
		data: {
			datasets: [
				{
					label: texts.fitLine,
					data: [...drawn.line],
					...{ borderColor: colours.petrol, borderWidth: 2, pointRadius: 0, pointHitRadius: 0 }
				},
				{
					label: texts.pointsName,
					data: [...drawn.near],
					...dots,
					...{ pointRadius: 4, pointBackgroundColor: colours.ink, pointBorderWidth: 0 }
				},
				{
					label: texts.farName,
					data: [...drawn.far],
					...dots,
					...{ pointStyle: 'crossRot' as const, pointRadius: 7, pointBorderWidth: 2.5 },
					...{ pointBorderColor: colours.copper, pointBackgroundColor: colours.copper }
				}
			]
		},
		options: {
			...{ responsive: true, maintainAspectRatio: false, animation: { duration: MOTION_MS } },
			devicePixelRatio: Math.max(2, globalThis.devicePixelRatio || 1),
			interaction: { mode: 'nearest', intersect: true },
			scales: {
				x: {
					...scale(x, titles.x),
					...(drawn.inOrder && { ticks: { display: false } })
				},
				y: scale(y, titles.y)
			},
			plugins: {
				tooltip: {
					...tooltipLook(colours),
					callbacks: {
						title: () => '',
						label: (item) =>
							`${drawn.inOrder ? '' : `${number(item.parsed.x ?? 0)}, `}${number(item.parsed.y ?? 0)}`
					}
				}
			}
		}
	};
}
