/**
 * The cost build-up for Chart.js: stacked bars on rows of known height, ink outlines, hatch for scrap.
 */
import { axisOf } from '../../figure/axis';
import { decimalsWritten, formatNumber } from '../../format';
import type { BuildUp } from './build-up';
import { barRange, barSets, rowAt, type BarFrame } from './build-up-bars';
import { FONT, isZero, MOTION_MS, tooltipLook, type BarChart } from '../../figure/chart-parts';
import { hatch, type Colours } from '../../figure/colour-tokens';

/** Height of the axis below the bars. */
export const AXIS = 30;

export function buildUpChart(
	buildUp: BuildUp,
	frame: BarFrame,
	colours: Colours,
	locale: string
): BarChart {
	const fill = (role: string) =>
		role === 'scrap'
			? hatch(colours.scrap, colours.ground)
			: role === 'other'
				? colours.mark
				: (colours[role as keyof Colours] ?? colours.mark);
	const sets = barSets(buildUp, frame);
	const { low, high } = barRange(buildUp);
	const axis = axisOf(low, high * 1.02 || 1, 7);
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
			layout: { padding: { left: 0, right: 2, top: 0, bottom: 0 } },
			scales: {
				y: {
					...{ type: 'linear', min: 0, max: buildUp.rows.length * frame.row, reverse: true },
					...{ display: false, offset: false }
				},
				x: {
					...{ type: 'linear', stacked: true, min: axis.min, max: axis.max },
					border: { display: false },
					grid: {
						// Beside names above the bars, lines would run through the words.
						drawOnChartArea: frame.base < frame.row / 2,
						...{ drawTicks: false, lineWidth: (at) => (isZero(at) ? 1.5 : 1) },
						color: (at) => (isZero(at) ? colours.ink : colours.rule)
					},
					ticks: {
						...{
							color: colours.muted,
							padding: 8,
							maxRotation: 0
						},
						align: 'inner',
						font: { family: FONT, size: 14, weight: 500 },
						callback: (value, _, ticks) => tickText(Number(value), ticks, locale)
					},
					afterBuildTicks: (scale) => {
						scale.ticks = axis.ticks.map((value) => ({ value }));
					},
					afterFit: (scale) => {
						Object.assign(scale, { height: AXIS, paddingLeft: 0, paddingRight: 0 });
					}
				}
			},
			plugins: {
				tooltip: {
					...tooltipLook(colours),
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

/** "0.0", "0.2", "1,000": as many decimals as the step from tick to tick needs. */
export function tickText(
	value: number,
	ticks: readonly { readonly value: number }[],
	locale: string
): string {
	const step = Math.abs((ticks[1]?.value ?? 0) - (ticks[0]?.value ?? 0));
	return formatNumber(value, decimalsWritten(Number(step.toPrecision(6)), 6), locale);
}
