/**
 * A linear programme as rows of numbers: what is chosen (columns), what must hold (rows), what shall be largest or
 * smallest. Nothing here knows where the numbers come from.
 */
export interface LinearProgramme {
	readonly maximise: boolean;
	/** The part of the objective that no decision moves. */
	readonly offset: number;
	/** By column: its coefficient in the objective, and between what it may be chosen. A pin has both bounds alike. */
	readonly cost: Float64Array;
	readonly lower: Float64Array;
	readonly upper: Float64Array;
	/** 1: only whole numbers. */
	readonly whole: Uint8Array;
	/** Compressed rows: those of row r are columns[starts[r]] … columns[starts[r + 1] - 1], each column once. */
	readonly starts: Int32Array;
	readonly columns: Int32Array;
	readonly values: Float64Array;
	readonly rowLower: Float64Array;
	readonly rowUpper: Float64Array;
}

export const columnCount = (programme: LinearProgramme): number => programme.cost.length;
export const rowCount = (programme: LinearProgramme): number => programme.rowLower.length;
export const isMixed = (programme: LinearProgramme): boolean => programme.whole.includes(1);

/** What every row comes to for these choices. */
export function rowValues(programme: LinearProgramme, chosen: Float64Array): Float64Array {
	const { starts, columns, values } = programme;
	const sums = new Float64Array(rowCount(programme));
	for (let row = 0; row < sums.length; row++) {
		let sum = 0;
		for (let at = starts[row]!; at < starts[row + 1]!; at++)
			sum += values[at]! * chosen[columns[at]!]!;
		sums[row] = sum;
	}
	return sums;
}

export function objectiveOf({ cost, offset }: LinearProgramme, chosen: Float64Array): number {
	let sum = offset;
	for (let column = 0; column < cost.length; column++) sum += cost[column]! * chosen[column]!;
	return sum;
}

/** By column: the sum over rows of coefficient times the row's weight. */
export function columnSums(programme: LinearProgramme, weights: Float64Array): Float64Array {
	const { starts, columns, values } = programme;
	const sums = new Float64Array(columnCount(programme));
	for (let row = 0; row < weights.length; row++) {
		const weight = weights[row]!;
		if (weight === 0) continue;
		for (let at = starts[row]!; at < starts[row + 1]!; at++)
			sums[columns[at]!]! += values[at]! * weight;
	}
	return sums;
}

/** The same programme with whole columns held at these choices, so that it is a linear one with prices. */
export function withWholeFixed(programme: LinearProgramme, chosen: Float64Array): LinearProgramme {
	const { whole } = programme;
	const held = (bounds: Float64Array) =>
		bounds.map((bound, column) => (whole[column] === 1 ? Math.round(chosen[column]!) : bound));
	return {
		...programme,
		lower: held(programme.lower),
		upper: held(programme.upper),
		whole: new Uint8Array(whole.length)
	};
}
