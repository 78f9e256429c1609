/**
 * Plans written by hand, node by node, so that the interpreter can be tried without any formula.
 */
import fc from 'fast-check';
import { emptyColumns, evaluateCells, type Columns } from '$lib/engine/interpreter/evaluate';
import type { Layout } from '$lib/engine/layout';
import { Op } from '$lib/engine/operations';
import type { Plan } from '$lib/engine/plan';
import { ABSENT, DIVIDES_BY_ZERO, NOT_ENTERED, OFF_END, OK } from '$lib/engine/state';
import { VERSION } from '$lib/workbook/schema';

const layoutOf = (cells: number): Layout => ({
	workbook: {
		format: 'metrewright',
		version: VERSION,
		title: 'By hand',
		sets: [],
		sheets: [],
		scenarios: [{ id: 'base', title: 'Base', parent: null, changes: [] }]
	},
	quantities: [],
	byName: new Map(),
	sets: new Map(),
	ordinals: new Map(),
	problems: [],
	cells,
	quantityOfCell: new Int32Array(cells)
});

export type Term = readonly [value: number, filter?: number, position?: number];

/** Cells without a root are inputs. Nodes are returned as their numbers. */
export class HandPlan {
	readonly #op: number[] = [];
	readonly #a: number[] = [];
	readonly #b: number[] = [];
	readonly #lists: number[] = [];
	readonly #constants: number[] = [];
	readonly #roots: number[];

	constructor(readonly cells: number) {
		this.#roots = new Array<number>(cells).fill(-1);
	}

	node(op: number, a = 0, b = 0): number {
		this.#op.push(op);
		this.#a.push(a);
		this.#b.push(b);
		return this.#op.length - 1;
	}

	constant(value: number): number {
		return this.node(Op.Constant, this.#constants.push(value) - 1);
	}

	cell(cell: number, scenario = 0): number {
		return this.node(Op.Cell, cell, scenario);
	}

	nothing(state: number): number {
		return this.node(Op.Nothing, state);
	}

	list(...entries: number[]): number {
		this.#lists.push(...entries);
		return this.#lists.length - entries.length;
	}

	if(condition: number, then: number, otherwise: number): number {
		return this.node(Op.If, this.list(condition, then, otherwise));
	}

	every(op: number, ...nodes: number[]): number {
		return this.node(op, this.list(...nodes), nodes.length);
	}

	pick(selector: number, ...options: number[]): number {
		return this.node(Op.Pick, selector, this.list(options.length, ...options));
	}

	inRange(node: number, limits: { min?: number; max?: number; above?: number; below?: number }) {
		const at = (limit?: number) => (limit === undefined ? -1 : this.#constants.push(limit) - 1);
		const places = [at(limits.min), at(limits.max), at(limits.above), at(limits.below)];
		return this.node(Op.InRange, node, this.list(...places));
	}

	aggregate(op: number, terms: readonly Term[], ...parameters: number[]): number {
		const entries = terms.flatMap(([value, filter, position]) => [
			value,
			filter ?? -1,
			position ?? -1
		]);
		return this.node(op, this.list(...entries, ...parameters), terms.length);
	}

	root(cell: number, node: number): void {
		this.#roots[cell] = node;
	}

	build(): Plan {
		const none = { starts: new Int32Array(this.cells + 1), targets: new Int32Array(0) };
		const order = this.#roots.flatMap((root, cell) => (root < 0 ? [] : [cell]));
		return {
			layout: layoutOf(this.cells),
			cells: this.cells,
			liftedFrom: new Int32Array(0),
			nodes: {
				count: this.#op.length,
				op: Uint8Array.from(this.#op),
				a: Int32Array.from(this.#a),
				b: Int32Array.from(this.#b),
				lists: Int32Array.from(this.#lists),
				constants: Float64Array.from(this.#constants)
			},
			roots: Int32Array.from(this.#roots),
			inputRange: new Int32Array(this.cells).fill(-1),
			order: Int32Array.from(order),
			circular: new Int32Array(0),
			precedents: none,
			dependents: none,
			ownDependents: none,
			readsOtherScenario: new Int32Array(0),
			problems: [],
			printed: new Map()
		};
	}
}

/** A value, or the state of one that is missing. */
export type Entry = number | { readonly state: number };
export const missing = (state: number): Entry => ({ state });

/** Puts entries into cells 0, 1, 2 … of one column. */
export function columnOf(cells: number, entries: readonly Entry[]): Columns {
	const columns = emptyColumns(cells, 1);
	entries.forEach((entry, cell) => {
		columns.values[cell] = typeof entry === 'number' ? entry : NaN;
		columns.states[cell] = typeof entry === 'number' ? OK : entry.state;
	});
	return columns;
}

export const entryAt = (columns: Columns, place: number): Entry =>
	columns.states[place] === OK ? columns.values[place]! : missing(columns.states[place]!);

/**
 * The one formula that `write` builds, computed for the entries; its operands are cells 0, 1, 2 …
 */
export function answer(
	entries: readonly Entry[],
	write: (plan: HandPlan, operands: number[]) => number
): Entry {
	const plan = new HandPlan(entries.length + 1);
	const operands = entries.map((_, cell) => plan.cell(cell));
	plan.root(entries.length, write(plan, operands));
	const columns = columnOf(plan.cells, entries);
	evaluateCells(plan.build(), [entries.length], columns, 1);
	return entryAt(columns, entries.length);
}

/** Numbers as plants have them, with zeros, yes and no, and the kinds of nothing mixed in. */
export const entries: fc.Arbitrary<Entry> = fc.oneof(
	{ weight: 4, arbitrary: fc.integer({ min: -4, max: 4 }) },
	{ weight: 3, arbitrary: fc.double({ min: -1e6, max: 1e6, noNaN: true }) },
	{ weight: 1, arbitrary: fc.constantFrom(0, 1, 1e300, -1e-300) },
	{
		weight: 1,
		arbitrary: fc.constantFrom(ABSENT, NOT_ENTERED, OFF_END, DIVIDES_BY_ZERO).map(missing)
	}
);

const BINARY = [
	...[Op.Add, Op.Subtract, Op.Multiply, Op.Divide, Op.Power],
	...[Op.Equal, Op.NotEqual, Op.Less, Op.LessOrEqual, Op.Greater, Op.GreaterOrEqual],
	...[Op.Round, Op.RoundUp, Op.RoundDown, Op.Ceiling, Op.Floor, Op.Mod],
	...[Op.IfError, Op.Guard, Op.OrElse]
];
const UNARY = [
	...[Op.Negate, Op.Not, Op.Abs, Op.Sqrt, Op.Exp, Op.Ln],
	...[Op.Spread, Op.NormalDensity, Op.NormalShare, Op.NormalQuantile]
];
const AGGREGATES = [
	...[Op.Sum, Op.Min, Op.Max, Op.Average, Op.Count, Op.Product, Op.Any, Op.All],
	...[Op.Stdev, Op.Median, Op.Npv, Op.Irr, Op.Mirr, Op.Rank],
	...[Op.ArgMin, Op.ArgMax, Op.First, Op.Last, Op.Payback]
];

/** Any plan of `inputs` input cells and some formula cells after them, each of a few nodes of every kind. */
export function anyPlan(inputs: number, formulas: number): fc.Arbitrary<Plan> {
	const step = fc.record({
		kind: fc.nat({ max: 10 }),
		which: fc.nat(),
		picks: fc.array(fc.nat(), { minLength: 12, maxLength: 12 }),
		value: fc.integer({ min: -3, max: 5 })
	});
	const formula = fc.array(step, { minLength: 1, maxLength: 8 });
	return fc.array(formula, { minLength: formulas, maxLength: formulas }).map((all) => {
		const plan = new HandPlan(inputs + formulas);
		all.forEach((steps, i) => {
			const cells = inputs + i;
			const pool = [plan.cell(steps[0]!.picks[0]! % cells)];
			for (const { kind, which, picks, value } of steps) {
				const at = (k: number) => pool[picks[k]! % pool.length]!;
				const one = <T>(list: readonly T[]) => list[which % list.length]!;
				if (kind <= 3) pool.push(plan.cell(picks[0]! % cells));
				if (kind === 4) pool.push(plan.constant(value));
				if (kind <= 5) pool.push(plan.node(one(BINARY), at(1), at(2)));
				else if (kind === 6) pool.push(plan.node(one(UNARY), at(0)));
				else if (kind === 7) pool.push(plan.if(at(0), at(1), at(2)));
				else if (kind === 8) pool.push(plan.pick(at(0), at(1), -1, at(2)));
				else if (kind === 9) pool.push(plan.every(one([Op.And, Op.Or]), at(0), at(1)));
				else {
					const terms: Term[] = [0, 3, 6].map((k) => [
						at(k),
						picks[k]! % 2 === 0 ? at(k + 1) : -1,
						picks[k]! % 3 === 0 ? at(k + 2) : -1
					]);
					pool.push(plan.aggregate(one(AGGREGATES), terms, at(10), at(11)));
				}
			}
			plan.root(cells, pool.at(-1)!);
		});
		return plan.build();
	});
}
