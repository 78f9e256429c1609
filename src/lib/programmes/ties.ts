/**
 * One plan among many equally good ones, so that plans do not jump from edit to edit: of all that reach the best
 * objective, the one with the least weighted sum of differences from a plan to stay near to, which is the parent's, or
 * nothing at all for the base. The weights differ a little from choice to choice, in their order, so that the first
 * members are taken first and one plan alone is left, on every machine and after every order of edits.
 */
import { columnCount, columnSums, rowCount, type LinearProgramme } from './linear';

export interface Ties {
	/** By column: the plan to stay near to. */
	readonly near: Float64Array;
	/** By column: what a difference of one unit counts. */
	readonly weight: Float64Array;
	/** Whether the plan lies a hair inside of what is required. */
	readonly inside?: boolean;
}

/** What each named decision counts against the one named before it: stock that is named last is kept least. */
const NEXT_NAMED = 8;
/** By how much the last choice counts more than the first. */
const ORDER = 0.01;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** `named`: by column, the place of its quantity in the programme's list of decisions. */
export function tieWeights(named: ArrayLike<number>): Float64Array {
	return Float64Array.from({ length: named.length }, (_, column) => {
		// A step of an irrational part keeps sums of different choices apart.
		const order = (column + 0.5 * ((column * GOLDEN) % 1)) / named.length;
		return NEXT_NAMED ** named[column]! * (1 + ORDER * order);
	});
}

/** Below this a price or reduced cost counts as none; the numbers are scaled to about one. */
const NONE = 1e-8;

/**
 * The programme of the choice among the best: every column and row that has a price stays where the best plan has it,
 * which is just the face on which all best plans lie. Column 2j is how far j goes up from the plan to stay near to, 2j + 1 how far down.
 */
export function tieProgramme(
	programme: LinearProgramme,
	chosen: Float64Array,
	rowDual: Float64Array,
	{ near, weight }: Ties
): { readonly programme: LinearProgramme; readonly from: Float64Array } {
	const columns = columnCount(programme);
	const reduced = columnSums(programme, rowDual).map((sum, at) => programme.cost[at]! - sum);
	const from = new Float64Array(columns);
	const lower = new Float64Array(2 * columns);
	const upper = new Float64Array(2 * columns);
	const cost = new Float64Array(2 * columns);
	const most = weight.reduce((most, each) => Math.max(most, each), 0) || 1;
	for (let at = 0; at < columns; at++) {
		const held = Math.abs(reduced[at]!) > NONE || programme.whole[at] === 1;
		const [low, high] = held
			? [chosen[at]!, chosen[at]!]
			: [programme.lower[at]!, programme.upper[at]!];
		from[at] = Math.min(Math.max(near[at]!, low), high);
		upper[2 * at] = high - from[at]!;
		upper[2 * at + 1] = from[at]! - low;
		cost[2 * at] = cost[2 * at + 1] = weight[at]! / most;
	}
	return {
		programme: { ...splitRows(programme, rowDual, from), cost, lower, upper },
		from
	};
}

/** The rows over the split columns, with what the starting plan comes to taken off; tight ones stay tight. */
function splitRows(
	programme: LinearProgramme,
	rowDual: Float64Array,
	from: Float64Array
): Omit<LinearProgramme, 'cost' | 'lower' | 'upper'> {
	const rows = rowCount(programme);
	const { starts, columns, values, maximise } = programme;
	const rowLower = programme.rowLower.slice();
	const rowUpper = programme.rowUpper.slice();
	const split = {
		columns: new Int32Array(2 * columns.length),
		values: new Float64Array(2 * values.length)
	};
	for (let row = 0; row < rows; row++) {
		const price = rowDual[row]!;
		if (Math.abs(price) > NONE) {
			const tight = price > 0 === maximise ? rowUpper[row]! : rowLower[row]!;
			if (Number.isFinite(tight)) rowLower[row] = rowUpper[row] = tight;
		}
		let sum = 0;
		for (let at = starts[row]!; at < starts[row + 1]!; at++) {
			sum += values[at]! * from[columns[at]!]!;
			split.columns[2 * at] = 2 * columns[at]!;
			split.columns[2 * at + 1] = 2 * columns[at]! + 1;
			split.values[2 * at] = values[at]!;
			split.values[2 * at + 1] = -values[at]!;
		}
		rowLower[row]! -= sum;
		rowUpper[row]! -= sum;
	}
	return {
		maximise: false,
		offset: 0,
		whole: new Uint8Array(2 * from.length),
		starts: starts.map((start) => 2 * start),
		...split,
		rowLower,
		rowUpper
	};
}

/** The plan that an answer to the programme of ties stands for. */
export const untied = (from: Float64Array, split: Float64Array): Float64Array =>
	from.map((value, at) => value + split[2 * at]! - split[2 * at + 1]!);
