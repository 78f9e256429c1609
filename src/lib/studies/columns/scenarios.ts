/**
 * The scenarios that a study reads, each after those it reads itself: the ones asked for, what `x[reference]`
 * and `x[base]` mean in them, and what each of their cells holds when nothing is varied.
 */
import { baseOf } from '$lib/workbook/lookup';
import { copyMeasuredAgainst, referenceOf } from '$lib/workbook/scenario';
import type { Workbook } from '$lib/workbook/schema';
import { referenceColumn } from '$lib/engine/frozen';
import type { Plan } from '$lib/engine/plan';
import { orderScenarios } from '$lib/engine/scenario-order';
import { Scenarios, type Column } from '$lib/engine/scenarios';
import { CIRCULAR } from '$lib/engine/state';

export interface ScenarioOfStudy {
	readonly id: string;
	/** As computed, entered values that nobody sees included. */
	readonly column: Column;
	/** Places in the list of what a reading of the reference (1) and of the base (2) means; −1: none of them, see `outside`. */
	readonly others: readonly [own: number, reference: number, base: number];
	/** What a reading of the reference meets where it is no scenario: a frozen copy, or that it is measured in a circle. */
	readonly outside: Column;
}

export function scenariosOf(
	plan: Plan,
	workbook: Workbook,
	asked: Iterable<string>
): ScenarioOfStudy[] {
	const base = baseOf(workbook).id;
	const order = orderScenarios(workbook);
	const ids = idsNeeded(plan, workbook, asked);
	const computed = new Scenarios(plan, workbook);
	const circular = circularColumn(plan.cells);
	return ids.map((id, place) => ({
		id,
		column: computed.column(id),
		others: [
			place,
			id === base ? place : order.circular.has(id) ? -1 : ids.indexOf(referenceOf(workbook, id).id),
			id === base ? place : ids.indexOf(base)
		],
		outside: outsideOf(plan, workbook, id) ?? circular
	}));
}

/** The scenarios asked for and those that they read, each after those it reads itself. */
export function idsNeeded(plan: Plan, workbook: Workbook, asked: Iterable<string>): string[] {
	const order = orderScenarios(workbook);
	const needed = new Set(asked);
	const reads = plan.readsOtherScenario.length > 0;
	if (reads) needed.add(baseOf(workbook).id);
	for (const id of needed)
		if (reads && !order.circular.has(id)) needed.add(referenceOf(workbook, id).id);
	return order.ids.filter((id) => needed.has(id));
}

function outsideOf(plan: Plan, workbook: Workbook, id: string): Column | null {
	const copy = copyMeasuredAgainst(workbook, id);
	return copy ? referenceColumn(plan, copy) : null;
}

/** What stands where a scenario is measured against one that is built on it. */
function circularColumn(cells: number): Column {
	return {
		values: new Float64Array(cells).fill(NaN),
		states: new Uint8Array(cells).fill(CIRCULAR)
	};
}
