/**
 * Studies whose programmes are planned anew at every point: the case and what it is measured against alike, so that both
 * stand on the best plan of the same market. Every draw is entered in the workbook, the plans that it makes stale are
 * solved, and the results are read where anybody would read them.
 */
import { Model } from '$lib/engine/model';
import { buildPlan } from '$lib/engine/planner/plan';
import type { Plan } from '$lib/engine/plan';
import { NO_ANSWER } from '$lib/engine/state';
import type { Solver } from '$lib/programmes/highs';
import type { Memory } from '$lib/programmes/memory';
import { planAll, readsOtherScenarios } from '$lib/programmes/plan-all';
import { findScenario } from '$lib/workbook/lookup';
import { activeProgrammes, filledQuantities, planInForce } from '$lib/workbook/plans';
import type { Programme } from '$lib/workbook/programme-schema';
import type { Workbook } from '$lib/workbook/schema';
import { plansOf } from '$lib/workbook/study-parts';
import type { Study } from '$lib/workbook/study-schema';
import {
	openColumns,
	type Asked,
	type Columns,
	type ColumnsRequest,
	type Following
} from './columns/columns';
import { cellsAt } from './columns/places';
import type { ColumnsRoom } from './columns/result-reader';
import { idsNeeded } from './columns/scenarios';
import { drawnWorkbook } from './drawn-workbook';
import { onlyScenarios } from './only-scenarios';
import { answer, refuse, type Answer } from './problem';

/** A solver, and what it found before. */
export interface Replanning {
	readonly solver: Solver;
	readonly memory: Memory;
	/** Hears how far a study is, as its points take a good while each. */
	readonly progress?: PlanningProgress | undefined;
}

export interface PlanningProgress {
	/** So many points more are to be planned. */
	ahead(points: number): void;
	/** One of them is. */
	planned(): void;
}

/** Whether a study of this workbook asks for plans to be made anew, so that a solver must be there. */
export const asksForPlans = (workbook: Workbook, study: Study): boolean =>
	plansOf(study) === 'follow' && activeProgrammes(workbook).length > 0;

/** `replanning`: left out, plans stay as they stand. */
export function openFollowing(
	request: ColumnsRequest,
	study: Study,
	replanning: Replanning | undefined
): Answer<Columns> {
	const { workbook, scenario } = request;
	if (!replanning || !asksForPlans(workbook, study)) return openColumns(request);
	const plan = request.plan ?? buildPlan(workbook);
	const asked = [scenario, ...request.ask.map((one) => one.scenario ?? scenario)];
	const isKnown = asked.every((id) => findScenario(workbook, id));
	if (!isKnown || !restsOnPlans(plan, workbook, request.ask))
		return openColumns({ ...request, plan });
	const following = PlansFollow.open(workbook, plan, asked, replanning);
	if (!following.ok) return following;
	return openColumns({
		...request,
		plan,
		workbook: following.value.workbook,
		following: following.value
	});
}

class PlansFollow implements Following {
	readonly #model: Model;
	readonly #needed: readonly string[];
	readonly #replanning: Replanning;
	/** Whether a programme reads other scenarios, so that a draw moves the plans of all. */
	readonly #isTied: boolean;
	/** With the best plans of all as it stands. */
	readonly workbook: Workbook;

	private constructor(model: Model, needed: readonly string[], replanning: Replanning) {
		this.#model = model;
		this.#needed = needed;
		this.#replanning = replanning;
		this.workbook = model.workbook;
		this.#isTied = activeProgrammes(model.workbook).some((programme) =>
			readsOtherScenarios(model, programme)
		);
	}

	static open(
		workbook: Workbook,
		plan: Plan,
		asked: readonly string[],
		replanning: Replanning
	): Answer<PlansFollow> {
		const needed = idsNeeded(plan, workbook, asked);
		const model = Model.open(onlyScenarios(workbook, needed), plan);
		const why = planned(model, needed, replanning);
		if (why !== null) return refuse('no-value', `As the scenarios stand, there is no plan: ${why}`);
		return answer(new PlansFollow(model, needed, replanning));
	}

	run(
		columns: Columns,
		draws: readonly ArrayLike<number>[],
		from: number,
		count: number,
		into: ColumnsRoom
	): void {
		const { progress } = this.#replanning;
		progress?.ahead(count);
		for (let i = 0; i < count; i++) {
			const isPlanned = this.#go(columns, draws, from + i);
			columns.results.forEach(({ scenario, cell }, result) => {
				const { values, states } = this.#model.column(scenario);
				into.values[result]![i] = isPlanned ? values[cell]! : NaN;
				into.states[result]![i] = isPlanned ? states[cell]! : NO_ANSWER;
			});
			progress?.planned();
		}
	}

	drawn(columns: Columns, draws: readonly ArrayLike<number>[], draw: number): Workbook | null {
		return this.#go(columns, draws, draw) ? this.#model.workbook : null;
	}

	/** Takes the model to a draw; false where a programme has no plan there. */
	#go(columns: Columns, draws: readonly ArrayLike<number>[], draw: number): boolean {
		this.#model.take(drawnWorkbook(columns, draws, draw));
		const moved = new Set(columns.driven.map(({ id }) => id));
		const ids = this.#isTied ? this.#needed : this.#needed.filter((id) => moved.has(id));
		return planned(this.#model, ids, this.#replanning) === null;
	}
}

/** Makes the plans of these scenarios that do not answer their programme; why one has none, null where all are proven. */
function planned(
	model: Model,
	ids: readonly string[],
	{ solver, memory }: Replanning
): string | null {
	const isOpen = (programme: Programme, scenario: string) =>
		ids.includes(scenario) &&
		planInForce(model.workbook, programme.name, scenario)?.kept === undefined;
	for (const { plan, proven, problems } of planAll(solver, model, isOpen, {
		memory,
		staleOnly: true
	}))
		if (!plan || !proven) return problems.join(' ') || 'it could not be proven best.';
	return null;
}

/** Whether any of these results is computed from what a programme decides. */
function restsOnPlans(plan: Plan, workbook: Workbook, ask: readonly Asked[]): boolean {
	const filled = filledQuantities(workbook);
	const { starts, targets } = plan.precedents;
	const stack = ask.flatMap((one) => {
		const cells = cellsAt(plan, one);
		return cells.ok ? [...cells.value] : [];
	});
	const seen = new Uint8Array(plan.cells);
	for (let cell = stack.pop(); cell !== undefined; cell = stack.pop()) {
		if (seen[cell] === 1) continue;
		seen[cell] = 1;
		const quantity = plan.layout.quantities[plan.layout.quantityOfCell[cell] ?? -1];
		if (cell < plan.layout.cells && quantity && filled.has(quantity.quantity.name)) return true;
		for (let at = starts[cell]!; at < starts[cell + 1]!; at++) stack.push(targets[at]!);
	}
	return false;
}
