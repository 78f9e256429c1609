/**
 * The derived numbers are not believed either: decisions are moved in one direction, the workbook is computed again by
 * the interpreter, and the objective and both sides of every row must move as the numbers say.
 */
import { Machine } from '$lib/engine/interpreter/machine';
import { schedule, type Program } from '$lib/engine/interpreter/program';
import type { Model } from '$lib/engine/model';
import type { Plan } from '$lib/engine/plan';
import { OK } from '$lib/engine/state';
import { baseOf } from '$lib/workbook/lookup';
import { referenceOf } from '$lib/workbook/scenario';
import type { Derived, Part } from './part';
import { objectiveOf, rowValues } from './linear';

/** Relative to what is added up. */
const LIKE = 1e-7;

/** Moves the decisions to each of these plans and says whether every row and the objective answer as derived. */
export function movesAsDerived(
	model: Model,
	scenario: string,
	{ parts, formulas }: Derived,
	plans: readonly (readonly Float64Array[])[]
): boolean {
	const { plan, workbook } = model;
	const sides = parts.flatMap(({ rows }) =>
		rows.flatMap(({ left, right }) => (left < 0 ? [] : [left, right]))
	);
	const { program, computed } = programFor(plan, formulas, sides);
	const machine = new Machine(program);
	const own = model.column(scenario);
	machine.values.set(own.values);
	machine.states.set(own.states);
	const columnIn = (id: string) => (id === scenario ? machine : { ...model.column(id), narrow: 0 });
	machine.others[1] = columnIn(referenceOf(workbook, scenario).id);
	machine.others[2] = columnIn(baseOf(workbook).id);
	return plans.every((chosen) => {
		parts.forEach((part, place) =>
			part.cells.forEach((cell, column) => {
				machine.values[cell] = chosen[place]![column]!;
				machine.states[cell] = OK;
			})
		);
		machine.run(computed);
		let side = plan.cells;
		return parts.every((part, place) => {
			const answers = answersAsDerived(part, chosen[place]!, machine.values, side);
			side += 2 * part.rows.filter(({ left }) => left >= 0).length;
			return answers;
		});
	});
}

/** `side`: the cell of the left side of the part's first row; the right one follows. */
function answersAsDerived(
	{ programme, objectiveCell, rows }: Part,
	chosen: Float64Array,
	values: Float64Array,
	side: number
): boolean {
	const isLike = (found: number, derived: number, size: number) =>
		Math.abs(found - derived) <= LIKE * Math.max(1, size, Math.abs(derived));
	const size = chosen.reduce((most, x, i) => Math.max(most, Math.abs(x * programme.cost[i]!)), 0);
	if (!isLike(values[objectiveCell]!, objectiveOf(programme, chosen), size)) return false;
	const sums = rowValues(programme, chosen);
	return rows.every(({ left }, row) => {
		if (left < 0) return true;
		const [one, other] = [values[side++]!, values[side++]!];
		const bound = Number.isFinite(programme.rowUpper[row]!)
			? programme.rowUpper[row]!
			: programme.rowLower[row]!;
		// Left less right is the row's sum less its bound.
		return isLike(one - other, sums[row]! - bound, Math.max(Math.abs(one), Math.abs(other)));
	});
}

interface Proving {
	readonly formulas: Int32Array;
	readonly sides: readonly number[];
	readonly program: Program;
	readonly computed: readonly number[];
}

/** The last programs of a plan of cells: scenarios that require the same are computed by the same. */
const programs = new WeakMap<Plan, Proving[]>();
const KEPT = 4;

/** The formulas, and both sides of every row in cells of their own behind those of the plan. */
function programFor(plan: Plan, formulas: Int32Array, sides: readonly number[]): Proving {
	const kept = programs.get(plan) ?? [];
	const known = kept.find((one) => isSame(one.formulas, formulas) && isSame(one.sides, sides));
	if (known) return known;
	const roots = new Int32Array(plan.cells + sides.length);
	roots.set(plan.roots);
	roots.set(sides, plan.cells);
	const computed = [...formulas, ...sides.map((_, at) => plan.cells + at)];
	const program = schedule({ cells: roots.length, nodes: plan.nodes, roots }, computed, {
		otherSlot: (_, cell) => cell
	});
	const proving = { formulas, sides, program, computed };
	programs.set(plan, [proving, ...kept].slice(0, KEPT));
	return proving;
}

const isSame = (one: ArrayLike<number>, other: ArrayLike<number>): boolean => {
	if (one.length !== other.length) return false;
	for (let at = 0; at < one.length; at++) if (one[at] !== other[at]) return false;
	return true;
};

/** Somewhere between the bounds for every column: a fixed scatter that is the same on every machine. */
export function scattered(part: Part): Float64Array {
	const { lower, upper } = part.programme;
	return lower.map((low, column) => {
		const share = ((column + 1) * 0.754877666) % 1;
		const from = Number.isFinite(low) ? low : -1;
		const to = Number.isFinite(upper[column]!) ? upper[column]! : from + 1000;
		return from + share * (to - from);
	});
}
