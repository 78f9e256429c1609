/** Cells and their values in words: "coil_length of PX15B", "12.5 m". */
import { dateText } from '$lib/workbook/date-text';
import { membersOf, quantityOf, type QuantityLayout } from './layout';
import type { Plan } from './plan';
import { numberText } from './number-words';

/** The quantity whose cell it is, or whose formula a lifted cell comes from. */
export function ownerOf({ layout, liftedFrom }: Plan, cell: number): QuantityLayout {
	return cell < layout.cells
		? quantityOf(layout, cell)!
		: layout.quantities[liftedFrom[cell - layout.cells]!]!;
}

export function nameOf(plan: Plan, cell: number): string {
	const { name } = ownerOf(plan, cell).quantity;
	const members = cell < plan.layout.cells ? membersOf(plan.layout, cell) : [];
	return members.length === 0 ? name : `${name} of ${members.join(', ')}`;
}

/** The same as a reader of the screen knows it: "Coil length, PX15B". */
export function labelOf(plan: Plan, cell: number): string {
	const members = cell < plan.layout.cells ? membersOf(plan.layout, cell) : [];
	return [ownerOf(plan, cell).quantity.label, ...members].join(', ');
}

/** A value of a cell with its unit, yes or no, or the member's id. */
export function valueText(plan: Plan, cell: number, value: number): string {
	const { quantity } = ownerOf(plan, cell);
	if (quantity.type === 'yes_no') return value === 0 ? 'no' : 'yes';
	if (typeof quantity.type === 'object') {
		const set = plan.layout.sets.get(quantity.type.member_of);
		return set?.members[value]?.id ?? numberText(value);
	}
	if (quantity.shown === 'date') return dateText(value);
	return withUnit(value, quantity.unit);
}

export function withUnit(value: number, unit: string | undefined, write = numberText): string {
	return unit === undefined || unit === '' || unit === '1'
		? write(value)
		: `${write(value)} ${unit}`;
}
