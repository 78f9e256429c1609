/** What each kind of study says on the command line: its answer to read, and as plain data. Here: what all of them need. */
import { OK } from '$lib/engine/state';
import type { Outcome } from '$lib/engine/results';
import { findQuantity, scenarioTitle } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import type { Study } from '$lib/workbook/study-schema';

/** Of one kind of study. */
export interface Told<S extends Study, Result> {
	/** To read; the study's title stands above it already. */
	readonly text: (study: S, result: Result, about: About) => string;
	/** The same as JSON, beside what the study is and its result is called; a value without an answer is null. */
	readonly data: (study: S, result: Result, about: About) => object;
}

/** What a study is about, in words. */
export interface About {
	/** The result that it asks about. */
	readonly name: string;
	/** " EUR/year" behind a figure; nothing for a plain number. */
	readonly unit: string;
	readonly titleOf: (scenario: string) => string;
}

export function aboutStudy(workbook: Workbook, { quantity: name, members = [] }: Study): About {
	const quantity = findQuantity(workbook, name);
	const unit = quantity?.unit;
	return {
		name: [quantity?.label ?? name, ...members].join(', '),
		unit: unit === undefined || unit === '1' ? '' : ` ${unit}`,
		titleOf: (id) => scenarioTitle(workbook, id)
	};
}

/** Columns of text, the figures to the right; a last line break. */
export function columnsOf(rows: readonly (readonly (string | number)[])[]): string {
	const text = rows.map((row) =>
		row.map((entry) => (typeof entry === 'number' ? figure(entry) : entry))
	);
	const widths = (text[0] ?? []).map((_, column) =>
		Math.max(...text.map((row) => row[column]?.length ?? 0))
	);
	const lines = text.map((row, r) =>
		row
			.map((entry, column) =>
				typeof rows[r]![column] === 'number'
					? entry.padStart(widths[column]!)
					: entry.padEnd(widths[column]!)
			)
			.join('  ')
			.trimEnd()
	);
	return lines.map((line) => `  ${line}\n`).join('');
}

/** Six significant digits; "none" where there is no number. */
export function figure(value: number): string {
	return Number.isFinite(value) ? String(Number(value.toPrecision(6))) : 'none';
}

export const orNull = (value: number): number | null => (Number.isFinite(value) ? value : null);
export const outcomeOrNull = ({ value, state }: Outcome): number | null =>
	state === OK ? value : null;
