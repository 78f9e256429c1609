/**
 * Dates against luxon, an independent date library (https://github.com/moment/luxon), and both engines over the
 * days on which calendars go wrong. ISO 8601 itself gives the examples of week numbers; the count of days since
 * 1899-12-30 is OpenFormula's (part 2, 4.11.7: 1904-01-01 is 1462).
 */
import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { compute } from '$lib/engine/scalar';
import { Op, type ScalarOp } from '$lib/engine/operations';
import type { HandPlan } from '../engine/interpreter-hand';
import { computed, expected, same } from '../engine/second-hand';
import { HandPlan as Plan } from '../engine/interpreter-hand';

const ORIGIN = DateTime.utc(1899, 12, 30);
const FIRST = 61;
const LAST = 2958465;
const onDay = (serial: number) => ORIGIN.plus({ days: serial });
const of = (op: ScalarOp, x: number, y = 0) => compute(op, x, y);
const date = (year: number, month: number, day: number) =>
	of(Op.DayFrom, of(Op.FirstOfMonth, year, month), day);

/** The days of which luxon says otherwise, with what both say; looked at together, as there are tens of thousands. */
const otherThanLuxon = (serials: readonly number[]) =>
	serials.flatMap((serial) => {
		const { year, month, day, weekNumber, weekday } = onDay(serial);
		const parts = [Op.YearOf, Op.MonthOf, Op.DayOf, Op.IsoWeek].map((op) => of(op, serial));
		const ours = [...parts, of(Op.Weekday, serial, 2), date(year, month, day)];
		const theirs = [year, month, day, weekNumber, weekday, serial];
		return ours.every((one, at) => one === theirs[at]) ? [] : [{ serial, ours, theirs }];
	});

describe('dates as luxon has them', () => {
	it('every day from 1990 to 2060, leap years and all 53-week years among them', () => {
		const [from, to] = [date(1990, 1, 1), date(2061, 1, 1)];
		const days = Array.from({ length: to - from }, (_, day) => from + day);
		expect(days.length).toBe(71 * 365 + 18); // leap days from 1992 to 2060
		expect(otherThanLuxon(days)).toEqual([]);
	});

	it('the turn of every year and the end of every February from 1900 to 9999', () => {
		const days: number[] = [];
		for (let year = 1900; year <= 9999; year += 1) {
			const march = date(year, 3, 1);
			if (march > FIRST) days.push(march - 1);
			const end = date(year, 12, 31);
			days.push(march, end - 3, end);
		}
		expect(otherThanLuxon(days)).toEqual([]);
	});

	it('months and days beyond their end run on', () => {
		const months = fc.integer({ min: -60, max: 60 });
		const days = fc.integer({ min: -400, max: 400 });
		fc.assert(
			fc.property(fc.integer({ min: 1910, max: 9980 }), months, days, (year, month, day) => {
				const theirs = DateTime.utc(year, 1, 1)
					.plus({ months: month - 1 })
					.plus({ days: day - 1 });
				expect(date(year, month, day)).toBe(theirs.diff(ORIGIN, 'days').days);
			})
		);
	});
});

describe('the published examples', () => {
	it("1904-01-01 is 1462, and 2000-01-01 is 36526, as OpenFormula's epoch has it", () => {
		expect([date(1904, 1, 1), date(2000, 1, 1)]).toEqual([1462, 36526]);
	});

	// ISO 8601-1:2019, 3.1.1.23, and its well-known borders: a year's first days may belong to the year before.
	it.each([
		[2004, 12, 31, 53],
		[2005, 1, 1, 53],
		[2005, 1, 2, 53],
		[2005, 12, 31, 52],
		[2007, 1, 1, 1],
		[2008, 12, 28, 52],
		[2008, 12, 29, 1],
		[2009, 12, 31, 53],
		[2010, 1, 3, 53],
		[2010, 1, 4, 1]
	])('%i-%i-%i is in week %i', (year, month, day, week) => {
		expect(of(Op.IsoWeek, date(year, month, day))).toBe(week);
	});
});

/** One hand plan with a root for every operation on every pair of operands; both engines, compared. */
function expectAgreement(pairs: readonly (readonly [number, number])[]) {
	const operations = [
		Op.YearOf,
		Op.MonthOf,
		Op.DayOf,
		Op.IsoWeek,
		Op.Weekday,
		Op.FirstOfMonth,
		Op.DayFrom,
		Op.MemberAt
	];
	const entries = pairs.flat();
	const plan: HandPlan = new Plan(entries.length + pairs.length * operations.length);
	pairs.forEach((_, at) =>
		operations.forEach((op, which) => {
			const [x, y] = [plan.cell(2 * at), plan.cell(2 * at + 1)];
			plan.root(entries.length + at * operations.length + which, plan.node(op, x, y));
		})
	);
	const built = plan.build();
	const second = computed(built, entries).found;
	const apart = expected(built, entries).flatMap((first, cell) => {
		if (same(first, second[cell]!)) return [];
		const at = Math.floor((cell - entries.length) / operations.length);
		const operation = (cell - entries.length) % operations.length;
		return [{ operation, of: pairs[at], first, second: second[cell] }];
	});
	expect(apart).toEqual([]);
}

describe('the two engines agree', () => {
	it('on the turn of every year and the end of every February', () => {
		const pairs: [number, number][] = [];
		for (let year = 1900; year <= 9999; year += year < 2110 ? 1 : 61)
			for (const serial of [date(year, 1, 4) - 4, date(year, 2, 28) + 1, date(year, 12, 29)])
				pairs.push([serial, 1 + (serial % 17)]);
		expectAgreement(pairs.filter(([serial]) => Number.isFinite(serial)));
	});

	it('on every day of a leap year and the year after', () => {
		const start = date(2028, 1, 1);
		expectAgreement(Array.from({ length: 731 }, (_, day) => [start + day, 2]));
	});

	it('on what is no date, and on years, months, types and places that are none', () => {
		expectAgreement([
			[FIRST, 2],
			[FIRST - 1, 2],
			[FIRST - 0.5, 3],
			[LAST, 1],
			[LAST + 0.5, 17],
			[LAST + 1, 11],
			[0, 0],
			[-5, 3],
			[46388.75, 0],
			[46388, 4],
			[46388, 2.5],
			[46388, -46388],
			[1899, 13],
			[1900, 1],
			[1900, 0],
			[1900.5, 3.9],
			[2027, -0.5],
			[2027, 96000],
			[9999, 12],
			[9999, 13],
			[10000, 0],
			[1, 1],
			[1.5, 3],
			[3, 3],
			[4, 3]
		]);
	});
});
