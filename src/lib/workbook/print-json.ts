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
		if (name === GROUNDS) return [lead + standing(entry, depth + 1)];
		if (name === COPIES && Array.isArray(entry))
			return [
				lead +
					lines(
						'[',
						entry.map((copy) => standing(copy, depth + 2)),
						']',
						depth + 1
					)
			];
		return [lead + printed(entry, depth + 1, (depth + 1) * TAB_WIDTH + lead.length)];
	});
	return entries.length === 0 ? '{}' : lines('{', entries, '}', depth);
}

/**
 * What no edit changes is compared by nobody line by line, grounds of quotes and frozen copies: each of their entries is a
 * line, which halves the file of many quotes.
 */
const GROUNDS = 'grounds';
const COPIES = 'frozen';

function standing(value: unknown, depth: number): string {
	if (typeof value !== 'object' || value === null) return JSON.stringify(value);
	const parts = Object.entries(value).flatMap(([name, entry]: [string, unknown]) =>
		entry === undefined ? [] : [`${JSON.stringify(name)}: ${eachOnALine(entry, depth + 1)}`]
	);
	return parts.length === 0 ? '{}' : lines('{', parts, '}', depth);
}

function eachOnALine(value: unknown, depth: number): string {
	if (typeof value !== 'object' || value === null) return JSON.stringify(value);
	if (Array.isArray(value)) {
		const entries = value.map((entry) => JSON.stringify(entry));
		return entries.length === 0 ? '[]' : lines('[', entries, ']', depth);
	}
	const entries = Object.entries(value).map(
		([name, entry]) => `${JSON.stringify(name)}: ${JSON.stringify(entry)}`
	);
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
