/** The frozen copies of a workbook as columns, each made once for a layout of cells, and what differs from them in words. */
import { frozenColumn } from '$lib/engine/frozen';
import type { Layout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import type { Frozen } from '$lib/workbook/schema';
import type { CellView } from './cells';
import { texts } from './frozen/texts';

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

/** What differs is told against a copy; the value itself stands in full, as "same" would mean the base beside it. */
export function viewAgainst(own: CellView, againstCopy: CellView): CellView {
	const { difference, relative, instead, isNearly } = againstCopy;
	return {
		...own,
		difference,
		relative,
		instead,
		isNearly,
		same: own.same === false ? false : null
	};
}

/** A cell of a copy, and beside it the scenario in hand against it: more there is a plus. */
export function viewOfCopy(own: CellView, hand: CellView, title: string): CellView {
	const { difference, relative, isNearly, same } = hand;
	const isOther = same === false && !difference && !isNearly;
	const notInIt = /^(\d+) only here$/.exec(hand.instead)?.[1];
	const instead =
		hand.kind === 'span'
			? notInIt
				? texts.notInIt(notInIt)
				: hand.instead
			: isOther
				? texts.isNow(hand.text)
				: hand.instead;
	const tip = same === false ? texts.handIs(title, hand.full || hand.text) : '';
	const full = [own.full, tip].filter(Boolean).join(', ');
	return { ...own, full, difference, relative, isNearly, instead };
}
