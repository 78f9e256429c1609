/**
 * A pipe's cross-section to scale: the ring with its layers, the magnified wall with leaders to its
 * labels, scale bars, and the chain of dimensions below. Pure geometry in pixels; texts come in ready.
 */
import { chain, facts, layerLabels, ringParts, scaleBars } from './section-pieces';
import type { Dimensions, SectionTexts, Band, Drawing, Frame } from './section-shapes';

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
