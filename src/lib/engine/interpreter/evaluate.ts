/**
 * One call from columns of inputs to columns of results, for those who need no machine of their own.
 */
import type { Plan } from '$lib/engine/plan';
import { Machine } from './machine';
import { schedule } from './program';

/** Cell after cell, `width` columns each: the value of cell c in column i stands at c × width + i. */
export interface Columns {
	readonly values: Float64Array;
	readonly states: Uint8Array;
}

export function emptyColumns(cells: number, width: number): Columns {
	return { values: new Float64Array(cells * width), states: new Uint8Array(cells * width) };
}

/**
 * Computes `cells`, each after those it needs, from what stands in `columns`, and writes them back.
 * `others` hold the scenario measured against and the base; left out, the columns themselves.
 */
export function evaluateCells(
	plan: Plan,
	cells: ArrayLike<number>,
	columns: Columns,
	width: number,
	others: { readonly against?: Columns; readonly base?: Columns } = {}
): void {
	const computed = new Uint8Array(plan.cells);
	for (let i = 0; i < cells.length; i++) computed[cells[i]!] = 1;
	const wide: number[] = [];
	if (width > 1) for (let c = 0; c < plan.cells; c++) if (computed[c] === 0) wide.push(c);
	// Another scenario's columns stand as if every cell were wide: cell c is slot −1 − c there.
	const sources = [undefined, others.against, others.base];
	const program = schedule(plan, cells, {
		wide,
		otherSlot: (which, cell) => (sources[which] === undefined ? undefined : -1 - cell)
	});
	const machine = new Machine(program, width);
	if (others.against) machine.others[1] = { ...others.against, narrow: 0 };
	if (others.base) machine.others[2] = { ...others.base, narrow: 0 };
	for (let cell = 0; cell < plan.cells; cell++) {
		if (computed[cell] === 1) continue;
		const at = cell * width;
		machine.write(
			cell,
			columns.values.subarray(at, at + width),
			columns.states.subarray(at, at + width)
		);
	}
	machine.runAll();
	for (let i = 0; i < cells.length; i++) {
		const { at, by } = machine.place(cells[i]!);
		const to = cells[i]! * width;
		for (let column = 0; column < width; column++) {
			columns.values[to + column] = machine.values[at + column * by]!;
			columns.states[to + column] = machine.states[at + column * by]!;
		}
	}
}
