/**
 * Brings the column of a scenario after that of its parent. A formula all of whose operands are the parent's, to the
 * last digit, has the parent's value: it is taken over and not computed again. What is computed is what reads a value
 * that differs, and of that only what an edit changes.
 */
import type { Plan } from '$lib/engine/plan';
import { Due } from './due';
import type { Machine } from './machine';

/** A scenario's values, and how they stand to those of its parent. */
export interface Inherited {
	readonly values: Float64Array;
	readonly states: Uint8Array;
	/** By cell: 1 where the value is another one than the parent's. */
	readonly differs: Uint8Array;
	/** By cell: how many of the cells that it reads differ. */
	readonly operands: Int32Array;
	/** By cell: 1 for inputs that the scenario itself changes. */
	readonly isOwn: Uint8Array;
	/** By cell, 1 where another scenario is read; null where the parent reads the very same. */
	readonly readers: Uint8Array | null;
}

type Values = Pick<Inherited, 'values' | 'states'>;

/** A scenario as its parent is, before anything is changed in it. */
export const asParent = ({ values, states }: Values, readers: Uint8Array | null): Inherited => ({
	values: values.slice(0, states.length),
	states: states.slice(),
	differs: new Uint8Array(states.length),
	operands: new Int32Array(states.length),
	isOwn: new Uint8Array(states.length),
	readers
});

/** Whether a formula is computed by the scenario itself. */
export const isHeld = ({ operands, readers }: Inherited, cell: number): boolean =>
	operands[cell]! > 0 || readers?.[cell] === 1;

const LOOK = 1;
const RUN = 2;

export class Inheriting {
	readonly #plan: Plan;
	readonly #machine: Machine;
	readonly #due: Due;
	#of!: Inherited;
	#parent!: Values;
	#changed: number[] = [];

	constructor(plan: Plan, machine: Machine) {
		this.#plan = plan;
		this.#machine = machine;
		this.#due = new Due(plan);
	}

	/** The parent has its new values already; `moved` are the cells in which they are new. */
	begin(of: Inherited, parent: Values, moved: Iterable<number>): void {
		this.#of = of;
		this.#parent = parent;
		this.#changed = [];
		this.#machine.values.set(of.values);
		this.#machine.states.set(of.states);
		for (const cell of moved) {
			if (this.#due.isFormula(cell)) this.#due.ask(cell, LOOK);
			else if (of.isOwn[cell] === 1) this.#compare(cell);
			else this.follow(cell);
		}
	}

	/** An input that the scenario itself changes. */
	enter(cell: number, value: number, state: number): void {
		this.#of.isOwn[cell] = 1;
		this.#put(cell, value, state);
	}

	/** An input that is the parent's, from now on or still. */
	follow(cell: number): void {
		this.#of.isOwn[cell] = 0;
		this.#put(cell, this.#parent.values[cell]!, this.#parent.states[cell]!);
	}

	/** A formula that is to be computed, whatever it reads. */
	ask(cell: number): void {
		this.#due.ask(cell, RUN);
	}

	/** Gives the cells whose values changed. `before` hears of each formula that is about to be run. */
	run(before: (cell: number) => void): number[] {
		const { values, states } = this.#machine;
		this.#due.take((cell, what) => {
			if (!isHeld(this.#of, cell))
				return this.#put(cell, this.#parent.values[cell]!, this.#parent.states[cell]!);
			if (what === RUN) {
				const value = values[cell]!;
				const state = states[cell]!;
				before(cell);
				this.#machine.runOne(cell);
				if (states[cell] !== state || !Object.is(values[cell], value)) this.#tell(cell);
			}
			this.#compare(cell);
		});
		for (const cell of this.#changed) {
			this.#of.values[cell] = values[cell]!;
			this.#of.states[cell] = states[cell]!;
		}
		return this.#changed;
	}

	#put(cell: number, value: number, state: number): void {
		const { values, states } = this.#machine;
		if (states[cell] !== state || !Object.is(values[cell], value)) {
			values[cell] = value;
			states[cell] = state;
			this.#tell(cell);
		}
		this.#compare(cell);
	}

	/** Its value is another one now: what the scenario computes from it is to be run. */
	#tell(cell: number): void {
		this.#changed.push(cell);
		const { starts, targets } = this.#plan.dependents;
		const end = starts[cell + 1]!;
		for (let at = starts[cell]!; at < end; at++)
			if (isHeld(this.#of, targets[at]!)) this.#due.ask(targets[at]!, RUN);
	}

	/** Whether it differs from the parent's; if that is new, whoever reads it may have to be computed or no longer. */
	#compare(cell: number): void {
		const { values, states } = this.#machine;
		const { differs, operands } = this.#of;
		const parent = this.#parent;
		const is =
			states[cell] === parent.states[cell] && Object.is(values[cell], parent.values[cell]) ? 0 : 1;
		if (differs[cell] === is) return;
		differs[cell] = is;
		const { starts, targets } = this.#plan.dependents;
		const end = starts[cell + 1]!;
		for (let at = starts[cell]!; at < end; at++) {
			operands[targets[at]!]! += is === 1 ? 1 : -1;
			this.#due.ask(targets[at]!, RUN);
		}
	}
}
