/**
 * Dates as tables write them: 2027-05-06, 06.05.2027, 06/05/2027. Points stand between day, month and year in this
 * order; strokes and hyphens leave it open which comes first, and the whole column says it, or a person does.
 */
import { readDate } from '$lib/workbook/date-text';
import type { Cell } from './grid';
import { quoted } from './number-text';

const SEPARATED = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4})$/;
const ISO = /^\d{4}-\d{1,2}-\d{1,2}$/;
/** What other programs write behind a date that has no time. */
const MIDNIGHT = /[ T]00:00(?::00)?$/;

/** Whether a column with strokes writes the day first; null: it cannot be told. */
export function isDayFirst(cells: readonly Cell[]): boolean | null {
	for (const cell of cells) {
		const [, first, second] = openDate(cell) ?? [];
		if (Number(first) > 12) return true;
		if (Number(second) > 12) return false;
	}
	return null;
}

/** Whether any of its dates leaves it open which comes first, taken by itself. */
export const hasOpenDates = (cells: readonly Cell[]): boolean =>
	cells.some((cell) => openDate(cell) !== null);

/** Most cells are none, and a large file has a million of them. */
function openDate(cell: Cell): readonly [string, string, string] | null {
	if (typeof cell === 'number' || !/^\d\d?[/-]/.test(cell)) return null;
	const [text, first, , second] = SEPARATED.exec(cell.replace(MIDNIGHT, '')) ?? [];
	return text === undefined ? null : [text, first ?? '', second ?? ''];
}

/** Null where the text is not written as a date. */
export function readTableDate(
	text: string,
	dayFirst: boolean | null
):
	| { readonly ok: true; readonly date: number }
	| { readonly ok: false; readonly message: string }
	| null {
	const written = text.trim().replace(MIDNIGHT, '');
	// Whatever an entry takes for a date, a table does.
	const plain = readDate(written);
	if (plain !== null) return { ok: true, date: plain };
	const [, first = '', mark, second = '', year = ''] = SEPARATED.exec(written) ?? [];
	if (mark === undefined) return ISO.test(written) ? noDate(text) : null;
	const isDay = mark === '.' || dayFirst;
	if (isDay === null)
		return {
			ok: false,
			message: `${quoted(text)} has two readings. Say for the whole column whether the day or the month comes first, or write dates as in 2027-05-06.`
		};
	const date = readDate(isDay ? `${year}-${second}-${first}` : `${year}-${first}-${second}`);
	return date === null ? noDate(text) : { ok: true, date };
}

export const noDate = (text: string) => ({
	ok: false as const,
	message: `${quoted(text)} is no date. Write one as in 2027-05-06.`
});
