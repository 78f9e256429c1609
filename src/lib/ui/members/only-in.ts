/** A copy of a member that stands in a new scenario alone, so that the base stays what it is measured against. */
import { axesOf } from '$lib/workbook/axes';
import { takesEntry } from '$lib/workbook/cells';
import type { Command } from '$lib/workbook/commands';
import { baseOf, findQuantity } from '$lib/workbook/lookup';
import type { SetDefinition, Workbook } from '$lib/workbook/schema';
import { idFrom } from '../scenarios/words';

/** The input that says whether a member like this one is there; null where a formula does, or nothing. */
export function presenceInput(workbook: Workbook, set: SetDefinition, like: string): string | null {
	const quantity = set.present === undefined ? undefined : findQuantity(workbook, set.present);
	if (!quantity || axesOf(quantity).length !== 1) return null;
	return takesEntry(quantity, like) ? quantity.name : null;
}

/** What makes the scenario, and takes the member out of all others; it follows the command that adds the member. */
export function onlyInNew(
	workbook: Workbook,
	presence: string,
	member: string,
	title: string
): { readonly id: string; readonly commands: readonly Command[] } {
	const base = baseOf(workbook).id;
	const id = idFrom(title, new Set(workbook.scenarios.map((one) => one.id)), 'scenario');
	const stands = (scenario: string, value: boolean): Command => ({
		...{ kind: 'set_inputs', scenario },
		entries: [{ quantity: presence, at: [member], value }]
	});
	const scenario = { id, title, parent: base, changes: [] };
	return {
		id,
		commands: [
			stands(base, false),
			{ kind: 'add_scenario', index: workbook.scenarios.length, scenario },
			stands(id, true)
		]
	};
}
