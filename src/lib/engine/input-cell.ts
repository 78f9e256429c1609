/** Which cells hold entered values, where some members of a quantity are entered and others follow formulas. */
import { takesEntry } from '$lib/workbook/cells';
import type { Workbook } from '$lib/workbook/schema';
import type { QuantityLayout } from './layout';

export function isInputCell(
	workbook: Pick<Workbook, 'sets'>,
	layout: QuantityLayout,
	cell: number
): boolean {
	const { quantity, axes, members, base } = layout;
	const { formula } = quantity;
	if (typeof formula !== 'object') return takesEntry(quantity, '');
	const axis = axes.findIndex((axis) => axis.name === formula.by);
	const set = workbook.sets.find((one) => one.name === axes[axis]?.set);
	const ordinal = members[(cell - base) * axes.length + axis] ?? 0;
	return takesEntry(quantity, set?.members[ordinal]?.id ?? '');
}

/** Whether something is typed into a cell: an entered value, or a step of a path in time. */
export const isTypedCell = (
	workbook: Pick<Workbook, 'sets'>,
	layout: QuantityLayout,
	cell: number
): boolean => layout.quantity.path !== undefined || isInputCell(workbook, layout, cell);
