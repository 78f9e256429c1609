/**
 * In which order the scenarios of a workbook are computed: each after its parent and after the one that it is
 * measured against. Where a scenario is measured against one that is built on it, there is no such order; it is
 * named circular, and what it reads of its reference is an error.
 */
import { baseOf, findScenario } from '$lib/workbook/lookup';
import { referenceOf } from '$lib/workbook/scenario';
import type { Workbook } from '$lib/workbook/schema';

export interface ScenarioOrder {
	readonly ids: readonly string[];
	readonly circular: ReadonlySet<string>;
}

export function orderScenarios(workbook: Workbook): ScenarioOrder {
	const base = baseOf(workbook).id;
	const circular = new Set<string>();
	const needsOf = (id: string): string[] => {
		const parent = id === base ? [] : [findScenario(workbook, id)?.parent ?? base];
		const reference = referenceOf(workbook, id).id;
		// A frozen copy needs nothing, and is there before all.
		const isHere = reference === id || circular.has(id) || !findScenario(workbook, reference);
		return isHere ? parent : [...parent, reference];
	};
	const isNeeded = (wanted: string, from: string) => {
		const found = new Set([from]);
		for (const id of found) for (const need of needsOf(id)) found.add(need);
		return found.has(wanted);
	};
	const ids = workbook.scenarios.map(({ id }) => id);
	// All are judged before any is cut loose, so that the order in which they stand does not matter.
	const onLoop = ids.filter((id) => {
		const reference = referenceOf(workbook, id).id;
		return reference !== id && findScenario(workbook, reference) && isNeeded(id, reference);
	});
	for (const id of onLoop) circular.add(id);
	const order = new Set<string>();
	const visit = (id: string) => {
		if (order.has(id)) return;
		needsOf(id).forEach(visit);
		order.add(id);
	};
	visit(base);
	ids.forEach(visit);
	return { ids: [...order], circular };
}
