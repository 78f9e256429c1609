/** Which cells are on one loop: each needs the other, however far. */
import type { Edges, Plan } from './plan';

/** The cells of the loop that a circular cell is on, itself among them. */
export function onSameLoop(plan: Plan, cell: number): number[] {
	const circular = new Set(plan.circular);
	const needed = reach(plan.precedents, circular, cell);
	const needing = reach(plan.dependents, circular, cell);
	return [...needed].filter((one) => needing.has(one));
}

function reach({ starts, targets }: Edges, within: ReadonlySet<number>, from: number): Set<number> {
	const found = new Set([from]);
	// A set is walked in the order in which it grows.
	for (const cell of found)
		for (let at = starts[cell] ?? 0; at < (starts[cell + 1] ?? 0); at++) {
			const other = targets[at] ?? 0;
			if (within.has(other)) found.add(other);
		}
	return found;
}
