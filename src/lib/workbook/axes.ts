/**
 * What a quantity is per: its axes as written ("product", or "from: product" where a set is used twice),
 * and which axes a relation of the quantity restricts. Whether the sets exist is for `consistency.ts`.
 */
import type { Quantity, Relation } from './schema';

export interface NamedAxis {
	/** The set's name, or the name before the colon. */
	readonly name: string;
	readonly set: string;
}

/** "from: product" is { name: "from", set: "product" }; "product" names itself. */
export function parseAxis(text: string): NamedAxis {
	const colon = text.indexOf(':');
	if (colon < 0) return { name: text.trim(), set: text.trim() };
	return { name: text.slice(0, colon).trim(), set: text.slice(colon + 1).trim() };
}

export function axesOf({ per = [] }: Pick<Quantity, 'per'>): NamedAxis[] {
	return per.map(parseAxis);
}

/**
 * For each set of the relation, in its order, the place of the axis that it restricts: one named like
 * the set first, then the first with that set that is still free. Null where an axis is missing.
 */
export function relationAxes(axes: readonly NamedAxis[], relation: Relation): number[] | null {
	const taken: number[] = [];
	for (const set of relation.sets) {
		const isFree = (axis: NamedAxis, place: number) => axis.set === set && !taken.includes(place);
		let place = axes.findIndex((axis, i) => axis.name === set && isFree(axis, i));
		if (place < 0) place = axes.findIndex(isFree);
		if (place < 0) return null;
		taken.push(place);
	}
	return taken;
}

/** One text for a list of member ids: a key of maps. Member ids hold no control characters. */
export const pairKey = (ids: readonly string[]): string => ids.join('\u0001');
