/** What keeps a plan from being better, most first: what is scarce, what is left out for it, and what is held. */
import { membersOf, quantityOf, type Layout } from '$lib/engine/layout';
import type { Look, Unmet } from '$lib/programmes/inquiry/questions';
import { memberLabel, placeLabel, quantityLabel } from './labels';

/** Something scarce: one resource over the members of the set that stands across. */
export interface Scarce {
	/** What is worth something, and of which resource; empty where it is one for all. */
	readonly label: string;
	readonly place: string;
	/** The cell of the requirement where one more is worth most, and its member across; empty where there is none. */
	readonly cell: number;
	readonly at: string;
	readonly worth: number;
	/** The unit of what there could be more of. */
	readonly unit: string;
	/** In how many of the members across one more is worth something. */
	readonly count: number;
	readonly of: number;
}

/** Left out of one decision. */
export interface Short {
	readonly quantity: string;
	readonly label: string;
	readonly amount: number;
	readonly unit: string;
	/** Null where it has no answer. */
	readonly money: number | null;
	/** Where most is left out. */
	readonly cell: number;
}

export function scarceOf(
	layout: Layout,
	look: Look,
	across: string,
	each: readonly string[]
): Scarce[] {
	const unitOf = new Map(look.rooms.map(({ cell, unit }) => [cell, unit]));
	const found = new Map<string, Scarce & { total: number }>();
	for (const { of: cell, quantity: name, more } of look.worth) {
		const quantity = quantityOf(layout, cell);
		if (!quantity) continue;
		const place = placeLabel(layout, cell, [across, ...each]);
		const key = `${name} ${place}`;
		const worth = more ?? 0;
		const before = found.get(key);
		const isMost = !before || worth > before.worth;
		const column = quantity.axes.findIndex(({ set }) => set === across);
		found.set(key, {
			label: quantityLabel(layout, name),
			place,
			...(isMost
				? {
						cell,
						at: memberLabel(layout, across, membersOf(layout, cell)[column] ?? ''),
						worth,
						unit: unitOf.get(cell) ?? ''
					}
				: { cell: before.cell, at: before.at, worth: before.worth, unit: before.unit }),
			count: (before?.count ?? 0) + (worth > 0 ? 1 : 0),
			of: (before?.of ?? 0) + 1,
			total: (before?.total ?? 0) + worth
		});
	}
	const sorted = [...found.values()].sort((a, b) => b.total - a.total);
	return sorted.filter(({ total }) => total > FAINT * (sorted[0]?.total ?? 0));
}
/** What is worth less than this, against the scarcest, keeps nothing back. */
const FAINT = 0.01;

export function shortOf(layout: Layout, look: Look): Short[] {
	const found = new Map<string, Short & { most: number }>();
	for (const { cell, value, most, money } of look.unmet) {
		const { name, unit = '1' } = quantityOf(layout, cell)!.quantity;
		const before = found.get(name);
		const missing = most - value;
		const isMost = missing > (before?.most ?? 0);
		found.set(name, {
			quantity: name,
			label: quantityLabel(layout, name),
			unit,
			amount: (before?.amount ?? 0) + missing,
			money: money === null || before?.money === null ? null : (before?.money ?? 0) + money,
			cell: isMost ? cell : before!.cell,
			most: Math.max(missing, before?.most ?? 0)
		});
	}
	return [...found.values()].sort((a, b) => (b.money ?? 0) - (a.money ?? 0));
}

export const unmetByCell = (look: Look | null): ReadonlyMap<number, Unmet> =>
	new Map((look?.unmet ?? []).map((one) => [one.cell, one]));

/** What is left out of a row, over all its cells; null where nothing is. */
export function rowShort(
	cells: readonly ({ readonly cell: number } | null)[],
	unmet: ReadonlyMap<number, Unmet>
): { readonly amount: number; readonly money: number | null } | null {
	const some = cells.flatMap((cell) => (cell && unmet.get(cell.cell)) ?? []);
	if (some.length === 0) return null;
	return {
		amount: some.reduce((sum, { most, value }) => sum + most - value, 0),
		money: some.reduce<number | null>(
			(sum, { money }) => (sum === null || money === null ? null : sum + money),
			0
		)
	};
}
