/** What each scenario of a workbook says itself, as the cells of the second engine need it. */
import { baseOf, findScenario } from '$lib/workbook/lookup';
import { referenceOf } from '$lib/workbook/scenario';
import type { Workbook } from '$lib/workbook/schema';
import type { Source } from '../cells/reach';
import { Inputs, type CellValues } from '../inputs';
import type { Plan } from '../plan';
import type { Outcome } from '../results';

export function sourcesOf(workbook: Workbook, plan: Plan): Source[] {
	const inputs = new Inputs(plan, workbook);
	const base = baseOf(workbook).id;
	const placeOf = new Map(workbook.scenarios.map(({ id }, place) => [id, place]));
	const circular = measuredInCircles(workbook);
	return workbook.scenarios.map((scenario) => {
		const { id } = scenario;
		const cells = id === base ? inputs.all() : inputs.changedBy(scenario);
		const reference = referenceOf(workbook, id).id;
		return {
			id,
			parent: id === base ? -1 : (placeOf.get(scenario.parent ?? base) ?? placeOf.get(base)!),
			reference: circular.has(id) ? -1 : placeOf.get(reference)!,
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
	const circular = new Set<string>();
	const done = new Map<string, boolean>();
	const base = baseOf(workbook).id;
	const visit = (id: string): boolean => {
		const known = done.get(id);
		if (known !== undefined) return known;
		done.set(id, false);
		if (id !== base) {
			visit(findScenario(workbook, id)?.parent ?? base);
			const reference = referenceOf(workbook, id).id;
			if (reference !== id && !visit(reference)) circular.add(id);
		}
		done.set(id, true);
		return true;
	};
	visit(base);
	for (const { id } of workbook.scenarios) visit(id);
	return circular;
}
