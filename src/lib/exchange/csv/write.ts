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

/** Where decimals have a comma, spreadsheets expect semicolons between fields. */
export type CsvForm = 'comma' | 'semicolon';

export function csvFormOf(locale: string): CsvForm {
	const parts = new Intl.NumberFormat(locale).formatToParts(0.5);
	return parts.some(({ type, value }) => type === 'decimal' && value === ',')
		? 'semicolon'
		: 'comma';
}

function field(entry: Entry, form: CsvForm): string {
	if (entry === null) return '';
	if (typeof entry === 'number' && form === 'semicolon') return String(entry).replace('.', ',');
	const text = typeof entry === 'number' ? String(entry) : guarded(entry);
	const parting = form === 'semicolon' ? /[",;\r\n]/ : /[",\r\n]/;
	return parting.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Begins with the mark that tells a reader the text is UTF-8. */
export function csvOf(table: PlainTable, form: CsvForm = 'comma'): string {
	const mark = form === 'comma' ? ',' : ';';
	const lines = [table.columns, ...table.rows].map((row) =>
		row.map((entry) => field(entry, form)).join(mark)
	);
	return `\uFEFF${lines.join('\r\n')}\r\n`;
}
