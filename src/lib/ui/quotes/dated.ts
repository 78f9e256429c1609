/** What dated months are to an order and to the plan, as the workbook's own formulas say it. */
import { membersOf, type Layout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { scalarOf } from '$lib/engine/frozen';
import { OK } from '$lib/engine/state';
import type { Dated, DatedMonth, Tender } from './tender';

export function datedMonths(layout: Layout, results: Results, { dated }: Tender): Dated {
	const found = new Map<string, DatedMonth>();
	const month = dated && layout.byName.get(dated.month);
	if (!dated || !month || month.axes.length !== 1) return found;
	const part = dated.part === undefined ? undefined : layout.byName.get(dated.part);
	for (let i = 0; i < month.count; i++) {
		const cell = month.base + i;
		if (results.states[cell] !== OK) continue;
		const of = scalarOf(layout, month.quantity, results.values[cell]!);
		const own =
			part && results.states[part.base + i] === OK
				? scalarOf(layout, part.quantity, results.values[part.base + i]!)
				: null;
		if (typeof of !== 'string') continue;
		found.set(membersOf(layout, cell)[0]!, {
			month: of,
			part: typeof own === 'string' ? own : null
		});
	}
	return found;
}
