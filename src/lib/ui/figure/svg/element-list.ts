/**
 * The marks of a drawing in their order, each with the outlines that it is cut by.
 */
import { element } from './xml';

interface Mark {
	readonly markup: string;
	/** Ids of the outlines, the outermost first. */
	readonly clips: readonly string[];
}

export class ElementList {
	#marks: Mark[] = [];

	add(markup: string, clips: readonly string[]): void {
		this.#marks.push({ markup, clips });
	}

	clear(): void {
		this.#marks = [];
	}

	get markup(): string {
		return grouped(this.#marks, 0);
	}
}

/** Neighbours cut by the same outline share a group, and within it the next outline does. */
function grouped(marks: readonly Mark[], depth: number): string {
	let written = '';
	for (let i = 0; i < marks.length;) {
		const clip = marks[i]?.clips[depth];
		let end = i + 1;
		while (end < marks.length && marks[end]?.clips[depth] === clip) end++;
		const run = marks.slice(i, end);
		written +=
			clip === undefined
				? run.map((mark) => mark.markup).join('\n')
				: element('g', { 'clip-path': `url(#${clip})` }, grouped(run, depth + 1));
		written += '\n';
		i = end;
	}
	return written;
}
