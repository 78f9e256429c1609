/** Where a figure stands in the grid. */
import { cellAt, type Layout } from '$lib/engine/layout';

/** The cell of some members, or the first of the quantity where they have none; −1 where it has no cell at all. */
export function placeCell(layout: Layout, name: string, at: readonly string[]): number {
	const quantity = layout.byName.get(name);
	if (!quantity || quantity.count === 0) return -1;
	const ordinals = quantity.axes.map(
		({ set }, axis) => layout.ordinals.get(set)?.get(at[axis] ?? '') ?? -1
	);
	const cell = cellAt(quantity, ordinals);
	return cell < 0 ? quantity.base : cell;
}
