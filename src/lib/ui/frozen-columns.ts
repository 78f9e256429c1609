/** The frozen copies of a workbook as columns, each made once for a layout of cells. */
import { frozenColumn } from '$lib/engine/frozen';
import type { Layout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import type { Frozen } from '$lib/workbook/schema';

/** By what stays the same while cells keep their numbers. */
const known = new WeakMap<Layout['quantityOfCell'], WeakMap<Frozen['quantities'], Results>>();

export function frozenColumns(layout: Layout): readonly Results[] {
	const columns = known.get(layout.quantityOfCell) ?? new WeakMap<Frozen['quantities'], Results>();
	known.set(layout.quantityOfCell, columns);
	return (layout.workbook.frozen ?? []).map((copy) => {
		const before = columns.get(copy.quantities);
		if (before) return before;
		const column = frozenColumn(layout, copy);
		columns.set(copy.quantities, column);
		return column;
	});
}
