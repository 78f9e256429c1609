/** When a row happened: a date, with the hour of the day where one stands behind it. */
import { readDate } from '$lib/workbook/date-text';
import { readTableDate } from '../table/dates';
import type { Cell } from '../table/grid';
import { quoted } from '../table/number-text';

export type MomentRead =
	| {
			readonly ok: true;
			/** Days since 1899-12-30. */
			readonly date: number;
			/** 0 to 23; null where no time is written. */
			readonly hour: number | null;
	  }
	| { readonly ok: false; readonly message: string };

/** " 06:12", "T06:12:33.5Z", " 6:12 pm": the time is that of the place where it was written. */
const TIME =
	/[ T]+(\d{1,2}):([0-5]\d)(?::[0-5]\d(?:[.,]\d+)?)?(?:\s*([ap])\.?m\.?)?(?:Z|[+-]\d{2}:?\d{2})?$/i;

/** "2027-05": a row that is of a whole month, by ISO 8601. */
const MONTH = /^\d{4}-\d{2}$/;
export const isMonth = (cell: Cell): boolean =>
	typeof cell === 'string' && MONTH.test(cell.trim()) && monthIn(cell) !== null;

/** The first day of the month. */
const monthIn = (text: string): number | null => readDate(`${text.trim()}-01`);

/** The date of a cell without its time. */
export const withoutTime = (cell: Cell): Cell =>
	typeof cell === 'string' ? cell.replace(TIME, '').trim() : cell;

export function readMoment(cell: Cell, dayFirst: boolean | null): MomentRead {
	const text = String(cell);
	if (isMonth(cell)) return { ok: true, date: monthIn(text)!, hour: null };
	const hour = typeof cell === 'string' ? hourOf(cell) : null;
	const read = typeof cell === 'number' ? null : readTableDate(String(withoutTime(cell)), dayFirst);
	if (!read || hour === undefined)
		return {
			ok: false,
			message: `${quoted(text)} is no date. Write one as in 2027-05-06, or 2027-05-06 14:30.`
		};
	return read.ok ? { ok: true, date: read.date, hour } : read;
}

/** Null where no time is written; undefined where it is none. */
function hourOf(text: string): number | null | undefined {
	const [, hours, , half] = TIME.exec(text) ?? [];
	if (hours === undefined) return null;
	const hour = Number(hours);
	if (!half) return hour < 24 ? hour : undefined;
	if (hour < 1 || hour > 12) return undefined;
	return (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
}
