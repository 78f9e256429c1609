/** Cells in the words of the workbook: labels of quantities, and of members where they are short. */
import { membersOf, quantityOf, type Layout, type QuantityLayout } from '$lib/engine/layout';
import type { Member } from '$lib/workbook/schema';

/** The longest label that stands in for an id. */
const SHORT = 12;

const memberLabels = new WeakMap<Member, string>();

export function memberLabel(layout: Layout, set: string, id: string): string {
	const member = layout.sets.get(set)?.members.find((one) => one.id === id);
	if (!member) return id;
	const known = memberLabels.get(member);
	if (known !== undefined) return known;
	// An id of several words is the workbook's own, not one that the trade knows.
	const isTold = member.label && (member.label.length <= SHORT || id.includes('_'));
	const label = (isTold && member.label) || id;
	memberLabels.set(member, label);
	return label;
}

export const quantityLabel = (layout: Layout, name: string): string =>
	layout.byName.get(name)?.quantity.label ?? name;

/** "PX15B, L2, October"; empty for a quantity of one value. `without`: sets whose member goes without saying. */
export function placeLabel(layout: Layout, cell: number, without: readonly string[] = []): string {
	const quantity = quantityOf(layout, cell);
	const at = membersOf(layout, cell);
	return (quantity?.axes ?? [])
		.flatMap(({ set }, i) => (without.includes(set) ? [] : [memberLabel(layout, set, at[i] ?? '')]))
		.join(', ');
}

/** "Made in the month: PX15B, L2, October". */
export function cellLabel(layout: Layout, cell: number, without: readonly string[] = []): string {
	const label = quantityOf(layout, cell)?.quantity.label ?? '';
	const place = placeLabel(layout, cell, without);
	return place ? `${label}: ${place}` : label;
}

export const unitOf = ({ quantity }: QuantityLayout): string => quantity.unit ?? '1';
