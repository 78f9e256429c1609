/** What a block of draws makes of the values that stand in varied inputs. */
import type { Machine } from '$lib/engine/interpreter/machine';
import { limitsOf, type Limits } from '$lib/engine/inputs';
import { quantityOf } from '$lib/engine/layout';
import type { Plan } from '$lib/engine/plan';
import type { Outcome } from '$lib/engine/results';
import { NOT_ENTERED, OK, OUT_OF_RANGE, type State } from '$lib/engine/state';
import type { Driven, Mode, Step } from './inputs';

/** A draw that leaves the value as it stands. */
export const UNCHANGED = Infinity;

/** Where values and their states stand side by side. */
export interface Room {
	readonly values: Float64Array;
	readonly states: Uint8Array;
}

/** One driven cell: its values for a block of draws; a draw that is NaN clears the entry. */
export class InputWriter {
	readonly #steps: readonly Step[];
	readonly #base: Outcome;
	readonly #limits: Limits;
	/** Members of the set that a choice is one of; 0 where the input is no choice. */
	readonly #choices: number;
	readonly #isYesNo: boolean;
	readonly #one = new Float64Array(1);

	constructor(plan: Plan, { cell, steps }: Driven, base: Outcome) {
		this.#steps = steps;
		this.#base = base;
		this.#limits = limitsOf(plan, cell);
		const type = quantityOf(plan.layout, cell)?.quantity.type;
		this.#isYesNo = type === 'yes_no';
		this.#choices =
			typeof type === 'object' ? (plan.layout.sets.get(type.member_of)?.members.length ?? 0) : 0;
	}

	/** The one step of a number that follows a single draw. */
	get only(): Step | undefined {
		const isNumber = !this.#isYesNo && this.#choices === 0;
		return isNumber && this.#steps.length === 1 ? this.#steps[0] : undefined;
	}

	/** What stands in it, then its limits. */
	get numbers(): readonly number[] {
		const { min, max, above, below } = this.#limits;
		return [this.#base.state === OK ? this.#base.value : NaN, min, max, above, below];
	}

	/** Writes values and states from place `at` on; returns whether any of them is bad. */
	fill(
		draws: readonly ArrayLike<number>[],
		from: number,
		{ values, states }: Room,
		at: number,
		count: number
	): boolean {
		const end = at + count;
		values.fill(this.#base.state === OK ? this.#base.value : NaN, at, end);
		for (const step of this.#steps) follow(step, draws[step.input]!, from, values, at, count);
		if (this.#isYesNo || this.#choices > 0)
			for (let i = at; i < end; i++) values[i] = this.#chosen(values[i]!);
		const { min, max, above, below } = this.#limits;
		let bad = false;
		for (let i = at; i < end; i++) {
			const value = values[i]!;
			if (value >= min && value <= max && value > above && value < below) states[i] = OK;
			else {
				states[i] = this.#stateOf(value);
				values[i] = NaN;
				bad = true;
			}
		}
		return bad;
	}

	/** NaN where nothing is entered; a value outside its limits as it is. */
	valueAt(draws: readonly ArrayLike<number>[], draw: number): number {
		this.#one[0] = this.#base.state === OK ? this.#base.value : NaN;
		for (const step of this.#steps) follow(step, draws[step.input]!, draw, this.#one, 0, 1);
		const value = this.#chosen(this.#one[0]!);
		return Number.isFinite(value) ? value : NaN;
	}

	/** Any number but zero is a yes, and what is no member's place chooses none. */
	#chosen(value: number): number {
		if (!Number.isFinite(value)) return NaN;
		if (this.#isYesNo) return Number(value !== 0);
		const isMember = Number.isInteger(value) && value >= 0 && value < this.#choices;
		return this.#choices > 0 && !isMember ? NaN : value;
	}

	/** Of what is outside the limits or no number; an input that had no value of itself keeps its state. */
	#stateOf(value: number): State {
		if (Number.isFinite(value)) return OUT_OF_RANGE;
		const relative = this.#steps.every(({ mode }) => mode !== 'set');
		return relative && this.#base.state !== OK ? this.#base.state : NOT_ENTERED;
	}
}

function follow(
	{ mode }: Step,
	drawn: ArrayLike<number>,
	from: number,
	values: Float64Array,
	at: number,
	count: number
): void {
	for (let i = 0; i < count; i++) {
		const one = drawn[from + i]!;
		if (one === UNCHANGED) continue;
		if (mode === 'scale') values[at + i]! *= one;
		else if (mode === 'add') values[at + i]! += one;
		else values[at + i] = one;
	}
}

/** Numbers of one cell that follows one draw: what stands in it, then its limits. */
const NUMBERS = 5;

/**
 * All driven cells of a program. A cell that follows one draw within its limits takes a plain loop; where it leaves
 * them, is a choice or follows several draws, its own `InputWriter` says what becomes of it.
 */
export class InputBlock {
	readonly #drives: readonly InputWriter[];
	readonly #cells: Int32Array;
	/** The draw that is followed; −1 where there is not just one. */
	readonly #inputs: Int32Array;
	readonly #modes: readonly Mode[];
	readonly #numbers: Float64Array;
	#machine: Machine | null = null;
	#places = new Int32Array(0);

	constructor(cells: readonly number[], drives: readonly InputWriter[]) {
		this.#drives = drives;
		this.#cells = Int32Array.from(cells);
		this.#inputs = Int32Array.from(drives, ({ only }) => only?.input ?? -1);
		this.#modes = drives.map(({ only }) => only?.mode ?? 'set');
		this.#numbers = Float64Array.from(drives.flatMap((drive) => drive.numbers));
	}

	fill(machine: Machine, draws: readonly ArrayLike<number>[], from: number, count: number): void {
		if (this.#machine !== machine) {
			this.#machine = machine;
			this.#places = this.#cells.map((cell) => machine.place(cell).at);
		}
		for (let k = 0; k < this.#cells.length; k++) {
			const cell = this.#cells[k]!;
			const at = this.#places[k]!;
			if (this.#inputs[k]! >= 0 && this.#fillPlain(k, draws, from, machine.values, at, count)) {
				if (!machine.isClean(cell)) machine.states.fill(OK, at, at + count);
				machine.filled(cell, count, false);
			} else machine.filled(cell, count, this.#drives[k]!.fill(draws, from, machine, at, count));
		}
	}

	/** Whether all values are numbers inside the limits; else what it wrote is of no account. */
	#fillPlain(
		k: number,
		draws: readonly ArrayLike<number>[],
		from: number,
		values: Float64Array,
		at: number,
		count: number
	): boolean {
		const drawn = draws[this.#inputs[k]!]!;
		const mode = this.#modes[k]!;
		const numbers = this.#numbers;
		const base = numbers[NUMBERS * k]!;
		const min = numbers[NUMBERS * k + 1]!;
		const max = numbers[NUMBERS * k + 2]!;
		const above = numbers[NUMBERS * k + 3]!;
		const below = numbers[NUMBERS * k + 4]!;
		for (let i = 0; i < count; i++) {
			const one = drawn[from + i]!;
			// A draw that keeps what stands there is infinite, and so outside.
			const value = mode === 'scale' ? base * one : mode === 'add' ? base + one : one;
			if (!(value >= min && value <= max && value > above && value < below)) return false;
			values[at + i] = value;
		}
		return true;
	}
}
