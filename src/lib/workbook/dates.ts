/**
 * Dates as OpenFormula counts them: a date is a number of days since 1899-12-30, so that 2027-01-01 is 46388.
 * They hold from 1900-03-01 (61) to 9999-12-31; before that, programs disagree about a leap day in 1900 that
 * never was. NaN stands for what is no date. A fraction of a day is time, and does not count.
 */

/** 1900-03-01 and 9999-12-31. */
export const FIRST_DATE = 61;
export const LAST_DATE = 2958465;
/** 1900-01-01, the earliest first day of a month from which days may be counted. */
const FIRST_MONTH = 2;

/** From 0000-03-01 to 1899-12-30, by the Gregorian calendar. */
const ORIGIN = 693899;
/** Days in 400 years, after which the calendar repeats. */
const ERA = 146097;

interface CivilDate {
	readonly year: number;
	readonly month: number;
	readonly day: number;
}

/** The day of that name, counted from 1899-12-30; the month is 1 to 12. */
function dayNumber(year: number, month: number, day: number): number {
	// Years begin in March, so that the leap day is the last of its year.
	const y = month > 2 ? year : year - 1;
	const era = Math.floor(y / 400);
	const yearOfEra = y - era * 400;
	const dayOfYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + day - 1;
	const leapDays = Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100);
	return era * ERA + yearOfEra * 365 + leapDays + dayOfYear - ORIGIN;
}

function civil(date: number): CivilDate | null {
	if (!isDate(date)) return null;
	const days = Math.floor(date) + ORIGIN;
	const era = Math.floor(days / ERA);
	const dayOfEra = days - era * ERA;
	const leapDays =
		Math.floor(dayOfEra / 1460) - Math.floor(dayOfEra / 36524) + Math.floor(dayOfEra / 146096);
	const yearOfEra = Math.floor((dayOfEra - leapDays) / 365);
	const dayOfYear =
		dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
	const fromMarch = Math.floor((5 * dayOfYear + 2) / 153);
	const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9;
	return {
		year: era * 400 + yearOfEra + (month <= 2 ? 1 : 0),
		month,
		day: dayOfYear - Math.floor((153 * fromMarch + 2) / 5) + 1
	};
}

const isDate = (date: number) => date >= FIRST_DATE && date < LAST_DATE + 1;

export const yearOf = (date: number): number => civil(date)?.year ?? NaN;
export const monthOf = (date: number): number => civil(date)?.month ?? NaN;
export const dayOf = (date: number): number => civil(date)?.day ?? NaN;

/** The first day of a month: month 13 is January of the next year, month 0 December of the one before. */
export function firstOfMonth(year: number, month: number): number {
	const wholeYear = Math.trunc(year);
	if (!(wholeYear >= 1900 && wholeYear <= 9999)) return NaN;
	const months = wholeYear * 12 + Math.trunc(month) - 1;
	const first = dayNumber(Math.floor(months / 12), (((months % 12) + 12) % 12) + 1, 1);
	return first >= FIRST_MONTH && first <= LAST_DATE ? first : NaN;
}

/** Day 1 is the date itself, day 0 the one before. */
export function dayFrom(first: number, day: number): number {
	const date = first + Math.trunc(day) - 1;
	return isDate(date) ? date : NaN;
}

/** By type, the day on which a week starts: 0 is Monday. Type 3 counts from 0, all others from 1. */
const STARTS: ReadonlyMap<number, number> = new Map([
	[1, 6],
	[2, 0],
	[3, 0],
	...[0, 1, 2, 3, 4, 5, 6].map((day) => [11 + day, day] as const)
]);

export function weekday(date: number, type: number): number {
	const start = STARTS.get(type);
	if (start === undefined || !isDate(date)) return NaN;
	return ((fromMonday(date) - start + 7) % 7) + (type === 3 ? 0 : 1);
}

/** 0 is Monday; day 2 of the count, 1900-01-01, was one. */
const fromMonday = (date: number) => (Math.floor(date) + 5) % 7;

/** ISO 8601: the week belongs to the year in which its Thursday lies, and is counted by Thursdays. */
export function isoWeek(date: number): number {
	if (!isDate(date)) return NaN;
	const thursday = Math.floor(date) - fromMonday(date) + 3;
	const year = civil(thursday)?.year;
	if (year === undefined) return NaN;
	return Math.floor((thursday - dayNumber(year, 1, 1)) / 7) + 1;
}
