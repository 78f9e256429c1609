/**
 * The payback picture for Chart.js: running totals, simple and discounted, and over them the crossings
 * and the names at the lines' ends.
 */
import { formatDifference } from '../format';
import { FONT, MOTION_MS, type Drawn, type LineChart } from './chart-parts';
import { scenarioColour, sheer, type Colours } from './colours';
import { along, placeNames, type Box, type Spot } from './leaders';
import { yearsShown, type Case } from './payback';
import type { Scale } from './scale';

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
export const NAME_COLUMN = 196;
/** What the six columns of figures take, as the table's style says. */
export const FIGURE_COLUMNS = 452;

export function paybackFrame(width: number): PaybackFrame {
	if (width >= 900)
		return {
			...{ wide: true, left: NAME_COLUMN, right: FIGURE_COLUMNS, height: 344 },
			key: { width: 270, height: 84 }
		};
	return { wide: false, left: 58, right: width >= 600 ? 190 : 10, height: 300, key: null };
}

export function paybackChart(
	cases: readonly Case[],
	scale: Scale,
	frame: PaybackFrame,
	colours: Colours,
	locale: string
): LineChart {
	const years = yearsShown(cases);
	const font = { family: FONT, size: 14, weight: 500 } as const;
	const ordered = [...cases].sort((a, b) => Number(a.inHand) - Number(b.inHand));
	return {
		type: 'line',
		data: {
			datasets: ordered.flatMap((one) =>
				(['simple', 'discounted'] as const).map((kind) => ({
					label: kind === 'simple' ? one.title : `${one.title}, discounted`,
					data: one[kind].points.map(({ x, y }) => ({ x, y: y * scale.factor })),
					borderColor: scenarioColour(colours, one.colour),
					borderWidth: kind === 'simple' ? (one.inHand ? 3 : 1.9) : one.inHand ? 1.8 : 1.3,
					borderDash: kind === 'simple' ? [] : [5, 3],
					...{ pointRadius: 0, pointHitRadius: 8, tension: 0 },
					...{ pointBackgroundColor: scenarioColour(colours, one.colour), pointHoverRadius: 3 },
					backgroundColor: 'transparent',
					fill:
						kind === 'simple' && one.inHand
							? { target: 'origin', above: sheer(colours.scenario1, 0.1), below: 'transparent' }
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
					type: 'linear',
					border: { display: false },
					grid: {
						...{ drawTicks: false, lineWidth: (at) => (at.tick.value === 0 ? 1.5 : 1) },
						color: (at) => (at.tick.value === 0 ? colours.ink : colours.rule)
					},
					ticks: {
						...{ maxTicksLimit: 7, padding: 10 },
						font: (at) => ({ ...font, weight: at.tick.value === 0 ? 650 : 500 }),
						color: (at) => (at.tick.value === 0 ? colours.ink : colours.muted),
						callback: (value) => formatDifference(Number(value), 0, locale)
					},
					afterFit: (axis) => {
						axis.width = frame.left;
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
					titleFont: { ...font, weight: 600 },
					bodyFont: font,
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

/** Crossings and names, over the lines. */
export function paybackOver(
	cases: readonly Case[],
	scale: Scale,
	frame: PaybackFrame,
	locale: string
) {
	return (chart: Drawn, colours: Colours): void => {
		const { ctx, scales, chartArea } = chart;
		const [x, y] = [scales['x'], scales['y']];
		if (!x || !y) return;
		const at = (point: Spot): Spot => ({
			x: x.getPixelForValue(point.x),
			y: y.getPixelForValue(point.y * scale.factor)
		});
		const handLast = [...cases].sort((a, b) => Number(a.inHand) - Number(b.inHand));
		ctx.save();
		for (const one of handLast) {
			const colour = scenarioColour(colours, one.colour);
			const marks = [
				{ reading: one.discountedPayback, dot: false },
				{ reading: one.payback, dot: true }
			];
			for (const { reading, dot } of marks)
				if (reading.kind === 'value')
					crossing(ctx, at({ x: reading.value, y: 0 }), dot, colour, colours.ground);
		}
		const lines = cases.flatMap((one) =>
			[one.simple, one.discounted].flatMap((line) => along(line.points.map(at)))
		);
		lines.push(
			...along([
				{ x: chartArea.left, y: y.getPixelForValue(0) },
				{ x: chartArea.right, y: y.getPixelForValue(0) }
			])
		);
		if (frame.key) lines.push(...keyGround(chart, frame.key));
		const area: Box = {
			x: frame.left + 4,
			y: 0,
			width: chart.width - frame.left - 4,
			height: chartArea.bottom - 4
		};
		drawNames(ctx, [...handLast].reverse(), at, lines, area, scale, colours, locale);
		ctx.restore();
	};
}

function keyGround(chart: Drawn, key: { width: number; height: number }): Spot[] {
	const spots: Spot[] = [];
	for (let x = chart.width - key.width; x <= chart.width; x += 8)
		for (let y = chart.chartArea.bottom - key.height; y <= chart.chartArea.bottom; y += 8)
			spots.push({ x, y });
	return spots;
}

function crossing(
	ctx: CanvasRenderingContext2D,
	spot: Spot,
	dot: boolean,
	colour: string,
	ground: string
) {
	ctx.beginPath();
	ctx.arc(spot.x, spot.y, 5.6, 0, 2 * Math.PI);
	Object.assign(ctx, { fillStyle: ground, strokeStyle: colour, lineWidth: 2.2 });
	ctx.fill();
	ctx.stroke();
	if (!dot) return;
	ctx.beginPath();
	ctx.arc(spot.x, spot.y, 2.4, 0, 2 * Math.PI);
	ctx.fillStyle = colour;
	ctx.fill();
}

const GAP = 6;

function drawNames(
	ctx: CanvasRenderingContext2D,
	cases: readonly Case[],
	at: (point: Spot) => Spot,
	lines: readonly Spot[],
	area: Box,
	scale: Scale,
	colours: Colours,
	locale: string
): void {
	const fontOf = (one: Case) => `${one.inHand ? 650 : 500} 16px ${FONT}`;
	const small = `500 14px ${FONT}`;
	const names = cases.flatMap((one) => {
		const last = one.simple.points.at(-1);
		if (!last) return [];
		ctx.font = fontOf(one);
		const title = ctx.measureText(one.title).width;
		const amount = formatDifference(last.y * scale.factor, 0, locale);
		ctx.font = small;
		return [
			{ one, title, amount, ...at(last), width: title + GAP + ctx.measureText(amount).width }
		];
	});
	// A name may stand close to its own end, which is a spot of its own line.
	const far = lines.filter(
		(spot) => !names.some((name) => Math.hypot(spot.x - name.x, spot.y - name.y) < 5)
	);
	const placed = placeNames(names, far, area);
	ctx.textBaseline = 'middle';
	names.forEach((name, i) => {
		ctx.beginPath();
		ctx.arc(name.x, name.y, 2.6, 0, 2 * Math.PI);
		ctx.fillStyle = scenarioColour(colours, name.one.colour);
		ctx.fill();
		const place = placed[i];
		if (!place) return;
		if (place.leader) {
			const [from, to] = place.leader;
			Object.assign(ctx, { strokeStyle: colours.mark, lineWidth: 1 });
			ctx.beginPath();
			ctx.moveTo(from.x, from.y);
			ctx.lineTo(to.x, to.y);
			ctx.stroke();
		}
		Object.assign(ctx, { fillStyle: colours.ink, font: fontOf(name.one) });
		ctx.fillText(name.one.title, place.x, place.y + place.height / 2);
		Object.assign(ctx, { fillStyle: colours.muted, font: small });
		ctx.fillText(name.amount, place.x + name.title + GAP, place.y + place.height / 2 + 1);
	});
}
