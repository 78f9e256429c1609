/**
 * What each scenario's sheet holds. The base holds every cell; another scenario holds the inputs that it
 * changes and whatever follows from them, and reads the rest where its parent does.
 */
import type { Plan } from '$lib/engine/plan';
import type { Outcome, Results } from '$lib/engine/results';

/** A scenario as cells need it. */
export interface Source {
	readonly id: string;
	/**
	 * Places among the sources: the parent (−1 for the base), and the one that `x[reference]` reads
	 * (−1 where scenarios are measured against one another in a circle, or it is a frozen copy).
	 */
	readonly parent: number;
	readonly reference: number;
	/** The frozen copy that `x[reference]` reads, by cell of the plan: it stands on no sheet, its values stand in the formulas. */
	readonly copy?: Pick<Results, 'values' | 'states'>;
	/** The input cells of which it says something itself; for the base, all that were entered. */
	readonly entered: ReadonlyMap<number, Outcome>;
}

/** By scenario and cell: the scenario on whose sheet the value stands. −1: on none. */
export type Owners = readonly Int32Array[];

export function ownersOf(
	plan: Plan,
	sources: readonly Source[],
	included: Uint8Array | null = null
): Owners {
	const owners: Int32Array[] = [];
	const circular = new Uint8Array(plan.cells);
	for (const cell of plan.circular) circular[cell] = 1;
	for (const index of parentsFirst(sources)) {
		const source = sources[index]!;
		if (source.parent < 0) {
			const all = new Int32Array(plan.cells).fill(index);
			if (included) all.forEach((_, cell) => included[cell] || (all[cell] = -1));
			owners[index] = all;
			continue;
		}
		const own = owners[source.parent]!.slice();
		const stack = [...source.entered.keys()];
		// Where the two are measured against different scenarios, every such reading may differ.
		if (source.reference < 0 || source.reference !== sources[source.parent]!.reference)
			stack.push(...plan.readsOtherScenario);
		for (let cell = stack.pop(); cell !== undefined; cell = stack.pop()) {
			if (own[cell] === index || own[cell] === -1) continue;
			// A loop is a loop in every scenario; the base's sheet finds it.
			if (circular[cell]) continue;
			own[cell] = index;
			// What reads it in the base or the reference reads what it read before.
			const { starts, targets } = plan.ownDependents;
			for (let at = starts[cell]!; at < starts[cell + 1]!; at++) stack.push(targets[at]!);
		}
		owners[index] = own;
	}
	return owners;
}

/** The scenarios' places, each after its parent. */
export function parentsFirst(sources: readonly Source[]): number[] {
	const order: number[] = [];
	const placed = new Set<number>();
	const place = (index: number): void => {
		if (placed.has(index)) return;
		placed.add(index);
		const { parent } = sources[index]!;
		if (parent >= 0) place(parent);
		order.push(index);
	};
	sources.forEach((_, index) => place(index));
	return order;
}
