/**
 * What would be chosen in full if what is scarce had no end, and is not: how much is missing, and what that costs. The
 * money is the margin that is left for it once the requirements with a price are taken away, times what is missing.
 */
import type { Solver } from '../highs';
import type { LinearProgramme } from '../linear';
import { solve } from '../solve';
import { openBounds } from '../bounds';
import type { Unmet } from './questions';
import { entriesOf, isPinned, type Settled } from './settled';

/** Relative to the limit: a plan lies a hair inside of it. */
const SEEN = 1e-6;

export function unmetOf(solver: Solver, settled: Settled, scarce: ReadonlySet<number>): Unmet[] {
	const { part, gain, stands } = settled;
	const { cost } = part.programme;
	const limits = singleRows(settled);
	const missing = [...part.cells].flatMap((cell, column) => {
		if (gain * cost[column]! <= 0 || isPinned(settled, cell)) return [];
		const most = limits.get(column)?.most ?? openBounds(settled.model.plan, cell)[1];
		const value = stands[column]!;
		return most - value > SEEN * Math.max(1, Math.abs(most)) && Number.isFinite(most)
			? [{ cell, column, value, most }]
			: [];
	});
	if (missing.length === 0) return [];
	const free = solve(solver, without(settled, scarce));
	return missing.map(({ cell, column, value, most }) => {
		if (free.status !== 'optimal') return { cell, value, most, money: null };
		const own = limits.get(column)?.rows;
		const spent = settled.byColumn[column]!.reduce(
			(sum, { row, factor }) => (own?.has(row) ? sum : sum + free.rowDual[row]! * factor),
			0
		);
		return {
			cell,
			value,
			most,
			money: Math.max(0, gain * (cost[column]! - spent)) * (most - value)
		};
	});
}

/** The rows that limit one column alone from above, and the least of their limits and of its range. */
function singleRows({ model, part }: Settled) {
	const { rowLower, rowUpper } = part.programme;
	const found = new Map<number, { most: number; rows: Set<number> }>();
	part.rows.forEach((_, row) => {
		const entries = entriesOf(part, row);
		const [only] = entries;
		if (!only || entries.length > 1) return;
		const most = (only.factor > 0 ? rowUpper[row]! : rowLower[row]!) / only.factor;
		if (!Number.isFinite(most)) return;
		const { column } = only;
		const known = found.get(column) ?? {
			most: openBounds(model.plan, part.cells[column]!)[1],
			rows: new Set()
		};
		known.rows.add(row);
		found.set(column, { most: Math.min(known.most, most), rows: known.rows });
	});
	return found;
}

/** The programme without the requirements whose cells are scarce. */
function without({ part }: Settled, scarce: ReadonlySet<number>): LinearProgramme {
	const { rowLower, rowUpper } = part.programme;
	const isScarce = (row: number) => scarce.has(part.rows[row]!.cell);
	return {
		...part.programme,
		rowLower: rowLower.map((bound, row) => (isScarce(row) ? -Infinity : bound)),
		rowUpper: rowUpper.map((bound, row) => (isScarce(row) ? Infinity : bound))
	};
}
