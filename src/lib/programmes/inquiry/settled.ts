/** One part of a programme with its best plan and its prices, as questions about it need them. */
import { membersOf } from '$lib/engine/layout';
import type { Model } from '$lib/engine/model';
import { OK } from '$lib/engine/state';
import type { Programme } from '$lib/workbook/programme-schema';
import { inputAt } from '$lib/workbook/scenario';
import { columnSums } from '../linear';
import type { Part } from '../part';
import type { Solved } from '../solve';

export interface Settled {
	readonly model: Model;
	readonly programme: Programme;
	readonly scenario: string;
	readonly part: Part;
	readonly answer: Solved;
	/** 1 where the objective shall be large, else −1: what is gained is what it changes times this. */
	readonly gain: 1 | -1;
	/** By column: the plan that stands. */
	readonly stands: Float64Array;
	/** By column: what the objective gains by one unit more, with all that it takes. */
	readonly gains: Float64Array;
	readonly columnOf: ReadonlyMap<number, number>;
	/** By row: what one unit of room is worth. */
	readonly prices: Float64Array;
	/** By column: what it takes of each row. */
	readonly byColumn: readonly (readonly Entry[])[];
}

export function settle(
	model: Model,
	programme: Programme,
	scenario: string,
	part: Part,
	answer: Solved
): Settled {
	const { cost, maximise } = part.programme;
	const gain = maximise ? 1 : -1;
	const spent = columnSums(part.programme, answer.rowDual);
	return {
		model,
		programme,
		scenario,
		part,
		answer,
		gain,
		stands: standing(model, scenario, part),
		gains: cost.map((own, column) => gain * (own - spent[column]!)),
		columnOf: new Map([...part.cells].map((cell, column) => [cell, column])),
		prices: answer.rowDual.map((dual, row) => gain * dual * roomWay(part, row)),
		byColumn: entriesByColumn(part)
	};
}

/** In which direction a row's bound moves when there is more room: up, or down where it says "at least". */
export const roomWay = ({ programme }: Part, row: number): 1 | -1 =>
	programme.rowUpper[row] === Infinity ? -1 : 1;

/** The plan that the workbook has; what is held, where a plan has none. */
export function standing(model: Model, scenario: string, part: Part): Float64Array {
	const { values, states } = model.column(scenario);
	return Float64Array.from(part.cells, (cell, column) =>
		states[cell] === OK ? values[cell]! : Math.max(0, part.programme.lower[column]!)
	);
}

/** Whether somebody entered the cell's value. */
export function isPinned({ model, scenario }: Pick<Settled, 'model' | 'scenario'>, cell: number) {
	const { layout } = model;
	const { quantity } = layout.quantities[layout.quantityOfCell[cell]!]!;
	const entered = inputAt(model.workbook, scenario, quantity.name, membersOf(layout, cell)).value;
	return entered !== null && entered !== undefined;
}

export interface Entry {
	readonly row: number;
	readonly column: number;
	readonly factor: number;
}

/** The entries of a row. */
export function entriesOf({ programme }: Part, row: number): Entry[] {
	const { starts, columns, values } = programme;
	const found: Entry[] = [];
	for (let at = starts[row]!; at < starts[row + 1]!; at++)
		found.push({ row, column: columns[at]!, factor: values[at]! });
	return found;
}

function entriesByColumn(part: Part): Entry[][] {
	const lists: Entry[][] = [...part.cells].map(() => []);
	part.rows.forEach((_, row) => {
		for (const entry of entriesOf(part, row)) lists[entry.column]!.push(entry);
	});
	return lists;
}
