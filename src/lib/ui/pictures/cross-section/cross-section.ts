/**
 * A pipe's cross-section to scale: the ring with its layers, the magnified wall with leaders to its
 * labels, scale bars, and the chain of dimensions below. Pure geometry in pixels; texts come in ready.
 */
import { chain, facts, layerLabels, ringParts, scaleBars } from './section-pieces';

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
	readonly selectedScenario: string;
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

/** Where ring and wall stand in the room there is. */
export interface Frame {
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
