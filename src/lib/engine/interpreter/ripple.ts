/**
 * Runs what a change makes necessary, in the plan's order, and goes no further than values change: about half of what
 * a change could reach comes out as it was.
 */
import type { Plan } from '$lib/engine/plan';
import { Due } from './due';
import type { Machine } from './machine';

export class Ripple {
	readonly #plan: Plan;
	readonly #machine: Machine;
	readonly #due: Due;

	/** The machine holds the values before the change when `run` begins, those of what changed apart. */
	constructor(plan: Plan, machine: Machine) {
		this.#plan = plan;
		this.#machine = machine;
		this.#due = new Due(plan);
	}

	/** A cell whose value is another one now: whatever reads it is run. */
	changed(cell: number): void {
		const { starts, targets } = this.#plan.dependents;
		const end = starts[cell + 1]!;
		for (let at = starts[cell]!; at < end; at++) this.#due.ask(targets[at]!, 1);
	}

	/** Gives the formulas whose values changed. */
	run(): number[] {
		const { values, states } = this.#machine;
		const found: number[] = [];
		this.#due.take((cell) => {
			const value = values[cell]!;
			const state = states[cell]!;
			this.#machine.runOne(cell);
			if (states[cell] === state && Object.is(values[cell], value)) return;
			found.push(cell);
			this.changed(cell);
		});
		return found;
	}
}
