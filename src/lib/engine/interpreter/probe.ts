/**
 * One formula with the value of every node in it, for those who ask why: its nodes are taken out of their
 * plan, what they read is looked up once, and everything below the root is computed and kept.
 */
import { NONE, operandsOf, readOperands, withOperands, type Keeping } from '$lib/engine/operands';
import { Op } from '$lib/engine/operations';
import type { Nodes } from '$lib/engine/plan';
import type { Outcome } from '$lib/engine/results';
import { OK } from '$lib/engine/state';
import { Machine } from './machine';
import { schedule } from './program';

/** A cell that a formula reads: in its own scenario (0), the one it is measured against (1), the base (2). */
export interface Reading {
	readonly cell: number;
	readonly which: number;
}

export interface Probe {
	/** The nodes of this formula alone, with numbers of their own; a Cell's `a` is a place in `readings`. */
	readonly nodes: Nodes;
	readonly root: number;
	/** In the order in which the formula reads them. */
	readonly readings: readonly Reading[];
	/** The number that a node of the plan has here; undefined where it is not below the root. */
	placeOf(node: number): number | undefined;
	/** The operands of a node, NONE where one is left out. */
	operands(node: number): readonly number[];
	value(node: number): Outcome;
	/** What a Cell node reads. */
	reading(node: number): Reading;
}

export function probe(nodes: Nodes, root: number, read: (reading: Reading) => Outcome): Probe {
	const cut = new Cutting(nodes);
	const top = cut.take(root);
	const { readings } = cut;
	const own = cut.finish();
	const cells = readings.length + 1;
	const roots = new Int32Array(cells).fill(-1);
	roots[readings.length] = top;
	const program = schedule({ cells, nodes: own, roots }, [readings.length], { keep: true });
	const machine = new Machine(program);
	readings.forEach((reading, cell) => {
		const { value, state } = read(reading);
		machine.write(cell, [value], [state]);
	});
	machine.run([readings.length]);
	const operands: number[] = [];
	return {
		nodes: own,
		root: top,
		readings,
		placeOf: (node) => cut.placeOf.get(node),
		operands(node) {
			return operands.slice(0, readOperands(own, node, operands));
		},
		value(node) {
			const slot = program.nodeSlots[node]!;
			const state = machine.states[slot]!;
			return { value: state === OK ? machine.values[slot]! : NaN, state };
		},
		reading: (node) => readings[own.a[node]!]!
	};
}

/** Takes nodes out of a plan, operands first, and numbers what they use anew. */
class Cutting {
	readonly placeOf = new Map<number, number>();
	readonly readings: Reading[] = [];
	readonly #readingPlaces = new Map<string, number>();
	readonly #op: number[] = [];
	readonly #a: number[] = [];
	readonly #b: number[] = [];
	readonly #lists: number[] = [];
	readonly #constants: number[] = [];

	constructor(readonly nodes: Nodes) {}

	take(root: number): number {
		const entered = new Set<number>();
		const operands: number[] = [];
		const stack = [root];
		while (stack.length > 0) {
			const node = stack.pop()!;
			if (node < 0) {
				this.#add(~node);
				continue;
			}
			if (entered.has(node)) continue;
			entered.add(node);
			stack.push(~node);
			for (let i = readOperands(this.nodes, node, operands) - 1; i >= 0; i--) {
				const operand = operands[i]!;
				if (operand !== NONE && !entered.has(operand)) stack.push(operand);
			}
		}
		return this.placeOf.get(root)!;
	}

	finish(): Nodes {
		return {
			count: this.#op.length,
			op: Uint8Array.from(this.#op),
			a: Int32Array.from(this.#a),
			b: Int32Array.from(this.#b),
			lists: Int32Array.from(this.#lists),
			constants: Float64Array.from(this.#constants)
		};
	}

	#add(node: number): void {
		const { op, a, b } = this.nodes;
		const code = op[node]!;
		const [x, y] = this.#rewritten(node, code, a[node]!, b[node]!);
		this.placeOf.set(node, this.#op.length);
		this.#op.push(code);
		this.#a.push(x);
		this.#b.push(y);
	}

	#rewritten(node: number, code: number, a: number, b: number): [number, number] {
		if (code === Op.Cell) return [this.#readingPlace(a, b), 0];
		const own = operandsOf(this.nodes, node).map((operand) =>
			operand === NONE ? NONE : this.placeOf.get(operand)!
		);
		return withOperands(this.nodes, node, own, this.#keeping);
	}

	readonly #keeping: Keeping = {
		constant: (value) => this.#constants.push(value) - 1,
		list: (entries) => {
			const start = this.#lists.length;
			for (const entry of entries) this.#lists.push(entry);
			return start;
		}
	};

	#readingPlace(cell: number, which: number): number {
		const key = `${cell} ${which}`;
		const known = this.#readingPlaces.get(key);
		if (known !== undefined) return known;
		const place = this.readings.push({ cell, which }) - 1;
		this.#readingPlaces.set(key, place);
		return place;
	}
}
