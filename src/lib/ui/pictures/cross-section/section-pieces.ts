/**
 * The lines and texts around the ring and the wall of a cross-section: the magnified box, labels with
 * leaders, the chain of dimensions, scale bars, facts. Pure geometry in pixels.
 */
import type { Band, Dimensions, Frame, SectionTexts, Stroke, Text } from './section-shapes';
import { roundLength } from '../../figure/scale';
import { spread, type Wanted } from '../../figure/spread';

/** Mean width of a character at 14 px, on the safe side. */
const CHARACTER = 7;

export interface Piece {
	readonly strokes: readonly Stroke[];
	readonly texts: readonly Text[];
}

/** Its caption, and the piece of wall that is magnified beside it. */
export function ringParts(dimensions: Dimensions, texts: SectionTexts, frame: Frame): Piece {
	const { ringX, ringY, radius, wallX, wallY, wallWidth, wallHeight, wide } = frame;
	const thickness = (dimensions.wall * 2 * radius) / dimensions.outside;
	const half = Math.max(4, (thickness * wallHeight) / wallWidth / 2);
	const [left, right] = [ringX + radius - thickness - 1, ringX + radius + 1];
	const [top, bottom] = [ringY - half, ringY + half];
	const box: Stroke = { tone: 'edge', d: `M${left} ${top}H${right}V${bottom}H${left}Z` };
	const lens: Stroke[] = [
		{ tone: 'leader', d: `M${right} ${top}L${wallX} ${wallY}` },
		{ tone: 'leader', d: `M${right} ${bottom}L${wallX} ${wallY + wallHeight}` }
	];
	const caption = texts.outside.map((text, line): Text => {
		const y = ringY + (line - (texts.outside.length - 1) / 2) * 19 + 5;
		return { x: ringX, y, text, anchor: 'middle', tone: line === 0 ? 'strong' : 'muted' };
	});
	return { strokes: wide ? [...lens, box] : [box], texts: caption };
}

/** Each layer's name and thickness above the wall, led to its middle. */
export function layerLabels(bands: readonly Band[], texts: SectionTexts, frame: Frame): Piece {
	const lines = texts.layers.map((layer) =>
		frame.wide ? [layer.name, layer.thickness] : [layer.thickness]
	);
	const wanted: Wanted[] = bands.map((band, i) => ({
		at: band.x + band.width / 2,
		width: Math.max(...(lines[i] ?? ['']).map((text) => text.length)) * CHARACTER
	}));
	const from = frame.wide ? frame.wallX - 20 : 0;
	const middles = spread(wanted, from, frame.width, frame.wide ? 14 : 8);
	const strokes: Stroke[] = [];
	const labels: Text[] = [];
	bands.forEach((band, i) => {
		const x = middles[i] ?? 0;
		const own = lines[i] ?? [];
		own.forEach((text, line) =>
			labels.push({
				...{ x, text, anchor: 'middle' },
				y: frame.wallY - 32 - (own.length - 1 - line) * 18,
				tone: line === own.length - 1 ? 'ink' : 'muted'
			})
		);
		strokes.push({
			tone: 'leader',
			d: `M${x} ${frame.wallY - 26}L${band.x + band.width / 2} ${frame.wallY}`
		});
	});
	return { strokes, texts: labels };
}

const dimensionLine = (x1: number, x2: number, y: number): Stroke => ({
	tone: 'line',
	d: `M${x1} ${y}H${x2}M${x1} ${y - 5}V${y + 5}M${x2} ${y - 5}V${y + 5}`
});

/** Minimum + eccentricity + spread = set-point, and the set-point in hand as a broken line. */
export function chain(
	dimensions: Dimensions,
	texts: SectionTexts,
	frame: Frame,
	scale: number
): Piece {
	const { wallX: x0, wallY, wallHeight, wide, factsX } = frame;
	const bottom = wallY + wallHeight;
	const strokes: Stroke[] = [];
	const labels: Text[] = [];
	const end = x0 + dimensions.wall * scale;
	const first = bottom + 26;
	const parts = [dimensions.minimum, dimensions.eccentricity, dimensions.spread];
	if (parts.every(Number.isFinite)) {
		const [a, b, c] = cumulative(parts).map((at) => x0 + at * scale) as [number, number, number];
		strokes.push(
			dimensionLine(x0, a, first),
			dimensionLine(a, b, first),
			dimensionLine(b, c, first)
		);
		const small = [
			{ at: (b + c) / 2, text: texts.spread, y: first + (wide ? 5 : 58) },
			{ at: (a + b) / 2, text: texts.eccentricity, y: first + (wide ? 25 : 38) }
		];
		labels.push({
			...{ y: first + 20, text: texts.minimum, tone: 'ink' },
			...(wide ? { x: (x0 + a) / 2, anchor: 'middle' } : { x: x0, anchor: 'start' })
		});
		for (const { at, text, y } of small) {
			const down = `M${at} ${first + 7}`;
			if (wide) {
				strokes.push({ tone: 'leader', d: `${down}L${at + 8} ${y - 5}H${factsX - 6}` });
				labels.push({ x: factsX, y, text, anchor: 'start', tone: 'ink' });
			} else {
				strokes.push({ tone: 'leader', d: `${down}V${y - 5}H${at - 5}` });
				labels.push({ x: at - 9, y, text, anchor: 'end', tone: 'ink' });
			}
		}
	}
	const second = first + (wide ? 46 : 76);
	strokes.push(dimensionLine(x0, end, second));
	labels.push({
		x: (x0 + end) / 2,
		y: second + 21,
		text: texts.wall,
		anchor: 'middle',
		tone: 'strong'
	});
	if (dimensions.wallInHand !== null) {
		const x = x0 + dimensions.wallInHand * scale;
		strokes.push({ tone: 'hand', d: `M${x} ${wallY - 5}V${bottom + 6}` });
		const y = wide ? bottom - 4 : second + 66;
		const text = texts.selectedScenario;
		if (wide) strokes.push({ tone: 'leader', d: `M${x + 3} ${y - 5}H${factsX - 6}` });
		else strokes.push({ tone: 'hand', d: `M${x0} ${y - 5}H${x0 + 22}` });
		labels.push({ x: wide ? factsX : x0 + 30, y, text, anchor: 'start', tone: 'hand' });
	}
	return { strokes, texts: labels };
}

function cumulative(parts: readonly number[]): number[] {
	let sum = 0;
	return parts.map((part) => (sum += part));
}

/** One bar for the ring, one for the wall: they are drawn to different scales. */
export function scaleBars(
	dimensions: Dimensions,
	texts: SectionTexts,
	frame: Frame,
	scale: number
): Piece {
	const ringScale = (2 * frame.radius) / dimensions.outside;
	const y = frame.wide ? 304 : frame.ringY + frame.radius + 20;
	const wallY = frame.wide ? 304 : frame.wallY + frame.wallHeight + 144;
	const bars = [
		{
			x: frame.ringX - frame.radius,
			y,
			length: roundLength((frame.radius * 0.8) / ringScale),
			scale: ringScale
		},
		{ x: frame.wallX, y: wallY, length: roundLength(90 / scale), scale }
	];
	return {
		strokes: bars.map((bar) => dimensionLine(bar.x, bar.x + bar.length * bar.scale, bar.y)),
		texts: bars.map((bar) => ({
			...{ x: bar.x + bar.length * bar.scale + 8, y: bar.y + 5, text: texts.length(bar.length) },
			...{ anchor: 'start', tone: 'muted' }
		}))
	};
}

/** Mass and money, beside the wall or beside the ring. */
export function facts(texts: SectionTexts, frame: Frame): Piece {
	const lines = frame.wide
		? texts.facts
		: texts.facts.flatMap((text) => wrapped(text, (frame.width - frame.factsX) / CHARACTER));
	const top = frame.wide ? frame.wallY + 14 : frame.ringY - (lines.length - 1) * 10;
	return {
		strokes: [],
		texts: lines.map((text, line) => ({
			...{ x: frame.factsX, y: top + line * 20, text, anchor: 'start' },
			tone: line === 0 ? 'strong' : 'ink'
		}))
	};
}

/** Cut between words, so that no line is longer than `most` characters where that can be helped. */
export function wrapped(text: string, most: number): string[] {
	const lines: string[] = [];
	for (const word of text.split(' ')) {
		const last = lines.at(-1);
		if (last !== undefined && `${last} ${word}`.length <= most)
			lines[lines.length - 1] = `${last} ${word}`;
		else lines.push(word);
	}
	return lines;
}
