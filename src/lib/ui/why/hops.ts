/**
 * Where one can go on to from a value that is explained: what feeds it and what it feeds, quantity by quantity, the inputs
 * behind it, however far, and back along the way that was taken. One step of a person is a button that is pressed: opening
 * the members of a quantity is one, and going to one of them another.
 */
import type { Layout } from '$lib/engine/layout';
import { placeOf } from '$lib/engine/layout';
import type { Feed, Place, Why } from '$lib/engine/results';
import { placeLabel } from './explain';

/** All values of one quantity in a list: one by itself, or several that open. */
export interface Group<Item> {
	readonly quantity: string;
	readonly items: readonly Item[];
}

export function groupsOf<Item extends { readonly quantity: string }>(
	items: readonly Item[]
): Group<Item>[] {
	const groups = new Map<string, Item[]>();
	for (const item of items) {
		const some = groups.get(item.quantity);
		if (some) some.push(item);
		else groups.set(item.quantity, [item]);
	}
	return [...groups].map(([quantity, all]) => ({ quantity, items: all }));
}

/** A line of the list: a quantity with several values, which opens, or one value to go to. */
export type Line =
	| { readonly kind: 'group'; readonly quantity: string; readonly count: number }
	| { readonly kind: 'place'; readonly place: Feed; readonly isMember: boolean };

/** The lines as they stand on screen, members below the quantity that is open. */
export const linesOf = (groups: readonly Group<Feed>[], open: ReadonlySet<string>): Line[] =>
	groups.flatMap(({ quantity, items }): Line[] => {
		const [only] = items;
		if (items.length === 1) return [{ kind: 'place', place: only!, isMember: false }];
		const head: Line = { kind: 'group', quantity, count: items.length };
		if (!open.has(quantity)) return [head];
		return [head, ...items.map((place): Line => ({ kind: 'place', place, isMember: true }))];
	});

/** The inputs behind a value, those that a scenario changes first, as far as their names or members hold what was typed. */
export function inputGroups(layout: Layout, why: Why, typed: string): Group<Place>[] {
	const wanted = typed.trim().toLowerCase();
	const has = (text: string) => text.toLowerCase().includes(wanted);
	const sorted = [...why.inputs].sort((a, b) => Number(b.changed > 0) - Number(a.changed > 0));
	return sorted.flatMap(({ quantity, cells }) => {
		const { label = '', other_names = [] } = layout.byName.get(quantity)?.quantity ?? {};
		const places = cells.map((cell) => placeOf(layout, cell));
		if (wanted === '' || [quantity, label, ...other_names].some(has))
			return [{ quantity, items: places }];
		const items = places.filter(({ members }) => members.some(has));
		return items.length > 0 ? [{ quantity, items }] : [];
	});
}

/** The places behind the one that is explained, as they were gone through; the last is the one just before it. */
export type Trail = readonly Place[];

/** Going on to a place that was passed leads back to it. */
export function trailTo(trail: Trail, here: Place, to: number): Trail {
	const passed = trail.findIndex(({ cell }) => cell === to);
	if (passed >= 0) return trail.slice(0, passed);
	return here.cell === to ? trail : [...trail, here];
}

/** With what lies between the last place and this one, where one went to something far behind it. */
export function trailBy(trail: Trail, way: readonly Place[]): Trail {
	const [from] = way;
	if (way.length < 3 || trail.at(-1)?.cell !== from?.cell) return trail;
	return [...trail, ...way.slice(1, -1)];
}

export const trailLabels = (layout: Layout, trail: Trail): string[] =>
	trail.map((place, i) => placeLabel(layout, place, trail[i - 1]?.members ?? []));
