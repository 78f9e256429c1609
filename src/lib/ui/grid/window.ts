/**
 * Which rows are drawn: those in the window and a few beyond, with the row that has the focus, so that
 * ten thousand rows scroll like forty.
 */

/** Where each row begins; one more entry than rows, the last their whole height. */
export function offsetsOf(heights: ArrayLike<number>): Float64Array {
	const offsets = new Float64Array(heights.length + 1);
	for (let i = 0; i < heights.length; i++) offsets[i + 1] = (offsets[i] ?? 0) + (heights[i] ?? 0);
	return offsets;
}

/** The row at a height, by halving. */
export function rowAt(offsets: Float64Array, height: number): number {
	let low = 0;
	let high = Math.max(offsets.length - 2, 0);
	while (low < high) {
		const middle = (low + high + 1) >> 1;
		if ((offsets[middle] ?? 0) <= height) low = middle;
		else high = middle - 1;
	}
	return low;
}

export type Piece =
	| { readonly kind: 'row'; readonly index: number }
	| { readonly kind: 'gap'; readonly key: string; readonly height: number };

/** Rows from..to, the kept one wherever it is, and gaps for all others. */
export function piecesOf(
	offsets: Float64Array,
	from: number,
	to: number,
	kept: number | null
): Piece[] {
	const count = offsets.length - 1;
	const pieces: Piece[] = [];
	let next = 0;
	const gap = (until: number) => {
		if (until > next)
			pieces.push({
				kind: 'gap',
				key: `gap ${pieces.length}`,
				height: (offsets[until] ?? 0) - (offsets[next] ?? 0)
			});
		next = Math.max(next, until);
	};
	const row = (index: number) => {
		gap(index);
		pieces.push({ kind: 'row', index });
		next = index + 1;
	};
	const isOutside = kept !== null && kept >= 0 && kept < count && (kept < from || kept >= to);
	if (isOutside && kept < from) row(kept);
	for (let index = Math.max(from, 0); index < Math.min(to, count); index++) row(index);
	if (isOutside && kept >= to) row(kept);
	gap(count);
	return pieces;
}
