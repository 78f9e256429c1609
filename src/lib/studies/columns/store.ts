/**
 * The formulas of a study while they are being folded: cells and nodes with numbers of their own, of several
 * scenarios side by side, so that one program computes them all.
 */
import type { Formulas } from '$lib/engine/interpreter/program';
import { Op } from '$lib/engine/operations';
import type { Nodes } from '$lib/engine/plan';
import type { Outcome } from '$lib/engine/results';
import { OK } from '$lib/engine/state';

export class ColumnStore {
	readonly #op: number[] = [];
	readonly #a: number[] = [];
	readonly #b: number[] = [];
	readonly #lists: number[] = [];
	readonly #constants: number[] = [];
	/** −0 and 0 are two constants: they divide differently. */
	readonly #places = new Map<number | '-0', number>();
	readonly #states = new Map<number, number>();
	readonly #roots: number[] = [];

	/** A new cell: an input until `root` says otherwise. */
	cell(): number {
		return this.#roots.push(-1) - 1;
	}

	root(cell: number, node: number): void {
		this.#roots[cell] = node;
	}

	/** A value that is the same in every column. */
	fixed({ value, state }: Outcome): number {
		if (state !== OK) {
			const known = this.#states.get(state);
			if (known !== undefined) return known;
			const node = this.add(Op.Nothing, state, 0);
			this.#states.set(state, node);
			return node;
		}
		const key = Object.is(value, -0) ? '-0' : value;
		const known = this.#places.get(key);
		if (known !== undefined) return known;
		const node = this.add(Op.Constant, this.constant(value), 0);
		this.#places.set(key, node);
		return node;
	}

	isFixed(node: number): boolean {
		return this.#op[node] === Op.Constant || this.#op[node] === Op.Nothing;
	}

	outcome(node: number): Outcome {
		return this.#op[node] === Op.Constant
			? { value: this.#constants[this.#a[node]!]!, state: OK }
			: { value: NaN, state: this.#a[node]! };
	}

	add(op: number, a: number, b: number): number {
		this.#op.push(op);
		this.#a.push(a);
		this.#b.push(b);
		return this.#op.length - 1;
	}

	constant(value: number): number {
		return this.#constants.push(value) - 1;
	}

	list(entries: readonly number[]): number {
		const start = this.#lists.length;
		for (const entry of entries) this.#lists.push(entry);
		return start;
	}

	finish(): Formulas {
		const nodes: Nodes = {
			count: this.#op.length,
			op: Uint8Array.from(this.#op),
			a: Int32Array.from(this.#a),
			b: Int32Array.from(this.#b),
			lists: Int32Array.from(this.#lists),
			constants: Float64Array.from(this.#constants)
		};
		return { cells: this.#roots.length, nodes, roots: Int32Array.from(this.#roots) };
	}
}
