/**
 * An open workbook with everything that is computed from it: the plan, the columns of all scenarios, the
 * reasons. The page's worker, the command line and the studies ask here.
 *
 * A workbook changes by commands only. What follows from an edit is computed; the plan is made anew only where
 * cells or formulas change (`structure.ts`).
 */
import { applyCommand, type Command, type CommandProblem } from '$lib/workbook/commands';
import { baseOf, findScenario } from '$lib/workbook/lookup';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import type { Answers } from './root-cause';
import { buildPlan } from './planner/plan';
import { checksOf, type Checks } from './checks';
import { errorOrigins, faultsByQuantity, type ErrorOrigin, type QuantityFault } from './faults';
import type { Layout } from './layout';
import type { Plan, PlanProblem } from './plan';
import { conditionsOf, hideAbsent, type Conditions } from './presence';
import { originOf } from './reason';
import type { Origin, Results, Why } from './results';
import { Scenarios, type Column } from './scenarios';
import { hasSameStructure, withWorkbook } from './structure';
import { tryOut, type Trial } from './trial';
import { explain } from './why';

export type Applied =
	| {
			readonly ok: true;
			/** Applied in turn, it takes the edit back. */
			readonly inverse: Command;
			/** Whether the plan was made anew, and with it the numbers of cells. */
			readonly structural: boolean;
			/** The scenarios whose values changed or may have. */
			readonly changed: readonly string[];
	  }
	| { readonly ok: false; readonly problem: CommandProblem };

export class Model {
	#workbook: Workbook;
	#plan: Plan;
	#layout: Layout;
	#scenarios: Scenarios;
	#conditions: Conditions;
	readonly #columns = new Map<string, Column>();

	private constructor(workbook: Workbook, plan: Plan) {
		this.#workbook = workbook;
		this.#plan = plan;
		this.#layout = this.#plan.layout;
		this.#scenarios = new Scenarios(this.#plan, workbook);
		this.#conditions = conditionsOf(this.#plan);
	}

	/** A plan of this very workbook, where there is one, need not be built again. */
	static open(workbook: Workbook, plan: Plan = buildPlan(workbook)): Model {
		return new Model(workbook, plan);
	}

	get workbook(): Workbook {
		return this.#workbook;
	}

	/** Of the workbook as it is now. */
	get layout(): Layout {
		return this.#layout;
	}

	get plan(): Plan {
		return this.#plan;
	}

	/** What keeps formulas from being computed. */
	get problems(): readonly PlanProblem[] {
		return this.#plan.problems;
	}

	/** The values of a scenario; computed on first asking, with those of the scenarios it needs. */
	results(scenario: string): Results {
		const { values, states } = this.column(scenario);
		const { cells } = this.#layout;
		return { scenario, values: values.slice(0, cells), states: states.slice(0, cells) };
	}

	/** The same with the cells of lifted subterms, which come after the layout's; not to be written to. */
	column(scenario: string): Column {
		let column = this.#columns.get(scenario);
		if (!column) {
			column = this.#scenarios.column(this.#known(scenario));
			if (!this.#scenarios.isCopy(scenario)) hideAbsent(this.#conditions, column);
			// Minus zero is zero to everyone who reads it.
			for (let cell = 0; cell < column.values.length; cell++) column.values[cell]! += 0;
			this.#columns.set(scenario, column);
		}
		return column;
	}

	/** One command, or several as one (`several`): all of them or none. */
	apply(command: Command): Applied {
		const result = applyCommand(this.#workbook, command);
		if (!result.ok) return result;
		const { workbook, inverse } = result;
		return { ok: true, inverse, ...this.take(workbook) };
	}

	/** Goes over to another state of the workbook; what does not differ is not computed again. */
	take(workbook: Workbook): { readonly structural: boolean; readonly changed: readonly string[] } {
		const structural = !hasSameStructure(this.#workbook, workbook);
		this.#workbook = workbook;
		const changed = structural ? this.#planAnew() : this.#scenarios.update(workbook);
		if (!structural) this.#layout = withWorkbook(this.#layout, workbook);
		for (const id of [...this.#columns.keys()])
			if (structural || changed.includes(id) || !findScenario(workbook, id))
				this.#columns.delete(id);
		return { structural, changed };
	}

	/** Everything that the page says of one value when asked why. */
	why(scenario: string, cell: number, from: number | null = null): Why {
		return explain(this.#answers(), this.#workbook, this.#known(scenario), cell, from);
	}

	/** Why a cell has no value, and where that arose; null where it has one. */
	origin(scenario: string, cell: number): Origin | null {
		return originOf(this.#answers(), this.#workbook, this.#known(scenario), cell);
	}

	/** Where the errors of a scenario arose, by quantity. */
	errorOrigins(scenario: string): ErrorOrigin[] {
		return errorOrigins(this.#answers(), this.#workbook, this.#known(scenario));
	}

	/** Which quantities show an error in a scenario, and why. */
	faults(scenario: string): QuantityFault[] {
		return faultsByQuantity(this.#answers(), this.#workbook, this.#known(scenario));
	}

	checks(scenario: string): Checks {
		return checksOf(this.#answers(), this.#workbook, this.#known(scenario));
	}

	/** What a quantity would give; `replaces` is the name of the one whose place it takes. */
	tryQuantity(quantity: Quantity, replaces?: string): Trial {
		return tryOut(this.#plan, this.#workbook, quantity, replaces, (edited) => {
			const model = Model.open(edited);
			return { plan: model.plan, base: model.results(baseOf(edited).id) };
		});
	}

	/** The input cells that a scenario itself changes, ascending. */
	inputsChangedBy(scenario: string): Int32Array {
		return this.#scenarios.inputsChangedBy(scenario);
	}

	/** How many cells of the plan a scenario holds of its own; all others are its parent's. */
	cellsHeldBy(scenario: string): number {
		return this.#scenarios.ownCells(this.#known(scenario));
	}

	#answers(): Answers {
		return {
			plan: this.#plan,
			layout: this.#layout,
			base: baseOf(this.#workbook).id,
			conditions: this.#conditions,
			column: (scenario) => this.column(scenario),
			referenceOf: (scenario) => this.#scenarios.referenceOf(scenario),
			isCopy: (id) => this.#scenarios.isCopy(id)
		};
	}

	#planAnew(): string[] {
		this.#plan = buildPlan(this.#workbook);
		this.#layout = this.#plan.layout;
		this.#scenarios = new Scenarios(this.#plan, this.#workbook);
		this.#conditions = conditionsOf(this.#plan);
		return this.#workbook.scenarios.map(({ id }) => id);
	}

	/** The base where there is no such scenario any more: a page may ask just before it learns of it. */
	#known(scenario: string): string {
		const isKnown = findScenario(this.#workbook, scenario) ?? this.#scenarios.isCopy(scenario);
		return isKnown ? scenario : baseOf(this.#workbook).id;
	}
}
