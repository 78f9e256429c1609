/**
 * The calendar of the shipped plant, on its own formulas: Easter against date-easter
 * (https://github.com/commenthol/date-easter), weekdays, weeks and leap days against luxon, and the working days of
 * 2027 against the count by hand in the plant's description: 261 weekdays less 10 of the shut-down and 9 holidays.
 */
import { gregorianEaster } from 'date-easter';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { dateText } from '$lib/workbook/date-text';
import { cellAt } from '$lib/engine/layout';
import { Model } from '$lib/engine/model';
import { ABSENT } from '$lib/engine/state';
import { enter, openShipped, read } from './shipped';

/** The calendar's sheet alone, up to one of its quantities, so that a year costs little. */
function calendar(year: number, last = ''): Model {
	const { workbook } = shipped;
	const sheet = workbook.sheets.find(({ title }) => title === 'Calendar')!;
	const end = sheet.quantities.findIndex(({ name }) => name === last) + 1;
	const taken = end === 0 ? sheet.quantities : sheet.quantities.slice(0, end);
	const quantities = taken.map((one) =>
		one.name === 'calendar_year' ? { ...one, value: year } : one
	);
	const [base] = workbook.scenarios;
	const { front, pictures, relations, studies, ...rest } = workbook;
	void [front, pictures, relations, studies];
	return Model.open({ ...rest, sheets: [{ ...sheet, quantities }], scenarios: [base!] });
}

const shipped = openShipped('marram');
const MONTHS = shipped.layout.sets.get('month')!.members.map(({ id }) => id);
const DAYS = shipped.layout.sets.get('day_of_month')!.members.map(({ id }) => id);
const WEEKDAYS = shipped.layout.sets.get('weekday')!.members.map(({ id }) => id);
const inYear = (model: Model, name: string) =>
	Object.fromEntries(WEEKDAYS.map((day) => [day, read(model, name, day)]));

describe('Easter', () => {
	it.each([1901, 1954, 1981, 2000, 2008, 2011, 2027, 2038, 2049, 2076, 2285, 4089])(
		'of %i',
		(year) => {
			const { month, day } = gregorianEaster(year);
			const ours = dateText(read(calendar(year, 'easter_sunday'), 'easter_sunday'));
			expect(ours).toBe(DateTime.utc(year, month, day).toISODate());
		}
	);

	it('of every year from 1901 to 2200, by one edit each', () => {
		const model = calendar(1901, 'easter_sunday');
		for (let year = 1901; year <= 2200; year++) {
			enter(model, ['calendar_year', [], year]);
			const { month, day } = gregorianEaster(year);
			const expected = DateTime.utc(year, month, day).toISODate();
			expect(dateText(read(model, 'easter_sunday'))).toBe(expected);
		}
	});
});

describe('dates, weekdays and weeks', () => {
	it.each([2024, 2026, 2027, 2028, 2032, 1904, 2100])('of every day of %i', (year) => {
		const model = calendar(year);
		const dates = model.layout.byName.get('date_of')!;
		const { states } = model.results('base');
		for (const [m, month] of MONTHS.entries())
			for (const [d, day] of DAYS.entries()) {
				const date = DateTime.utc(year, m + 1, d + 1);
				if (!date.isValid) {
					expect(states[cellAt(dates, [m, d])]).toBe(ABSENT);
					continue;
				}
				expect(dateText(read(model, 'date_of', month, day))).toBe(date.toISODate());
				expect(read(model, 'weekday_of', month, day)).toBe(date.weekday - 1);
				expect(read(model, 'iso_week', month, day)).toBe(date.weekNumber);
			}
		const days = WEEKDAYS.reduce(
			(sum, weekday) =>
				sum + MONTHS.reduce((all, month) => all + read(model, 'days_of_month', month, weekday), 0),
			0
		);
		expect(days).toBe(DateTime.utc(year).daysInYear);
	});
});

describe('the working days of 2027', () => {
	it('are those that were counted by hand, weekday by weekday', () => {
		expect(inYear(shipped, 'days_in_year')).toEqual({
			...{ Mon: 52, Tue: 52, Wed: 52, Thu: 52, Fri: 53, Sat: 52, Sun: 52 }
		});
		expect(inYear(shipped, 'public_holidays')).toEqual({
			...{ Mon: 4, Tue: 0, Wed: 0, Thu: 1, Fri: 4, Sat: 0, Sun: 0 }
		});
		expect(inYear(shipped, 'shutdown_days')).toEqual({
			...{ Mon: 2, Tue: 2, Wed: 2, Thu: 2, Fri: 2, Sat: 1, Sun: 1 }
		});
	});

	it('are 242 from Monday to Friday, so 5,808 h of five days and nights', () => {
		const days = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri'].map((day) =>
			read(shipped, 'working_days', day)
		);
		expect(days.reduce((sum, day) => sum + day, 0)).toBe(242);
		expect(read(shipped, 'pattern_hours', '5x24')).toBe(5808);
	});

	it('has its nine holidays on the dates of the plant', () => {
		const { members } = shipped.layout.sets.get('holiday')!;
		expect(members.map(({ id }) => dateText(read(shipped, 'holiday_date', id)))).toEqual([
			...['2027-01-01', '2027-03-26', '2027-03-29', '2027-05-06', '2027-05-17'],
			...['2027-10-11', '2027-11-01', '2027-12-24', '2027-12-31']
		]);
	});
});

describe('holidays and shut-downs that meet', () => {
	const total = (model: Model, name: string) =>
		MONTHS.flatMap((month) => WEEKDAYS.map((day) => read(model, name, month, day))).reduce(
			(sum, days) => sum + days,
			0
		);

	it('a holiday in a shut-down counts there, two on one date count once', () => {
		const model = calendar(2027);
		const working = total(model, 'working_days_of_month');
		enter(model, ['holiday_month', ['founding_day'], 'Aug'], ['holiday_day', ['founding_day'], 9]);
		expect(total(model, 'holidays_of_month')).toBe(8);
		expect(total(model, 'shut_down_days_of_month')).toBe(12);
		expect(total(model, 'working_days_of_month')).toBe(working + 1);
		enter(model, ['holiday_month', ['founding_day'], 'Jan'], ['holiday_day', ['founding_day'], 1]);
		expect(total(model, 'holidays_of_month')).toBe(8);
		expect(read(model, 'shut_down_days_close')).toBe(0);
	});

	it('a shut-down over the turn of the year takes both ends of it', () => {
		const model = calendar(2027);
		enter(
			model,
			['shut_down_from_month', ['summer'], 'Dec'],
			['shut_down_from_day', ['summer'], 24],
			['shut_down_to_month', ['summer'], 'Jan'],
			['shut_down_to_day', ['summer'], 2]
		);
		// 24 to 31 December and 1 to 2 January, three holidays among them.
		expect(total(model, 'shut_down_days_of_month')).toBe(10);
		expect(total(model, 'holidays_of_month')).toBe(6);
		expect(read(model, 'shut_down_days_close')).toBe(0);
	});
});
