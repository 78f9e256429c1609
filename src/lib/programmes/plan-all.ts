/**
 * All plans of a workbook, each after those that it starts from: programmes in their order, parents first. Plans go to
 * the model together where no scenario's programme reads what another decides, as the whole workbook follows each time.
 */
import type { Model } from '$lib/engine/model';
import type { Column } from '$lib/engine/scenarios';
import { OK } from '$lib/engine/state';
import { findScenario } from '$lib/workbook/lookup';
import { activeProgrammes, ownPlan, planInForce } from '$lib/workbook/plans';
import type { Programme, ProgrammePlan } from '$lib/workbook/programme-schema';
import { scenarioChain } from '$lib/workbook/scenario';
import { derive } from './derive';
import type { Solver } from './highs';
import { Memory } from './memory';
import { cellsOf, type Derivation } from './part';
import { planScenario, type Planned, type PlanSettings } from './planning';

export interface PlanAllSettings extends Pick<PlanSettings, 'seconds' | 'gap' | 'memory'> {
	/** Leaves plans alone that answer what the formulas say now. */
	readonly staleOnly?: boolean;
	/** Whether the time for it is up: what is not planned by then is not planned. */
	readonly isLate?: () => boolean;
}

export function planningOrder(
	model: Model
): { readonly programme: Programme; readonly scenario: string }[] {
	const { workbook } = model;
	const depth = (id: string) => scenarioChain(workbook, id).length;
	const scenarios = workbook.scenarios.map(({ id }) => id).sort((a, b) => depth(a) - depth(b));
	return activeProgrammes(workbook).flatMap((programme) =>
		scenarios.map((scenario) => ({ programme, scenario }))
	);
}

/** Whether the plan that a scenario stands on is the answer to what its formulas say now. */
export function isCurrent(
	model: Model,
	programme: Programme,
	scenario: string,
	derivation: Derivation = derive(model, programme, scenario)
): boolean {
	const plan = planInForce(model.workbook, programme.name, scenario);
	return plan !== undefined && derivation.ok && derivation.derived.digest === plan.digest;
}

/** Makes every plan that is not kept, one after another, and hands them to the model. */
export function* planAll(
	solver: Solver,
	model: Model,
	only: (programme: Programme, scenario: string) => boolean = () => true,
	{ staleOnly = false, memory = new Memory(), isLate, ...limits }: PlanAllSettings = {}
): Generator<Planned> {
	const order = planningOrder(model).filter(({ programme, scenario }) => only(programme, scenario));
	for (const programme of new Set(order.map((each) => each.programme))) {
		const handing = new Handing(model, readsOtherScenarios(model, programme));
		try {
			for (const { scenario } of order.filter((each) => each.programme === programme)) {
				const derivation = derive(model, programme, scenario, isLate);
				// The plan that it inherits may have been made anew a moment ago, for other values than its own.
				const inForce = planInForce(model.workbook, programme.name, scenario);
				const stands = inForce !== undefined && !handing.replaces(inForce);
				if (staleOnly && stands && isCurrent(model, programme, scenario, derivation)) continue;
				const near = handing.near(scenario);
				const result = planScenario(solver, model, programme, scenario, {
					...limits,
					memory,
					derivation,
					near
				});
				if (ownPlan(model.workbook, programme.name, scenario)?.kept === undefined)
					handing.take(result);
				yield result;
			}
		} finally {
			handing.flush();
		}
	}
}

/** Plans on their way to the model. */
class Handing {
	readonly #model: Model;
	readonly #atOnce: boolean;
	readonly #columns = new Map<string, Column>();
	#plans: ProgrammePlan[] = [];

	constructor(model: Model, atOnce: boolean) {
		this.#model = model;
		this.#atOnce = atOnce;
	}

	take({ plan, chosen, scenario }: Planned): void {
		if (!plan || !chosen) return;
		this.#plans.push(plan);
		if (this.#atOnce) return this.flush();
		const { cells } = this.#model.plan;
		const column = { values: new Float64Array(cells), states: new Uint8Array(cells).fill(255) };
		for (const part of chosen)
			part.cells.forEach((cell, at) => {
				column.values[cell] = part.values[at]!;
				column.states[cell] = OK;
			});
		this.#columns.set(scenario, column);
	}

	/** Whether a plan of the model's gives way to one that the model has not heard of yet. */
	replaces({ programme, scenario }: ProgrammePlan): boolean {
		return this.#plans.some((one) => one.programme === programme && one.scenario === scenario);
	}

	/** What the parent's plan decides, where the model has not heard of it yet. */
	near(scenario: string): Column | undefined {
		const parent = findScenario(this.#model.workbook, scenario)?.parent;
		return parent ? this.#columns.get(parent) : undefined;
	}

	flush(): void {
		const plans = this.#plans;
		this.#plans = [];
		if (plans.length > 0) this.#model.apply({ kind: 'set_plans', plans });
	}
}

/** Whether anything that a programme is derived from reads another scenario, whose plan must then be there first. */
export function readsOtherScenarios({ plan }: Model, programme: Programme): boolean {
	const { byName } = plan.layout;
	const names = [programme.maximise ?? programme.minimise ?? '', ...programme.constraints];
	const stack = names.flatMap((name) => byName.get(name) ?? []).flatMap((one) => cellsOf(one));
	const seen = new Uint8Array(plan.cells);
	for (const cell of stack) seen[cell] = 1;
	const { starts, targets } = plan.precedents;
	for (let cell = stack.pop(); cell !== undefined; cell = stack.pop())
		for (let at = starts[cell]!; at < starts[cell + 1]!; at++) {
			const next = targets[at]!;
			if (seen[next] === 1) continue;
			seen[next] = 1;
			stack.push(next);
		}
	return plan.readsOtherScenario.some((cell) => seen[cell] === 1);
}
