/**
 * Runs a program over a block of columns.
 *
 * Holds one number and one state for every narrow slot and one of each per column for every wide slot.
 * A block whose operands all have values takes the loops of `kernels/` and `blocks.ts`; anything else goes column
 * by column, where states are carried (`state.ts`).
 */
import {
	isAggregate,
	isChoice,
	isUnary,
	Op,
	parameterCount,
	type ScalarOp
} from '$lib/engine/operations';
import { compute, failureOf } from '$lib/engine/scalar';
import { ABSENT, carried, OK, type State } from '$lib/engine/state';
import { aggregate } from './aggregates';
import { gatherBlock } from './blocks';
import { choose, present } from './choices';
import { STRIDE } from './kernels/kernels';
import { CallList } from './kernels/call-list';
import { copy, put, type Memory } from './memory';
import { COPY, IMPORT, NO_SLOT, type Program } from './program';

/** Where the values of another scenario stand, slot by slot as in a machine. */
export interface Source {
	readonly values: Float64Array;
	readonly states: Uint8Array;
	/** Narrow slots before the first wide one. */
	readonly narrow: number;
}

export class Machine implements Memory, Source {
	readonly values: Float64Array;
	readonly states: Uint8Array;
	readonly narrow: number;
	at = new Int32Array(64);
	by = new Uint8Array(64);
	/** The scenario measured against (1) and the base (2); itself where it is its own. */
	readonly others: [never: null, against: Source, base: Source] = [null, this, this];
	/** By slot, narrow ones first: whether any of its columns is bad. */
	readonly #flags: Uint8Array;
	/** Null for a single column, for a width that the loops cannot take, and where there are none. */
	readonly #calls: CallList | null;
	/** A single column, in which every slot is its own place and nobody asks for flags. */
	readonly #isNarrow: boolean;

	constructor(
		readonly program: Program,
		readonly width = 1
	) {
		// Wide slots start at a line of the cache.
		this.narrow = Math.ceil(program.narrow / 8) * 8;
		this.#isNarrow = width === 1 && program.wide === 0;
		const size = this.narrow + program.wide * width;
		this.#calls = width % STRIDE === 0 ? CallList.open(program, this.narrow, width) : null;
		this.values = this.#calls?.values ?? new Float64Array(size);
		this.#flags = this.#calls?.flags ?? new Uint8Array(this.narrow + program.wide);
		this.states = new Uint8Array(size);
		this.values.set(program.plan.nodes.constants, program.constants);
		for (let state = program.states; state < program.states + 32; state++) {
			this.values[state] = NaN;
			this.states[state] = state - program.states;
			this.#mark(state, this.states[state] !== OK);
		}
	}

	/** First place of a cell's values, and the step from column to column. */
	place(cell: number): { readonly at: number; readonly by: number } {
		const slot = this.program.slots[cell]!;
		return { at: this.#placeOf(slot), by: slot < 0 ? 1 : 0 };
	}

	/** Writes an input, in every column alike or column by column. */
	write(cell: number, values: ArrayLike<number>, states: ArrayLike<State>): void {
		const slot = this.program.slots[cell]!;
		const at = this.#placeOf(slot);
		const columns = slot < 0 ? this.width : 1;
		let bad = false;
		for (let i = 0; i < columns; i++) if (put(this, at + i, values[i]!, states[i]!)) bad = true;
		this.#mark(slot, bad);
	}

	/**
	 * Tells that the first `count` columns of a wide input have been filled where they stand, and whether any of them
	 * is bad. The rest repeats the last, so that it never looks worse than what is asked for.
	 */
	filled(cell: number, count: number, bad: boolean): void {
		this.#mark(this.program.slots[cell]!, bad);
		if (count === this.width) return;
		const { at } = this.place(cell);
		this.values.fill(this.values[at + count - 1]!, at + count, at + this.width);
		this.states.fill(this.states[at + count - 1]!, at + count, at + this.width);
	}

	/** Whether a cell has a value in every column. */
	isClean(cell: number): boolean {
		return this.#isClean(this.program.slots[cell]!);
	}

	/** Computes all cells of the program in its order. */
	runAll(): void {
		if (this.#calls) return this.#calls.run((pc) => this.#step(pc));
		const { code } = this.program;
		for (let pc = 0; pc < code.length; pc += 3 + code[pc + 1]!) this.#step(pc);
	}

	/** Computes the cells, each of which must come after those it needs. */
	run(cells: ArrayLike<number>): void {
		for (let i = 0; i < cells.length; i++) this.runOne(cells[i]!);
	}

	/** Computes one cell from what stands where it reads. */
	runOne(cell: number): void {
		const { code, bounds } = this.program;
		const end = bounds[2 * cell + 1]!;
		if (this.#isNarrow)
			for (let pc = bounds[2 * cell]!; pc < end; pc += 3 + code[pc + 1]!) this.#narrowStep(pc);
		else for (let pc = bounds[2 * cell]!; pc < end; pc += 3 + code[pc + 1]!) this.#step(pc);
	}

	/** What the screen's values are made of most: one number of one or two, or one of two as it stands. */
	#narrowStep(pc: number): void {
		const { values, states } = this;
		const { code } = this.program;
		const op = code[pc]!;
		const to = code[pc + 2]!;
		const a = code[pc + 3]!;
		if (op === Op.If || op === Op.Guard) {
			const state = states[a]!;
			if (state === OK && op === Op.If)
				return void copy(this, to, code[pc + (values[a] !== 0 ? 4 : 5)]!);
			if (state === OK && values[a] !== 0) return void copy(this, to, code[pc + 4]!);
			return void put(this, to, 0, state === OK ? ABSENT : carried(state));
		}
		if (op >= COPY || isAggregate(op) || isChoice(op)) return this.#step(pc);
		const b = isUnary(op) ? a : code[pc + 4]!;
		let state: State = carried(states[a]!);
		if (state === OK) state = carried(states[b]!);
		let value = NaN;
		if (state === OK) {
			value = compute(op as ScalarOp, values[a]!, values[b]!);
			if (!Number.isFinite(value)) {
				state = failureOf(op as ScalarOp, values[a]!, values[b]!);
				value = NaN;
			}
		}
		values[to] = value;
		states[to] = state;
	}

	#step(pc: number): void {
		const { code } = this.program;
		const op = code[pc]!;
		const operands = code[pc + 1]!;
		const slot = code[pc + 2]!;
		const to = this.#placeOf(slot);
		const count = slot < 0 ? this.width : 1;
		if (op === COPY) return this.#copy(this, code[pc + 3]!, slot, to, count);
		if (op === IMPORT)
			return this.#copy(this.others[code[pc + 3]! as 1 | 2], code[pc + 4]!, slot, to, count);
		if (!isAggregate(op) && !isChoice(op)) {
			const a = code[pc + 3]!;
			return this.#binary(op as ScalarOp, slot, to, count, a, isUnary(op) ? a : code[pc + 4]!);
		}
		const clean = this.#readOperands(pc + 3, operands);
		if (op === Op.Present) {
			present(this, to, count);
			return this.#mark(slot, false);
		}
		if (!isAggregate(op)) return this.#mark(slot, choose(op, this, operands, to, count));
		const terms = (operands - parameterCount(op)) / 3;
		const kernels = count > 1 && clean ? this.#calls?.kernels : undefined;
		if (kernels && gatherBlock(kernels, op, this, to, count, terms)) {
			this.states.fill(OK, to, to + count);
			return this.#mark(slot, false);
		}
		this.#mark(slot, aggregate(op, this, operands, to, count));
	}

	#binary(op: ScalarOp, slot: number, to: number, count: number, a: number, b: number): void {
		const { values, states } = this;
		let x = this.#placeOf(a);
		let y = this.#placeOf(b);
		const dx = a < 0 ? 1 : 0;
		const dy = b < 0 ? 1 : 0;
		let bad = false;
		for (let i = 0; i < count; i++, x += dx, y += dy) {
			let state = carried(states[x]!);
			if (state === OK) state = carried(states[y]!);
			let value = NaN;
			if (state === OK) {
				value = compute(op, values[x]!, values[y]!);
				if (!Number.isFinite(value)) state = failureOf(op, values[x]!, values[y]!);
			}
			if (put(this, to + i, value, state)) bad = true;
		}
		this.#mark(slot, bad);
	}

	#copy(source: Source, from: number, slot: number, to: number, count: number): void {
		if (source === this && from < 0) {
			const at = this.#placeOf(from);
			this.values.copyWithin(to, at, at + count);
			this.states.copyWithin(to, at, at + count);
			return this.#mark(slot, !this.#isClean(from));
		}
		const step = from < 0 ? 1 : 0;
		let place = from < 0 ? source.narrow - (from + 1) * this.width : from;
		let bad = false;
		for (let i = 0; i < count; i++, place += step) {
			const state = source.states[place]!;
			this.values[to + i] = source.values[place]!;
			this.states[to + i] = state;
			if (state !== OK) bad = true;
		}
		this.#mark(slot, bad);
	}

	/** Finds the operands' places; returns whether all of them have a value in every column. */
	#readOperands(start: number, count: number): boolean {
		if (count > this.at.length) {
			this.at = new Int32Array(2 * count);
			this.by = new Uint8Array(2 * count);
		}
		const { code } = this.program;
		let clean = true;
		for (let i = 0; i < count; i++) {
			const slot = code[start + i]!;
			this.at[i] = slot === NO_SLOT ? -1 : this.#placeOf(slot);
			this.by[i] = slot < 0 ? 1 : 0;
			if (slot !== NO_SLOT && !this.#isClean(slot)) clean = false;
		}
		return clean;
	}

	#placeOf(slot: number): number {
		return slot < 0 ? this.narrow - (slot + 1) * this.width : slot;
	}

	#isClean(slot: number): boolean {
		return this.#flags[this.#flagOf(slot)] === 0;
	}

	#mark(slot: number, bad: boolean): void {
		this.#flags[this.#flagOf(slot)] = bad ? 1 : 0;
	}

	#flagOf(slot: number): number {
		return slot < 0 ? this.narrow - slot - 1 : slot;
	}
}
