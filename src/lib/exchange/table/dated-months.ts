/**
 * Sets of dated months: every member is written as ISO 8601 writes a month ("2027-05"). A table may name one by any day
 * of it, or as "05/2027", "05.2027" or "5-2027".
 */
import { kept } from '$lib/workbook/kept';
import { monthOf, yearOf } from '$lib/workbook/dates';
import { monthId, monthNumber } from '$lib/workbook/months';
import type { SetDefinition } from '$lib/workbook/schema';
import { readTableDate } from './dates';

const WRITTEN = /^(0?[1-9]|1[0-2])[./-](\d{4})$/;

export const isDatedMonths: (set: SetDefinition) => boolean = kept(
	({ members }: SetDefinition) =>
		members.length > 0 && members.every(({ id }) => monthNumber(id) !== null)
);

/** As the member's id would be; null where the text is neither a day nor a month, or could be two days. */
export function datedMonth(text: string): string | null {
	const written = text.trim();
	const [, month, year] = WRITTEN.exec(written) ?? [];
	if (month !== undefined) return `${year}-${month.padStart(2, '0')}`;
	const read = /^\d/.test(written) ? readTableDate(written, null) : null;
	return read?.ok ? isoMonth(read.date) : null;
}

export const isoMonth = (date: number): string => monthId(monthCount(date));

/** Months as whole numbers, one after another: twelve times the year, and 0 for January. */
export const monthCount = (date: number): number => 12 * yearOf(date) + monthOf(date) - 1;
export const monthCountOf = (id: string): number => monthNumber(id) ?? NaN;
