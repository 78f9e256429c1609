/** The year by month for Chart.js: what is in hand as a line with its months marked, what it is measured against dashed. */
import { axisOf } from '../../figure/axis';
import { FONT, isZero, MOTION_MS, tooltipLook, type LineChart } from '../../figure/chart-parts';
import type { Colours } from '../../figure/colour-tokens';
import type { Reading } from '../../figure/read';
import type { Scale } from '../../figure/scale';
import { decimalsFor, formatNumber } from '../../format';
import { largestOf, type Months } from './months';
import { texts } from './texts';

const LEFT = 66;

export function monthsChart(
	{ months, label, referenceTitle, ...rest }: Months,
	scale: Scale,
	colours: Colours,
	{ locale, width }: { readonly locale: string; readonly width: number }
): LineChart {
	const points = (of: (i: number) => Reading | null) =>
		months.flatMap((_, x) => {
			const reading = of(x);
			return reading?.kind === 'value' ? [{ x, y: reading.value * scale.factor }] : [];
		});
	const here = points((i) => months[i]!.here);
	const there = points((i) => months[i]!.there);
	const values = [...here, ...there].map(({ y }) => y);
	const [low, high] = [Math.min(0, ...values), Math.max(0, ...values)];
	const spare = 0.05 * (high - low || 1);
	const axis = axisOf(low < 0 ? low - spare : 0, high + spare, 6);
	const decimals = decimalsFor(
		largestOf({ months, label, referenceTitle, ...rest }) * scale.factor,
		3
	);
	const font = { family: FONT, size: 14, weight: 500 } as const;
	const isClosed = (x: number) => months[x]?.isClosed === true;
	const isKnown = (x: number) => Number.isInteger(x) && months[x] !== undefined;
	return {
		type: 'line',
		data: {
			datasets: [
				{
					label,
					data: here,
					...{ borderColor: colours.petrol, borderWidth: 2.6, tension: 0, pointHitRadius: 10 },
					...{ pointRadius: 4.5, pointHoverRadius: 6, pointBorderWidth: 2 },
					pointBorderColor: colours.petrol,
					pointBackgroundColor: here.map(({ x }) =>
						isClosed(x) ? colours.petrol : colours.ground
					),
					backgroundColor: 'transparent',
					fill: false
				},
				...(there.length > 0
					? [
							{
								label: referenceTitle ?? '',
								data: there,
								...{ borderColor: colours.ink, borderWidth: 1.6, borderDash: [5, 3] },
								...{ pointRadius: 0, pointHitRadius: 8, tension: 0, fill: false },
								backgroundColor: 'transparent'
							}
						]
					: [])
			]
		},
		options: {
			...{ responsive: true, maintainAspectRatio: false, animation: { duration: MOTION_MS } },
			devicePixelRatio: Math.max(2, globalThis.devicePixelRatio || 1),
			interaction: { mode: 'nearest', axis: 'x', intersect: false },
			layout: { padding: { left: 0, right: 14, top: 14, bottom: 0 } },
			scales: {
				x: {
					...{ type: 'linear', min: -0.4, max: Math.max(months.length - 0.6, 1) },
					border: { display: false },
					grid: { drawOnChartArea: false, tickLength: 6, color: colours.mark },
					ticks: {
						...{ color: colours.muted, font, maxRotation: 0, autoSkip: false },
						callback: (value) => (isKnown(Number(value)) ? months[Number(value)]!.id : '')
					},
					afterBuildTicks: (axis) => {
						// As many as have room, the Januaries always.
						const every = Math.max(1, Math.ceil((months.length * 76) / Math.max(width - LEFT, 76)));
						const steps = [1, 2, 3, 6, 12].find((one) => one >= every) ?? 12;
						const first = months.findIndex(({ id }) => id.endsWith('-01'));
						axis.ticks = months.flatMap((_, value) =>
							(value - Math.max(first, 0)) % steps === 0 ? [{ value }] : []
						);
					}
				},
				y: {
					...{ type: 'linear', min: axis.min, max: axis.max },
					border: { display: false },
					grid: {
						...{ drawTicks: false, lineWidth: (at) => (isZero(at) ? 1.5 : 1) },
						color: (at) => (isZero(at) ? colours.ink : colours.rule)
					},
					ticks: {
						...{ padding: 10, font, color: colours.muted },
						callback: (value) =>
							formatNumber(Number(value), Math.min(decimals, decimalsFor(axis.max, 2)), locale)
					},
					afterBuildTicks: (built) => {
						built.ticks = axis.ticks.map((value) => ({ value }));
					},
					afterFit: (built) => {
						built.width = LEFT;
					}
				}
			},
			plugins: {
				tooltip: {
					...tooltipLook(colours),
					callbacks: {
						title: (items) => {
							const month = months[items[0]?.parsed.x ?? -1];
							return month ? texts.tip(month.label, month.isClosed) : '';
						},
						label: (item) =>
							`${item.dataset.label}: ${formatNumber(item.parsed.y ?? 0, decimals, locale)} ${scale.unit}`
					}
				}
			}
		}
	};
}
