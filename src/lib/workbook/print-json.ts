/**
 * JSON text for people: one entry a line, but a list of names or numbers stays on one line where it fits, so
 * that each pair of a relation is a line, and a comparison of two files shows what changed and no more.
 */
const WIDTH = 100;
const TAB_WIDTH = 2;

/** Fields that are undefined are left out, as by `JSON.stringify`. */
export function printJson(value: unknown): string {
	return `${printed(value, 0, 0)}\n`;
}

/** `used` is the width of what stands before the value on its line, the indent included. */
function printed(value: unknown, depth: number, used: number): string {
	if (typeof value !== 'object' || value === null) return JSON.stringify(value);
	if (Array.isArray(value)) {
		const onOneLine = inOneLine(value);
		// One more for the comma that may follow.
		if (onOneLine !== null && used + onOneLine.length + 1 <= WIDTH) return onOneLine;
		const inner = depth + 1;
		return lines(
			'[',
			value.map((entry) => printed(entry, inner, inner * TAB_WIDTH)),
			']',
			depth
		);
	}
	const entries = Object.entries(value).flatMap(([name, entry]) => {
		if (entry === undefined) return [];
		const lead = `${JSON.stringify(name)}: `;
		return [lead + printed(entry, depth + 1, (depth + 1) * TAB_WIDTH + lead.length)];
	});
	return entries.length === 0 ? '{}' : lines('{', entries, '}', depth);
}

function inOneLine(list: readonly unknown[]): string | null {
	if (list.some((entry) => typeof entry === 'object' && entry !== null)) return null;
	return `[${list.map((entry) => JSON.stringify(entry)).join(', ')}]`;
}

function lines(open: string, entries: readonly string[], close: string, depth: number): string {
	const indent = '\t'.repeat(depth);
	return `${open}\n${indent}\t${entries.join(`,\n${indent}\t`)}\n${indent}${close}`;
}
