/**
 * Numbers of like size for the solver, whose tolerances are absolute: a plan in metres beside hours and money would
 * otherwise be judged to seven digits in one row and to none in the next. All factors are powers of two, so that no
 * digit is lost on the way there or back.
 */
import { columnCount, rowCount, type LinearProgramme } from './linear';

export interface Scaled {
	readonly programme: LinearProgramme;
	/** A choice is its scaled value times this; a row's sum is its scaled sum divided by `row`. */
	readonly column: Float64Array;
	readonly row: Float64Array;
	/** The objective is the scaled one divided by this. */
	readonly objective: number;
}

const PASSES = 3;
/** What a bound of usual size becomes. */
const USUAL = 64;

const powerOfTwo = (value: number): number =>
	value > 0 && Number.isFinite(value) ? 2 ** Math.round(Math.log2(value)) : 1;

export function scaled(programme: LinearProgramme): Scaled {
	const column = new Float64Array(columnCount(programme)).fill(1);
	const row = new Float64Array(rowCount(programme)).fill(1);
	for (let pass = 0; pass < PASSES; pass++) balance(programme, row, column);
	const size = usualSize(programme, row, column);
	for (let at = 0; at < column.length; at++) column[at]! *= size;
	for (let at = 0; at < row.length; at++) row[at]! /= size;
	let largest = 0;
	programme.cost.forEach((cost, at) => {
		largest = Math.max(largest, Math.abs(cost) * column[at]!);
	});
	const objective = 1 / powerOfTwo(largest);
	return { programme: rescaled(programme, row, column, objective), column, row, objective };
}

/** One pass: every row, then every column, by the geometric mean of its smallest and largest entry. */
function balance(programme: LinearProgramme, row: Float64Array, column: Float64Array): void {
	const { starts, columns, values } = programme;
	const least = new Float64Array(column.length).fill(Infinity);
	const most = new Float64Array(column.length);
	for (let r = 0; r < row.length; r++) {
		let low = Infinity;
		let high = 0;
		for (let at = starts[r]!; at < starts[r + 1]!; at++) {
			const entry = Math.abs(values[at]!) * column[columns[at]!]!;
			if (entry === 0) continue;
			low = Math.min(low, entry);
			high = Math.max(high, entry);
		}
		row[r] = high === 0 ? 1 : 1 / powerOfTwo(Math.sqrt(low * high));
		for (let at = starts[r]!; at < starts[r + 1]!; at++) {
			const entry = Math.abs(values[at]!) * row[r]!;
			const c = columns[at]!;
			if (entry === 0) continue;
			least[c] = Math.min(least[c]!, entry);
			most[c] = Math.max(most[c]!, entry);
		}
	}
	// A whole number stays one.
	for (let c = 0; c < column.length; c++)
		column[c] =
			most[c] === 0 || programme.whole[c] === 1
				? 1
				: 1 / powerOfTwo(Math.sqrt(least[c]! * most[c]!));
}

/** By how much all choices are too large together; 1 where whole numbers are among them. */
function usualSize(programme: LinearProgramme, row: Float64Array, column: Float64Array): number {
	if (programme.whole.includes(1)) return 1;
	let sum = 0;
	let count = 0;
	const take = (bound: number, factor: number) => {
		if (!Number.isFinite(bound) || bound === 0) return;
		sum += Math.log2(Math.abs(bound) * factor);
		count++;
	};
	for (const bounds of [programme.rowLower, programme.rowUpper])
		bounds.forEach((bound, r) => take(bound, row[r]!));
	for (const bounds of [programme.lower, programme.upper])
		bounds.forEach((bound, c) => take(bound, 1 / column[c]!));
	return count === 0 ? 1 : powerOfTwo(2 ** (sum / count) / USUAL);
}

function rescaled(
	programme: LinearProgramme,
	row: Float64Array,
	column: Float64Array,
	objective: number
): LinearProgramme {
	const { starts, columns, values } = programme;
	const entries = new Float64Array(values.length);
	for (let r = 0; r < row.length; r++)
		for (let at = starts[r]!; at < starts[r + 1]!; at++)
			entries[at] = values[at]! * row[r]! * column[columns[at]!]!;
	return {
		...programme,
		offset: programme.offset * objective,
		cost: programme.cost.map((cost, c) => cost * column[c]! * objective),
		lower: programme.lower.map((bound, c) => bound / column[c]!),
		upper: programme.upper.map((bound, c) => bound / column[c]!),
		values: entries,
		rowLower: programme.rowLower.map((bound, r) => bound * row[r]!),
		rowUpper: programme.rowUpper.map((bound, r) => bound * row[r]!)
	};
}
