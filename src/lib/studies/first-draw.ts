/**
 * The check that every study makes before it shows a number: its first draw, entered in the workbook, computed
 * by the second engine and compared with what the columns gave.
 */
import { valueText } from '$lib/engine/naming';
import type { Plan } from '$lib/engine/plan';
import { conditionsOf, hideAbsent, type Conditions } from '$lib/engine/presence';
import { reasonText } from '$lib/engine/wording';
import type { Outcome, Results } from '$lib/engine/results';
import { Scenarios } from '$lib/engine/scenarios';
import { Verifier } from '$lib/engine/second/verifier';
import { isWithinTolerance } from '$lib/engine/second/tolerance';
import { OK } from '$lib/engine/state';
import type { Columns } from './columns/columns';
import { drawnWorkbook } from './drawn-workbook';
import { onlyScenarios } from './only-scenarios';
import { answer, refuse, type Answer } from './problem';

export interface FirstDraw {
	/** Values that both engines gave, and that were compared. */
	readonly compared: number;
	/** Values that the second engine could not judge. */
	readonly notCompared: number;
}

/** What a study does about its first draw: has it checked at once, or notes it down to be checked (null). */
export type CheckFirst = (
	columns: Columns,
	draws: readonly ArrayLike<number>[]
) => Answer<FirstDraw | null>;

/** Runs to its end at once. */
export const verifyFirstDraw = (
	columns: Columns,
	draws: readonly ArrayLike<number>[],
	draw = 0
): Answer<FirstDraw> => toTheEnd(verifierSteps(columns, draws, draw));

/** What steps come to, with nobody listening in between. */
export function toTheEnd<T>(steps: Generator<void, T>): T {
	for (;;) {
		const step = steps.next();
		if (step.done === true) return step.value;
	}
}

export function* verifierSteps(
	columns: Columns,
	draws: readonly ArrayLike<number>[],
	draw = 0
): Generator<void, Answer<FirstDraw>> {
	const drawn = columns.following
		? columns.following.drawn(columns, draws, draw)
		: drawnWorkbook(columns, draws, draw);
	// Without a plan there is nothing to compare.
	if (!drawn) return answer({ compared: 0, notCompared: columns.results.length });
	const workbook = onlyScenarios(
		drawn,
		columns.results.map(({ scenario }) => scenario)
	);
	// Scenarios more or less leave the cells and their formulas as they are.
	const { plan } = columns;
	const scenarios = new Scenarios(plan, workbook);
	const conditions = conditionsOf(plan);
	const results: Results[] = workbook.scenarios.map(({ id }) => {
		const column = scenarios.column(id);
		hideAbsent(conditions, column);
		return { scenario: id, ...column };
	});
	const found = columns.run(draws, draw, 1);
	for (const [i, result] of columns.results.entries()) {
		const column = results.find(({ scenario }) => scenario === result.scenario)!;
		const single = { value: column.values[result.cell]!, state: column.states[result.cell]! };
		const one = { value: found.values[i]![0]!, state: found.states[i]![0]! };
		if (!isSame(one, single)) return differs(columns, i, one, single);
	}
	const cells = columns.results.map(({ cell }) => cell);
	const verifier = Verifier.ofCells(workbook, plan, behind(plan, conditions, cells));
	for (const share of verifier.build()) yield void share;
	const agreement = verifier.compare(results);
	verifier.destroy();
	const [worst] = agreement.disagreements;
	if (worst) {
		const name = [worst.quantity, worst.members.join(', ')].filter(Boolean).join(' of ');
		return refuse(
			'engines-differ',
			`The study stopped: on its first draw the two engines differ on ${name} (${said(columns, worst.cell, worst.first)} and ${said(columns, worst.cell, worst.second)}), so none of its numbers would be sure. Report this with the workbook.`,
			worst.quantity
		);
	}
	const notCompared = agreement.notCompared.reduce((sum, { count }) => sum + count, 0);
	return answer({ compared: agreement.compared, notCompared });
}

const isSame = (a: Outcome, b: Outcome) =>
	a.state === b.state && (a.state !== OK || isWithinTolerance(a.value, b.value));

function differs(columns: Columns, result: number, outcome: Outcome, two: Outcome) {
	const { quantity, members, cell } = columns.results[result]!;
	const name = [quantity, members.join(', ')].filter(Boolean).join(' of ');
	return refuse(
		'engines-differ',
		`The study stopped: on its first draw ${name} came out as ${said(columns, cell, outcome)} in the study and as ${said(columns, cell, two)} in the workbook. Report this with the workbook.`,
		quantity
	);
}

const said = ({ plan }: Columns, cell: number, { value, state }: Outcome) =>
	state === OK ? valueText(plan, cell, value) : reasonText(state) || 'no value';

/** Marks the cells that some are computed from, these included: what the second engine must look at. */
function behind(plan: Plan, conditions: Conditions, cells: readonly number[]): Uint8Array {
	const { starts, targets } = plan.precedents;
	const marks = new Uint8Array(plan.cells);
	const stack = [...cells];
	for (let cell = stack.pop(); cell !== undefined; cell = stack.pop()) {
		if (marks[cell] === 1) continue;
		marks[cell] = 1;
		for (let i = starts[cell]!; i < starts[cell + 1]!; i++) stack.push(targets[i]!);
		stack.push(...(conditions.get(cell) ?? []));
	}
	return marks;
}
