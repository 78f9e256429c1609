/**
 * Which cells move when the varied inputs move, and which of those an answer needs: forwards from the inputs,
 * then back from what was asked, over all scenarios that read one another.
 */
import type { Plan } from '$lib/engine/plan';
import type { ScenarioOfStudy } from './scenarios';

/** By scenario, by cell of the plan: 1 where it holds. */
export type Marks = readonly Uint8Array[];

export const noMarks = (plan: Plan, scenarios: readonly unknown[]): Uint8Array[] =>
	scenarios.map(() => new Uint8Array(plan.cells));

/** Marks, beside the inputs that are marked already, every formula cell that may differ from column to column. */
export function spread(plan: Plan, scenarios: readonly ScenarioOfStudy[], moves: Marks): void {
	const readsElse = new Uint8Array(plan.cells);
	for (const cell of plan.readsOtherScenario) readsElse[cell] = 1;
	scenarios.forEach(({ others }, scenario) => {
		const own = moves[scenario]!;
		const elsewhere = others.slice(1).map((other) => moves[other]);
		for (const cell of plan.order) {
			own[cell] = anyRead(
				plan,
				cell,
				(read) =>
					own[read] === 1 ||
					(readsElse[cell] === 1 && elsewhere.some((marks) => marks?.[read] === 1))
			);
		}
	});
}

function anyRead(plan: Plan, cell: number, test: (read: number) => boolean): 0 | 1 {
	const { starts, targets } = plan.precedents;
	for (let i = starts[cell]!; i < starts[cell + 1]!; i++) if (test(targets[i]!)) return 1;
	return 0;
}

/** The moving cells that the asked ones are computed from, these included. */
export function needed(
	plan: Plan,
	scenarios: readonly ScenarioOfStudy[],
	moves: Marks,
	asked: Iterable<{ readonly scenario: number; readonly cell: number }>
): Uint8Array[] {
	const wanted = noMarks(plan, scenarios);
	const stack: [scenario: number, cell: number][] = [];
	const add = (scenario: number, cell: number) => {
		if (scenario < 0 || moves[scenario]![cell] !== 1 || wanted[scenario]![cell] === 1) return;
		wanted[scenario]![cell] = 1;
		stack.push([scenario, cell]);
	};
	for (const { scenario, cell } of asked) add(scenario, cell);
	const { starts, targets } = plan.precedents;
	for (let next = stack.pop(); next; next = stack.pop()) {
		const [scenario, cell] = next;
		for (let i = starts[cell]!; i < starts[cell + 1]!; i++)
			for (const other of new Set(scenarios[scenario]!.others)) add(other, targets[i]!);
	}
	return wanted;
}
