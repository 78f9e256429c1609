/** Marks by which tables say that two things go together, and that they do not. */

const YES = new Set(['x', '1', 'yes', 'y', 'true', '✓', '✔', '●']);
const NO = new Set(['', '0', '-', '–', '—', 'no', 'n', 'false']);

/** Null for what is no mark. */
export function readMark(text: string): boolean | null {
	const word = text.trim().toLowerCase();
	if (YES.has(word)) return true;
	return NO.has(word) ? false : null;
}
