/**
 * The nodes of a plan while it is built: typed arrays that grow, with one node for each cell read,
 * each constant and each state. What the operations mean is said in `plan.ts`; what may be computed at once
 * in `fold.ts`.
 */
import { Op } from '../operations';
import type { Nodes } from '../plan';
import type { State } from '../state';
import { GrowingFloats, GrowingInts } from './growing';

export class NodeStore {
	readonly #op = new GrowingInts();
	readonly #a = new GrowingInts();
	readonly #b = new GrowingInts();
	readonly #lists = new GrowingInts();
	readonly #constants = new GrowingFloats();
	readonly #constantPlaces = new Map<number, number>();
	readonly #constantNodes = new Map<number, number>();
	readonly #stateNodes = new Map<State, number>();
	/** Node + 1 by cell; 0: none yet. One for each scenario that a cell may be read in. */
	readonly #cellNodes = [new GrowingInts(), new GrowingInts(), new GrowingInts()] as const;

	get count(): number {
		return this.#op.length;
	}

	/** Nodes and list entries: what a formula costs. */
	get size(): number {
		return this.#op.length + this.#lists.length;
	}

	emit(op: Op, a: number, b: number): number {
		this.#a.push(a);
		this.#b.push(b);
		return this.#op.push(op);
	}

	constant(value: number): number {
		const place = this.constantPlace(value);
		const known = this.#constantNodes.get(place);
		if (known !== undefined) return known;
		const node = this.emit(Op.Constant, place, 0);
		this.#constantNodes.set(place, node);
		return node;
	}

	/** Where a number stands among the constants. Zero has one sign. */
	constantPlace(value: number): number {
		const number = value === 0 ? 0 : value;
		const known = this.#constantPlaces.get(number);
		if (known !== undefined) return known;
		const place = this.#constants.push(number);
		this.#constantPlaces.set(number, place);
		return place;
	}

	nothing(state: State): number {
		const known = this.#stateNodes.get(state);
		if (known !== undefined) return known;
		const node = this.emit(Op.Nothing, state, 0);
		this.#stateNodes.set(state, node);
		return node;
	}

	cell(cell: number, scenario: 0 | 1 | 2): number {
		const nodes = this.#cellNodes[scenario];
		const known = nodes.at(cell);
		if (known > 0) return known - 1;
		const node = this.emit(Op.Cell, cell, scenario);
		nodes.set(cell, node + 1);
		return node;
	}

	/** Writes a list and says where it starts. */
	list(entries: readonly number[]): number {
		const start = this.#lists.length;
		for (const entry of entries) this.#lists.push(entry);
		return start;
	}

	opOf(node: number): number {
		return this.#op.at(node);
	}

	aOf(node: number): number {
		return this.#a.at(node);
	}

	bOf(node: number): number {
		return this.#b.at(node);
	}

	isConstant(node: number): boolean {
		return this.#op.at(node) === Op.Constant;
	}

	/** The number of a constant node. */
	valueOf(node: number): number {
		return this.#constants.at(this.#a.at(node));
	}

	finish(): Nodes {
		return {
			count: this.#op.length,
			op: Uint8Array.from(this.#op.finish()),
			a: this.#a.finish(),
			b: this.#b.finish(),
			lists: this.#lists.finish(),
			constants: this.#constants.finish()
		};
	}
}
