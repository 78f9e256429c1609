/**
 * A quantity as somebody is writing it, tried against an open workbook: what is wrong with it, what its formula
 * gives, how it will be kept, and its first values in the base. The open workbook is not touched.
 */
import { applyCommand, type Command } from '$lib/workbook/commands';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { tryFormula, type Gives } from './planner/check';
import { buildPlan } from './planner/plan';
import { withGathering } from './gathering';
import { placeOf } from './layout';
import type { Plan, PlanProblem } from './plan';
import type { Outcome, Place, Results } from './results';

export interface Trial {
	readonly problems: readonly PlanProblem[];
	readonly warnings: readonly PlanProblem[];
	/** The unit that the formula gives, "yes or no", or "a member of …"; null where it cannot be told. */
	readonly gives: string | null;
	/** The quantity as it is to be kept, gathering written out in its formulas. */
	readonly written: Quantity;
	/** Its first values in the base; empty where there is a problem, or too much to compute while typing. */
	readonly sample: readonly (Place & Outcome)[];
}

/** How many values are shown. */
export const SAMPLE = 12;
/** Beyond this many nodes a plan is not made anew while somebody types. */
const NODE_LIMIT = 400_000;

/** `replaces` is the name of the quantity whose place it takes; left out, it is new. */
export function tryOut(
	plan: Plan,
	workbook: Workbook,
	quantity: Quantity,
	replaces: string | undefined,
	resultsOf: (edited: Workbook) => { plan: Plan; base: Results }
): Trial {
	const command: Command =
		replaces === undefined
			? { kind: 'add_quantity', sheet: 0, index: 0, quantity }
			: { kind: 'replace_quantity', name: replaces, quantity, also: true };
	const edit = applyCommand(workbook, command);
	if (!edit.ok) return refused(quantity, edit.problem);
	const isRenamed = replaces !== undefined && replaces !== quantity.name;
	const tried = tryFormula(isRenamed ? buildPlan(edit.workbook) : plan, quantity);
	return {
		problems: tried.problems,
		warnings: tried.warnings,
		gives: givenText(tried.gives[0]),
		written: withGathering(quantity, tried.printed),
		sample:
			tried.problems.length > 0 || plan.nodes.count > NODE_LIMIT
				? []
				: sampleOf(quantity.name, resultsOf(edit.workbook))
	};
}

function refused(quantity: Quantity, problem: { code: string; message: string }): Trial {
	const span = { start: 0, end: 0 };
	const problems = [{ ...problem, span, quantity: quantity.name, part: null }];
	return { problems, warnings: [], gives: null, written: quantity, sample: [] };
}

function givenText(gives: Gives | undefined): string | null {
	if (!gives) return null;
	if (gives.kind === 'yes_no') return 'yes or no';
	return gives.kind === 'member' ? `a member of ${gives.set ?? ''}` : (gives.unit?.text ?? null);
}

function sampleOf(name: string, { plan, base }: { plan: Plan; base: Results }) {
	const place = plan.layout.byName.get(name);
	if (!place) return [];
	const cells = Array.from({ length: Math.min(SAMPLE, place.count) }, (_, i) => place.base + i);
	return cells.map((cell) => ({
		...placeOf(plan.layout, cell),
		value: base.values[cell]!,
		state: base.states[cell]!
	}));
}
