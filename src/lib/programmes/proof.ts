/**
 * The derived numbers are not believed either: decisions are moved in one direction, the workbook is computed again by
 * the interpreter, and the objective and both sides of every row must move as the numbers say.
 */
import { Machine } from '$lib/engine/interpreter/machine';
import { schedule } from '$lib/engine/interpreter/program';
import type { Model } from '$lib/engine/model';
import { OK } from '$lib/engine/state';
import { baseOf } from '$lib/workbook/lookup';
import { referenceOf } from '$lib/workbook/scenario';
import type { Derived } from './part';
import { objectiveOf, rowValues } from './linear';

/** Relative to what is added up. */
const LIKE = 1e-7;

/** Moves the decisions by these amounts, by cell, and says whether every row and the objective answer as derived. */
export function movesAsDerived(
	model: Model,
	scenario: string,
	{ parts, formulas }: Derived,
	chosen: readonly Float64Array[]
): boolean {
	const { plan, workbook } = model;
	const sides = parts.flatMap(({ rows }) =>
		rows.flatMap(({ left, right }) => (left < 0 ? [] : [left, right]))
	);
	const roots = new Int32Array(plan.cells + sides.length);
	roots.set(plan.roots);
	roots.set(sides, plan.cells);
	const cells = roots.length;
	const computed = [...formulas, ...sides.map((_, at) => plan.cells + at)];
	const program = schedule({ cells, nodes: plan.nodes, roots }, computed, {
		otherSlot: (_, cell) => cell
	});
	const machine = new Machine(program);
	const own = model.column(scenario);
	machine.values.set(own.values);
	machine.states.set(own.states);
	const columnIn = (id: string) => (id === scenario ? machine : { ...model.column(id), narrow: 0 });
	machine.others[1] = columnIn(referenceOf(workbook, scenario).id);
	machine.others[2] = columnIn(baseOf(workbook).id);
	parts.forEach((part, place) =>
		part.cells.forEach((cell, column) => {
			machine.values[cell] = chosen[place]![column]!;
			machine.states[cell] = OK;
		})
	);
	machine.run(computed);
	const isLike = (found: number, derived: number, size: number) =>
		Math.abs(found - derived) <= LIKE * Math.max(1, size, Math.abs(derived));
	let next = plan.cells;
	return parts.every((part, place) => {
		const { programme, objectiveCell, rows } = part;
		const plan = chosen[place]!;
		const value = machine.values[objectiveCell]!;
		const size = plan.reduce((most, x, i) => Math.max(most, Math.abs(x * programme.cost[i]!)), 0);
		if (!isLike(value, objectiveOf(programme, plan), size)) return false;
		const sums = rowValues(programme, plan);
		return rows.every(({ left }, row) => {
			if (left < 0) return true;
			const [one, other] = [machine.values[next++]!, machine.values[next++]!];
			const bound = Number.isFinite(programme.rowUpper[row]!)
				? programme.rowUpper[row]!
				: programme.rowLower[row]!;
			// Left less right is the row's sum less its bound.
			return isLike(one - other, sums[row]! - bound, Math.max(Math.abs(one), Math.abs(other)));
		});
	});
}

/** Somewhere between the bounds for every column: a fixed scatter that is the same on every machine. */
export function scattered(part: Derived['parts'][number]): Float64Array {
	const { lower, upper } = part.programme;
	return lower.map((low, column) => {
		const share = ((column + 1) * 0.754877666) % 1;
		const from = Number.isFinite(low) ? low : -1;
		const to = Number.isFinite(upper[column]!) ? upper[column]! : from + 1000;
		return from + share * (to - from);
	});
}
