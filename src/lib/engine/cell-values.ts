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

/** Writes fresh values over known ones, whose cells they are among; returns whether any differs. */
export function replaceValues(known: CellValues, fresh: CellValues): boolean {
	let changed = false;
	let place = 0;
	for (let i = 0; i < fresh.cells.length; i++) {
		while (known.cells[place] !== fresh.cells[i]) place++;
		if (isOther(known, place, fresh, i)) changed = true;
		known.values[place] = fresh.values[i]!;
		known.states[place] = fresh.states[i]!;
	}
	return changed;
}

/** The place of a number in an ascending list, −1 where it is not in it. */
export function placeOfCell(ascending: Int32Array, wanted: number): number {
	let low = 0;
	let high = ascending.length - 1;
	while (low <= high) {
		const middle = (low + high) >> 1;
		if (ascending[middle] === wanted) return middle;
		if (ascending[middle]! < wanted) low = middle + 1;
		else high = middle - 1;
	}
	return -1;
}
