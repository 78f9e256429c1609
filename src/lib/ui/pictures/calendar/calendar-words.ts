/** What is written around the calendar: its finding, a day in words, and the table of dates. */
import { dateText } from '$lib/workbook/date-text';
import type { PlainTable } from '$lib/exchange/csv/write';
import type { Calendar, CalendarDay, Holiday, ShutDown } from './calendar';
import { dayWords } from './calendar';
import { count, listed } from '../../figure/words';

export function calendarTitle(calendar: Calendar): string {
	const { year, workingDays, holidays, shutDowns } = calendar;
	if (year === null) return 'No calendar without a year';
	if (workingDays === null) return `The calendar of ${year}`;
	const free = `${count(holidays.length)} public holiday${holidays.length === 1 ? '' : 's'}`;
	const shut =
		shutDowns.length > 0
			? ` and ${count(shutDowns.length)} shut-down${shutDowns.length === 1 ? '' : 's'}`
			: '';
	const days = `${workingDays} working days from ${calendar.weekdays[0]} to ${calendar.weekdays.at(-3)}`;
	return `${days} in ${year}, after ${free}${shut}`;
}

/** "Thursday 6 May, week 18, public holiday: Ascension Day". */
export function dayLabel(calendar: Calendar, day: CalendarDay): string {
	const parts = [
		`${calendar.weekdays[day.weekday] ?? ''} ${dayWords(calendar, day.date)}`,
		...(Number.isNaN(day.week) ? [] : [`week ${day.week}`]),
		...(day.isHoliday ? [`public holiday: ${listed(day.holidays)}`] : []),
		...(day.isShutDown ? ['shut-down'] : []),
		...(day.weekend ? ['weekend'] : [])
	];
	return parts.join(', ');
}

/** "39 days after Easter Sunday", "on 1 November". */
export function ruleWords(calendar: Calendar, holiday: Holiday): string {
	if (!holiday.counted)
		return holiday.month === null || holiday.day === null
			? 'no date entered'
			: `every ${holiday.day} ${calendar.months[holiday.month]?.label ?? ''}`;
	const days = holiday.daysAfter;
	if (days === null) return 'days from Easter not entered';
	if (days === 0) return 'Easter Sunday';
	const many = `${Math.abs(days)} day${Math.abs(days) === 1 ? '' : 's'}`;
	return `${many} ${days < 0 ? 'before' : 'after'} Easter Sunday`;
}

export const shutDownWords = (calendar: Calendar, shutDown: ShutDown): string =>
	`${dayWords(calendar, shutDown.first)} to ${dayWords(calendar, shutDown.last)}, both included`;

export function weekdayOf(calendar: Calendar, date: number | null): string {
	for (const { days } of calendar.months)
		for (const day of days)
			if (day && day.date === date) return calendar.weekdays[day.weekday] ?? '';
	return '';
}

export function calendarSummary(calendar: Calendar): string {
	const free = calendar.holidays.map(
		(holiday) => `${holiday.label} ${dayWords(calendar, holiday.date)}`
	);
	const shut = calendar.shutDowns.map(
		(shutDown) => `${shutDown.label} ${shutDownWords(calendar, shutDown)}`
	);
	const said = [
		`${calendarTitle(calendar)}.`,
		...(free.length > 0 ? [`Public holidays: ${free.join('; ')}.`] : []),
		...(shut.length > 0 ? [`Shut-downs: ${shut.join('; ')}.`] : [])
	];
	return said.join(' ');
}

export function calendarTable(calendar: Calendar): PlainTable {
	const yesNo = (value: boolean) => (value ? 'yes' : 'no');
	return {
		caption: `Calendar of ${calendar.year ?? ''}`,
		columns: ['Date', 'Weekday', 'ISO week', 'Public holiday', 'Shut-down', 'Open'],
		rows: calendar.months.flatMap(({ days }) =>
			days.flatMap((day) =>
				day
					? [
							[
								...[dateText(day.date), calendar.weekdays[day.weekday] ?? ''],
								Number.isNaN(day.week) ? '' : day.week,
								day.isHoliday ? listed(day.holidays) : '',
								yesNo(day.isShutDown),
								yesNo(!day.isHoliday && !day.isShutDown)
							]
						]
					: []
			)
		)
	};
}
