/**
 * A program: the nodes of some cells as a flat list of instructions, so that running them needs no
 * recursion however deep a formula is, and no generated code.
 *
 * Every operand is a slot. A narrow slot (0 and up) holds one value that is the same in every column; a
 * wide slot (below 0) holds one value a column. What depends on narrow slots alone is narrow, so a
 * study computes what its draws do not move once. For the screen everything is narrow. Running belongs to
 * `machine.ts`.
 */
import { kept } from '$lib/workbook/kept';
import { NONE, readOperands } from '$lib/engine/operands';
import { Op } from '$lib/engine/operations';
import type { Plan } from '$lib/engine/plan';
import { HITS_NOTHING } from '$lib/engine/state';

/** Where an operand is left out. No slot has this number. */
export const NO_SLOT = 0x7fffffff;
/** Instructions beyond the plan's own operations. */
export const COPY = 200;
/** Operands: which scenario (1 measured against, 2 base), and the slot of the cell in it. */
export const IMPORT = 201;

/** Room for one narrow slot per state, holding nothing but it. */
const STATES = 32;

/** What a program is made of: a plan, or the part of one that a question needs. */
export type Formulas = Pick<Plan, 'cells' | 'nodes' | 'roots'>;

export interface Program {
	readonly plan: Formulas;
	/** op, number of operands, destination, operands …, one after the other. */
	readonly code: Int32Array;
	/** Where the instructions of a cell start and end: 2 × cells; equal where it has none. */
	readonly bounds: Int32Array;
	/** The slot of every cell. */
	readonly slots: Int32Array;
	readonly narrow: number;
	readonly wide: number;
	/** First slot of the constants, and of the states. */
	readonly constants: number;
	readonly states: number;
	/** By node, the slot that its value is left in; only where `keep` was asked for. */
	readonly nodeSlots: Int32Array;
}

export interface ProgramOptions {
	/** Input cells that hold one value a column. */
	readonly wide?: Iterable<number>;
	/** The slot of a cell in the scenario measured against (1) or in the base (2); undefined: its own. */
	readonly otherSlot?: (which: number, cell: number) => number | undefined;
	/** Gives every node a slot of its own, so that its value can be looked at afterwards. */
	readonly keep?: boolean;
}

/** Schedules the cells, each after those it needs; cells that are not listed are read as they stand. */
export function schedule(
	plan: Formulas,
	cells: ArrayLike<number>,
	options: ProgramOptions = {}
): Program {
	return new Scheduler(plan, options).schedule(cells);
}

/** All cells of a plan, each scenario's values apart: what every model of the plan runs, laid out once. */
export const wholeProgram = kept((plan: Plan): Program =>
	schedule(plan, plan.order, { otherSlot: (_, cell) => cell })
);

class Scheduler {
	readonly #plan: Formulas;
	readonly #otherSlot: (which: number, cell: number) => number | undefined;
	readonly #slots: Int32Array;
	readonly #keep: boolean;
	readonly #constants: number;
	readonly #states: number;
	#code = new Int32Array(1024);
	#length = 0;
	#narrow: number;
	#wide = 0;
	#freeNarrow: number[] = [];
	#freeWide: number[] = [];
	/** By node: the last cell whose formula was seen to hold it, uses still open in it, its slot. */
	readonly #enteredBy: Int32Array;
	readonly #uses: Int32Array;
	readonly #nodeSlots: Int32Array;
	readonly #order: number[] = [];
	readonly #stack: number[] = [];
	readonly #operands: number[] = [];

	constructor(plan: Formulas, options: ProgramOptions) {
		this.#plan = plan;
		this.#keep = options.keep === true;
		this.#constants = plan.cells;
		this.#states = plan.cells + plan.nodes.constants.length;
		this.#narrow = this.#states + STATES;
		this.#slots = new Int32Array(plan.cells);
		for (let cell = 0; cell < plan.cells; cell++) this.#slots[cell] = cell;
		for (const cell of options.wide ?? []) this.#slots[cell] = -++this.#wide;
		this.#otherSlot = options.otherSlot ?? (() => undefined);
		this.#enteredBy = new Int32Array(plan.nodes.count).fill(-1);
		this.#uses = new Int32Array(plan.nodes.count);
		this.#nodeSlots = new Int32Array(plan.nodes.count);
	}

	schedule(cells: ArrayLike<number>): Program {
		const bounds = new Int32Array(2 * this.#plan.cells);
		for (let i = 0; i < cells.length; i++) {
			const cell = cells[i]!;
			const root = this.#plan.roots[cell]!;
			bounds[2 * cell] = this.#length;
			if (root >= 0) this.#scheduleCell(cell, root);
			bounds[2 * cell + 1] = this.#length;
		}
		return {
			plan: this.#plan,
			code: this.#code.slice(0, this.#length),
			bounds,
			slots: this.#slots,
			narrow: this.#narrow,
			wide: this.#wide,
			constants: this.#constants,
			states: this.#states,
			nodeSlots: this.#nodeSlots
		};
	}

	#scheduleCell(cell: number, root: number): void {
		this.#findOrder(cell, root);
		const leaf = this.#leafSlot(root);
		if (this.#keep) for (const node of this.#order) this.#nodeSlots[node] = this.#leafSlot(node);
		if (leaf !== NO_SLOT) {
			this.#start(COPY, 1, this.#cellSlot(cell, leaf < 0));
			this.#emit(leaf);
			return;
		}
		for (const node of this.#order) {
			if (this.#leafSlot(node) !== NO_SLOT) continue;
			this.#emitNode(node, node === root ? cell : NONE);
		}
	}

	/** Lists the nodes of a cell, operands first, and counts how often each is used. */
	#findOrder(cell: number, root: number): void {
		const stack = this.#stack;
		this.#order.length = 0;
		stack.push(root);
		while (stack.length > 0) {
			const node = stack.pop()!;
			// A complemented number comes back after all that it needs.
			if (node < 0) {
				this.#order.push(~node);
				continue;
			}
			if (this.#enteredBy[node] === cell) continue;
			this.#enteredBy[node] = cell;
			stack.push(~node);
			const count = readOperands(this.#plan.nodes, node, this.#operands);
			for (let i = count - 1; i >= 0; i--) {
				const operand = this.#operands[i]!;
				if (operand === NONE) continue;
				this.#uses[operand]!++;
				if (this.#enteredBy[operand] !== cell) stack.push(operand);
			}
		}
	}

	/** The slot of a node that needs no instruction, or NO_SLOT. */
	#leafSlot(node: number): number {
		const { op, a, b } = this.#plan.nodes;
		if (op[node] === Op.Constant) return this.#constants + a[node]!;
		if (op[node] === Op.Nothing) return this.#states + a[node]!;
		if (op[node] === Op.Cell && b[node] === 0) return this.#slots[a[node]!]!;
		return NO_SLOT;
	}

	#slotOf(node: number): number {
		const leaf = this.#leafSlot(node);
		return leaf === NO_SLOT ? this.#nodeSlots[node]! : leaf;
	}

	#emitNode(node: number, cell: number): void {
		const { op, a, b, lists } = this.#plan.nodes;
		const code = op[node]!;
		if (code === Op.Cell) {
			const from = this.#otherSlot(b[node]!, a[node]!) ?? this.#slots[a[node]!]!;
			this.#start(IMPORT, 2, this.#destination(node, cell, from < 0));
			this.#emit(b[node]!);
			this.#emit(from);
			return;
		}
		const operands = this.#operands;
		const count = readOperands(this.#plan.nodes, node, operands);
		const start = this.#length;
		this.#start(code, code === Op.InRange ? count + 4 : count, 0);
		let wide = false;
		for (let i = 0; i < count; i++) {
			const operand = operands[i]!;
			let slot = operand === NONE ? NO_SLOT : this.#slotOf(operand);
			if (slot < 0) wide = true;
			if (slot === NO_SLOT && code === Op.Pick) slot = this.#states + HITS_NOTHING;
			this.#emit(slot);
		}
		if (code === Op.InRange)
			for (let i = 0; i < 4; i++) {
				const limit = lists[b[node]! + i]!;
				this.#emit(limit < 0 ? NO_SLOT : this.#constants + limit);
			}
		// The destination is taken before the operands are given back: a loop must not write what it reads.
		this.#code[start + 2] = this.#destination(node, cell, wide);
		for (let i = 0; i < count; i++) if (operands[i] !== NONE) this.#release(operands[i]!);
	}

	/** A slot for the value of a node: the cell's own for its root, else one that is free. */
	#destination(node: number, cell: number, wide: boolean): number {
		if (cell !== NONE) {
			this.#nodeSlots[node] = this.#cellSlot(cell, wide);
			return this.#nodeSlots[node]!;
		}
		const free = wide ? this.#freeWide : this.#freeNarrow;
		const slot = free.pop() ?? (wide ? -++this.#wide : this.#narrow++);
		this.#nodeSlots[node] = slot;
		return slot;
	}

	#cellSlot(cell: number, wide: boolean): number {
		if (wide && this.#slots[cell]! >= 0) this.#slots[cell] = -++this.#wide;
		return this.#slots[cell]!;
	}

	#release(node: number): void {
		this.#uses[node]!--;
		if (this.#keep || this.#uses[node]! > 0 || this.#leafSlot(node) !== NO_SLOT) return;
		const slot = this.#nodeSlots[node]!;
		if (slot < 0) this.#freeWide.push(slot);
		else this.#freeNarrow.push(slot);
	}

	#start(op: number, operands: number, destination: number): void {
		this.#emit(op);
		this.#emit(operands);
		this.#emit(destination);
	}

	#emit(word: number): void {
		if (this.#length === this.#code.length) {
			const longer = new Int32Array(2 * this.#length);
			longer.set(this.#code);
			this.#code = longer;
		}
		this.#code[this.#length++] = word;
	}
}
