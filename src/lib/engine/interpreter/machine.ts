/**
 * Runs a program over a block of columns.
 *
 * Holds one number and one state for every narrow slot and one of each per column for every wide slot.
 * A block whose operands all have values takes the tight loops of `blocks.ts`; anything else goes column
 * by column, where states are carried (`state.ts`).
 */
import { isAggregate, Op } from '$lib/engine/plan';
import { carried, OK, type State } from '$lib/engine/state';
import { aggregate } from './aggregates';
import { aggregateBlock, binaryBlock } from './blocks';
import { choiceBlock, GOOD, LEFT, presentBlock } from './choice-blocks';
import { choose, isChoice } from './choices';
import { put, type Memory } from './memory';
import { parameterCount } from './operands';
import { COPY, IMPORT, NO_SLOT, type Program } from './program';
import { compute, failureOf, isUnary } from './scalar';

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
	/** By wide slot: whether any of its columns is bad. */
	readonly #dirty: Uint8Array;

	constructor(
		readonly program: Program,
		readonly width = 1
	) {
		this.narrow = program.narrow;
		const size = program.narrow + program.wide * width;
		this.values = new Float64Array(size);
		this.states = new Uint8Array(size);
		this.#dirty = new Uint8Array(program.wide);
		this.values.set(program.plan.nodes.constants, program.constants);
		for (let state = program.states; state < program.states + 32; state++) {
			this.values[state] = NaN;
			this.states[state] = state - program.states;
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

	/** Computes the cells, each of which must come after those it needs. */
	run(cells: ArrayLike<number>): void {
		const { code, bounds } = this.program;
		for (let i = 0; i < cells.length; i++) {
			const end = bounds[2 * cells[i]! + 1]!;
			for (let pc = bounds[2 * cells[i]!]!; pc < end; pc += 3 + code[pc + 1]!) this.#step(pc);
		}
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
		const nary = isAggregate(op) || isChoice(op);
		if (!nary) {
			const a = code[pc + 3]!;
			return this.#binary(op, slot, to, count, a, isUnary(op) ? a : code[pc + 4]!);
		}
		const clean = this.#readOperands(pc + 3, operands);
		if (count > 1 && op === Op.Present) {
			presentBlock(this, to, count);
			return this.#clear(slot, to, count);
		}
		if (count > 1 && clean) {
			if (isAggregate(op)) {
				const terms = (operands - parameterCount(op)) / 3;
				if (aggregateBlock(op, this, to, count, terms)) return this.#clear(slot, to, count);
			} else {
				const done = choiceBlock(op, this, to, count, operands);
				if (done === GOOD) return this.#clear(slot, to, count);
				if (done !== LEFT) return this.#mark(slot, true);
			}
		}
		const bad = isAggregate(op)
			? aggregate(op, this, operands, to, count)
			: choose(op, this, operands, to, count);
		this.#mark(slot, bad);
	}

	#binary(op: number, slot: number, to: number, count: number, a: number, b: number): void {
		const { values, states } = this;
		let x = this.#placeOf(a);
		let y = this.#placeOf(b);
		const dx = a < 0 ? 1 : 0;
		const dy = b < 0 ? 1 : 0;
		if (count > 1 && this.#isClean(a) && this.#isClean(b))
			if (binaryBlock(op, values, to, count, x, dx, y, dy)) return this.#clear(slot, to, count);
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
		const step = from < 0 ? 1 : 0;
		let place = from < 0 ? source.narrow - (from + 1) * this.width : from;
		let bad = false;
		for (let i = 0; i < count; i++, place += step) {
			this.values[to + i] = source.values[place]!;
			this.states[to + i] = source.states[place]!;
			if (source.states[place] !== OK) bad = true;
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
		return slot < 0 ? this.#dirty[-slot - 1] === 0 : this.states[slot] === OK;
	}

	#mark(slot: number, bad: boolean): void {
		if (slot < 0) this.#dirty[-slot - 1] = bad ? 1 : 0;
	}

	/** After a tight loop: all of its results are good, whatever stood there before. */
	#clear(slot: number, to: number, count: number): void {
		if (slot < 0 && this.#dirty[-slot - 1] === 0) return;
		this.states.fill(OK, to, to + count);
		this.#mark(slot, false);
	}
}
