/** Alternatives of an option: made from the changes of a scenario, and said in words. */
import { findQuantity, scenarioTitle } from '$lib/workbook/lookup';
import { scenarioChain } from '$lib/workbook/scenario';
import type { Change, Workbook } from '$lib/workbook/schema';
import type { StudyOption } from '$lib/workbook/study-schema';
import { flatten, layered } from '$lib/workbook/values';

type Alternative = StudyOption['alternatives'][number];

/** All that a scenario changes against the base, its parents' changes included. */
export function alternativeFrom(workbook: Workbook, scenario: string): Alternative {
	const changes = new Map<string, Change>();
	for (const one of scenarioChain(workbook, scenario))
		for (const { quantity, value } of one.changes)
			changes.set(quantity, {
				quantity,
				value: layered(changes.get(quantity)?.value, value) ?? value
			});
	return {
		label: scenarioTitle(workbook, scenario),
		changes: [...changes.values()]
	};
}

/** "no changes", "Chosen in this scenario: 1 value; Planned good metres: 90 values" */
export function changeWords(workbook: Workbook, changes: readonly Change[]): string {
	if (changes.length === 0) return 'no changes';
	return changes
		.map(({ quantity, value }) => {
			const count = flatten(value).length;
			const label = findQuantity(workbook, quantity)?.label ?? `${quantity} (gone)`;
			return `${label}: ${count === 1 ? '1 value' : `${count} values`}`;
		})
		.join('; ');
}
