/**
 * Dates as tables write them: 2027-05-06, 06.05.2027, 06/05/2027. Points stand between day, month and year in this
 * order; strokes leave it open which comes first, and the whole column says it, or nobody does.
 */
import { readDate } from '$lib/workbook/date-text';
import type { Cell } from './grid';
import { quoted } from './number-text';

const SEPARATED = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4})(?:[ T]00:00(?::00)?)?$/;

/** Whether a column with strokes writes the day first; null: it cannot be told. */
export function isDayFirst(cells: readonly Cell[]): boolean | null {
	for (const cell of cells) {
		if (typeof cell === 'number' || !cell.includes('/')) continue;
		const [, first, , second] = SEPARATED.exec(cell) ?? [];
		if (Number(first) > 12) return true;
		if (Number(second) > 12) return false;
	}
	return null;
}

/** Null where the text is not written as a date. */
export function readTableDate(
	text: string,
	dayFirst: boolean | null
):
	| { readonly ok: true; readonly date: number }
	| { readonly ok: false; readonly message: string }
	| null {
	const found = SEPARATED.exec(text.trim());
	const iso = /^(\d{4}-\d{1,2}-\d{1,2})(?:[ T]00:00(?::00)?)?$/.exec(text.trim())?.[1];
	if (!found && iso === undefined) return null;
	const [, first = '', mark, second = '', year = ''] = found ?? [];
	const isDay = mark === '.' || dayFirst;
	if (found && isDay === null)
		return {
			ok: false,
			message: `${quoted(text)} has two readings. Write dates as in 2027-05-06.`
		};
	const date = readDate(
		iso ?? (isDay ? `${year}-${second}-${first}` : `${year}-${first}-${second}`)
	);
	return date === null
		? { ok: false, message: `${quoted(text)} is no date. Write one as in 2027-05-06.` }
		: { ok: true, date };
}
