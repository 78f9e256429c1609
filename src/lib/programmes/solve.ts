/**
 * From a linear programme to its answer: the best plan, one alone where several are as good, proven, with what the next
 * unit of each row asked about is worth; or why there is none.
 */
import { breachOf, certify, PROOF, type Certificate } from './certificate';
import { growingColumns, leastViolation, type Violation } from './conflict';
import type { Basis, RunSettings, Solver, SolverAnswer } from './highs';
import {
	columnCount,
	isMixed,
	objectiveOf,
	rowCount,
	withWholeFixed,
	type LinearProgramme
} from './linear';
import { insideMargins } from './margin';
import { scaled, type Scaled } from './scaling';
import { ShadowPrices, type RowPrice, type Slope } from './shadow';
import { tieProgramme, untied, type Ties } from './ties';

export interface SolveSettings {
	/** Longest time for each run of the solver. */
	readonly seconds?: number | undefined;
	/** Relative gap with which whole numbers are good enough. */
	readonly gap?: number | undefined;
	/** Left out: the first plan that the solver finds. */
	readonly ties?: Ties | undefined;
	/** The rows whose next unit is asked about. */
	readonly priced?: ArrayLike<number> | undefined;
	/** Those of an answer to a programme of the same shape, to start from. */
	readonly bases?: Bases | null | undefined;
}

/** Where the solver ended: on the best objective, and on the one plan among equals. */
export interface Bases {
	readonly best: Basis;
	readonly tie: Basis | null;
}

export interface Solved {
	readonly status: 'optimal';
	readonly chosen: Float64Array;
	/** By row: how the objective changes with its bound; whole choices are held for it. */
	readonly rowDual: Float64Array;
	readonly objective: number;
	/** Relative, to what no plan can beat; 0 where nothing is whole. */
	readonly gap: number;
	readonly certificate: Certificate;
	readonly prices: readonly RowPrice[];
	/** Whether prices are those of the linear programme with the whole choices held. */
	readonly wholeHeld: boolean;
	/** Null with whole numbers, where none is of use. */
	readonly bases: Bases | null;
}

export type SolveOutcome =
	| Solved
	| { readonly status: 'infeasible'; readonly violations: readonly Violation[] }
	| { readonly status: 'unbounded'; readonly growing: readonly number[] }
	| { readonly status: 'time-limit'; readonly seconds: number }
	| { readonly status: 'failed' };

export const SECONDS = 30;
export const GAP = 1e-4;

export function solve(
	solver: Solver,
	programme: LinearProgramme,
	settings: SolveSettings = {}
): SolveOutcome {
	const run: RunSettings = {
		seconds: settings.seconds ?? SECONDS,
		gap: settings.gap ?? GAP,
		basis: settings.bases?.best
	};
	const inner = scaled(programme);
	const first = solver.solve(inner.programme, run);
	if (first.status === 'infeasible')
		return { status: 'infeasible', violations: leastViolation(solver, inner, run) };
	if (first.status === 'unbounded')
		return { status: 'unbounded', growing: growingColumns(solver, inner, run) };
	if (first.status === 'time-limit' && !first.chosen)
		return { status: 'time-limit', seconds: run.seconds };
	if (!first.chosen) return { status: 'failed' };
	if (!isMixed(programme))
		return settled(solver, programme, inner, inner.programme, run, settings, 0);

	const held = withWholeFixed(inner.programme, first.chosen);
	if (solver.solve(held, { ...run, basis: null }).status !== 'optimal') return { status: 'failed' };
	const objective = objectiveOf(inner.programme, first.chosen);
	const open = Math.abs(first.bound - objective) / Math.max(Math.abs(objective), 1e-9);
	// What sums are rounded by is no gap.
	const gap = open <= PROOF ? 0 : open;
	return settled(solver, programme, inner, held, { ...run, basis: null }, settings, gap);
}

/** The linear programme (with whole choices held), solved once more by the solver that has it: prices, ties, proof. */
function settled(
	solver: Solver,
	programme: LinearProgramme,
	inner: Scaled,
	linear: LinearProgramme,
	run: RunSettings,
	settings: SolveSettings,
	gap: number
): SolveOutcome {
	const best = solver.last();
	const { chosen: found } = best;
	if (!found) return { status: 'failed' };
	const basis = solver.basis();
	const prices = new ShadowPrices(solver, linear, found, best.rowDual).of(settings.priced ?? []);
	const tied = settings.ties
		? choose(solver, inner, linear, best, settings.ties, run, settings.bases?.tie ?? null)
		: null;
	const chosen = outside(programme, inner, tied?.chosen ?? found);
	const rowDual = best.rowDual.map((dual, row) => (dual * inner.row[row]!) / inner.objective);
	const mixed = isMixed(programme);
	return {
		status: 'optimal',
		chosen,
		rowDual,
		objective: objectiveOf(programme, chosen),
		gap,
		certificate: mixed
			? certifyWhole(programme, chosen, rowDual)
			: certify(programme, chosen, rowDual),
		prices: prices.map((price) => priceOutside(price, inner)),
		wholeHeld: mixed,
		bases: mixed ? null : { best: basis, tie: tied?.basis ?? null }
	};
}

/** The plan of the linear programme with the whole choices held is proven the best; that the whole ones hold is too. */
function certifyWhole(
	programme: LinearProgramme,
	chosen: Float64Array,
	rowDual: Float64Array
): Certificate {
	const proof = certify(withWholeFixed(programme, chosen), chosen, rowDual);
	const breach = Math.max(proof.breach, breachOf(programme, chosen));
	return { ...proof, breach, holds: proof.holds && breach <= PROOF };
}

/** The one plan among equals; null where even the best one is not found again. */
function choose(
	solver: Solver,
	inner: Scaled,
	linear: LinearProgramme,
	best: SolverAnswer,
	ties: Ties,
	run: RunSettings,
	basis: Basis | null
): { readonly chosen: Float64Array; readonly basis: Basis } | null {
	const near = ties.near.map((value, column) => value / inner.column[column]!);
	const weight = ties.weight.map((value, column) => value * inner.column[column]!);
	const nearest = (of: LinearProgramme, { chosen: found, rowDual }: SolverAnswer) => {
		if (!found) return null;
		const tie = tieProgramme(of, found, rowDual, { near, weight });
		const { chosen } = solver.solve(tie.programme, { ...run, basis });
		return chosen && { chosen: untied(tie.from, chosen), basis: solver.basis() };
	};
	// With whole numbers, and where what was entered leaves no room, a plan has no inside.
	if (ties.inside && !isMixed(inner.programme)) {
		const margins = insideMargins(linear);
		const plan = nearest(margins, solver.solveWithRows(margins, { ...run, basis: null }));
		if (plan) return plan;
	}
	return nearest(linear, best);
}

/** Choices in their own units, inside their bounds to the last digit. */
function outside(programme: LinearProgramme, inner: Scaled, chosen: Float64Array): Float64Array {
	return chosen.map((value, column) => {
		if (programme.whole[column] === 1) value = Math.round(value);
		// What is a rounding error away from a bound is at it, and from nothing is nothing.
		const low = inner.programme.lower[column]!;
		const high = inner.programme.upper[column]!;
		if (value < low + SNAP) return programme.lower[column]!;
		if (value > high - SNAP) return programme.upper[column]!;
		return Math.abs(value) < SNAP ? 0 : rounded(value * inner.column[column]!);
	});
}
const SNAP = 1e-9;

/** Further digits depend on where the solver started; far less than what a plan lies inside of its bounds. */
const rounded = (value: number): number => Number(value.toPrecision(12));

function priceOutside({ row, more, less }: RowPrice, inner: Scaled): RowPrice {
	const factor = inner.row[row]!;
	const outer = ({ price, until }: Slope): Slope => ({
		price: rounded((price * factor) / inner.objective),
		until: until / factor
	});
	return { row, more: more && outer(more), less: less && outer(less) };
}

/** The objective with so much more room in one row, for each amount: concave, from the shadow price down. */
export function worthOfMore(
	solver: Solver,
	programme: LinearProgramme,
	row: number,
	amounts: readonly number[],
	settings: SolveSettings = {}
): (number | null)[] {
	const way = programme.rowUpper[row] === Infinity ? -1 : 1;
	return amounts.map((amount) => {
		const rowLower = programme.rowLower.slice();
		const rowUpper = programme.rowUpper.slice();
		const equal = rowLower[row] === rowUpper[row];
		if (way === 1) rowUpper[row]! += amount;
		if (way === -1 || equal) rowLower[row]! += way * amount;
		const answer = solve(solver, { ...programme, rowLower, rowUpper }, { ...settings, priced: [] });
		return answer.status === 'optimal' ? answer.objective : null;
	});
}

/** What a programme may be at most: beyond it nobody would wait for the answer. */
export const MOST_COLUMNS = 200_000;
export const MOST_ENTRIES = 4_000_000;

/** Why a programme is not solved; null where it may be. */
export function sizeProblem(programme: LinearProgramme): string | null {
	const columns = columnCount(programme);
	if (columns > MOST_COLUMNS)
		return `it has ${columns} decisions, and at most ${MOST_COLUMNS} can be solved at once. Solve it for each member of a set apart, or decide less.`;
	const entries = programme.values.length;
	if (entries > MOST_ENTRIES || rowCount(programme) > MOST_COLUMNS)
		return `it has ${rowCount(programme)} requirements with ${entries} coefficients, and at most ${MOST_COLUMNS} with ${MOST_ENTRIES} can be solved at once. Solve it for each member of a set apart.`;
	return null;
}
