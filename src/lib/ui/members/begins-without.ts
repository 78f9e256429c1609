/** What a copy of a member begins without: 0 in place of what the first one has, in the base, and nothing of its own in scenarios. */
import { axesOf } from '$lib/workbook/axes';
import type { Command, InputEntry } from '$lib/workbook/commands';
import { baseOf, findQuantity, changesOf } from '$lib/workbook/lookup';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';

export interface Copied {
	readonly set: string;
	readonly like: string;
	readonly id: string;
}

/** The quantities that a copy in this set is asked about. */
export const askedOfCopies = (workbook: Workbook, set: string): readonly Quantity[] =>
	(workbook.sets.find(({ name }) => name === set)?.not_copied ?? []).flatMap(
		(name) => findQuantity(workbook, name) ?? []
	);

/** Edits that follow the copying; `workbook` is the one before it. */
export function beginsWithout(workbook: Workbook, copied: Copied): Command[] {
	const asked = askedOfCopies(workbook, copied.set);
	const base = baseOf(workbook).id;
	return workbook.scenarios.flatMap((scenario): Command[] => {
		const isBase = scenario.id === base;
		const changes = changesOf(scenario);
		const entries = asked.flatMap((quantity) =>
			cellsOfCopy(
				quantity,
				isBase ? quantity.value : changes.get(quantity.name)?.value,
				copied
			).map((at): InputEntry => ({ quantity: quantity.name, at, value: isBase ? 0 : undefined }))
		);
		return entries.length === 0 ? [] : [{ kind: 'set_inputs', scenario: scenario.id, entries }];
	});
}

function cellsOfCopy(quantity: Quantity, values: Quantity['value'], { set, like, id }: Copied) {
	const isOfSet = axesOf(quantity).map((axis) => axis.set === set);
	return flatten(values).flatMap(({ at }) =>
		at.some((member, i) => isOfSet[i] && member === like)
			? [at.map((member, i) => (isOfSet[i] && member === like ? id : member))]
			: []
	);
}
