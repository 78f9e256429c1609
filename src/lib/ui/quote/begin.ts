/** Begins a quote from a member of a set, where an order names one of it whole: an item, with its product and length. */
import type { Command } from '$lib/workbook/commands';
import { findQuantity, quotesStandOn } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import { broughtAlong, companionsOf, namesWhole } from './companions';

/** What is entered for it; null where no quote of the workbook names such members. */
export function orderOf(workbook: Workbook, set: string, member: string): Command | null {
	const scenario = quotesStandOn(workbook);
	for (const picture of workbook.pictures ?? []) {
		if (picture.kind !== 'quote') continue;
		const choice = picture.order.find((name) => {
			const type = findQuantity(workbook, name)?.type;
			return (
				typeof type === 'object' &&
				type.member_of === set &&
				namesWhole(workbook, picture.order, name)
			);
		});
		if (choice === undefined) continue;
		const along = broughtAlong(
			workbook,
			scenario,
			companionsOf(workbook, picture.order, choice),
			member
		);
		const entries = [{ quantity: choice, at: [], value: member }, ...along];
		return { kind: 'set_inputs', scenario, entries };
	}
	return null;
}
