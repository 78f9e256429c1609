/** Which quantities programmes fill, and what their plans say for a scenario. */
import type { Programme, ProgrammePlan } from './programme-schema';
import { scenarioChain } from './scenario';
import type { Scalar, Values, Workbook } from './schema';
import { valueAt } from './values';

/** Those that are solved. */
export const activeProgrammes = (workbook: Workbook): Programme[] =>
	(workbook.programmes ?? []).filter(({ off }) => off !== true);

export const shadowQuantities = ({ shadow_prices }: Programme): string[] =>
	Object.keys(shadow_prices ?? {});

/** The quantities whose open cells a programme fills. */
export function filledQuantities(workbook: Workbook): Set<string> {
	return new Set(
		activeProgrammes(workbook).flatMap((programme) => [
			...programme.decisions,
			...shadowQuantities(programme)
		])
	);
}

export const ownPlan = (
	workbook: Workbook,
	programme: string,
	scenario: string
): ProgrammePlan | undefined =>
	workbook.plans?.find((plan) => plan.programme === programme && plan.scenario === scenario);

/** The plan that a scenario stands on: its own, or that of the nearest scenario that it starts from. */
export function planInForce(
	workbook: Workbook,
	programme: string,
	scenario: string
): ProgrammePlan | undefined {
	for (const { id } of scenarioChain(workbook, scenario).reverse()) {
		const plan = ownPlan(workbook, programme, id);
		if (plan) return plan;
	}
	return undefined;
}

/** What plans fill in for a scenario, by quantity; a quantity without an entry in its plan is 0 everywhere. */
export function filledValues(workbook: Workbook, scenario: string): ReadonlyMap<string, Values> {
	const filled = new Map<string, Values>();
	for (const programme of activeProgrammes(workbook)) {
		const plan = planInForce(workbook, programme.name, scenario);
		if (!plan) continue;
		for (const name of [...programme.decisions, ...shadowQuantities(programme)])
			filled.set(name, {});
		for (const { quantity, value } of plan.values)
			if (filled.has(quantity)) filled.set(quantity, value);
	}
	return filled;
}

/** By scenario, what its plans fill a cell with; null where none does. */
export function plannedValues(
	workbook: Workbook
): (scenario: string, quantity: string, at: readonly string[]) => Scalar {
	const known = new Map<string, ReadonlyMap<string, Values>>();
	return (scenario, quantity, at) => {
		let filled = known.get(scenario);
		if (!filled) known.set(scenario, (filled = filledValues(workbook, scenario)));
		return filled.has(quantity) ? (valueAt(filled.get(quantity), at) ?? 0) : null;
	};
}

/** What people wrote: without the plans that follow from it. One that somebody keeps as it stands is somebody's. */
export function withoutFollowingPlans(workbook: Workbook): Workbook {
	const { plans, ...rest } = workbook;
	const kept = plans?.filter(({ kept }) => kept !== undefined);
	if (!kept || kept.length === plans!.length) return workbook;
	return kept.length > 0 ? { ...rest, plans: kept } : rest;
}

/** Without plans whose programme or scenario has gone. */
export function withoutStrayPlans(workbook: Workbook): Workbook {
	const { plans, ...rest } = workbook;
	if (!plans) return workbook;
	const programmes = new Set(workbook.programmes?.map(({ name }) => name));
	const scenarios = new Set(workbook.scenarios.map(({ id }) => id));
	const kept = plans.filter(
		({ programme, scenario }) => programmes.has(programme) && scenarios.has(scenario)
	);
	if (kept.length === plans.length) return workbook;
	return kept.length > 0 ? { ...workbook, plans: kept } : rest;
}
