/**
 * Which cells a change reaches: walks the plan's dependents, and puts what must be computed into the
 * plan's order.
 */
import { kept } from '$lib/workbook/kept';
import type { Plan } from '$lib/engine/plan';

export interface Reached {
	/** All of them, the seeds included, ascending. */
	readonly cells: Int32Array;
	/** Those with a formula, each after everything it needs. */
	readonly formulas: Int32Array;
}

/** By cell its place in the plan's order, −1 for inputs and for cells on a loop. */
export const ranksIn = kept((plan: Plan): Int32Array => {
	const ranks = new Int32Array(plan.cells).fill(-1);
	plan.order.forEach((cell, rank) => (ranks[cell] = rank));
	return ranks;
});

export class Reach {
	readonly #plan: Plan;
	readonly #rank: Int32Array;
	readonly #seen: Uint8Array;

	constructor(plan: Plan) {
		this.#plan = plan;
		this.#rank = ranksIn(plan);
		this.#seen = new Uint8Array(plan.cells);
	}

	from(seeds: Iterable<number>): Reached {
		const { starts, targets } = this.#plan.dependents;
		const seen = this.#seen;
		const found: number[] = [];
		const add = (cell: number) => {
			if (seen[cell] === 1) return;
			seen[cell] = 1;
			found.push(cell);
		};
		for (const seed of seeds) add(seed);
		// The list grows while it is walked.
		for (let next = 0; next < found.length; next++) {
			const cell = found[next]!;
			for (let i = starts[cell]!; i < starts[cell + 1]!; i++) add(targets[i]!);
		}
		for (const cell of found) seen[cell] = 0;
		return { cells: Int32Array.from(found).sort(), formulas: this.#inOrder(found) };
	}

	#inOrder(cells: readonly number[]): Int32Array {
		const ranks = new Int32Array(cells.length);
		let count = 0;
		for (const cell of cells) if (this.#rank[cell]! >= 0) ranks[count++] = this.#rank[cell]!;
		const sorted = ranks.subarray(0, count).sort();
		return sorted.map((rank) => this.#plan.order[rank]!);
	}
}

/** The order of a plan's cells is found once for all who ask. */
export const reachIn = kept((plan: Plan) => new Reach(plan));
