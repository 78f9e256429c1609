/**
 * The nodes of a plan as affine forms of the decisions. What does not depend on a decision is the value that the
 * interpreter found; what does is followed through sums, differences, products and quotients by plain values, filters and
 * conditions that are plain, and refused where it is anything else.
 */
import { operandsOf } from '$lib/engine/operands';
import { isAggregate, isUnary, Op, parameterCount, type ScalarOp } from '$lib/engine/operations';
import { probe } from '$lib/engine/interpreter/probe';
import type { Plan } from '$lib/engine/plan';
import { compute, failureOf } from '$lib/engine/scalar';
import {
	ABSENT,
	carried,
	DIVIDES_BY_ZERO,
	NO_ANSWER,
	OFF_END,
	OK,
	TOO_LARGE
} from '$lib/engine/state';
import type { Column } from '$lib/engine/scenarios';
import { decision, isPlain, plain, plus, sumOf, times, without, type Form } from './affine';

/** Thrown to leave the formula in which something is not linear; caught where programmes are derived. */
export class NotLinear extends Error {
	override readonly name = 'NotLinear';
	constructor(
		readonly kind: NotLinearKind,
		/** The node at fault, and the one in it that the programme decides. */
		readonly node: number,
		readonly decided: number
	) {
		super(kind);
	}
}

export type NotLinearKind =
	| 'product'
	| 'divisor'
	| 'power'
	| 'condition'
	| 'filter'
	| 'choice'
	| 'extreme'
	| 'function'
	| 'comparison';

export interface Setting {
	readonly plan: Plan;
	/** By cell: its column, −1 for none. */
	readonly columnOf: Int32Array;
	/** By cell: 1 where a decision reaches it. */
	readonly reached: Uint8Array;
	/** The scenario's own values, those it is measured against and the base's. */
	readonly own: Column;
	readonly others: readonly [reference: Column, base: Column];
}

export class Forms {
	readonly #setting: Setting;
	readonly #ofNode: (Form | undefined)[];

	constructor(setting: Setting) {
		this.#setting = setting;
		this.#ofNode = new Array<Form | undefined>(setting.plan.nodes.count);
	}

	cell(cell: number): Form {
		const { columnOf, reached, own, plan } = this.#setting;
		const column = columnOf[cell]!;
		if (column >= 0) return decision(column);
		const root = plan.roots[cell]!;
		if (reached[cell] === 1 && root >= 0) return this.node(root);
		return valueIn(own, cell);
	}

	node(node: number): Form {
		return (this.#ofNode[node] ??= this.#compute(node));
	}

	operands(node: number): number[] {
		return operandsOf(this.#setting.plan.nodes, node);
	}

	#compute(node: number): Form {
		const { nodes } = this.#setting.plan;
		const op = nodes.op[node]!;
		const a = nodes.a[node]!;
		const b = nodes.b[node]!;
		switch (op) {
			case Op.Constant:
				return plain(nodes.constants[a]!);
			case Op.Nothing:
				return without(a);
			case Op.Cell:
				return this.#read(a, b);
			case Op.Guard:
				return this.#guarded(node, a, b);
			case Op.If:
				return this.#chosen(node);
			case Op.Pick:
				return this.#picked(node, a, b);
			case Op.IfError: {
				const first = this.node(a);
				return first.state === OK ? first : this.node(b);
			}
			case Op.OrElse: {
				const first = this.node(a);
				const isOpen = first.state === OFF_END || first.state === NO_ANSWER;
				return isOpen ? this.node(b) : first;
			}
			case Op.InRange: {
				const inner = this.node(a);
				return isPlain(inner) ? this.#value(node) : inner;
			}
			case Op.Present: {
				const inner = this.node(a);
				return plain(inner.state === ABSENT ? 0 : 1);
			}
			default:
				return isAggregate(op) ? this.#aggregate(node, op) : this.#arithmetic(node, op);
		}
	}

	#read(cell: number, which: number): Form {
		const { own, others } = this.#setting;
		const other = which === 0 ? own : others[which - 1]!;
		return other === own ? this.cell(cell) : valueIn(other, cell);
	}

	/** A value that must not depend on a decision. */
	#plainly(node: number, at: number, kind: NotLinearKind): Form {
		const form = this.#tested(node, at, kind);
		if (!isPlain(form)) throw new NotLinear(kind, at, node);
		return form;
	}

	/** A comparison in a condition is at fault as a condition. */
	#tested(node: number, at: number, kind: NotLinearKind): Form {
		try {
			return this.node(node);
		} catch (fault) {
			if (!(fault instanceof NotLinear) || fault.kind !== 'comparison') throw fault;
			throw new NotLinear(kind, at, fault.decided);
		}
	}

	#guarded(node: number, condition: number, value: number): Form {
		const tested = this.#plainly(condition, node, 'condition');
		if (tested.state !== OK) return without(carried(tested.state));
		return tested.constant === 0 ? without(ABSENT) : this.node(value);
	}

	#chosen(node: number): Form {
		const [condition, yes, no] = this.operands(node);
		const tested = this.#plainly(condition!, node, 'condition');
		if (tested.state !== OK) return without(carried(tested.state));
		return this.#met(this.node(tested.constant === 0 ? no! : yes!));
	}

	#picked(node: number, selector: number, list: number): Form {
		const { lists } = this.#setting.plan.nodes;
		const chosen = this.#plainly(selector, node, 'choice');
		if (chosen.state !== OK) return this.#value(node);
		const target = lists[list + 1 + chosen.constant] ?? -1;
		const inside = chosen.constant < lists[list]! && target >= 0;
		return inside && !isPlain(this.node(target)) ? this.node(target) : this.#value(node);
	}

	#met = (form: Form): Form => (form.state === OK ? form : without(carried(form.state)));

	#arithmetic(node: number, op: number): Form {
		if (op === Op.And || op === Op.Or) return this.#joined(node, op);
		const { nodes } = this.#setting.plan;
		const a = this.node(nodes.a[node]!);
		const b = isUnary(op) ? a : this.node(nodes.b[node]!);
		for (const form of [a, b]) if (form.state !== OK) return without(carried(form.state));
		if (isPlain(a) && isPlain(b)) return computed(op as ScalarOp, a.constant, b.constant);
		const firstDecided = nodes[isPlain(a) ? 'b' : 'a'][node]!;
		switch (op) {
			case Op.Add:
				return plus(a, b);
			case Op.Subtract:
				return plus(a, b, -1);
			case Op.Negate:
				return times(a, -1);
			case Op.Multiply:
				if (isPlain(a)) return times(b, a.constant);
				if (isPlain(b)) return times(a, b.constant);
				throw new NotLinear('product', node, nodes.b[node]!);
			case Op.Divide:
				if (!isPlain(b)) throw new NotLinear('divisor', node, nodes.b[node]!);
				// What divides by zero is an error for every plan.
				return b.constant === 0 ? without(DIVIDES_BY_ZERO) : times(a, 1 / b.constant);
			case Op.Power:
				if (isPlain(b) && b.constant === 1) return a;
				throw new NotLinear('power', node, firstDecided);
			case Op.Equal:
			case Op.NotEqual:
			case Op.Less:
			case Op.LessOrEqual:
			case Op.Greater:
			case Op.GreaterOrEqual:
			case Op.Not:
				throw new NotLinear('comparison', node, firstDecided);
			default:
				throw new NotLinear('function', node, firstDecided);
		}
	}

	/** AND and OR look at every operand; of a decided one no plain value comes. */
	#joined(node: number, op: number): Form {
		const met: boolean[] = [];
		for (const operand of this.operands(node)) {
			const form = this.node(operand);
			if (!isPlain(form)) throw new NotLinear('comparison', node, operand);
			if (form.state !== OK) return without(carried(form.state));
			met.push(form.constant !== 0);
		}
		return plain(Number(op === Op.And ? met.every(Boolean) : met.some(Boolean)));
	}

	#aggregate(node: number, op: number): Form {
		const operands = this.operands(node);
		const isKnown = (operand: number) => operand < 0 || isPlain(this.node(operand));
		const isGathered = op === Op.Sum || op === Op.Min || op === Op.Max;
		if (!isGathered && operands.every(isKnown)) return this.#value(node);
		const count = operands.length - parameterCount(op);
		const kept: Form[] = [];
		let first = -1;
		for (let term = 0; term < count; term += 3) {
			const filter = operands[term + 1]!;
			if (filter >= 0) {
				const tested = this.#plainly(filter, node, 'filter');
				if (tested.state !== OK) return without(carried(tested.state));
				if (tested.constant === 0) continue;
			}
			const value = this.node(operands[term]!);
			if (value.state !== OK) return without(carried(value.state));
			if (first < 0 && !isPlain(value)) first = operands[term]!;
			kept.push(value);
		}
		switch (op) {
			case Op.Sum:
				return finite(sumOf(kept));
			case Op.Average:
				return kept.length === 0 ? without(NO_ANSWER) : times(sumOf(kept), 1 / kept.length);
			case Op.First:
			case Op.Last:
				return kept.at(op === Op.First ? 0 : -1) ?? without(NO_ANSWER);
			case Op.Npv: {
				const rate = this.#plainly(operands[count]!, node, 'function');
				if (rate.state !== OK) return without(carried(rate.state));
				return sumOf(kept.map((value, i) => times(value, (1 + rate.constant) ** -(i + 1))));
			}
			case Op.Min:
			case Op.Max:
				if (kept.length === 1) return kept[0]!;
				if (first < 0) return extreme(op, kept);
				throw new NotLinear('extreme', node, first);
			default:
				throw new NotLinear('function', node, first);
		}
	}

	/** The value of a node that no decision reaches and that is seldom met, by the interpreter. */
	#value(node: number): Form {
		const { plan, own, others } = this.#setting;
		const found = probe(plan.nodes, node, ({ cell, which }) => {
			const column = which === 0 ? own : others[which - 1]!;
			return { value: column.values[cell]!, state: column.states[cell]! };
		});
		const { value, state } = found.value(found.root);
		return state === OK ? plain(value) : without(state);
	}
}

function computed(op: ScalarOp, x: number, y: number): Form {
	const value = compute(op, x, y);
	return Number.isFinite(value) ? plain(value) : without(failureOf(op, x, y));
}

function extreme(op: typeof Op.Min | typeof Op.Max, kept: readonly Form[]): Form {
	if (kept.length === 0) return without(NO_ANSWER);
	const better = op === Op.Min ? Math.min : Math.max;
	return plain(kept.reduce((best, { constant }) => better(best, constant), kept[0]!.constant));
}

const finite = (form: Form): Form =>
	isPlain(form) && !Number.isFinite(form.constant) ? without(TOO_LARGE) : form;

function valueIn({ values, states }: Column, cell: number): Form {
	const state = states[cell]!;
	return state === OK ? plain(values[cell]!) : without(state);
}
