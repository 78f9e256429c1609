/** What is held by entries, read from the workbook: for where no plan fits, so that no answer tells it with its costs. */
import type { Pins } from '$lib/programmes/inquiry/questions';
import type { Programme } from '$lib/workbook/programme-schema';
import { planTable, type Asked } from './plan-table';

/** What is told one by one. */
const MOST = 40;

export function heldBy(asked: Omit<Asked, 'quantity' | 'all'>, programme: Programme): Pins {
	const all = programme.decisions.flatMap((quantity) =>
		(planTable({ ...asked, quantity, all: true })?.rows ?? []).flatMap(({ cells }) =>
			cells.flatMap((one) =>
				one?.isPinned ? [{ cell: one.cell, value: one.value, cost: null }] : []
			)
		)
	);
	return { each: all.slice(0, MOST), together: null, more: Math.max(0, all.length - MOST) };
}
