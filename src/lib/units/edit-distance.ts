/** How far two words are apart: what a suggestion in a message is chosen by. */

/** Edits (a swap of neighbours counts once) from one word to the other; above `limit` any larger number. */
export function editDistance(from: string, to: string, limit: number): number {
	let twoBack: number[] = [];
	let previous = Array.from({ length: to.length + 1 }, (_, column) => column);
	for (let row = 1; row <= from.length; row++) {
		const current = [row];
		let least = row;
		for (let column = 1; column <= to.length; column++) {
			const same = from[row - 1] === to[column - 1];
			let cost = Math.min(
				previous[column - 1]! + (same ? 0 : 1),
				previous[column]! + 1,
				current[column - 1]! + 1
			);
			const swapped = from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1];
			if (row > 1 && column > 1 && swapped) cost = Math.min(cost, twoBack[column - 2]! + 1);
			current.push(cost);
			least = Math.min(least, cost);
		}
		if (least > limit) return limit + 1;
		twoBack = previous;
		previous = current;
	}
	return previous[to.length]!;
}
