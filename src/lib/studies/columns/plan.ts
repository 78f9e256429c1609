/**
 * What a study computes per column: the formulas between the varied inputs and the asked results, of all
 * scenarios that these read, folded to what moves. Everything else was computed once.
 */
import type { Formulas } from '$lib/engine/interpreter/program';
import { readOperands } from '$lib/engine/operands';
import { Op } from '$lib/engine/operations';
import type { Plan } from '$lib/engine/plan';
import type { Outcome } from '$lib/engine/results';
import type { Column } from '$lib/engine/scenarios';
import { Folding } from './fold';
import type { Driven } from './inputs';
import { needed, noMarks, spread } from './moves';
import type { ScenarioOfStudy } from './scenarios';
import { ColumnStore } from './store';

export interface CellOfScenario {
	readonly scenario: number;
	readonly cell: number;
}

export interface StudyPlan {
	readonly formulas: Formulas;
	/** Cells of `formulas` to compute, each after those it needs. */
	readonly order: Int32Array;
	/** Cells of `formulas` that follow draws, beside their place among the driven ones. */
	readonly inputs: readonly { readonly cell: number; readonly driven: number }[];
	/** For each asked cell: its number in `formulas`, or its value where it does not move. */
	readonly results: readonly (number | Outcome)[];
}

export function planStudy(
	plan: Plan,
	scenarios: readonly ScenarioOfStudy[],
	driven: readonly Driven[],
	asked: readonly CellOfScenario[]
): StudyPlan {
	const moves = noMarks(plan, scenarios);
	for (const { scenario, cell } of driven) moves[scenario]![cell] = 1;
	spread(plan, scenarios, moves);
	const wanted = needed(plan, scenarios, moves, asked);
	const store = new ColumnStore();
	const placeOf = scenarios.map(() => new Map<number, number>());
	driven.forEach(({ scenario, cell }) => {
		if (wanted[scenario]![cell] === 1) placeOf[scenario]!.set(cell, store.cell());
	});
	const computed: number[] = [];
	const read = (scenario: number, cell: number, outside?: Column): number | Outcome => {
		const column = scenarios[scenario]?.column ?? outside!;
		return (
			placeOf[scenario]?.get(cell) ?? { value: column.values[cell]!, state: column.states[cell]! }
		);
	};
	scenarios.forEach(({ others, column, outside }, scenario) => {
		const cells = plan.order.filter((cell) => wanted[scenario]![cell] === 1);
		if (cells.length === 0) return;
		const columnOf = (which: 1 | 2) => scenarios[others[which]]?.column ?? outside;
		const folding = new Folding(
			plan,
			store,
			[column, columnOf(1), columnOf(2)],
			cells,
			(which, cell) => read(others[which as 0 | 1 | 2], cell, outside)
		);
		for (const cell of cells) {
			const root = folding.fold(plan.roots[cell]!);
			// What moved only through choices that are settled keeps the value it has.
			if (store.isFixed(root)) continue;
			const place = store.cell();
			store.root(place, root);
			placeOf[scenario]!.set(cell, place);
			computed.push(place);
		}
	});
	const formulas = store.finish();
	const results = asked.map(({ scenario, cell }) => read(scenario, cell));
	const used = usedCells(formulas, results);
	return {
		formulas,
		order: Int32Array.from(computed.filter((cell) => used[cell] === 1)),
		inputs: driven.flatMap(({ scenario, cell }, place) => {
			const own = placeOf[scenario]!.get(cell);
			return own !== undefined && used[own] === 1 ? [{ cell: own, driven: place }] : [];
		}),
		results
	};
}

/** The cells that the results are still computed from once all choices are settled. */
function usedCells({ cells, nodes, roots }: Formulas, results: readonly (number | Outcome)[]) {
	const used = new Uint8Array(cells);
	const seen = new Uint8Array(nodes.count);
	const stack: number[] = [];
	const operands: number[] = [];
	const use = (cell: number) => {
		if (used[cell] === 1) return;
		used[cell] = 1;
		if (roots[cell]! >= 0) stack.push(roots[cell]!);
	};
	for (const result of results) if (typeof result === 'number') use(result);
	for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
		if (seen[node] === 1) continue;
		seen[node] = 1;
		if (nodes.op[node] === Op.Cell) use(nodes.a[node]!);
		const count = readOperands(nodes, node, operands);
		for (let i = 0; i < count; i++) if (operands[i]! >= 0) stack.push(operands[i]!);
	}
	return used;
}
