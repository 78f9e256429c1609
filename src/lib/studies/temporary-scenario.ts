/**
 * A scenario set aside for a study: it starts from another one, is measured against what that one is
 * measured against, and takes what the study puts into it, so that nothing else in the workbook moves.
 */
import { baseOf, findScenario } from '$lib/workbook/lookup';
import type { Scenario, Workbook } from '$lib/workbook/schema';

export interface TemporaryScenario {
	readonly workbook: Workbook;
	readonly id: string;
}

/** `against` is the scenario that `x[reference]` reads in it. */
export function withTemporaryScenario(
	workbook: Workbook,
	parent: string,
	against: string
): TemporaryScenario {
	const base = baseOf(workbook).id;
	let id = 'aside';
	while (findScenario(workbook, id)) id += '_';
	const scenario: Scenario = {
		id,
		title: 'Set aside',
		parent,
		...(against === base ? {} : { against }),
		changes: []
	};
	return { id, workbook: { ...workbook, scenarios: [...workbook.scenarios, scenario] } };
}
