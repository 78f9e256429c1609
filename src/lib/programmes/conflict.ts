/**
 * Why there is no best plan: which rows cannot hold together and by how much in their own units, or which choices grow
 * without end.
 */
import type { RunSettings, Solver } from './highs';
import { columnCount, rowCount, type LinearProgramme } from './linear';
import type { Scaled } from './scaling';

/** By how much a row's sum is above its bound, or below it where negative, in the row's own unit. */
export interface Violation {
	readonly row: number;
	readonly by: number;
}

const SEEN = 1e-6;

/** The least that has to be given way to, rows of like size weighing alike; empty where bounds of columns conflict. */
export function leastViolation(
	solver: Solver,
	{ programme, row: factors }: Scaled,
	settings: RunSettings
): Violation[] {
	const columns = columnCount(programme);
	const rows = rowCount(programme);
	const answer = solver.solve(elastic(programme), settings);
	if (!answer.chosen) return [];
	const found: Violation[] = [];
	for (let row = 0; row < rows; row++) {
		const over = answer.chosen[columns + 2 * row]! - answer.chosen[columns + 2 * row + 1]!;
		if (Math.abs(over) > SEEN) found.push({ row, by: over / factors[row]! });
	}
	return found;
}

/** Each row may be above or below its bounds, at a cost; nothing else costs. */
function elastic(programme: LinearProgramme): LinearProgramme {
	const columns = columnCount(programme);
	const rows = rowCount(programme);
	const all = columns + 2 * rows;
	const { starts, values } = programme;
	const next = {
		starts: new Int32Array(rows + 1),
		columns: new Int32Array(values.length + 2 * rows),
		values: new Float64Array(values.length + 2 * rows)
	};
	for (let row = 0; row < rows; row++) {
		const from = starts[row]!;
		const to = starts[row + 1]!;
		const at = from + 2 * row;
		next.columns.set(programme.columns.subarray(from, to), at);
		next.values.set(values.subarray(from, to), at);
		const end = at + to - from;
		next.columns.set([columns + 2 * row, columns + 2 * row + 1], end);
		next.values.set([-1, 1], end);
		next.starts[row + 1] = end + 2;
	}
	const extended = (list: Float64Array, rest: number) => {
		const longer = new Float64Array(all).fill(rest);
		longer.set(list);
		return longer;
	};
	const whole = new Uint8Array(all);
	whole.set(programme.whole);
	return {
		...programme,
		...next,
		maximise: false,
		offset: 0,
		cost: extended(new Float64Array(columns), 1),
		lower: extended(programme.lower, 0),
		upper: extended(programme.upper, Infinity),
		whole
	};
}

/** A box so wide that nothing real touches it. */
const WIDE = 1e7;

/** The choices that grow without end: those that lie at a box put around everything. */
export function growingColumns(
	solver: Solver,
	{ programme }: Scaled,
	settings: RunSettings
): number[] {
	const boxed: LinearProgramme = {
		...programme,
		whole: new Uint8Array(columnCount(programme)),
		lower: programme.lower.map((bound) => Math.max(bound, -WIDE)),
		upper: programme.upper.map((bound) => Math.min(bound, WIDE))
	};
	const { chosen } = solver.solve(boxed, settings);
	if (!chosen) return [];
	const far: number[] = [];
	chosen.forEach((value, column) => {
		const open = value > 0 ? programme.upper[column]! : programme.lower[column]!;
		if (!Number.isFinite(open) && Math.abs(value) > WIDE * 0.999) far.push(column);
	});
	return far;
}
