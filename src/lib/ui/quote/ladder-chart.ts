/**
 * The ladder by size of the order for Chart.js: floor and target as curves, what is offered as steps. Sizes
 * stand by their logarithm, so that each doubling takes the same room.
 */
import { axisOf } from '../figure/axis';
import { formatNumber } from '../format';
import {
	FONT,
	MOTION_MS,
	tooltipLook,
	type Drawn,
	type LineChart,
	type XY
} from '../figure/chart-parts';
import type { Colours } from '../figure/colour-tokens';
import type { Reading } from '../figure/read';
import { spread } from '../figure/spread';
import type { LadderStep } from './quote';

export interface LadderNow {
	readonly size: number;
	readonly price: number;
}

const LEFT = 46;
const RIGHT = 66;

const points = (steps: readonly LadderStep[], of: (step: LadderStep) => Reading | null): XY[] =>
	steps.flatMap((step) => {
		const reading = of(step);
		return reading?.kind === 'value' && step.size > 0
			? [{ x: Math.log10(step.size), y: reading.value }]
			: [];
	});

/** The last step holds on for a while, so that it is seen. */
const heldOn = (line: readonly XY[]): XY[] => {
	const last = line.at(-1);
	return last ? [...line, { x: last.x + 0.1, y: last.y }] : [];
};

/** "5", "10", "25" and "km" of "5 km", "10 km", "25 km"; labels as they are where they share no last word. */
export function bareLabels(steps: readonly LadderStep[]): { texts: string[]; unit: string } {
	const labels = steps.map(({ label }) => label);
	const unit = /\s(\S+)$/.exec(labels[0] ?? '')?.[1] ?? '';
	if (!unit || !labels.every((label) => label.endsWith(` ${unit}`)))
		return { texts: labels, unit: '' };
	return { texts: labels.map((label) => label.slice(0, -unit.length - 1)), unit };
}

export function ladderLines(steps: readonly LadderStep[]) {
	return {
		floor: points(steps, (step) => step.floor),
		target: points(steps, (step) => step.target),
		offered: heldOn(points(steps, (step) => step.offered))
	};
}

export function ladderChart(
	steps: readonly LadderStep[],
	now: LadderNow | null,
	colours: Colours,
	locale: string
): LineChart {
	const lines = ladderLines(steps);
	const all = [
		...Object.values(lines).flat(),
		...(now ? [{ x: Math.log10(now.size), y: now.price }] : [])
	];
	const [least, most] = [Math.min(...all.map(({ y }) => y)), Math.max(...all.map(({ y }) => y))];
	const room = 0.08 * (most - least || 1);
	const price = axisOf(least - room, most + room, 6);
	const [first, last] = [Math.min(...all.map(({ x }) => x)), Math.max(...all.map(({ x }) => x))];
	const font = { family: FONT, size: 14, weight: 500 } as const;
	const { texts } = bareLabels(steps);
	const line = (label: string, data: XY[], borderColor: string) => ({
		...{ label, data, borderColor, backgroundColor: 'transparent', borderWidth: 1.9 },
		...{ pointRadius: 0, pointHitRadius: 10, pointHoverRadius: 3 }
	});
	return {
		type: 'line',
		data: {
			datasets: [
				{ ...line('floor', lines.floor, colours.ink), cubicInterpolationMode: 'monotone' },
				{
					...line('target', lines.target, colours.ink),
					...{ cubicInterpolationMode: 'monotone', borderDash: [5, 3], borderWidth: 1.5 }
				},
				{ ...line('offered', lines.offered, colours.petrol), stepped: 'before', borderWidth: 2.4 }
			]
		},
		options: {
			...{ responsive: true, maintainAspectRatio: false, animation: { duration: MOTION_MS } },
			devicePixelRatio: Math.max(2, globalThis.devicePixelRatio || 1),
			interaction: { mode: 'nearest', intersect: false },
			layout: { padding: { left: 0, right: RIGHT, top: 20, bottom: 0 } },
			scales: {
				x: {
					...{ type: 'linear', min: first - 0.06, max: last },
					border: { color: colours.ink, width: 1.5 },
					grid: { drawOnChartArea: false, tickLength: 6, color: colours.mark },
					ticks: {
						...{ color: colours.muted, font, maxRotation: 0, autoSkip: false },
						callback: (_, i) => texts[i] ?? ''
					},
					afterBuildTicks: (axis) => {
						axis.ticks = steps.map(({ size }) => ({ value: Math.log10(size) }));
					}
				},
				y: {
					...{ type: 'linear', min: price.min, max: price.max },
					border: { display: false },
					grid: { drawTicks: false, color: colours.rule },
					ticks: {
						...{ padding: 8, font, color: colours.muted },
						callback: (value) => formatNumber(Number(value), 2, locale)
					},
					afterBuildTicks: (axis) => {
						axis.ticks = price.ticks.map((value) => ({ value }));
					},
					afterFit: (axis) => {
						axis.width = LEFT;
					}
				}
			},
			plugins: {
				tooltip: {
					...tooltipLook(colours),
					callbacks: {
						title: () => '',
						label: ({ dataset, dataIndex, parsed }) =>
							`${steps[Math.min(dataIndex, steps.length - 1)]?.label ?? ''}, ${dataset.label ?? ''}: ${formatNumber(parsed.y ?? 0, 4, locale)}`
					}
				}
			}
		}
	};
}

/** Over the lines: the price at each step, their names at the right, a ring where this quote stands. */
export function ladderOver(
	steps: readonly LadderStep[],
	now: LadderNow | null,
	locale: string
): (chart: Drawn, colours: Colours) => void {
	const lines = ladderLines(steps);
	return ({ ctx, scales, chartArea }, colours) => {
		const [x, y] = [scales['x'], scales['y']];
		if (!x || !y) return;
		ctx.save();
		ctx.lineJoin = 'round';
		const write = (text: string, left: number, top: number, colour: string, weight: number) => {
			ctx.font = `${weight} 14px ${FONT}`;
			Object.assign(ctx, { strokeStyle: colours.ground, lineWidth: 4, fillStyle: colour });
			ctx.strokeText(text, left, top);
			ctx.fillText(text, left, top);
		};
		Object.assign(ctx, { textAlign: 'left', textBaseline: 'middle', font: `500 14px ${FONT}` });
		for (const { x: at, y: price } of lines.offered.slice(0, -1)) {
			const text = formatNumber(price, 3, locale);
			const left = Math.min(
				x.getPixelForValue(at) + 3,
				chartArea.right - ctx.measureText(text).width
			);
			write(text, left, y.getPixelForValue(price) - 10, colours.petrol, 500);
		}
		const names = (['target', 'offered', 'floor'] as const).flatMap((name) => {
			const end = lines[name].at(-1);
			return end ? [{ name, at: y.getPixelForValue(end.y) }] : [];
		});
		names.sort((a, b) => a.at - b.at);
		const middles = spread(
			names.map(({ at }) => ({ at, width: 18 })),
			chartArea.top,
			chartArea.bottom,
			0
		);
		names.forEach(({ name }, i) => {
			const own = name === 'offered';
			const colour = own ? colours.petrol : colours.ink;
			write(name, chartArea.right + 8, middles[i] ?? 0, colour, own ? 650 : 500);
		});
		if (now) {
			const [left, top] = [x.getPixelForValue(Math.log10(now.size)), y.getPixelForValue(now.price)];
			ctx.beginPath();
			ctx.arc(left, top, 5.6, 0, 2 * Math.PI);
			Object.assign(ctx, {
				fillStyle: colours.ground,
				strokeStyle: colours.petrol,
				lineWidth: 2.6
			});
			ctx.fill();
			ctx.stroke();
		}
		ctx.restore();
	};
}
