/**
 * The proof that a plan is the best: nothing that the solver says is believed. From the rows alone, the plan keeps
 * every bound, and the rows' prices give a sum that no plan can beat; the plan reaches it.
 *
 * With whole numbers there are no such prices: then that the plan holds is proven, and the gap is the solver's.
 */
import { columnSums, objectiveOf, rowValues, type LinearProgramme } from './linear';

export interface Certificate {
	/** Whether all of it holds. */
	readonly holds: boolean;
	/** The largest breach of a bound or row, relative to the size of what is added up there. */
	readonly breach: number;
	/** Between the plan's objective and what its prices prove, relative. */
	readonly gap: number;
	/** Largest price or reduced cost of a sign that proves nothing, as a part of the objective's coefficients. */
	readonly wrongSign: number;
}

/** Relative. */
export const PROOF = 1e-7;

export function certify(
	programme: LinearProgramme,
	chosen: Float64Array,
	rowDual: Float64Array
): Certificate {
	const breach = breachOf(programme, chosen);
	const { bound, wrongSign } = dualBound(programme, rowDual);
	const objective = objectiveOf(programme, chosen);
	const gap = Math.abs(bound - objective) / sizeOfObjective(programme, chosen);
	return { holds: breach <= PROOF && gap <= PROOF && wrongSign <= PROOF, breach, gap, wrongSign };
}

/** The largest breach of a bound, row or wholeness. */
export function breachOf(programme: LinearProgramme, chosen: Float64Array): number {
	const { lower, upper, whole, rowLower, rowUpper, starts, columns, values } = programme;
	let worst = 0;
	const take = (value: number, low: number, high: number, size: number) => {
		const by = Math.max(low - value, value - high, 0);
		if (!(by <= 0)) worst = Math.max(worst, by / Math.max(1, size));
	};
	chosen.forEach((value, column) => {
		take(value, lower[column]!, upper[column]!, Math.abs(value));
		if (whole[column] === 1) worst = Math.max(worst, Math.abs(value - Math.round(value)));
		if (!Number.isFinite(value)) worst = Infinity;
	});
	rowValues(programme, chosen).forEach((value, row) => {
		let size = 0;
		for (let at = starts[row]!; at < starts[row + 1]!; at++)
			size = Math.max(size, Math.abs(values[at]! * chosen[columns[at]!]!));
		take(value, rowLower[row]!, rowUpper[row]!, size);
	});
	return worst;
}

/**
 * What no plan can beat: every row at the bound that its price speaks of, every column at the bound that its reduced
 * cost speaks of. A price that speaks of a bound which is not there proves nothing and counts as of the wrong sign.
 */
function dualBound(
	programme: LinearProgramme,
	rowDual: Float64Array
): { bound: number; wrongSign: number } {
	const { maximise, cost, lower, upper, rowLower, rowUpper } = programme;
	const reduced = columnSums(programme, rowDual).map((sum, column) => cost[column]! - sum);
	let bound = programme.offset;
	let wrong = 0;
	const take = (price: number, low: number, high: number, size: number) => {
		if (price === 0) return;
		const at = price > 0 === maximise ? high : low;
		if (Number.isFinite(at)) bound += price * at;
		else wrong = Math.max(wrong, Math.abs(price) / size);
	};
	const largest = (list: Float64Array) =>
		list.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
	const prices = Math.max(largest(rowDual), Number.MIN_VALUE);
	rowDual.forEach((price, row) => take(price, rowLower[row]!, rowUpper[row]!, prices));
	const sizes = columnSums(absolute(programme), rowDual.map(Math.abs));
	reduced.forEach((price, column) =>
		take(price, lower[column]!, upper[column]!, Math.max(Math.abs(cost[column]!), sizes[column]!))
	);
	return { bound, wrongSign: wrong };
}

const absolute = (programme: LinearProgramme): LinearProgramme => ({
	...programme,
	values: programme.values.map(Math.abs)
});

/** What is added up in the objective, so that large amounts that cancel are judged by their own size. */
function sizeOfObjective({ cost, offset }: LinearProgramme, chosen: Float64Array): number {
	let size = Math.abs(offset);
	chosen.forEach((value, column) => {
		size = Math.max(size, Math.abs(cost[column]! * value));
	});
	return Math.max(size, 1e-9);
}
