/** A value in the words and digits of the grid. */
import { cellAt, type QuantityLayout } from '$lib/engine/layout';
import { ABSENT, OK } from '$lib/engine/state';
import { viewCell } from '$lib/ui/cells';
import { unitShown } from '$lib/ui/format';
import { memberName } from '$lib/ui/member-name';
import type { Making, Side } from './making';

export function cellWords(
	{ open }: Making,
	{ source }: Side,
	quantity: QuantityLayout,
	cell: number
): string {
	const { layout, locale, results, base } = open;
	const own = source.results;
	const of = results.get(base) ?? own;
	if (!own || !of) return '…';
	const view = viewCell({ layout, quantity, locale, base: of }, own, cell);
	return view.kind === 'words' ? view.full : view.text;
}

/** Whether there is something to say of it. */
export function saysNothing({ source }: Side, cell: number): boolean {
	const state = source.results?.states[cell];
	return state === ABSENT || (state === OK && source.results?.values[cell] === 0);
}

/** The members of a cell, by their names. */
export function membersWords({ open }: Making, quantity: QuantityLayout, cell: number): string {
	const start = (cell - quantity.base) * quantity.axes.length;
	return quantity.axes
		.map(({ set }, axis) => {
			const known = open.layout.sets.get(set);
			const member = known?.members[quantity.members[start + axis]!];
			return known && member ? memberName(known, member) : '';
		})
		.join(', ');
}

/** "Investment, EUR"; a choice and a yes/no have no unit. */
export function titleWithUnit({ quantity }: QuantityLayout): string {
	const unit = unitShown(quantity);
	return unit ? `${quantity.label}, ${unit}` : quantity.label;
}

export const isNumber = ({ quantity }: QuantityLayout): boolean =>
	(quantity.type ?? 'number') === 'number' && quantity.shown !== 'date';

/** The cell of a quantity at these members of its sets. */
export const cellOf = (quantity: QuantityLayout, at: Readonly<Record<string, number>>): number =>
	cellAt(
		quantity,
		quantity.axes.map(({ set }, i) => at[set] ?? (quantity.sizes[i] === 1 ? 0 : -1))
	);
