/**
 * Entered values that nobody sees: those of a member that is not present in the scenario, and those for which
 * the quantity's `where` says no. The plan guards every reading of such an input, so formulas need nothing
 * from here; this says the same of the inputs' own cells, where they are shown.
 */
import { cellAt, quantityOf } from './layout';
import { Op } from './operations';
import type { Plan } from './plan';
import { ABSENT, carried } from './state';

/** By input cell, the yes/no cells that must all say yes, in the order in which they are looked at. */
export type Conditions = ReadonlyMap<number, readonly number[]>;

export function conditionsOf(plan: Plan): Conditions {
	const conditions = new Map<number, number[]>();
	const { layout, roots } = plan;
	for (const quantity of layout.quantities)
		quantity.axes.forEach((axis, at) => {
			const name = layout.sets.get(axis.set)?.present;
			const present = name === undefined ? undefined : layout.byName.get(name);
			if (!present || present === quantity || present.axes.length !== 1) return;
			for (let cell = quantity.base; cell < quantity.base + quantity.count; cell++) {
				if (roots[cell] !== -1) continue;
				const condition = cellAt(present, [
					quantity.members[(cell - quantity.base) * quantity.axes.length + at]!
				]);
				if (condition >= 0) add(conditions, cell, condition);
			}
		});
	for (const [cell, condition] of whereConditions(plan)) add(conditions, cell, condition);
	return conditions;
}

/** The cells in which the `where` of an entered value is judged, found at its readers. */
function* whereConditions(plan: Plan): Generator<[cell: number, condition: number]> {
	const { layout, nodes, roots } = plan;
	const { op, a, b } = nodes;
	const seen = new Set<number>();
	for (let node = 0; node < nodes.count; node++) {
		if (op[node] !== Op.Guard) continue;
		const [condition, value] = [a[node]!, b[node]!];
		if (op[value] !== Op.Cell || op[condition] !== Op.Cell) continue;
		const cell = a[value]!;
		if (b[value] !== 0 || roots[cell] !== -1 || seen.has(cell)) continue;
		if (a[condition]! < layout.cells || quantityOf(layout, cell)?.quantity.where === undefined)
			continue;
		seen.add(cell);
		yield [cell, a[condition]!];
	}
}

function add(conditions: Map<number, number[]>, cell: number, condition: number): void {
	const known = conditions.get(cell);
	if (known) known.push(condition);
	else conditions.set(cell, [condition]);
}

/** Takes out of a column the inputs whose conditions do not all hold. */
export function hideAbsent(
	conditions: Conditions,
	column: { readonly values: Float64Array; readonly states: Uint8Array }
): void {
	const { values, states } = column;
	for (const [cell, all] of conditions)
		for (const condition of all) {
			const state = states[condition]!;
			if (state === 0 && values[condition] !== 0) continue;
			values[cell] = NaN;
			states[cell] = state === 0 ? ABSENT : carried(state);
			break;
		}
}
