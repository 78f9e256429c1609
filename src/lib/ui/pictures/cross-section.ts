/**
 * A pipe's cross-section to scale: the ring with its layers, the magnified wall with leaders to its
 * labels, scale bars, and the chain of dimensions below. Pure geometry in pixels; texts come in ready.
 */
import { roundLength } from './scale';
import { spread, type Wanted } from './spread';

export interface Dimensions {
	readonly outside: number;
	/** The bore first. */
	readonly layers: readonly { readonly thickness: number; readonly role: string }[];
	/** NaN where it has no value; the chain is then not drawn. */
	readonly minimum: number;
	readonly eccentricity: number;
	readonly spread: number;
	readonly wall: number;
	readonly wallInHand: number | null;
}

export interface SectionTexts {
	/** Of each layer, the bore first: its name and its thickness. */
	readonly layers: readonly { readonly name: string; readonly thickness: string }[];
	readonly outside: readonly string[];
	readonly facts: readonly string[];
	readonly minimum: string;
	readonly eccentricity: string;
	readonly spread: string;
	readonly wall: string;
	readonly inHand: string;
	/** "5 mm" for the length of a scale bar. */
	readonly length: (length: number) => string;
}

export type Tone = 'ink' | 'muted' | 'strong' | 'hand';
export interface Text {
	readonly x: number;
	readonly y: number;
	readonly text: string;
	readonly anchor: 'start' | 'middle' | 'end';
	readonly tone: Tone;
}
export interface Stroke {
	readonly d: string;
	readonly tone: 'leader' | 'line' | 'hand' | 'edge';
}
export interface Disc {
	readonly radius: number;
	/** null is the bore. */
	readonly role: string | null;
	readonly soft: boolean;
}
export interface Band {
	readonly x: number;
	readonly width: number;
	readonly role: string;
	/** Wide areas are paler, so that the thin layers win. */
	readonly soft: boolean;
}
export interface Drawing {
	readonly width: number;
	readonly height: number;
	readonly ring: { readonly x: number; readonly y: number; readonly discs: readonly Disc[] };
	readonly wall: { readonly y: number; readonly height: number; readonly bands: readonly Band[] };
	readonly strokes: readonly Stroke[];
	readonly texts: readonly Text[];
}

const WIDE_FROM = 860;
const SOFT_FROM = 60;
/** Mean width of a character at 14 px, on the safe side. */
const CHARACTER = 7;

/** Outer radii in pixels, the outside first, the bore last. */
export function discsOf(
	dimensions: Dimensions,
	radius: number
): { radius: number; role: string | null }[] {
	const scale = (2 * radius) / dimensions.outside;
	const discs: { radius: number; role: string | null }[] = [];
	let at = radius;
	for (const layer of [...dimensions.layers].reverse()) {
		discs.push({ radius: at, role: layer.role });
		at = Math.max(0, at - layer.thickness * scale);
	}
	discs.push({ radius: at, role: null });
	return discs;
}

interface Frame {
	readonly wide: boolean;
	readonly radius: number;
	readonly ringX: number;
	readonly ringY: number;
	readonly wallX: number;
	readonly wallY: number;
	readonly wallWidth: number;
	readonly wallHeight: number;
	readonly factsX: number;
	readonly width: number;
}

function frameOf(width: number): Frame {
	if (width >= WIDE_FROM) {
		const radius = width >= 1000 ? 134 : 100;
		const wallX = 2 * radius + 102;
		const factsX = width - 246;
		const wallWidth = factsX - wallX - 32;
		return {
			...{ wide: true, radius, ringX: radius + 14, ringY: 140, wallX, wallY: 66 },
			...{ wallWidth, wallHeight: 118, factsX, width }
		};
	}
	const radius = Math.min(110, width * 0.22);
	const wallY = 2 * radius + 100;
	return {
		...{ wide: false, radius, ringX: radius + 6, ringY: radius + 6, wallX: 1, wallY },
		...{ wallWidth: width - 24, wallHeight: 84, factsX: 2 * radius + 36, width }
	};
}

export function drawSection(dimensions: Dimensions, texts: SectionTexts, width: number): Drawing {
	const frame = frameOf(width);
	const longest = Math.max(dimensions.wall, dimensions.wallInHand ?? 0, sumOfLayers(dimensions));
	const scale = frame.wallWidth / longest;
	const bands = bandsOf(dimensions, frame.wallX, scale);
	const pieces = [
		ringParts(dimensions, texts, frame),
		layerLabels(bands, texts, frame),
		chain(dimensions, texts, frame, scale),
		scaleBars(dimensions, texts, frame, scale),
		facts(texts, frame)
	];
	const soft = [...bands.map((band) => band.soft)].reverse();
	return {
		width,
		height: frame.wide ? 318 : frame.wallY + frame.wallHeight + (dimensions.wallInHand ? 176 : 150),
		ring: {
			x: frame.ringX,
			y: frame.ringY,
			discs: discsOf(dimensions, frame.radius).map((disc, i) => ({
				...disc,
				soft: soft[i] ?? false
			}))
		},
		wall: { y: frame.wallY, height: frame.wallHeight, bands },
		strokes: pieces.flatMap((piece) => piece.strokes),
		texts: pieces.flatMap((piece) => piece.texts)
	};
}

interface Piece {
	readonly strokes: readonly Stroke[];
	readonly texts: readonly Text[];
}

const sumOfLayers = (dimensions: Dimensions) =>
	dimensions.layers.reduce((sum, layer) => sum + layer.thickness, 0);

/** The layers side by side, the bore at the left; a role that is wide anywhere is pale everywhere. */
function bandsOf(dimensions: Dimensions, from: number, scale: number): Band[] {
	const { layers } = dimensions;
	const wide = new Set(
		layers.filter(({ thickness }) => thickness * scale > SOFT_FROM).map(({ role }) => role)
	);
	let x = from;
	return layers.map(({ thickness, role }) => {
		const band = { x, width: thickness * scale, role, soft: wide.has(role) };
		x += band.width;
		return band;
	});
}

/** Its caption, and the piece of wall that is magnified beside it. */
function ringParts(dimensions: Dimensions, texts: SectionTexts, frame: Frame): Piece {
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
function layerLabels(bands: readonly Band[], texts: SectionTexts, frame: Frame): Piece {
	const lines = texts.layers.map((one) =>
		frame.wide ? [one.name, one.thickness] : [one.thickness]
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
function chain(dimensions: Dimensions, texts: SectionTexts, frame: Frame, scale: number): Piece {
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
		const text = texts.inHand;
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
function scaleBars(
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
function facts(texts: SectionTexts, frame: Frame): Piece {
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
