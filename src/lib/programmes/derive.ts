/**
 * From a programme and the formulas that stand in the workbook to rows of numbers, for one scenario: a column for every
 * cell that is decided, a row for every comparison that must hold, apart for each member of `each`.
 */
import { reachIn } from '$lib/engine/interpreter/reach';
import { membersOf, type QuantityLayout } from '$lib/engine/layout';
import type { Model } from '$lib/engine/model';
import { nameOf } from '$lib/engine/naming';
import { Op } from '$lib/engine/operations';
import type { Plan } from '$lib/engine/plan';
import { ABSENT, OK } from '$lib/engine/state';
import { axesOf } from '$lib/workbook/axes';
import { baseOf } from '$lib/workbook/lookup';
import type { Programme } from '$lib/workbook/programme-schema';
import { inputValues, referenceOf } from '$lib/workbook/scenario';
import { valueAt } from '$lib/workbook/values';
import { isPlain, plain, plus, type Form } from './affine';
import { outsideRange } from './bounds';
import { digestOf } from './digest';
import { Forms, NotLinear } from './forms';
import { whyNotLinear } from './refusal';
import { linearOf, type Decided, type DraftRow } from './linear-part';
import { cellsOf, type Derivation, type Part } from './part';

/** More decisions than could be solved while anybody waits. */
export const MOST_DECISIONS = 200_000;
const MOST_PROBLEMS = 20;

/** `isLate`: whether the time for it is up; asked now and then. */
export function derive(
	model: Model,
	programme: Programme,
	scenario: string,
	isLate: () => boolean = () => false
): Derivation {
	return new Deriving(model, programme, scenario, isLate).run();
}

/** Cells between two looks at the time. */
const AT_A_TIME = 256;

interface Share {
	readonly columns: number[];
	readonly rows: DraftRow[];
}

/** Thrown to leave a sweep whose time is up. */
class TimeIsUp extends Error {
	override readonly name = 'TimeIsUp';
}

class Deriving {
	readonly #model: Model;
	readonly #programme: Programme;
	readonly #scenario: string;
	readonly #plan: Plan;
	readonly #cells: number[] = [];
	readonly #named: number[] = [];
	readonly #pins: (number | null)[] = [];
	readonly #partOf: string[] = [];
	readonly #problems: string[] = [];
	readonly #rows: DraftRow[] = [];

	readonly #isLate: () => boolean;
	#cellsTried = 0;

	constructor(model: Model, programme: Programme, scenario: string, isLate: () => boolean) {
		this.#isLate = isLate;
		this.#model = model;
		this.#programme = programme;
		this.#scenario = scenario;
		this.#plan = model.plan;
	}

	run(): Derivation {
		try {
			return this.#run();
		} catch (end) {
			if (!(end instanceof TimeIsUp)) throw end;
			const line = `${this.#programme.title} is too large to be derived in the time there is. Decide less, or require less.`;
			return { ok: false, problems: [line], isLate: true };
		}
	}

	#run(): Derivation {
		this.#takeColumns();
		const { layout } = this.#plan;
		const { maximise, minimise, constraints, title } = this.#programme;
		const objective = layout.byName.get(maximise ?? minimise ?? '');
		if (!objective) this.#problems.push(`${title} has no objective.`);
		if (this.#problems.length > 0 || !objective) return this.#refused();
		const required = constraints
			.flatMap((name) => layout.byName.get(name) ?? [])
			.flatMap((quantity) => cellsOf(quantity));
		const reached = new Uint8Array(this.#plan.cells);
		const reach = reachIn(this.#plan).from(this.#cells);
		for (const cell of reach.cells) reached[cell] = 1;
		const needed = this.#neededBy([...cellsOf(objective), ...required], reached);
		const isRequired = new Uint8Array(this.#plan.cells);
		for (const cell of required) isRequired[cell] = 1;
		const forms = this.#forms(reached);
		// In the plan's order, so that nothing is computed deeper than one formula.
		const formulas = reach.formulas.filter((cell) => needed[cell] === 1);
		for (const cell of formulas)
			if (isRequired[cell] === 0)
				this.#trying(cell, () => void forms.cell(cell), this.#isYesNo(cell));
		if (this.#problems.length > 0) return this.#refused();
		for (const cell of required) this.#trying(cell, () => this.#takeRows(forms, cell));
		for (const cell of formulas) this.#trying(cell, () => this.#takeRange(forms, cell));
		this.#checkApart();
		const shares = this.#shares();
		const parts = cellsOf(objective).flatMap((cell) => this.#part(forms, objective, cell, shares));
		if (this.#problems.length > 0) return this.#refused();
		return {
			ok: true,
			derived: { parts, digest: digestOf(parts.map(({ programme }) => programme)), formulas }
		};
	}

	#refused(): Derivation {
		const problems = this.#problems.slice(0, MOST_PROBLEMS);
		return { ok: false, problems };
	}

	/** A column for every decision cell that is there in the scenario; an entry pins it. */
	#takeColumns(): void {
		const { layout } = this.#plan;
		const { states } = this.#model.column(this.#scenario);
		this.#programme.decisions.forEach((name, place) => {
			const quantity = layout.byName.get(name);
			if (!quantity) return;
			if (this.#cells.length + quantity.count > MOST_DECISIONS) {
				const count = this.#cells.length + quantity.count;
				this.#problems.push(
					`${this.#programme.title} would decide ${count} values and more, and at most ${MOST_DECISIONS} can be decided. Decide less, or take members out.`
				);
				return;
			}
			const entries = inputValues(this.#model.workbook, this.#scenario, name);
			for (const cell of cellsOf(quantity)) {
				if (states[cell] === ABSENT) continue;
				const at = membersOf(layout, cell);
				const entry = valueAt(entries, at) ?? null;
				const pin = typeof entry === 'boolean' ? Number(entry) : entry;
				this.#cells.push(cell);
				this.#named.push(place);
				this.#pins.push(typeof pin === 'number' ? pin : null);
				const outside = typeof pin === 'number' ? outsideRange(this.#plan, cell, pin) : null;
				if (outside !== null) this.#problems.push(outside);
				this.#partOf.push(this.#memberKey(quantity, cell));
			}
		});
	}

	#memberKey(quantity: QuantityLayout, cell: number): string {
		const at = membersOf(this.#plan.layout, cell);
		const axes = axesOf(quantity.quantity);
		const members = (this.#programme.each ?? []).map((set) => {
			const axis = axes.findIndex((axis) => axis.set === set);
			if (axis < 0 && this.#problems.length === 0)
				this.#problems.push(
					`${quantity.quantity.name} is not per ${set}, but the programme is solved for each ${set} apart. Give it that set, or take ${set} out of "each".`
				);
			return at[axis] ?? '';
		});
		return members.join('\u0001');
	}

	#forms(reached: Uint8Array): Forms {
		const model = this.#model;
		const own = model.column(this.#scenario);
		const columnOf = new Int32Array(this.#plan.cells).fill(-1);
		this.#cells.forEach((cell, column) => (columnOf[cell] = column));
		const columnIn = (id: string) => (id === this.#scenario ? own : model.column(id));
		const reference = referenceOf(model.workbook, this.#scenario).id;
		const others = [columnIn(reference), columnIn(baseOf(model.workbook).id)] as const;
		return new Forms({ plan: this.#plan, columnOf, reached, own, others });
	}

	/** By cell: 1 where one of these is computed from it, and a decision reaches it. */
	#neededBy(targets: readonly number[], reached: Uint8Array): Uint8Array {
		const { starts, targets: read } = this.#plan.precedents;
		const needed = new Uint8Array(this.#plan.cells);
		const stack = targets.filter((cell) => reached[cell] === 1);
		for (const cell of stack) needed[cell] = 1;
		for (let cell = stack.pop(); cell !== undefined; cell = stack.pop())
			for (let at = starts[cell]!; at < starts[cell + 1]!; at++) {
				const next = read[at]!;
				if (needed[next] === 1 || reached[next] !== 1) continue;
				needed[next] = 1;
				stack.push(next);
			}
		return needed;
	}

	/** `mayCompare`: a comparison is no fault, as what must hold may be made of it. */
	#trying(cell: number, attempt: () => void, mayCompare = false): void {
		if (this.#cellsTried++ % AT_A_TIME === 0 && this.#isLate()) throw new TimeIsUp();
		try {
			attempt();
		} catch (fault) {
			if (!(fault instanceof NotLinear)) throw fault;
			if (fault.kind === 'comparison' && mayCompare) return;
			const line = whyNotLinear(this.#plan, cell, fault, new Set(this.#cells));
			if (!this.#problems.includes(line)) this.#problems.push(line);
		}
	}

	#isYesNo(cell: number): boolean {
		const { layout } = this.#plan;
		if (cell >= layout.cells) return true;
		return layout.quantities[layout.quantityOfCell[cell]!]!.quantity.type === 'yes_no';
	}

	#takeRows(forms: Forms, cell: number): void {
		const root = this.#plan.roots[cell]!;
		if (root >= 0) this.#require(forms, root, cell);
	}

	/** Every comparison that a yes/no node is made of, as a row. */
	#require(forms: Forms, node: number, cell: number): void {
		const { op, a, b } = this.#plan.nodes;
		const plainly = (condition: number): Form => {
			const tested = forms.node(condition);
			if (!isPlain(tested)) throw new NotLinear('condition', node, condition);
			return tested;
		};
		switch (op[node]) {
			case Op.And:
				for (const each of forms.operands(node)) this.#require(forms, each, cell);
				return;
			case Op.All: {
				const terms = forms.operands(node);
				for (let term = 0; term < terms.length; term += 3) {
					const filter = terms[term + 1]!;
					if (filter >= 0 && plainly(filter).constant === 0) continue;
					this.#require(forms, terms[term]!, cell);
				}
				return;
			}
			case Op.Guard:
				if (plainly(a[node]!).constant === 1) this.#require(forms, b[node]!, cell);
				return;
			case Op.If: {
				const [condition, yes, no] = forms.operands(node);
				const tested = plainly(condition!);
				if (tested.state !== OK) return this.#noValue(cell);
				return this.#require(forms, tested.constant === 0 ? no! : yes!, cell);
			}
			case Op.Cell: {
				const root = this.#plan.roots[a[node]!]!;
				if (b[node] === 0 && root >= 0) return this.#require(forms, root, cell);
				break;
			}
			case Op.LessOrEqual:
				return this.#compare(forms, node, cell, -Infinity, 0);
			case Op.GreaterOrEqual:
				return this.#compare(forms, node, cell, 0, Infinity);
			case Op.Equal:
				return this.#compare(forms, node, cell, 0, 0);
		}
		const form = forms.node(node);
		if (!isPlain(form)) throw new NotLinear('comparison', node, node);
		if (form.state === ABSENT) return;
		if (form.state !== OK) return this.#noValue(cell);
		// What no decision moves either holds or cannot hold.
		if (form.constant === 0)
			this.#rows.push({ cell, left: -1, right: -1, form: plain(0), lower: 1, upper: 1 });
	}

	#compare(forms: Forms, node: number, cell: number, lower: number, upper: number): void {
		const [left, right] = forms.operands(node) as [number, number];
		const [one, other] = [forms.node(left), forms.node(right)];
		if (one.state !== OK || other.state !== OK) return this.#noValue(cell);
		const form = plus(one, other, -1);
		const size = Math.max(1, Math.abs(one.constant), Math.abs(other.constant));
		// A comparison of plain values that holds to the last digits says nothing about the decisions.
		const by = Math.max(lower - form.constant, form.constant - upper);
		if (isPlain(form) && by <= 1e-9 * size) return;
		this.#rows.push({ cell, left, right, form, lower, upper });
	}

	#noValue(cell: number): void {
		this.#problems.push(
			`${nameOf(this.#plan, cell)} has no value, so it cannot be required. Mend what it is computed from.`
		);
	}

	/** A value that is computed from decisions and has a range is an error outside of it: its range must hold. */
	#takeRange(forms: Forms, cell: number): void {
		const { nodes, roots, layout } = this.#plan;
		let root = roots[cell]!;
		while (nodes.op[root] === Op.Guard) root = nodes.b[root]!;
		if (cell >= layout.cells || nodes.op[root] !== Op.InRange) return;
		const form = forms.cell(cell);
		if (form.state !== OK || isPlain(form)) return;
		const limit = (place: number, none: number) => {
			const at = nodes.lists[nodes.b[root]! + place]!;
			return at < 0 ? none : nodes.constants[at]!;
		};
		const lower = Math.max(limit(0, -Infinity), limit(2, -Infinity));
		const upper = Math.min(limit(1, Infinity), limit(3, Infinity));
		this.#rows.push({ cell, left: -1, right: -1, form, lower, upper });
	}

	/** By the members of a part: its columns and rows. */
	#shares(): Map<string, Share> {
		const shares = new Map<string, Share>();
		const of = (key: string) => {
			const known = shares.get(key);
			if (known) return known;
			const share: Share = { columns: [], rows: [] };
			shares.set(key, share);
			return share;
		};
		this.#partOf.forEach((key, column) => of(key).columns.push(column));
		for (const row of this.#rows) of(this.#rowKey(row)).rows.push(row);
		return shares;
	}

	#part(
		forms: Forms,
		objective: QuantityLayout,
		cell: number,
		shares: ReadonlyMap<string, Share>
	): Part[] {
		const key = this.#memberKey(objective, cell);
		const form = forms.cell(cell);
		if (form.state === ABSENT) return [];
		if (form.state !== OK) {
			this.#problems.push(
				`${nameOf(this.#plan, cell)} has no value, so nothing can be best by it. Mend what it is computed from.`
			);
			return [];
		}
		const { columns, rows } = shares.get(key) ?? { columns: [], rows: [] };
		const local = new Int32Array(this.#cells.length).fill(-1);
		columns.forEach((column, at) => (local[column] = at));
		if (form.columns.some((column) => local[column] === -1)) this.#problems.push(this.#tied(cell));
		const members = key === '' ? [] : key.split('\u0001');
		const linear = linearOf(this.#decided(), form, columns, local, rows);
		return [
			{
				members,
				programme: linear,
				cells: Int32Array.from(columns, (column) => this.#cells[column]!),
				named: Uint8Array.from(columns, (column) => this.#named[column]!),
				rows: rows.map(({ cell, left, right }) => ({ cell, left, right })),
				objectiveCell: cell
			}
		];
	}

	#decided(): Decided {
		return {
			plan: this.#plan,
			maximise: this.#programme.maximise !== undefined,
			cells: this.#cells,
			pins: this.#pins
		};
	}

	/** The part of a row: that of its first decision, or of its own members where it has none. */
	#rowKey({ form, cell }: DraftRow): string {
		const column = form.columns[0];
		if (column !== undefined) return this.#partOf[column]!;
		const { layout } = this.#plan;
		return cell < layout.cells
			? this.#memberKey(layout.quantities[layout.quantityOfCell[cell]!]!, cell)
			: '';
	}

	#checkApart(): void {
		for (const { form, cell } of this.#rows) {
			const [first] = form.columns;
			if (first === undefined) continue;
			if (form.columns.some((column) => this.#partOf[column] !== this.#partOf[first]))
				this.#problems.push(this.#tied(cell));
		}
	}

	#tied(cell: number): string {
		const each = (this.#programme.each ?? []).join(' and ');
		return `${nameOf(this.#plan, cell)} ties several members of ${each} together, so they cannot be solved apart. Take ${each} out of "each", or change the formula.`;
	}
}
