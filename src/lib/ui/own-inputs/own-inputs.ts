/**
 * What is entered for one member of a set: every quantity that is per it and takes entries, and those of what lies under
 * it, as the coils of a pipe, where they are few.
 */
import type { Layout } from '$lib/engine/layout';
import { hasInputs } from '$lib/workbook/cells';
import type { Part } from '../part-rows';

/** The members of another set that lie under it. */
export interface Under {
	readonly set: string;
	readonly ids: readonly string[];
}

/** More than so many lie on a sheet of their own better. */
export const FEW = 12;

export interface OwnInputs {
	readonly part: Part;
	/** How many quantities. */
	readonly count: number;
	/** Those that lie under it and are too many to be listed here. */
	readonly leftOut: readonly Under[];
}

export function ownInputs(
	layout: Layout,
	set: string,
	id: string,
	under: readonly Under[]
): OwnInputs {
	const listed = under.filter(({ ids }) => ids.length > 0 && ids.length <= FEW);
	const members = new Map<string, ReadonlySet<number>>();
	for (const { set: name, ids } of [{ set, ids: [id] }, ...listed])
		members.set(name, placesOf(layout, name, ids));
	const quantities = new Set(
		layout.quantities.flatMap(({ quantity, axes }) =>
			hasInputs(quantity) && axes.some((axis) => members.has(axis.set)) ? [quantity.name] : []
		)
	);
	return {
		...{ part: { of: set, quantities, members }, count: quantities.size },
		leftOut: under.filter(({ ids }) => ids.length > FEW)
	};
}

function placesOf(layout: Layout, set: string, ids: readonly string[]): Set<number> {
	const wanted = new Set(ids);
	return new Set(
		(layout.sets.get(set)?.members ?? []).flatMap((member, at) =>
			wanted.has(member.id) ? [at] : []
		)
	);
}
