/** Dates as text, "2027-05-06", and back; the number behind them is `dates.ts`'s. */
import { dayFrom, dayOf, firstOfMonth, monthOf, yearOf } from './dates';

const two = (value: number) => String(value).padStart(2, '0');

/** A fraction of a day is left out; what is no date stands as its number. */
export function dateText(date: number): string {
	const year = yearOf(date);
	return Number.isFinite(year) ? `${year}-${two(monthOf(date))}-${two(dayOf(date))}` : String(date);
}

/** The day that a clock shows, where the reader is. */
export const dayText = (now: Date): string =>
	`${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;

/** The date that was written, or null: 2027-02-29 is none. */
export function readDate(text: string): number | null {
	const [, year, month, day] = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text.trim()) ?? [];
	if (year === undefined || month === undefined || day === undefined) return null;
	const date = dayFrom(firstOfMonth(Number(year), Number(month)), Number(day));
	const same = dayOf(date) === Number(day) && monthOf(date) === Number(month);
	return same ? date : null;
}
