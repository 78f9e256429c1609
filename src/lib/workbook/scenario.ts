/**
 * What a scenario says about an input: its own changes, and where it says nothing, its parent's, down to
 * the base, whose values stand in the quantities. Formulas and their results are for the engine.
 */
import { baseOf, changesOf, findQuantity, findScenario } from './lookup';
import { findFrozen } from './frozen';
import type { Frozen, Scalar, Scenario, Values, Workbook } from './schema';
import { flatten, layered, valueAt } from './values';

/** The base, then each parent in turn, then the scenario itself. Empty when there is no such scenario. */
export function scenarioChain(workbook: Workbook, id: string): Scenario[] {
	const chain: Scenario[] = [];
	let here = findScenario(workbook, id);
	while (here && !chain.includes(here)) {
		chain.unshift(here);
		here = here.parent === null ? undefined : findScenario(workbook, here.parent);
	}
	return chain;
}

/** What `x[reference]` reads: the base unless the scenario names another, or a frozen copy. */
export function referenceOf(workbook: Workbook, id: string): Scenario | Frozen {
	const against = findScenario(workbook, id)?.against;
	if (against === undefined) return baseOf(workbook);
	return findScenario(workbook, against) ?? findFrozen(workbook, against) ?? baseOf(workbook);
}

/** The frozen copy that a scenario is measured against; undefined where that is a scenario. */
export const copyMeasuredAgainst = (workbook: Workbook, id: string): Frozen | undefined => {
	const { id: reference } = referenceOf(workbook, id);
	return findScenario(workbook, reference) ? undefined : findFrozen(workbook, reference);
};

export interface Input {
	/** Null: nobody entered one, or the scenario cleared it. */
	readonly value: Scalar;
	/** Id of the scenario that says so; the base where none does. */
	readonly from: string;
}

/** An input as a scenario sees it, and which scenario of its chain says so. */
export function inputAt(
	workbook: Workbook,
	scenarioId: string,
	quantity: string,
	at: readonly string[]
): Input {
	for (const scenario of scenarioChain(workbook, scenarioId).reverse()) {
		const value = valueAt(changesOf(scenario).get(quantity)?.value, at);
		if (value !== undefined) return { value, from: scenario.id };
	}
	const value = valueAt(findQuantity(workbook, quantity)?.value, at);
	return { value: value ?? null, from: baseOf(workbook).id };
}

/** All entered values of a quantity as a scenario sees them. */
export function inputValues(
	workbook: Workbook,
	scenarioId: string,
	quantity: string
): Values | undefined {
	let values = findQuantity(workbook, quantity)?.value;
	for (const scenario of scenarioChain(workbook, scenarioId))
		values = layered(values, changesOf(scenario).get(quantity)?.value);
	return values;
}

/** The cells of a quantity that the scenario itself changes, its parents left out. */
export function changedCells(
	workbook: Workbook,
	scenarioId: string,
	quantity: string
): { at: string[]; value: Scalar }[] {
	const scenario = findScenario(workbook, scenarioId);
	return scenario ? flatten(changesOf(scenario).get(quantity)?.value) : [];
}

/** How many cells the scenario itself changes. */
export function countChanges(workbook: Workbook, scenarioId: string): number {
	const changes = findScenario(workbook, scenarioId)?.changes ?? [];
	return changes.reduce((count, change) => count + flatten(change.value).length, 0);
}
