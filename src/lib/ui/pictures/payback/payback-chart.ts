/**
 * The payback picture for Chart.js: running totals, simple and discounted. What is drawn over the lines
 * is `payback-over.ts`.
 */
import { axisOf } from '../../figure/axis';
import { formatDifference } from '../../format';
import { FONT, isZero, MOTION_MS, tooltipLook, type LineChart } from '../../figure/chart-parts';
import { scenarioColour, sheer, type Colours } from '../../figure/colour-tokens';
import { markOf } from '../../figure/scenario-colours';
import { cashRange, yearsShown, type Case } from './payback';
import { FIGURES_WIDTH, NAME_WIDTH } from './payback-table';
import type { Scale } from '../../figure/scale';

/** Room at the sides, so that the years stand over the bars of the table below. */
export interface PaybackFrame {
	readonly wide: boolean;
	readonly left: number;
	readonly right: number;
	readonly height: number;
	/** Ground taken by the key, in pixels of the canvas; null where the key stands elsewhere. */
	readonly key: { readonly width: number; readonly height: number } | null;
}

const AXIS = 30;
/** Of the marks on a line, in pixels. */
export const MARK_RADIUS = 4;

export function paybackFrame(width: number): PaybackFrame {
	if (width >= 900)
		return {
			...{ wide: true, left: NAME_WIDTH, right: FIGURES_WIDTH, height: 344 },
			key: { width: 270, height: 84 }
		};
	return { wide: false, left: 58, right: width >= 600 ? 190 : 10, height: 300, key: null };
}

/** Points that are seen where scenarios share a colour. */
function markedPoints({ colour }: Case, pointBackgroundColor: string) {
	const mark = markOf(colour);
	return {
		...{ pointBackgroundColor, pointBorderWidth: 0, pointHoverRadius: mark ? 5 : 3 },
		...{ pointStyle: mark ?? ('circle' as const), pointRadius: mark ? MARK_RADIUS : 0 }
	};
}

export function paybackChart(
	cases: readonly Case[],
	scale: Scale,
	frame: PaybackFrame,
	colours: Colours,
	locale: string
): LineChart {
	const years = yearsShown(cases);
	const { low, high } = cashRange(cases);
	const spare = 0.03 * (high - low) * scale.factor;
	const cash = axisOf(low * scale.factor - spare, high * scale.factor + spare, 8);
	const font = { family: FONT, size: 14, weight: 500 } as const;
	const ordered = [...cases].sort(
		(a, b) => Number(a.selectedScenario) - Number(b.selectedScenario)
	);
	return {
		type: 'line',
		data: {
			datasets: ordered.flatMap((one) =>
				(['simple', 'discounted'] as const).map((kind) => ({
					label: kind === 'simple' ? one.title : `${one.title}, discounted`,
					data: one[kind].points.map(({ x, y }) => ({ x, y: y * scale.factor })),
					borderColor: scenarioColour(colours, one.colour),
					borderWidth:
						kind === 'simple' ? (one.selectedScenario ? 3 : 1.9) : one.selectedScenario ? 1.8 : 1.3,
					borderDash: kind === 'simple' ? [] : [5, 3],
					...{ pointHitRadius: 8, tension: 0 },
					...markedPoints(one, scenarioColour(colours, one.colour)),
					backgroundColor: 'transparent',
					fill:
						kind === 'simple' && one.selectedScenario
							? {
									target: 'origin',
									above: sheer(scenarioColour(colours, one.colour), 0.1),
									below: 'transparent'
								}
							: false
				}))
			)
		},
		options: {
			...{ responsive: true, maintainAspectRatio: false, animation: { duration: MOTION_MS } },
			devicePixelRatio: Math.max(2, globalThis.devicePixelRatio || 1),
			interaction: { mode: 'nearest', intersect: false },
			layout: { padding: { left: 0, right: frame.right, top: 14, bottom: 0 } },
			scales: {
				x: {
					...{ type: 'linear', min: 0, max: years },
					border: { display: false },
					grid: { drawOnChartArea: false, tickLength: 6, color: colours.mark },
					ticks: {
						...{ color: colours.muted, font, maxRotation: 0, autoSkip: true },
						...{ stepSize: 1, includeBounds: true },
						callback: (value) => String(value)
					},
					afterFit: (axis) => {
						Object.assign(axis, { height: AXIS, paddingLeft: 0, paddingRight: 0 });
					}
				},
				y: {
					...{ type: 'linear', min: cash.min, max: cash.max },
					border: { display: false },
					grid: {
						...{ drawTicks: false, lineWidth: (at) => (isZero(at) ? 1.5 : 1) },
						color: (at) => (isZero(at) ? colours.ink : colours.rule)
					},
					ticks: {
						padding: 10,
						font: (at) => ({ ...font, weight: isZero(at) ? 650 : 500 }),
						color: (at) => (isZero(at) ? colours.ink : colours.muted),
						callback: (value) => formatDifference(Number(value), 0, locale)
					},
					afterBuildTicks: (axis) => {
						axis.ticks = cash.ticks.map((value) => ({ value }));
					},
					afterFit: (axis) => {
						axis.width = frame.left;
					}
				}
			},
			plugins: {
				tooltip: {
					...tooltipLook(colours),
					callbacks: {
						title: (items) => `Year ${items[0]?.parsed.x ?? ''}`,
						label: (item) =>
							`${item.dataset.label}: ${formatDifference(item.parsed.y ?? 0, 0, locale)} ${scale.unit}`
					}
				}
			}
		}
	};
}
