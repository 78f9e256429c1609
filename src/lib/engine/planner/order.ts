/**
 * The order in which formula cells can be computed, each after everything it needs, and the loops that have no
 * such order (Tarjan's strongly connected components, without recursion). Time grows with cells and reads alone.
 */
import type { Edges } from '../plan';
import { GrowingInts } from './growing';

export interface Order {
	readonly order: Int32Array;
	/** The cells of each loop. */
	readonly loops: readonly (readonly number[])[];
}

export function orderOf(roots: ArrayLike<number>, precedents: Edges): Order {
	return new Walk(roots, precedents).run();
}

class Walk {
	readonly #order = new GrowingInts();
	readonly #loops: number[][] = [];
	/** Place in which a cell was entered, from 1; 0: not yet. */
	readonly #entered: Int32Array;
	/** The earliest entered cell that can be reached from it. */
	readonly #lowest: Int32Array;
	readonly #isOpen: Uint8Array;
	/** Which read is to be followed next. */
	readonly #next: Int32Array;
	readonly #path: number[] = [];
	readonly #open: number[] = [];
	#count = 0;

	constructor(
		readonly roots: ArrayLike<number>,
		readonly edges: Edges
	) {
		this.#entered = new Int32Array(roots.length);
		this.#lowest = new Int32Array(roots.length);
		this.#isOpen = new Uint8Array(roots.length);
		this.#next = new Int32Array(roots.length);
	}

	run(): Order {
		for (let cell = 0; cell < this.roots.length; cell++)
			if ((this.roots[cell] ?? -1) >= 0 && this.#entered[cell] === 0) this.#from(cell);
		return { order: this.#order.finish(), loops: this.#loops };
	}

	#from(start: number): void {
		this.#enter(start);
		while (this.#path.length > 0) {
			const cell = this.#path.at(-1) ?? 0;
			const at = this.#next[cell] ?? 0;
			if (at === (this.edges.starts[cell + 1] ?? 0)) {
				this.#leave(cell);
				continue;
			}
			this.#next[cell] = at + 1;
			const needed = this.edges.targets[at] ?? 0;
			if ((this.roots[needed] ?? -1) < 0) continue;
			if (this.#entered[needed] === 0) this.#enter(needed);
			else if (this.#isOpen[needed] === 1) this.#lower(cell, this.#entered[needed] ?? 0);
		}
	}

	#enter(cell: number): void {
		this.#entered[cell] = ++this.#count;
		this.#lowest[cell] = this.#count;
		this.#isOpen[cell] = 1;
		this.#next[cell] = this.edges.starts[cell] ?? 0;
		this.#path.push(cell);
		this.#open.push(cell);
	}

	#lower(cell: number, place: number): void {
		this.#lowest[cell] = Math.min(this.#lowest[cell] ?? 0, place);
	}

	#leave(cell: number): void {
		this.#path.pop();
		const above = this.#path.at(-1);
		if (above !== undefined) this.#lower(above, this.#lowest[cell] ?? 0);
		if (this.#lowest[cell] !== this.#entered[cell]) return;
		const loop: number[] = [];
		for (;;) {
			const member = this.#open.pop() ?? cell;
			this.#isOpen[member] = 0;
			loop.push(member);
			if (member === cell) break;
		}
		if (loop.length === 1 && !this.#readsItself(cell)) this.#order.push(cell);
		else this.#loops.push(loop.sort((a, b) => a - b));
	}

	#readsItself(cell: number): boolean {
		const { starts, targets } = this.edges;
		return targets.subarray(starts[cell], starts[cell + 1]).includes(cell);
	}
}
