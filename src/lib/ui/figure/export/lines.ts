/**
 * The lines that a text of the page runs in, broken where the page broke them.
 */
export interface Line {
	readonly words: string;
	readonly left: number;
	readonly right: number;
	readonly top: number;
	readonly height: number;
}

export function linesOf(node: Text): Line[] {
	const range = document.createRange();
	const boxOf = (from: number, to: number) => {
		range.setStart(node, from);
		range.setEnd(node, to);
		return range.getBoundingClientRect();
	};
	const lines: Line[] = [];
	for (const word of node.data.matchAll(/[^ \t\r\n]+/g)) {
		const { left, right, top, height, width } = boxOf(word.index, word.index + word[0].length);
		if (width === 0) continue;
		const last = lines.at(-1);
		if (last && Math.abs(last.top - top) < 1 && left >= last.right)
			lines[lines.length - 1] = { ...last, words: `${last.words} ${word[0]}`, right };
		else lines.push({ words: word[0], left, right, top, height });
	}
	return lines;
}
