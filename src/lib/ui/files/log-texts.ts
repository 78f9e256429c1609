/** What the page of files says of a log that is summed. */
import { inLanguage } from '../language';

const some = (count: number, one: string, more: string) => `${count} ${count === 1 ? one : more}`;

const en = {
	aLog: 'a log that is summed',
	whatALogIs:
		'One row an event: its rows are summed by line, reason, month or whatever the quantities are per, and the sums are entered. How it was summed can be kept, so that next month it is one click.',

	// LogColumns
	whatTheColumnsAre: 'What the columns are',
	isTakenAs: 'Is taken as',
	columnIs: (name: string) => `${name} is`,
	leftOut: 'left out',
	dateOfTheRow: 'date of the row',
	numbers: 'numbers',
	whichOf: (label: string) => `which ${label}`,
	namesTheThing: 'Names what a row is about',
	unitOf: (name: string) => `Unit of ${name}`,

	// LogSums
	whatIsSummed: 'What is entered',
	takes: {
		sum: 'the sum of',
		count: 'the number of rows',
		average: 'the average of',
		least: 'the least of',
		most: 'the most of',
		deviation: 'the standard deviation of',
		share: 'the share of'
	},
	taken: (place: number) => `What is taken, ${place}`,
	ofColumn: (place: number) => `Column, ${place}`,
	ofRows: 'rows',
	dividedBy: 'divided by',
	divisor: (place: number) => `Divided by, ${place}`,
	nothing: 'nothing',
	perTime: {
		hour: 'hours covered',
		day: 'days covered',
		week: 'weeks covered',
		month: 'months covered',
		year: 'years covered'
	},
	byTime: 'The period that the log covers',
	bySum: 'The sum of another column',
	over: 'over all of',
	shareOver: (place: number) => `Shares over all of, ${place}`,
	goesInto: 'into',
	intoQuantity: (place: number) => `Quantity, ${place}`,
	oneRowIs: 'one row is 1',
	unitOfARow: (place: number) => `Unit of a row, ${place}`,
	chooseOne: 'choose one',
	addASum: 'Add what is entered',
	removeSum: (place: number) => `Remove ${place}`,
	remove: 'Remove',

	// LogCells
	comesFrom: (label: string) => `${label} comes from`,
	byDate: 'The date of the row',
	always: 'The same for all rows',
	alwaysMember: (id: string) => `always ${id}`,
	ways: {
		year: 'the year of the date',
		year_month: 'the dated month of the date',
		month: 'the month of the date',
		iso_week: 'the week of the date (ISO 8601)',
		weekday: 'the weekday of the date',
		day_of_year: 'the day of the year',
		day_of_month: 'the day of the month',
		hour_of_day: 'the hour of the day',
		hour_of_week: 'the hour of the week, from Monday'
	},
	rowsTaken: 'Rows that are taken',
	allRows: 'all',
	onlyWhere: (name: string) => `those chosen by ${name}`,
	valuesTaken: (name: string) => `Values of ${name} that are taken`,
	noText: 'empty',
	logCovers: 'The log covers',
	covers: {
		rows: 'from its first row to its last',
		months: 'the whole months of its rows',
		years: 'the whole years of its rows',
		days: 'from day to day'
	},
	from: 'from',
	to: 'to',
	fromDay: 'First day covered',
	toDay: 'Last day covered',
	withoutRows: 'Where no row speaks of a value',
	stays: 'it stays as it is',
	zero: 'it becomes 0',
	sumsGoInto: 'Sums go into',

	// LogPreview
	rowsSummary: (rows: number, used: number, filtered: number, outside: number, left: number) =>
		[
			`${used} of ${some(rows, 'row', 'rows')} used`,
			...(filtered > 0 ? [`${filtered} not chosen`] : []),
			...(outside > 0 ? [`${outside} outside of the period`] : []),
			...(left > 0 ? [`${left} left out`] : [])
		].join(', ') + '.',
	cellsSummary: (changed: number, fresh: number, same: number, doubted: number, refused: number) =>
		[
			`${changed} changed`,
			`${fresh} new`,
			...(doubted > 0 ? [`${doubted} of these implausible`] : []),
			`${same} the same`,
			...(refused > 0 ? [`${refused} refused`] : [])
		].join(', ') + '.',
	silent: (count: number, zero: boolean) =>
		`${some(count, 'value has', 'values have')} no row in the log${zero ? '; sums, numbers and shares among them become 0 where the period reaches them' : count === 1 ? ', and stays as it is' : ', and stay as they are'}.`,
	results: (count: number) =>
		`${some(count, 'row is', 'rows are')} of values that follow a formula, and passed over.`,
	periodOfRows: (from: string, to: string) => `Rows from ${from} to ${to}.`,
	coveredPeriod: (from: string, to: string, days: number) =>
		`Covered: ${from} to ${to}, ${some(days, 'day', 'days')}.`,
	gaps: (days: number, longest: readonly string[]) =>
		`${some(days, 'day has', 'days have')} no row${longest.length > 0 ? `; the longest gaps: ${longest.join('; ')}` : ''}.`,
	gap: (from: string, to: string, days: number) =>
		`${from} to ${to} (${some(days, 'day', 'days')})`,
	whatIsLeftOut: 'Rows that are left out',
	leftOutRows: (rows: number, lines: readonly number[], column: string | null) =>
		`${some(rows, 'row', 'rows')} (${lines.length === 1 ? 'line' : 'lines'} ${lines.join(', ')}${rows > lines.length ? ' …' : ''})${column === null ? '' : `, ${column}`}.`,
	whatIsRefused: 'Sums that cannot be entered',
	sourceWillSay: 'What their source will say',
	sourceOf: (label: string) => label,
	saysNow: (words: string) => `Says now: ${words}`,
	isOfRows: (rows: number) => some(rows, 'row', 'rows'),
	rowsHead: 'Rows',

	// ImportLog
	keepAs: 'Keep how it is summed for the next file, as',
	sumsEntered: (count: number, name: string) =>
		`${some(count, 'value', 'values')} from ${name} entered, with the file as their source; undo takes them back together.`,
	summedAs: (title: string, whole: boolean) =>
		`Summed as ${title}${whole ? ': all headings are the same.' : '.'}`,
	logHolds: (labels: readonly string[]) => `a log, summed into ${labels.join(', ')}`,
	sumAs: (title: string) => `Sum as ${title}`
};

export const texts = inLanguage({ en });
