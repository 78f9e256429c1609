/**
 * The year as months of days: what each date is, which holidays fall on it, whether it lies in a shut-down. Read
 * from results; changes are `calendar-edit.ts`'s, sentences `calendar-words.ts`'s.
 */
import { dateText } from '$lib/workbook/date-text';
import { monthOf } from '$lib/workbook/dates';
import { inputAt } from '$lib/workbook/scenario';
import type { Picture } from '$lib/workbook/schema';
import { read, type Source } from '../../figure/read';

export type CalendarPicture = Extract<Picture, { kind: 'calendar' }>;

export interface CalendarDay {
	/** Ordinals in the sets of months and of days. */
	readonly month: number;
	readonly day: number;
	readonly date: number;
	/** Ordinal of the weekday; the last two of the set are the weekend. */
	readonly weekday: number;
	readonly weekend: boolean;
	/** NaN where the picture names no weeks. */
	readonly week: number;
	readonly isHoliday: boolean;
	readonly isShutDown: boolean;
	/** Labels of the holidays on the date. */
	readonly holidays: readonly string[];
}

export interface Holiday {
	readonly id: string;
	readonly label: string;
	readonly date: number | null;
	/** Whether it is counted from Easter rather than on a date. */
	readonly counted: boolean;
	/** Ordinal of its month, its day, its days after Easter, as entered; null where nothing is. */
	readonly month: number | null;
	readonly day: number | null;
	readonly daysAfter: number | null;
}

export interface ShutDown {
	readonly id: string;
	readonly label: string;
	readonly first: number | null;
	readonly last: number | null;
	readonly fromMonth: number | null;
	readonly fromDay: number | null;
	readonly toMonth: number | null;
	readonly toDay: number | null;
}

export interface Calendar {
	readonly year: number | null;
	readonly weekdays: readonly string[];
	readonly months: readonly {
		readonly label: string;
		/** By day, null where the month has no such day. */
		readonly days: readonly (CalendarDay | null)[];
	}[];
	readonly holidays: readonly Holiday[];
	readonly shutDowns: readonly ShutDown[];
	/** Days from the first weekday to the fifth that are worked; null where one has no value. */
	readonly workingDays: number | null;
	/** Why there is no calendar; empty where there is one. */
	readonly because: string;
}

export function calendarOf(picture: CalendarPicture, source: Source, base: string): Calendar {
	const { layout } = source;
	const membersOf = (set: string) => layout.sets.get(set)?.members ?? [];
	const labels = (set: string) => membersOf(set).map(({ id, label }) => label ?? id);
	const weekdays = labels(picture.weekday);
	const entries = (set: string): Entry[] =>
		membersOf(set).map(({ id, label }, ordinal) => ({
			...{ id, label: label ?? id },
			entered: (name) => entered(source, base, name, id),
			date: (name) => dateAt(source, name, set, ordinal)
		}));
	const holidays = entries(picture.holiday).map((entry) => holidayOf(picture, entry));
	const year = read(source, picture.of_year);
	const first = read(source, picture.date, { [picture.month]: 0, [picture.day]: 0 });
	return {
		year: year.kind === 'value' ? year.value : null,
		weekdays,
		months: labels(picture.month).map((label, month) => ({
			label,
			days: labels(picture.day).map((_, day) =>
				dayAt(picture, source, month, day, weekdays.length, holidays)
			)
		})),
		holidays,
		shutDowns: entries(picture.shut_down).map((entry) => shutDownOf(picture, entry)),
		workingDays: workingDaysOf(picture, source),
		because: first.kind === 'error' ? first.because : ''
	};
}

function dayAt(
	picture: CalendarPicture,
	source: Source,
	month: number,
	day: number,
	weekdays: number,
	holidays: readonly Holiday[]
): CalendarDay | null {
	const at = { [picture.month]: month, [picture.day]: day };
	const date = read(source, picture.date, at);
	if (date.kind !== 'value') return null;
	const weekday = read(source, picture.weekday_of, at).value;
	return {
		...{ month, day, date: date.value, weekday },
		weekend: weekday >= weekdays - 2,
		week: picture.week === undefined ? NaN : read(source, picture.week, at).value,
		isHoliday: read(source, picture.is_holiday, at).value === 1,
		isShutDown: read(source, picture.is_shut_down, at).value === 1,
		holidays: holidays
			.filter((holiday) => holiday.date === date.value)
			.map((holiday) => holiday.label)
	};
}

/** What is entered for a member in the base: a number, or the place of a choice in its set. */
function entered(source: Source, base: string, name: string, member: string): number | null {
	const { workbook, byName, ordinals } = source.layout;
	const { value } = inputAt(workbook, base, name, [member]);
	const type = byName.get(name)?.quantity.type;
	if (typeof type === 'object')
		return typeof value === 'string' ? (ordinals.get(type.member_of)?.get(value) ?? null) : null;
	return typeof value === 'number' ? value : null;
}

function dateAt(source: Source, name: string, set: string, ordinal: number): number | null {
	const date = read(source, name, { [set]: ordinal });
	return date.kind === 'value' ? date.value : null;
}

/** A holiday or a shut-down, with what is entered for it and which dates that gives. */
interface Entry {
	readonly id: string;
	readonly label: string;
	readonly entered: (name: string) => number | null;
	readonly date: (name: string) => number | null;
}

function holidayOf(picture: CalendarPicture, { id, label, entered: of, date }: Entry): Holiday {
	return {
		...{ id, label },
		date: date(picture.holiday_date),
		counted: of(picture.rule) === 1,
		month: of(picture.holiday_month),
		day: of(picture.holiday_day),
		daysAfter: of(picture.days_after)
	};
}

function shutDownOf(picture: CalendarPicture, { id, label, entered: of, date }: Entry): ShutDown {
	return {
		...{ id, label },
		first: date(picture.first_date),
		last: date(picture.last_date),
		fromMonth: of(picture.from_month),
		fromDay: of(picture.from_day),
		toMonth: of(picture.to_month),
		toDay: of(picture.to_day)
	};
}

function workingDaysOf(picture: CalendarPicture, source: Source): number | null {
	const { sets } = source.layout;
	const months = sets.get(picture.month)?.members.length ?? 0;
	const weekdays = sets.get(picture.weekday)?.members.length ?? 0;
	let days = 0;
	for (let month = 0; month < months; month++)
		for (let weekday = 0; weekday < weekdays - 2; weekday++) {
			const at = { [picture.month]: month, [picture.weekday]: weekday };
			const reading = read(source, picture.working_days, at);
			if (reading.kind !== 'value') return null;
			days += reading.value;
		}
	return days;
}

/** "6 May", from a date. */
export const dayWords = (calendar: Calendar, date: number | null): string =>
	date === null
		? 'no date'
		: `${Number(dateText(date).slice(8))} ${calendar.months[monthOf(date) - 1]?.label ?? ''}`;
