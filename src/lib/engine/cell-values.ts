/** Values of some cells of a column, by ascending cell: how the scenarios keep what is their own. */

export interface CellValues {
	readonly cells: Int32Array;
	readonly values: Float64Array;
	readonly states: Uint8Array;
}

/** Whether the stored value at a place differs from a fresh one. */
export function isOther(
	known: Pick<CellValues, 'values' | 'states'>,
	place: number,
	fresh: CellValues,
	i: number
): boolean {
	if (place < 0) return true;
	return (
		known.states[place] !== fresh.states[i] || !Object.is(known.values[place], fresh.values[i])
	);
}
