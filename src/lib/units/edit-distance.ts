/** How far two words are apart: what a suggestion in a message is chosen by. */

/** The row being filled and the two above it; kept, because thousands of words are compared for one suggestion. */
let rows = [new Int32Array(80), new Int32Array(80), new Int32Array(80)] as const;

/**
 * Edits (a swap of neighbours counts once) from one word to the other; above `limit` any larger number. Cells further
 * from the diagonal than the limit cost more than it, and are left out.
 */
export function editDistance(from: string, to: string, limit: number): number {
	const [height, width] = [from.length, to.length];
	const far = limit + 1;
	if (Math.abs(height - width) > limit) return far;
	if (rows[0].length < width + 2) {
		const size = 2 * width + 2;
		rows = [new Int32Array(size), new Int32Array(size), new Int32Array(size)];
	}
	let [twoBack, previous, current] = rows;
	for (let column = 0; column <= width; column++) previous[column] = column;
	for (let row = 1; row <= height; row++) {
		const first = Math.max(1, row - limit);
		const last = Math.min(width, row + limit);
		current[first - 1] = first === 1 ? row : far;
		let least = current[first - 1]!;
		for (let column = first; column <= last; column++) {
			const letter = from.charCodeAt(row - 1);
			const other = to.charCodeAt(column - 1);
			let cost = previous[column - 1]! + (letter === other ? 0 : 1);
			// Above the last cell of this row nothing was filled.
			if (column < row + limit) cost = Math.min(cost, previous[column]! + 1);
			cost = Math.min(cost, current[column - 1]! + 1);
			if (
				row > 1 &&
				column > 1 &&
				letter === to.charCodeAt(column - 2) &&
				from.charCodeAt(row - 2) === other
			)
				cost = Math.min(cost, twoBack[column - 2]! + 1);
			current[column] = cost;
			least = Math.min(least, cost);
		}
		if (least > limit) return far;
		[twoBack, previous, current] = [previous, current, twoBack];
	}
	return previous[width]!;
}
