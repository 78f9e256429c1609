/**
 * The cost build-up for Chart.js: stacked bars on rows of known height, ink outlines, hatch for scrap.
 */
import { formatNumber } from '../format';
import type { BuildUp } from './build-up';
import { barSets, rowAt, type BarFrame } from './build-up-bars';
import { FONT, MOTION_MS, type BarChart } from './chart-parts';
import { hatch, type Colours } from './colours';

/** Height of the axis below the bars. */
export const AXIS = 30;

export function buildUpChart(
	buildUp: BuildUp,
	frame: BarFrame,
	colours: Colours,
	locale: string,
	edge: number
): BarChart {
	const fill = (role: string) =>
		role === 'scrap'
			? hatch(colours.scrap, colours.ground)
			: role === 'other'
				? colours.mark
				: (colours[role as keyof Colours] ?? colours.mark);
	const sets = barSets(buildUp, frame);
	return {
		type: 'bar',
		data: {
			datasets: sets.map((set) => ({
				...{ label: set.label, data: set.points, stack: set.stack, grouped: false },
				...{ barThickness: set.thickness, backgroundColor: fill(set.role) },
				...{ hoverBackgroundColor: fill(set.role), borderColor: colours.ink },
				...{ hoverBorderColor: colours.ink, borderWidth: 0.8, borderSkipped: false }
			}))
		},
		options: {
			...{ indexAxis: 'y', responsive: true, maintainAspectRatio: false },
			devicePixelRatio: Math.max(2, globalThis.devicePixelRatio || 1),
			animation: { duration: MOTION_MS },
			layout: { padding: { left: 0, right: edge, top: 0, bottom: 0 } },
			scales: {
				y: {
					...{ type: 'linear', min: 0, max: buildUp.rows.length * frame.row, reverse: true },
					display: false
				},
				x: {
					...{ type: 'linear', beginAtZero: true, stacked: true },
					border: { display: false },
					grid: {
						...{ drawTicks: false, lineWidth: (at) => (at.tick.value === 0 ? 1.5 : 1) },
						color: (at) => (at.tick.value === 0 ? colours.ink : colours.rule)
					},
					ticks: {
						...{ maxTicksLimit: 6, color: colours.muted, padding: 8, maxRotation: 0 },
						align: 'inner',
						font: { family: FONT, size: 14, weight: 500 },
						callback: (value) => tickText(Number(value), locale)
					},
					afterFit: (axis) => {
						axis.height = AXIS;
					}
				}
			},
			plugins: {
				tooltip: {
					...{
						backgroundColor: colours.ink,
						titleColor: colours.ground,
						bodyColor: colours.ground
					},
					...{ cornerRadius: 0, displayColors: false, caretSize: 0, padding: 8 },
					titleFont: { family: FONT, size: 14, weight: 600 },
					bodyFont: { family: FONT, size: 14, weight: 500 },
					callbacks: {
						title: (items) => buildUp.rows[rowAt(frame, items[0]?.parsed.y ?? 0)]?.id ?? '',
						label: (item) =>
							`${item.dataset.label}: ${formatNumber(item.parsed.x ?? 0, buildUp.decimals, locale)} ${buildUp.unit}` +
							(item.dataset.stack === 'hand' ? ` in ${buildUp.handTitle}` : '')
					}
				}
			}
		}
	};
}

/** "0.2", "1,000": as few decimals as the step needs. */
export function tickText(value: number, locale: string): string {
	return new Intl.NumberFormat(locale, { maximumSignificantDigits: 6 })
		.format(value)
		.replace('-', '−');
}
