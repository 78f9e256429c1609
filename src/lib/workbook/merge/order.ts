/**
 * The order of a list after two people changed it: whoever moved entries has their order kept, and what the
 * other added comes after what it was put behind.
 */

export interface Orders {
	readonly base: readonly string[];
	readonly mine: readonly string[];
	readonly theirs: readonly string[];
}

/** Whether both moved what stood there before, each to another order. */
export function ordersDiffer({ base, mine, theirs }: Orders): boolean {
	const inAll = common(base, mine, theirs);
	const list = (ids: readonly string[]) => ids.filter((id) => inAll.has(id)).join('\u0001');
	const [was, one, other] = [list(base), list(mine), list(theirs)];
	return one !== was && other !== was && one !== other;
}

/** The kept entries, each once; `leader` decides where both moved the same ones. */
export function mergedOrder(
	orders: Orders,
	kept: ReadonlySet<string>,
	leader: 'mine' | 'theirs' = 'theirs'
): string[] {
	const { base, mine, theirs } = orders;
	const inBase = new Set(base);
	const hasMoved = (ids: readonly string[]) => {
		const both = common(base, ids);
		const list = (of: readonly string[]) => of.filter((id) => both.has(id)).join('\u0001');
		return list(base) !== list(ids);
	};
	const leads = ordersDiffer(orders) ? leader : hasMoved(mine) ? 'mine' : 'theirs';
	const [first, second] = leads === 'mine' ? [mine, theirs] : [theirs, mine];
	const order = first.filter((id) => kept.has(id));
	const placed = new Set(order);
	let at = 0;
	for (const id of second) {
		if (!kept.has(id)) continue;
		if (placed.has(id)) {
			at = order.indexOf(id) + 1;
			continue;
		}
		// Behind what the other one put in the same place.
		while (at < order.length && !inBase.has(order[at]!)) at++;
		order.splice(at++, 0, id);
		placed.add(id);
	}
	return order;
}

function common(...lists: readonly (readonly string[])[]): Set<string> {
	const [first = [], ...rest] = lists;
	return rest.reduce((left, list) => {
		const has = new Set(list);
		return new Set([...left].filter((id) => has.has(id)));
	}, new Set(first));
}
