/** What of a workbook a study needs where it looks at few of its scenarios. */
import { baseOf, findScenario } from '$lib/workbook/lookup';
import { referenceOf, scenarioChain } from '$lib/workbook/scenario';
import type { Workbook } from '$lib/workbook/schema';

/** The workbook with these scenarios, those they are built on, and those they are measured against. */
export function onlyScenarios(workbook: Workbook, wanted: Iterable<string>): Workbook {
	const kept = new Set([baseOf(workbook).id, ...wanted]);
	for (const id of kept) {
		for (const one of scenarioChain(workbook, id)) kept.add(one.id);
		if (findScenario(workbook, id)) kept.add(referenceOf(workbook, id).id);
	}
	const scenarios = workbook.scenarios.filter(({ id }) => kept.has(id));
	return scenarios.length === workbook.scenarios.length ? workbook : { ...workbook, scenarios };
}
