/** What the page of the calendar says. */
import { inLanguage } from '../../language';

const en = {
	// +page
	noCalendar: 'No calendar',
	noneInWorkbook:
		'This workbook names no calendar. A picture in its file says which quantities hold dates, holidays and shut-downs.',

	// CalendarFigure
	enterYearSuch: 'Enter a year, such as 2027.',
	yearBefore: 'Year before',
	year: 'Year',
	yearAfter: 'Year after',
	noValueBecause: (because: string) => `No value: ${because}`,
	daysFromTo: (first: string, last: string, count: number) => `${first} to ${last}, ${count} days`,
	changeOne: (label: string) => `Change ${label}`,
	makeItAHoliday: 'Make it a holiday',
	shutDownDays: (isRun: boolean) => `Shut down ${isRun ? 'these days' : 'from here'}`,
	howToMark:
		'Click a day, or hold Shift for a run of days. By keyboard: arrows move, with Shift they mark a run, Enter makes a holiday or a shut-down of it.',
	publicHolidays: 'Public holidays',
	shutDowns: 'Shut-downs',
	aNewHoliday: 'A new holiday',
	aNewShutDown: 'A new shut-down',

	// CalendarKey
	publicHoliday: 'public holiday',
	shutDown: 'shut-down',
	weekend: 'weekend',
	weekFigures: 'small figures: ISO week, at its Monday',

	// CalendarList
	addA: (word: string) => `Add a ${word}`,
	change: 'Change',
	removeOne: (label: string) => `Remove ${label}`,
	remove: 'Remove',
	none: 'None.',

	// CalendarYear
	daysOf: (year: number | null) => `Days of ${year}`,

	// HolidayForm
	mustBeWhole: (what: string, low: number, high: number) =>
		`${what} is a whole number from ${low} to ${high}.`,
	daysAfterEaster: 'The count of days after Easter Sunday',
	dayMonth: 'The day of the month',
	keep: 'Keep',
	name: 'Name',
	when: 'When',
	sameDateEveryYear: 'on the same date every year',
	day: 'Day',
	month: 'Month',
	countedFromEaster: 'counted from Easter',
	daysAfterEasterSigned: 'Days after Easter Sunday, before it with a minus',

	// ShutDownForm
	firstDay: 'First day',
	monthFirstDay: 'Month of the first day',
	lastDayIncluded: 'Last day, included',
	monthLastDay: 'Month of the last day',
	overTheTurn: 'One that ends in an earlier month runs over the turn of the year.'
};

export const texts = inLanguage({ en });
