/**
 * Over the lines of the payback picture: a ring where a case is paid back, and each line's name at its
 * end or on free ground near it.
 */
import { drawPoint } from 'chart.js/helpers';
import { formatDifference } from '../../format';
import { FONT, type Drawn } from '../../figure/chart-parts';
import { scenarioColour, type Colours } from '../../figure/colour-tokens';
import { along, placeNames, type Box, type Placed, type Spot } from '../../figure/leaders';
import type { Case } from './payback';
import { markOf } from '../../figure/scenario-colours';
import { MARK_RADIUS, type PaybackFrame } from './payback-chart';
import type { Scale } from '../../figure/scale';

interface Pen {
	readonly ctx: CanvasRenderingContext2D;
	readonly colours: Colours;
	/** Where a year and an amount stand. */
	readonly at: (point: Spot) => Spot;
}

interface Name extends Spot {
	readonly one: Case;
	readonly amount: string;
	readonly titleWidth: number;
	readonly width: number;
}

const GAP = 6;
const SMALL = `500 14px ${FONT}`;
const titleFont = (one: Case) => `${one.selectedScenario ? 650 : 500} 16px ${FONT}`;

/** Gives what draws; the places of names are kept until the lines or the room change. */
export function paybackOver(
	cases: readonly Case[],
	scale: Scale,
	frame: PaybackFrame,
	locale: string
): (chart: Drawn, colours: Colours) => void {
	const handLast = [...cases].sort(
		(a, b) => Number(a.selectedScenario) - Number(b.selectedScenario)
	);
	let key = '';
	let placed: readonly (Placed | null)[] = [];
	return (chart, colours) => {
		const { ctx, scales, chartArea } = chart;
		const [x, y] = [scales['x'], scales['y']];
		if (!x || !y) return;
		const at = ({ x: year, y: cash }: Spot): Spot => ({
			x: x.getPixelForValue(year),
			y: y.getPixelForValue(cash * scale.factor)
		});
		const pen: Pen = { ctx, colours, at };
		ctx.save();
		for (const one of handLast) drawCrossings(pen, one);
		const names = [...handLast].reverse().flatMap((one) => nameOf(pen, one, scale, locale));
		const area: Box = {
			...{ x: frame.left + 4, y: 0 },
			...{ width: chart.width - frame.left - 4, height: chartArea.bottom - 4 }
		};
		const now = JSON.stringify([area, names.map((name) => [name.x, name.y, name.width])]);
		if (now !== key) placed = placeNames(names, groundTaken(pen, cases, chart, frame, names), area);
		key = now;
		names.forEach((name, i) => drawName(pen, name, placed[i] ?? null));
		ctx.restore();
	};
}

function drawCrossings({ ctx, colours, at }: Pen, one: Case): void {
	const colour = scenarioColour(colours, one.colour);
	const ring = (year: number, dot: boolean) => {
		const spot = at({ x: year, y: 0 });
		ctx.beginPath();
		ctx.arc(spot.x, spot.y, 5.6, 0, 2 * Math.PI);
		Object.assign(ctx, { fillStyle: colours.ground, strokeStyle: colour, lineWidth: 2.2 });
		ctx.fill();
		ctx.stroke();
		if (dot) drawDot(ctx, spot, 2.4, colour);
	};
	if (one.discountedPayback.kind === 'value') ring(one.discountedPayback.value, false);
	if (one.payback.kind === 'value') ring(one.payback.value, true);
}

function drawDot(ctx: CanvasRenderingContext2D, spot: Spot, radius: number, colour: string): void {
	ctx.beginPath();
	ctx.arc(spot.x, spot.y, radius, 0, 2 * Math.PI);
	ctx.fillStyle = colour;
	ctx.fill();
}

/** Where a line ends: a dot, or the mark that it is told by. */
function drawEnd(ctx: CanvasRenderingContext2D, end: Name, colour: string): void {
	const pointStyle = markOf(end.one.colour);
	if (!pointStyle) return drawDot(ctx, end, 2.6, colour);
	ctx.fillStyle = colour;
	drawPoint(ctx, { pointStyle, radius: MARK_RADIUS + 1, borderWidth: 0 }, end.x, end.y);
}

function nameOf({ ctx, at }: Pen, one: Case, scale: Scale, locale: string): Name[] {
	const last = one.simple.points.at(-1);
	if (!last) return [];
	const amount = formatDifference(last.y * scale.factor, 0, locale);
	ctx.font = titleFont(one);
	const titleWidth = ctx.measureText(one.title).width;
	ctx.font = SMALL;
	const width = titleWidth + GAP + ctx.measureText(amount).width;
	return [{ one, amount, titleWidth, width, ...at(last) }];
}

/** Where no name may stand: on lines, on the zero line, on the key. */
function groundTaken(
	{ at }: Pen,
	cases: readonly Case[],
	{ chartArea, width }: Drawn,
	{ key }: PaybackFrame,
	names: readonly Name[]
): Spot[] {
	const lines = cases.flatMap((case_) =>
		[case_.simple, case_.discounted].flatMap((line) => along(line.points.map(at)))
	);
	const zero = at({ x: 0, y: 0 }).y;
	const ends = [chartArea.left, chartArea.right].map((x) => ({ x, y: zero }));
	// A name may stand close to its own end, which is a spot of its own line.
	const taken = [...lines, ...along(ends)].filter(
		(spot) => !names.some((name) => Math.hypot(spot.x - name.x, spot.y - name.y) < 5)
	);
	if (!key) return taken;
	for (let x = width - key.width; x <= width; x += 8)
		for (let y = chartArea.bottom - key.height; y <= chartArea.bottom; y += 8) taken.push({ x, y });
	return taken;
}

function drawName({ ctx, colours }: Pen, name: Name, place: Placed | null): void {
	drawEnd(ctx, name, scenarioColour(colours, name.one.colour));
	if (!place) return;
	if (place.leader) {
		const [from, to] = place.leader;
		Object.assign(ctx, { strokeStyle: colours.mark, lineWidth: 1 });
		ctx.beginPath();
		ctx.moveTo(from.x, from.y);
		ctx.lineTo(to.x, to.y);
		ctx.stroke();
	}
	// An edge of ground keeps grid lines out of the letters.
	Object.assign(ctx, { strokeStyle: colours.ground, lineWidth: 5, lineJoin: 'round' });
	const write = (text: string, x: number, y: number) => {
		ctx.strokeText(text, x, y);
		ctx.fillText(text, x, y);
	};
	const middle = place.y + place.height / 2;
	Object.assign(ctx, { textBaseline: 'middle', textAlign: 'left' });
	Object.assign(ctx, { fillStyle: colours.ink, font: titleFont(name.one) });
	write(name.one.title, place.x, middle);
	Object.assign(ctx, { fillStyle: colours.muted, font: SMALL });
	write(name.amount, place.x + name.titleWidth + GAP, middle + 1);
}
