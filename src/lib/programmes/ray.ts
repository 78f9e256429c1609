/**
 * How far a plan can go in a direction. A direction moves few of the decisions, so that only what these touch is looked
 * at: what the next unit is worth is asked of hundreds of rows.
 */
import { columnCount, rowCount, type LinearProgramme } from './linear';

/** The decisions that move, and by how much for one unit. */
export interface Direction {
	readonly columns: readonly number[];
	readonly steps: readonly number[];
}

/** The entries of each column, for programmes that differ in bounds alone. */
export class Entries {
	readonly starts: Int32Array;
	readonly rows: Int32Array;
	readonly values: Float64Array;
	/** By row, a place to add up in; all zero between two uses. */
	readonly sums: Float64Array;

	constructor(programme: LinearProgramme) {
		const { starts, columns, values } = programme;
		this.starts = new Int32Array(columnCount(programme) + 1);
		this.rows = new Int32Array(values.length);
		this.values = new Float64Array(values.length);
		this.sums = new Float64Array(rowCount(programme));
		for (const column of columns) this.starts[column + 1]!++;
		for (let at = 1; at < this.starts.length; at++) this.starts[at]! += this.starts[at - 1]!;
		const next = this.starts.slice();
		for (let row = 0; row < this.sums.length; row++)
			for (let at = starts[row]!; at < starts[row + 1]!; at++) {
				const place = next[columns[at]!]!++;
				this.rows[place] = row;
				this.values[place] = values[at]!;
			}
	}
}

/** Smaller steps are rounding errors. */
const STILL = 1e-9;

/** How many units until a bound of a column, or of a row but this one, is met: along the direction, or against it. */
export function reach(
	programme: LinearProgramme,
	entries: Entries,
	plan: { readonly chosen: Float64Array; readonly sums: Float64Array },
	direction: Direction,
	row: number,
	way: 1 | -1
): number {
	const { lower, upper, rowLower, rowUpper } = programme;
	const touched: number[] = [];
	let until = Infinity;
	const take = (value: number, along: number, low: number, high: number) => {
		if (Math.abs(along) <= STILL) return;
		const room = along > 0 === way > 0 ? high - value : value - low;
		until = Math.min(until, Math.max(0, room) / Math.abs(along));
	};
	direction.columns.forEach((column, i) => {
		const step = direction.steps[i]!;
		take(plan.chosen[column]!, step, lower[column]!, upper[column]!);
		for (let at = entries.starts[column]!; at < entries.starts[column + 1]!; at++) {
			touched.push(entries.rows[at]!);
			entries.sums[entries.rows[at]!]! += entries.values[at]! * step;
		}
	});
	for (const one of touched) {
		if (one !== row) take(plan.sums[one]!, entries.sums[one]!, rowLower[one]!, rowUpper[one]!);
		entries.sums[one] = 0;
	}
	return until;
}
