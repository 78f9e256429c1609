/**
 * Folds the formulas of one scenario to what moves in a study: whatever is the same in every column becomes a
 * constant, and a choice that is settled leaves only what it chose. What a formula means is untouched: the
 * values of the folded parts are the interpreter's own.
 */
import { Machine } from '$lib/engine/interpreter/machine';
import { schedule, type Program } from '$lib/engine/interpreter/program';
import { NONE, readOperands, withOperands } from '$lib/engine/operands';
import { isAggregate, Op, operation, parameterCount } from '$lib/engine/operations';
import type { Plan } from '$lib/engine/plan';
import type { Outcome } from '$lib/engine/results';
import type { Column } from '$lib/engine/scenarios';
import { ABSENT, HITS_NOTHING, NO_ANSWER, OFF_END, OK } from '$lib/engine/state';
import type { ColumnStore } from './store';

/** What a folding reads of a cell: its number in the store, or its value where it does not move. */
export type ReadCell = (which: number, cell: number) => number | Outcome;

export class Folding {
	readonly #plan: Plan;
	readonly #store: ColumnStore;
	readonly #read: ReadCell;
	readonly #program: Program;
	readonly #machine: Machine;
	/** By node of the plan: 0 not looked at, 1 the same in every column, 2 moving. */
	readonly #moving: Uint8Array;
	/** By node of the plan: its node in the store, −1 where it has none yet. */
	readonly #placed: Int32Array;
	readonly #operands: number[] = [];

	/** `columns`: the scenario's own values, the reference's and the base's; `cells`: what will be folded, in order. */
	constructor(
		plan: Plan,
		store: ColumnStore,
		columns: readonly [own: Column, reference: Column, base: Column],
		cells: ArrayLike<number>,
		read: ReadCell
	) {
		this.#plan = plan;
		this.#store = store;
		this.#read = read;
		this.#moving = new Uint8Array(plan.nodes.count);
		this.#placed = new Int32Array(plan.nodes.count).fill(-1);
		// One run with a slot for every node gives the value of each of them.
		this.#program = schedule(plan, cells, { keep: true, otherSlot: (_, cell) => cell });
		this.#machine = new Machine(this.#program);
		const [own, reference, base] = columns;
		this.#machine.values.set(own.values);
		this.#machine.states.set(own.states);
		this.#machine.others[1] = { ...reference, narrow: 0 };
		this.#machine.others[2] = { ...base, narrow: 0 };
		this.#machine.run(cells);
	}

	/** The folded formula under a root, as a node of the store. */
	fold(root: number): number {
		this.#findMoving(root);
		const stack = [root];
		while (stack.length > 0) {
			const node = stack.at(-1)!;
			if (this.#placed[node]! >= 0) {
				stack.pop();
				continue;
			}
			const before = stack.length;
			for (const operand of this.#kept(node))
				if (operand !== NONE && this.#placed[operand]! < 0) stack.push(operand);
			if (stack.length > before) continue;
			stack.pop();
			this.#placed[node] = this.#place(node);
		}
		return this.#placed[root]!;
	}

	#findMoving(root: number): void {
		const { nodes } = this.#plan;
		const moving = this.#moving;
		const stack = [root];
		while (stack.length > 0) {
			const entry = stack.pop()!;
			const node = entry < 0 ? ~entry : entry;
			if (moving[node] !== 0) continue;
			const count = readOperands(nodes, node, this.#operands);
			if (entry >= 0) {
				stack.push(~node);
				for (let i = 0; i < count; i++)
					if (this.#operands[i] !== NONE) stack.push(this.#operands[i]!);
				continue;
			}
			let any = nodes.op[node] === Op.Cell && typeof this.#cell(node) === 'number';
			for (let i = 0; i < count && !any; i++)
				any = this.#operands[i] !== NONE && moving[this.#operands[i]!] === 2;
			moving[node] = any ? 2 : 1;
		}
	}

	#cell(node: number): number | Outcome {
		return this.#read(this.#plan.nodes.b[node]!, this.#plan.nodes.a[node]!);
	}

	/** What a node is where nothing is varied. */
	#valueOf(node: number): Outcome {
		const slot = this.#program.nodeSlots[node]!;
		const state = this.#machine.states[slot]!;
		return { value: state === OK ? this.#machine.values[slot]! : NaN, state };
	}

	/** The value of an operand that does not move; undefined where it does. */
	#settled(node: number): Outcome | undefined {
		return node !== NONE && this.#moving[node] === 1 ? this.#valueOf(node) : undefined;
	}

	/** The operands that still count, those of a settled choice that it did not choose left out. */
	#kept(node: number): readonly number[] {
		if (this.#moving[node] === 1) return [];
		const chosen = this.#chosen(node);
		if (chosen !== undefined) return chosen === NONE || chosen === NOTHING ? [] : [chosen];
		const count = readOperands(this.#plan.nodes, node, this.#operands);
		const operands = this.#operands.slice(0, count);
		const op = this.#plan.nodes.op[node]!;
		return isAggregate(op) ? this.#keptTerms(op, operands) : operands;
	}

	/** What a settled choice comes to; undefined where nothing is settled. NONE: a pair that does not exist. */
	#chosen(node: number): number | undefined {
		const { op } = this.#plan.nodes;
		const count = readOperands(this.#plan.nodes, node, this.#operands);
		const [a = NONE, b = NONE, c = NONE] = this.#operands;
		const test = count > 0 ? this.#settled(a) : undefined;
		if (!test) return undefined;
		switch (op[node]) {
			case Op.If:
				return test.state === OK ? (test.value !== 0 ? b : c) : undefined;
			case Op.Guard:
				return test.state === OK ? (test.value !== 0 ? b : NOTHING) : undefined;
			case Op.IfError:
				return test.state === OK ? a : b;
			case Op.OrElse:
				return test.state === OFF_END || test.state === NO_ANSWER ? b : a;
			case Op.Pick: {
				if (test.state !== OK) return undefined;
				const { value } = test;
				const inside = Number.isInteger(value) && value >= 0 && value < count - 1;
				return inside ? this.#operands[value + 1]! : NONE;
			}
			default:
				return undefined;
		}
	}

	/** Terms whose filter is settled are left out, or lose their filter. */
	#keptTerms(op: number, operands: readonly number[]): number[] {
		const end = operands.length - parameterCount(op);
		// Where the place of a term is its position, none may be left out.
		const { byPlace } = operation(op);
		const kept: number[] = [];
		for (let term = 0; term < end; term += 3) {
			const [value = NONE, filter = NONE, position = NONE] = operands.slice(term, term + 3);
			const test = this.#settled(filter);
			if (test?.state === OK && test.value === 0 && !(byPlace && position === NONE)) continue;
			const isKept = test?.state === OK && test.value !== 0;
			kept.push(value, isKept ? NONE : filter, position);
		}
		return [...kept, ...operands.slice(end)];
	}

	#place(node: number): number {
		const store = this.#store;
		const { nodes } = this.#plan;
		const code = nodes.op[node]!;
		if (this.#moving[node] === 1) return store.fixed(this.#valueOf(node));
		if (code === Op.Cell) return store.add(Op.Cell, this.#cell(node) as number, 0);
		const chosen = this.#chosen(node);
		if (chosen === NOTHING) return store.fixed({ value: NaN, state: ABSENT });
		if (chosen === NONE) return store.fixed({ value: NaN, state: HITS_NOTHING });
		if (chosen !== undefined) return this.#placed[chosen]!;
		const own = this.#kept(node).map((one) => (one === NONE ? NONE : this.#placed[one]!));
		// What moved only through a choice that is settled does not move any more.
		if (own.every((one) => one === NONE || store.isFixed(one)))
			return store.fixed(this.#valueOf(node));
		return store.add(code, ...withOperands(nodes, node, own, store));
	}
}

/** Not a node: a guard that says no. */
const NOTHING = -2;
