/** The calendar as a picture, and its edits, on the shipped plant's own sheet. */
import { describe, expect, it } from 'vitest';
import { dateText } from '$lib/workbook/date-text';
import { Model } from '$lib/engine/model';
import { applyCommand, type Command } from '$lib/workbook/commands';
import { loadWorkbook } from '$lib/workbook/load';
import type { Workbook } from '$lib/workbook/schema';
import { calendarOf, dayWords, type CalendarPicture } from '$lib/ui/pictures/calendar/calendar';
import {
	holidayCommands,
	shutDownCommands,
	yearCommand
} from '$lib/ui/pictures/calendar/calendar-edit';
import {
	calendarSummary,
	calendarTable,
	calendarTitle,
	dayLabel,
	ruleWords,
	shutDownWords,
	weekdayOf
} from '$lib/ui/pictures/calendar/calendar-words';
import marram from '../../../scenarios/marram-coil-works.json?raw';

const loaded = loadWorkbook(marram, 'marram.json');
if (!loaded.ok) throw new Error(loaded.problem.line);
const { workbook: plant } = loaded;
const picture = plant.pictures?.find((picture) => picture.kind === 'calendar') as CalendarPicture;
const only: Workbook = {
	...{ format: plant.format, version: plant.version, title: 'Calendar', sets: plant.sets },
	sheets: plant.sheets.filter(({ title }) => title === 'Calendar'),
	scenarios: [plant.scenarios[0]!],
	pictures: [picture]
};

function opened(...commands: readonly Command[]) {
	let workbook = only;
	for (const command of commands) {
		const applied = applyCommand(workbook, command);
		if (!applied.ok) throw new Error(applied.problem.message);
		workbook = applied.workbook;
	}
	const model = Model.open(workbook);
	const { layout } = model;
	const source = { layout, results: model.results('base'), faults: undefined };
	return { calendar: calendarOf(picture, source, 'base'), layout };
}

const { calendar, layout } = opened();
const edit = { picture, layout, base: 'base' };
const holidayOf = (name: string, of = calendar) => of.holidays.find(({ id }) => id === name)!;

describe('the calendar of the shipped plant', () => {
	it('has the days that there are, with weekends, weeks and holidays', () => {
		expect(calendar.months.map(({ days }) => days.filter(Boolean).length)).toEqual([
			...[31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
		]);
		const ascension = calendar.months[4]!.days[5]!;
		expect(ascension).toMatchObject({ weekday: 3, weekend: false, week: 18, isHoliday: true });
		expect(dayLabel(calendar, ascension)).toBe(
			'Thursday 6 May, week 18, public holiday: Ascension Day'
		);
		const sunday = calendar.months[7]!.days[7]!;
		expect(dayLabel(calendar, sunday)).toBe('Sunday 8 August, week 31, shut-down, weekend');
	});

	it('says what is left to work', () => {
		expect(calendarTitle(calendar)).toBe(
			'242 working days from Monday to Friday in 2027, after nine public holidays and one shut-down'
		);
		expect(calendarSummary(calendar)).toContain('Shut-downs: Summer 2 August to 13 August');
	});

	it('says by which rule a holiday falls', () => {
		expect(ruleWords(calendar, holidayOf('good_friday'))).toBe('2 days before Easter Sunday');
		expect(ruleWords(calendar, holidayOf('easter_monday'))).toBe('1 day after Easter Sunday');
		expect(ruleWords(calendar, holidayOf('all_saints'))).toBe('every 1 November');
		expect(weekdayOf(calendar, holidayOf('ascension').date)).toBe('Thursday');
	});

	it('is a table of its 365 dates', () => {
		const { columns, rows } = calendarTable(calendar);
		expect(rows).toHaveLength(365);
		expect(columns).toHaveLength(rows[0]!.length);
		expect(rows[0]).toEqual(['2027-01-01', 'Friday', 53, "New Year's Day", 'no', 'no']);
	});
});

describe('changes', () => {
	it('another year moves what is counted, and keeps what is dated', () => {
		const { calendar: leap } = opened(yearCommand(edit, 2028));
		expect(leap.months[1]!.days.filter(Boolean)).toHaveLength(29);
		expect(dateText(holidayOf('ascension', leap).date!)).toBe('2028-05-25');
		expect(dayWords(leap, holidayOf('all_saints', leap).date)).toBe('1 November');
	});

	it('a holiday is added on a date, and from Easter', () => {
		const draft = { label: 'Ninth of May', counted: false, month: 4, day: 8, daysAfter: 0 };
		const { calendar: dated } = opened(...holidayCommands(edit, null, draft));
		expect(dayWords(dated, holidayOf('Ninth of May', dated).date)).toBe('9 May');
		const counted = { ...draft, label: 'Corpus Christi', counted: true, daysAfter: 60 };
		const { calendar: moving } = opened(...holidayCommands(edit, null, counted));
		expect(dateText(holidayOf('Corpus Christi', moving).date!)).toBe('2027-05-27');
		expect(moving.workingDays).toBe(241);
	});

	it('a holiday is changed: its name, its rule, and nothing of the old rule is left', () => {
		const draft = { label: 'Works day', counted: true, month: 9, day: 10, daysAfter: -1 };
		const { calendar: changed } = opened(...holidayCommands(edit, 'founding_day', draft));
		expect(holidayOf('founding_day', changed)).toMatchObject({
			...{ label: 'Works day', counted: true, month: null, day: null, daysAfter: -1 }
		});
		expect(dateText(holidayOf('founding_day', changed).date!)).toBe('2027-03-27');
	});

	it('a shut-down is added over the turn of the year, and changed', () => {
		const draft = { label: 'Winter', fromMonth: 11, fromDay: 26, toMonth: 0, toDay: 2 };
		const { calendar: two } = opened(...shutDownCommands(edit, null, draft));
		expect(two.shutDowns.map((shutDown) => shutDown.label)).toEqual(['Summer', 'Winter']);
		expect(shutDownWords(two, two.shutDowns[1]!)).toBe('27 December to 3 January, both included');
		expect(two.months[0]!.days[1]).toMatchObject({ isShutDown: true });
		const later = { label: 'Summer', fromMonth: 7, fromDay: 8, toMonth: 7, toDay: 19 };
		const { calendar: moved } = opened(...shutDownCommands(edit, 'summer', later));
		expect(shutDownWords(moved, moved.shutDowns[0]!)).toBe('9 August to 20 August, both included');
	});

	it('a name that is taken, or none, is refused in words', () => {
		const draft = { label: 'summer', fromMonth: 0, fromDay: 0, toMonth: 0, toDay: 0 };
		const [add] = shutDownCommands(edit, null, draft);
		const refused = applyCommand(only, add!);
		expect(!refused.ok && refused.problem.message).toContain('already has a member "summer"');
	});
});
