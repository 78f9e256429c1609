/** The rows and columns of one part as arrays of numbers: forms over all decisions become rows over those of the part. */
import type { Plan } from '$lib/engine/plan';
import type { Form } from './affine';
import { openBounds } from './bounds';
import type { LinearProgramme } from './linear';
import type { Row } from './part';

/** What a programme decides in a scenario: by column its cell, and what was entered there. */
export interface Decided {
	readonly plan: Plan;
	readonly maximise: boolean;
	readonly cells: readonly number[];
	readonly pins: readonly (number | null)[];
}

export interface DraftRow extends Row {
	readonly form: Form;
	readonly lower: number;
	readonly upper: number;
}

/** `columns`: those of the part; `local`: by column its place among them, below 0 where it is in another part. */
export function linearOf(
	decided: Decided,
	objective: Form,
	columns: readonly number[],
	local: Int32Array,
	rows: readonly DraftRow[]
): LinearProgramme {
	const cost = new Float64Array(columns.length);
	objective.columns.forEach((column, i) => {
		const at = local[column]!;
		if (at >= 0) cost[at] = objective.factors[i]!;
	});
	const bounds = columns.map((column) => boundsOf(decided, column));
	return {
		maximise: decided.maximise,
		offset: objective.constant,
		cost,
		lower: Float64Array.from(bounds, ([low]) => low),
		upper: Float64Array.from(bounds, ([, high]) => high),
		whole: Uint8Array.from(columns, (column) => Number(isWhole(decided, column))),
		...entriesOf(rows, local),
		rowLower: Float64Array.from(rows, ({ form, lower }) => lower - form.constant),
		rowUpper: Float64Array.from(rows, ({ form, upper }) => upper - form.constant)
	};
}

function entriesOf(
	rows: readonly DraftRow[],
	local: Int32Array
): Pick<LinearProgramme, 'starts' | 'columns' | 'values'> {
	const starts = new Int32Array(rows.length + 1);
	rows.forEach(({ form }, row) => (starts[row + 1] = starts[row]! + form.columns.length));
	const columns = new Int32Array(starts[rows.length]!);
	const values = new Float64Array(columns.length);
	rows.forEach(({ form }, row) => {
		for (let i = 0; i < form.columns.length; i++) {
			columns[starts[row]! + i] = Math.max(0, local[form.columns[i]!]!);
			values[starts[row]! + i] = form.factors[i]!;
		}
	});
	return { starts, columns, values };
}

const quantityOf = ({ plan: { layout }, cells }: Decided, column: number) =>
	layout.quantities[layout.quantityOfCell[cells[column]!]!]!.quantity;

function isWhole(decided: Decided, column: number): boolean {
	const { whole, type } = quantityOf(decided, column);
	return whole === true || type === 'yes_no';
}

function boundsOf(decided: Decided, column: number): readonly [number, number] {
	const pin = decided.pins[column];
	if (pin !== null && pin !== undefined) return [pin, pin];
	return openBounds(decided.plan, decided.cells[column]!);
}
