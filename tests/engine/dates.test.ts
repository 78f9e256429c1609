/** Dates and members by place: what the formulas give and in which unit, and what is refused, in words. */
import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import type { Quantity } from '$lib/workbook/schema';
import { cellIn } from './model-shop';
import { computed, planOf, problemOf, workbookOf, type Shop } from './plan-builder';

const DAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

const shop = (x: Omit<Quantity, 'name' | 'label'>): Shop => ({
	sets: {
		weekday: DAYS,
		month: {
			members: [1, 2, 3].map((number) => ({ id: `m${number}`, number })),
			number_unit: 'month'
		}
	},
	quantities: {
		calendar_year: { value: 2027, unit: 'year' },
		place: { value: 9 },
		length: { value: 5, unit: 'm' },
		x
	}
});

const plain = (formula: string) => computed(shop({ formula }), 'x');
const reason = (formula: string) => {
	const model = Model.open(workbookOf(shop({ formula })));
	return model.why('base', cellIn(model, 'x')).origin?.reason;
};

describe('dates', () => {
	it('are days since 1899-12-30, in day', () => {
		expect(computed(shop({ unit: 'day', formula: 'DATE(2027; 1; 1)' }), 'x')).toBe(46388);
		expect(computed(shop({ unit: 'day', formula: 'DATE(1900; 3; 1)' }), 'x')).toBe(61);
		expect(problemOf(planOf(shop({ unit: 'h', formula: 'DATE(2027; 1; 1)' }))).message).toContain(
			'gives day'
		);
	});

	it('take year, month and day as sets carry them, in their units or as plain numbers', () => {
		const formula = 'DATE(calendar_year; NUMBER(month); 15)';
		const given = shop({ unit: 'day', per: ['month'], formula });
		expect(computed(given, 'x', 'm2')).toBe(46388 + 31 + 14);
		expect(plain('MONTH(DATE(calendar_year; 7[month]; 4[day]))')).toBe(7);
	});

	it('overflow by month and day, forwards and backwards', () => {
		expect(plain('DATE(2027; 13; 1) / 1[day]')).toBe(46388 + 365);
		expect(plain('DATE(2027; 0; 31) / 1[day]')).toBe(46388 - 1);
		expect(plain('DAY(DATE(2028; 3; 0))')).toBe(29);
		expect(plain('(DATE(2027; 2 + 1; 1) - DATE(2027; 2; 1)) / 1[day]')).toBe(28);
		expect(plain('DATE(2027.9; 1.9; 1.9) / 1[day]')).toBe(46388);
	});

	it('tell their year, month, day, weekday and ISO week', () => {
		expect(plain('YEAR(DATE(2027; 1; 1))')).toBe(2027);
		expect(plain('WEEKDAY(DATE(2027; 1; 1))')).toBe(6);
		expect(plain('WEEKDAY(DATE(2027; 1; 1); 2)')).toBe(5);
		expect(plain('WEEKDAY(DATE(2027; 1; 1); 3)')).toBe(4);
		expect(plain('ISOWEEKNUM(DATE(2027; 1; 1))')).toBe(53);
		expect(plain('YEAR(DATE(2027; 12; 31) + 0.99[day])')).toBe(2027);
	});

	it('outside 1900-03-01 to 9999-12-31 there are none, and the reason says so', () => {
		expect(plain('YEAR(DATE(1900; 2; 28))')).toBe('bad-argument');
		expect(plain('YEAR(DATE(9999; 12; 31))')).toBe(9999);
		expect(plain('YEAR(DATE(9999; 12; 32))')).toBe('bad-argument');
		expect(reason('YEAR(place * 1[day])')).toBe(
			'x takes place (9) as a date; dates run from 1900-03-01 to 9999-12-31, as days since 1899-12-30.'
		);
		expect(reason('DATE(place; 1; 1) / 1[day]')).toContain('makes a date of year place (9)');
		expect(reason('DATE(1900; 1; place) / 1[day]')).toContain('day place (9) of a month');
		expect(reason('WEEKDAY(DATE(2027; 1; 1); place)')).toContain('a type is 1, 2 or 3');
	});

	it('a plain number and a length are no dates', () => {
		expect(problemOf(planOf(shop({ formula: 'YEAR(46388)' })))).toMatchObject({
			code: 'not-a-date',
			message: expect.stringContaining('takes a date, which is in day, and 46388 is in 1') as string
		});
		expect(problemOf(planOf(shop({ unit: 'day', formula: 'DATE(length; 1; 1)' }))).code).toBe(
			'has-unit'
		);
	});
});

describe('MEMBER', () => {
	const day = (formula: string) => computed(shop({ type: { member_of: 'weekday' }, formula }), 'x');

	it('gives the member at a place, the inverse of ORD', () => {
		expect(day('MEMBER(weekday; WEEKDAY(DATE(2027; 1; 1); 2))')).toBe(DAYS.indexOf('fri'));
		const back = shop({
			type: { member_of: 'weekday' },
			per: ['weekday'],
			formula: 'MEMBER(weekday; ORD(weekday))'
		});
		DAYS.forEach((id, ordinal) => expect(computed(back, 'x', id)).toBe(ordinal));
	});

	it('chooses', () => {
		expect(plain('NUMBER(MEMBER(month; place - 7)) / 1[month]')).toBe(2);
	});

	it('past the set, or between two places, there is none, and the reason names the set', () => {
		const model = Model.open(
			workbookOf(shop({ type: { member_of: 'weekday' }, formula: 'MEMBER(weekday; place)' }))
		);
		expect(model.why('base', cellIn(model, 'x')).origin?.reason).toBe(
			'x takes the member of weekday at place place (9); the places of weekday are the whole numbers from 1 to 7.'
		);
		for (const place of ['0', '8', '1.5', '-1'])
			expect(day(`MEMBER(weekday; ${place})`)).toBe('bad-argument');
	});

	it('takes the name of a set and a plain number', () => {
		const type = { member_of: 'weekday' };
		const faulty = (formula: string) => problemOf(planOf(shop({ type, formula }))).code;
		expect(faulty('MEMBER(place; 1)')).toBe('not-a-set');
		expect(faulty('MEMBER(weekday; length)')).toBe('has-unit');
	});
});
