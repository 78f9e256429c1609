/** Loops of a quantity that somebody is writing with a plan that is there already. */
import type { Edges, Plan, PlanProblem } from '../plan';
import type { ProvenQuantity } from './absence';
import type { Context } from './context';
import { loopProblems } from './loops';
import { orderOf } from './order';

/** The draft's cells and what was lifted out of them; roots are −1 elsewhere. */
export interface Beside {
	readonly roots: Int32Array;
	readonly precedents: Edges;
}

export function draftLoops(
	plan: Plan,
	context: Context,
	proven: ProvenQuantity,
	fresh: Beside
): PlanProblem[] {
	const draft = proven.known.layout;
	const isOwn = (cell: number) => cell >= draft.base && cell < draft.base + draft.count;
	const isFresh = (cell: number) => isOwn(cell) || (fresh.roots[cell] ?? -1) >= 0;
	const rootOf = (cell: number) => (isFresh(cell) ? fresh : plan).roots[cell] ?? -1;
	// Only what the draft reaches counts; each such cell gets a number, the draft's own first.
	const cells: number[] = [];
	const numbers = new Map<number, number>();
	const numberOf = (cell: number) => {
		const known = numbers.get(cell);
		if (known !== undefined) return known;
		numbers.set(cell, cells.length);
		return cells.push(cell) - 1;
	};
	for (let cell = draft.base; cell < draft.base + draft.count; cell++) numberOf(cell);
	const starts = [0];
	const targets: number[] = [];
	for (let at = 0; at < cells.length; at++) {
		const cell = cells[at] ?? 0;
		const edges = (isFresh(cell) ? fresh : plan).precedents;
		for (const needed of edges.targets.subarray(edges.starts[cell], edges.starts[cell + 1]))
			if (rootOf(needed) >= 0) targets.push(numberOf(needed));
		starts.push(targets.length);
	}
	const precedents = { starts: Int32Array.from(starts), targets: Int32Array.from(targets) };
	const { loops } = orderOf(cells.map(rootOf), precedents);
	const { layout } = plan;
	return loopProblems(
		{
			context,
			partsOf: (quantity) => (quantity === draft.index ? proven.parts : []),
			precedents,
			quantityOf: (at) => {
				const cell = cells[at] ?? 0;
				if (isFresh(cell)) return draft.index;
				return cell < layout.cells
					? (layout.quantityOfCell[cell] ?? 0)
					: (plan.liftedFrom[cell - layout.cells] ?? 0);
			},
			cellOf: (at) => cells[at] ?? 0
		},
		loops.filter((loop) => loop.some((at) => isOwn(cells[at] ?? -1)))
	);
}
