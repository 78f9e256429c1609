/**
 * One product's wall as the workbook has it: its layers from the bore outwards, the chain of dimensions,
 * and the set-point of the scenario in hand where that differs. Where it is drawn, is `cross-section.ts`.
 */
import type { Picture } from '$lib/workbook/schema';
import type { UnitSystem } from '$lib/units/system';
import { choiceSet } from '../../cells';
import { read, shown, sumOf, type Reading, type Source } from '../../figure/read';
import { factorBetween } from '../../figure/scale';

export type SectionPicture = Extract<Picture, { kind: 'cross_section' }>;
export type LayerRole = SectionPicture['roles'][string];

export interface Layer {
	readonly name: string;
	readonly material: string;
	readonly role: LayerRole | 'other';
	readonly thickness: Reading;
	readonly mass: Reading;
	readonly cost: Reading;
}

export interface Section {
	readonly title: string;
	/** The bore first. */
	readonly layers: readonly Layer[];
	/** In the unit of the thicknesses. */
	readonly outside: Reading;
	readonly wall: Reading;
	readonly minimum: Reading;
	readonly eccentricity: Reading;
	readonly spread: Reading;
	readonly giveaway: Reading | undefined;
	readonly mass: Reading | undefined;
	readonly cost: Reading | undefined;
	/** The scenario in hand, where its wall differs. */
	readonly selectedScenario: InHand | null;
	/** The first reading without a value that the drawing needs; null where it can be drawn. */
	readonly missing: Reading | null;
}

export interface InHand {
	readonly title: string;
	readonly wall: Reading;
	readonly mass: Reading | undefined;
	readonly cost: Reading | undefined;
}

export interface SectionInput {
	readonly picture: SectionPicture;
	readonly base: Source;
	/** The scenario in hand; null where that is the base. */
	readonly hand: { readonly title: string; readonly source: Source } | null;
	/** Member of the set of products. */
	readonly subject: string;
	readonly units: UnitSystem;
}

const member = (source: Source, set: string, id: string) =>
	source.layout.sets.get(set)?.members[source.layout.ordinals.get(set)?.get(id) ?? -1];

export function sectionOf(input: SectionInput): Section {
	const { picture, base, subject, hand } = input;
	const at = { [picture.subject]: base.layout.ordinals.get(picture.subject)?.get(subject) ?? -1 };
	const layers = layersOf(picture, base, at);
	const of = (name: string) => read(base, name, at);
	const wall = of(picture.wall);
	const outside = inUnitOf(of(picture.outside_diameter), layers[0]?.thickness, input.units);
	const drawn = [outside, wall, ...layers.map((layer) => layer.thickness)];
	const label = member(base, picture.subject, subject)?.label;
	return {
		title: label ? `${subject}, ${label}` : subject,
		layers,
		outside,
		wall,
		minimum: of(picture.wall_minimum),
		eccentricity: of(picture.eccentricity),
		spread: of(picture.spread),
		giveaway: picture.giveaway === undefined ? undefined : of(picture.giveaway),
		mass: sumOf(layers.map((layer) => layer.mass)),
		cost: sumOf(layers.map((layer) => layer.cost)),
		selectedScenario: hand && handOf(picture, hand, at, wall),
		missing: drawn.find((reading) => reading.kind !== 'value') ?? null
	};
}

function layersOf(picture: SectionPicture, source: Source, at: Record<string, number>): Layer[] {
	const members = source.layout.sets.get(picture.layer)?.members ?? [];
	return members.flatMap((layer, ordinal) => {
		const place = { ...at, [picture.layer]: ordinal };
		const of = (name: string) => read(source, name, place);
		const thickness = of(picture.thickness);
		if (thickness.kind === 'absent') return [];
		const material = of(picture.material);
		const set = material.quantity && choiceSet(source.layout, material.quantity);
		const chosen = set?.members[material.value];
		const role =
			chosen && Object.hasOwn(picture.roles, chosen.id) ? picture.roles[chosen.id] : null;
		return {
			name: layer.label ?? layer.id,
			material: chosen?.label ?? chosen?.id ?? shown(material, 0, 'en'),
			role: role ?? 'other',
			thickness,
			mass: of(picture.mass),
			cost: of(picture.cost)
		};
	});
}

function inUnitOf(reading: Reading, like: Reading | undefined, units: UnitSystem): Reading {
	const from = reading.quantity?.quantity.unit ?? '1';
	const to = like?.quantity?.quantity.unit ?? from;
	const factor = from === to ? 1 : factorBetween(units, from, to);
	if (factor === null) return { ...reading, kind: 'error', because: `${from} is no ${to}` };
	return { ...reading, value: reading.value * factor };
}

function handOf(
	picture: SectionPicture,
	hand: { readonly title: string; readonly source: Source },
	at: Record<string, number>,
	wall: Reading
): InHand | null {
	const own = read(hand.source, picture.wall, at);
	const alike = own.kind === wall.kind && !(Math.abs(own.value - wall.value) > 1e-12);
	if (alike || own.kind === 'pending') return null;
	const layers = layersOf(picture, hand.source, at);
	return {
		title: hand.title,
		wall: own,
		mass: sumOf(layers.map((layer) => layer.mass)),
		cost: sumOf(layers.map((layer) => layer.cost))
	};
}

/** A product as a small ring, all to one scale. */
export interface Ring {
	readonly id: string;
	readonly label: string;
	/** In pixels; 0 where there is no value to draw from. */
	readonly radius: number;
	readonly wall: number;
}

const LARGEST_RADIUS = 27;

/** Rings to choose a product by; the largest product fills its place. */
export function ringsOf(picture: SectionPicture, source: Source): Ring[] {
	const members = source.layout.sets.get(picture.subject)?.members ?? [];
	const sizes = members.map((_, ordinal) => {
		const at = { [picture.subject]: ordinal };
		const outside = read(source, picture.outside_diameter, at);
		const wall = read(source, picture.wall, at);
		return outside.kind === 'value' && wall.kind === 'value' ? [outside.value, wall.value] : [0, 0];
	});
	const most = Math.max(0, ...sizes.map(([outside]) => outside ?? 0));
	const scale = most > 0 ? (2 * LARGEST_RADIUS) / most : 0;
	return members.map(({ id, label }, i) => {
		const [outside = 0, wall = 0] = sizes[i] ?? [];
		return { id, label: label ?? id, radius: (outside * scale) / 2, wall: wall * scale };
	});
}
