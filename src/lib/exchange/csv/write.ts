/**
 * A table as text to take along: comma-separated, by RFC 4180.
 *
 * A spreadsheet would run a text that begins like a formula, so such a text gets an apostrophe before
 * it; plain numbers, negative ones too, stay numbers.
 */
export type Entry = string | number | null;

export interface PlainTable {
	readonly caption: string;
	readonly columns: readonly string[];
	readonly rows: readonly (readonly Entry[])[];
}

const FORMULA = /^[=+\-@\t\r]/;
const NUMBER = /^[+-]?(\d+(\.\d*)?|\.\d+)(e[+-]?\d+)?$/i;

/** A text that no spreadsheet takes for a formula. */
export function guarded(text: string): string {
	return FORMULA.test(text) && !NUMBER.test(text) ? `'${text}` : text;
}

function field(entry: Entry): string {
	if (entry === null) return '';
	const text = typeof entry === 'number' ? String(entry) : guarded(entry);
	return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Begins with the mark that tells a reader the text is UTF-8. */
export function csvOf(table: PlainTable): string {
	const lines = [table.columns, ...table.rows].map((row) => row.map(field).join(','));
	return `\uFEFF${lines.join('\r\n')}\r\n`;
}
