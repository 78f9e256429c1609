/**
 * Runs what a change makes necessary, in the plan's order, and goes no further than values change: about half of what
 * a change could reach comes out as it was.
 */
import type { Plan } from '$lib/engine/plan';
import type { Machine } from './machine';
import { ranksIn } from './reach';

export class Ripple {
	readonly #plan: Plan;
	readonly #machine: Machine;
	readonly #ranks: Int32Array;
	/** By rank, 1 where the cell is still to be run. */
	readonly #due: Uint8Array;
	#first: number;
	#last = -1;

	/** The machine holds the values before the change when `run` begins, those of what changed apart. */
	constructor(plan: Plan, machine: Machine) {
		this.#plan = plan;
		this.#machine = machine;
		this.#ranks = ranksIn(plan);
		this.#due = new Uint8Array(plan.order.length);
		this.#first = plan.order.length;
	}

	/** A formula that is run whatever it reads. */
	ask(cell: number): void {
		const rank = this.#ranks[cell]!;
		if (rank < 0) return;
		this.#due[rank] = 1;
		if (rank < this.#first) this.#first = rank;
		if (rank > this.#last) this.#last = rank;
	}

	/** A cell whose value is another one now: whatever reads it is run. `holds` leaves out formulas that are not to be run. */
	changed(cell: number, holds: Uint8Array | null): void {
		const { starts, targets } = this.#plan.dependents;
		const end = starts[cell + 1]!;
		for (let at = starts[cell]!; at < end; at++) {
			const reader = targets[at]!;
			if (holds === null || holds[reader] === 1) this.ask(reader);
		}
	}

	/** Gives the formulas whose values changed. `before` hears of each that is about to be run. */
	run(holds: Uint8Array | null, before: (cell: number) => void): number[] {
		const { order } = this.#plan;
		const { values, states } = this.#machine;
		const found: number[] = [];
		// What is run asks for cells further on alone.
		for (let rank = this.#first; rank <= this.#last; rank++) {
			if (this.#due[rank] === 0) continue;
			this.#due[rank] = 0;
			const cell = order[rank]!;
			const value = values[cell]!;
			const state = states[cell]!;
			before(cell);
			this.#machine.runOne(cell);
			if (states[cell] === state && Object.is(values[cell], value)) continue;
			found.push(cell);
			this.changed(cell, holds);
		}
		this.#first = order.length;
		this.#last = -1;
		return found;
	}
}
