/**
 * From a proven formula to nodes, for one cell: the members of the cell stand in `members`, by variable. Names
 * become cells (`read-cells.ts`), aggregates are written out (`expand.ts`), what is fixed is folded (`fold.ts`).
 */
import type { Expression, Span } from '$lib/formula/tree';
import { Op } from '../operations';
import { BAD_FORMULA } from '../state';
import { presenceAxesOf, type PresenceAxis, type ProvenPart } from './absence';
import { Budget } from './budget';
import type { Context } from './context';
import { expand } from './expand';
import { junction, operate } from './fold';
import { GrowingInts } from './growing';
import { Lifts } from './lift';
import { NodeStore } from './node-store';
import type { Proof } from './proof';
import { readCells } from './read-cells';
import type { Aggregate, ListOperation, MemberNumber, Typed } from './types';

/** Which node and which cell stand for which piece of a formula. */
export interface Tracing {
	readonly nodeOf: Map<Expression, number>;
	readonly unitOf: Map<Expression, string>;
	readonly cellOf: Map<Expression, number>;
}

export class Lowering {
	readonly store = new NodeStore();
	/** Ordinal of the current member, by variable slot. */
	members = new Int32Array(32);
	/** The formula in hand. */
	proof: Proof | null = null;
	/** Whether the formula in hand cannot be lowered; why has been reported. */
	failed = false;
	/** How deep inside aggregates. */
	depth = 0;
	/** Of the quantity in hand. */
	readonly budget = new Budget(this.store);
	readonly liftedRoots = new GrowingInts();
	readonly liftedFrom = new GrowingInts();
	readonly guardedInputs = new Map<number, number>();
	readonly presences = new Map<number, number>();
	readonly whereCells = new Map<number, number>();
	/** By cell, as far as they are lowered: what a choice that rests on no input points at is known by its root. */
	roots: Int32Array | null = null;
	/** Entered cells whose `where` is being lowered, the innermost last. */
	readonly judging: number[] = [];
	readonly optionLists = new Map<Typed, Map<number, number>>();
	readonly #numberLists = new Map<ArrayLike<number>, number>();
	readonly #presenceAxes: (readonly PresenceAxis[] | undefined)[] = [];
	readonly #lifts: Lifts;
	#owner = 0;

	constructor(
		readonly context: Context,
		/** By quantity index: whether its values may be absent beyond what their members say. */
		readonly absent: Uint8Array,
		/** By quantity index: the condition under which an entered value counts. */
		readonly inputConditions: ReadonlyMap<number, ProvenPart>,
		/** Cells from this number on are lifted. */
		readonly firstLifted: number,
		readonly tracing: Tracing | null = null
	) {
		this.#lifts = new Lifts(context);
	}

	/** What follows belongs to this quantity, and may cost it so many nodes. */
	startQuantity(index: number): void {
		this.#owner = index;
		this.budget.start();
	}

	/** The root of one formula for the members in hand. */
	root(part: ProvenPart): number {
		this.proof = part.proof;
		this.failed = false;
		const node = this.lower(part.typed);
		return this.failed ? this.store.nothing(BAD_FORMULA) : node;
	}

	lower(typed: Typed): number {
		this.budget.work++;
		const node = this.#node(typed);
		this.#trace(typed, node);
		return node;
	}

	/** A conversion stands for the same words as what it converts: the inner one, in its own unit, is kept. */
	#trace({ source, type }: Typed, node: number): void {
		const { tracing } = this;
		if (!tracing || !source || this.depth > 0 || tracing.nodeOf.has(source)) return;
		tracing.nodeOf.set(source, node);
		if (type.kind === 'number') tracing.unitOf.set(source, type.unit.text);
	}

	#node(typed: Typed): number {
		const { store } = this;
		switch (typed.kind) {
			case 'constant':
				return store.constant(typed.value);
			case 'variable':
				return store.constant(this.members[typed.slot] ?? 0);
			case 'member-number':
				return this.#memberNumber(typed);
			case 'read':
				return readCells(this, typed);
			case 'unary':
				return operate(store, typed.op, this.lower(typed.of), 0);
			case 'binary':
				return this.#binary(typed);
			case 'list':
				return typed.op === Op.If ? this.#choose(typed) : this.#junction(typed);
			case 'conversion':
				return operate(store, Op.Multiply, this.lower(typed.of), store.constant(typed.factor));
			case 'aggregate':
				return this.#aggregate(typed);
			case 'broken':
				this.failed = true;
				return store.nothing(BAD_FORMULA);
		}
	}

	/** Down the spine of a long sum without recursion. */
	#binary(typed: Extract<Typed, { kind: 'binary' }>): number {
		const spine: Extract<Typed, { kind: 'binary' }>[] = [];
		let first: Typed = typed;
		while (first.kind === 'binary') {
			spine.push(first);
			first = first.left;
		}
		let node = this.lower(first);
		for (let at = spine.length - 1; at >= 0; at--) {
			const link = spine[at];
			if (!link) continue;
			const right = this.lower(link.right);
			node =
				link.op === Op.IfError
					? this.#ifError(node, right)
					: operate(this.store, link.op, node, right);
			this.#trace(link, node);
		}
		return node;
	}

	#ifError(value: number, other: number): number {
		return this.store.isConstant(value) ? value : this.store.emit(Op.IfError, value, other);
	}

	#choose({ items }: ListOperation): number {
		const { store } = this;
		const [test, then, otherwise] = items;
		if (!test || !then || !otherwise) return store.nothing(BAD_FORMULA);
		const condition = this.lower(test);
		if (!store.isConstant(condition))
			return store.emit(Op.If, store.list([condition, this.lower(then), this.lower(otherwise)]), 0);
		const [taken, dropped] = store.valueOf(condition) !== 0 ? [then, otherwise] : [otherwise, then];
		// Who asks why wants to see the value of every name, the idle branch included.
		if (this.tracing) this.lower(dropped);
		return this.lower(taken);
	}

	/** Fixed conditions first: where one decides, the others are not even lowered. */
	#junction({ op, items }: ListOperation): number {
		const { store } = this;
		const decides = op === Op.And ? 0 : 1;
		const nodes = items.map((item) => (item.fixed ? this.lower(item) : -1));
		const decided = nodes.some(
			(node) => node >= 0 && store.isConstant(node) && store.valueOf(node) === decides
		);
		if (decided && !this.tracing) return store.constant(decides);
		return junction(
			store,
			op,
			nodes.map((node, at) => (node >= 0 ? node : this.lower(items[at] as Typed)))
		);
	}

	#memberNumber({ of, numbers }: MemberNumber): number {
		const { store } = this;
		const selector = this.lower(of);
		if (store.isConstant(selector)) return store.constant(numbers[store.valueOf(selector)] ?? NaN);
		let list = this.#numberLists.get(numbers);
		if (list === undefined) {
			const nodes = Array.from(numbers, (number) => store.constant(number));
			list = store.list([nodes.length, ...nodes]);
			this.#numberLists.set(numbers, list);
		}
		return store.emit(Op.Pick, selector, list);
	}

	#aggregate(typed: Aggregate): number {
		const lift = this.tracing ? null : this.#lifts.of(typed);
		if (!lift) return expand(this, typed);
		let place = 0;
		lift.slots.forEach((slot, at) => {
			place = place * (lift.sizes[at] ?? 0) + (this.members[slot] ?? 0);
		});
		const known = lift.table[place] ?? 0;
		if (known > 0) return known - 1;
		const root = expand(this, typed);
		if (this.failed) return root;
		const node = isLeaf(this.store.opOf(root)) ? root : this.store.cell(this.lifted(root), 0);
		lift.table[place] = node + 1;
		return node;
	}

	/** A new cell of its own for a root. */
	lifted(root: number): number {
		this.liftedFrom.push(this.#owner);
		return this.firstLifted + this.liftedRoots.push(root);
	}

	/** The axes along which values of a quantity come and go. */
	presenceAxes(index: number): readonly PresenceAxis[] {
		const known = this.#presenceAxes[index];
		if (known) return known;
		const quantity = this.context.at(index);
		const found = quantity ? presenceAxesOf(this.context, quantity.layout) : [];
		this.#presenceAxes[index] = found;
		return found;
	}

	report(code: string, message: string, span: Span): void {
		this.failed = true;
		this.proof?.report(code, message, span);
	}

	/** Whether the quantity has cost more than it may; reports it once. */
	isTooLarge(): boolean {
		if (!this.budget.isSpent()) return false;
		const { proof } = this;
		if (proof && !this.failed)
			this.report('too-many-nodes', this.budget.why(proof.name), {
				start: 0,
				end: proof.text.length
			});
		return true;
	}
}

function isLeaf(op: number): boolean {
	return op === Op.Constant || op === Op.Nothing || op === Op.Cell;
}
