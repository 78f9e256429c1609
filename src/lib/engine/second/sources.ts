/** What each scenario of a workbook says itself, as the cells of the second engine need it. */
import { baseOf, findScenario } from '$lib/workbook/lookup';
import { copyMeasuredAgainst, referenceOf } from '$lib/workbook/scenario';
import type { Workbook } from '$lib/workbook/schema';
import type { Source } from '$lib/engine/cells/reach';
import { referenceColumn } from '$lib/engine/frozen';
import { Inputs, type CellValues } from '$lib/engine/inputs';
import type { Plan } from '$lib/engine/plan';
import type { Outcome } from '$lib/engine/results';

export function sourcesOf(workbook: Workbook, plan: Plan): Source[] {
	const inputs = new Inputs(plan, workbook);
	const base = baseOf(workbook).id;
	const placeOf = new Map(workbook.scenarios.map(({ id }, place) => [id, place]));
	const circular = measuredInCircles(workbook);
	return workbook.scenarios.map((scenario) => {
		const { id } = scenario;
		const cells = id === base ? inputs.all() : inputs.changedBy(scenario);
		const reference = referenceOf(workbook, id).id;
		const copy = copyMeasuredAgainst(workbook, id);
		return {
			id,
			parent: id === base ? -1 : (placeOf.get(scenario.parent ?? base) ?? placeOf.get(base)!),
			reference: circular.has(id) || copy ? -1 : placeOf.get(reference)!,
			...(copy && { copy: referenceColumn(plan, copy) }),
			entered: outcomes(inputs.read(id, cells))
		};
	});
}

function outcomes({ cells, values, states }: CellValues): Map<number, Outcome> {
	const entered = new Map<number, Outcome>();
	cells.forEach((cell, i) => entered.set(cell, { value: values[i]!, state: states[i]! }));
	return entered;
}

/** Scenarios whose reference leads back to them by parents and references. */
function measuredInCircles(workbook: Workbook): ReadonlySet<string> {
	const base = baseOf(workbook).id;
	const leadsTo = (from: string, wanted: string): boolean => {
		const found = new Set([from]);
		for (const id of found) {
			if (!findScenario(workbook, id)) continue;
			if (id !== base) found.add(findScenario(workbook, id)?.parent ?? base);
			found.add(referenceOf(workbook, id).id);
		}
		return found.has(wanted);
	};
	const circular = new Set<string>();
	for (const { id } of workbook.scenarios) {
		const reference = referenceOf(workbook, id).id;
		if (reference !== id && leadsTo(reference, id)) circular.add(id);
	}
	return circular;
}
