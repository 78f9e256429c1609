/** What a month held that leaves when months move on: its own cells, kept as a frozen copy. Null where it held none. */
import type { Frozen } from '$lib/workbook/schema';
import { frozenFigures, frozenSets, type FrozenHead } from './frozen';
import type { Layout } from './layout';
import type { Results } from './results';

export function monthLeft(
	layout: Layout,
	results: Results,
	{ set, month, head }: { readonly set: string; readonly month: string; readonly head: FrozenHead }
): Frozen | null {
	const quantities = frozenFigures(layout, results, ({ axes }, at) =>
		axes.some((axis, i) => axis.set === set && at[i] === month)
	);
	if (quantities.length === 0) return null;
	const sets = frozenSets(layout, quantities, true);
	return { ...head, ...(sets.length > 0 && { sets }), quantities };
}
