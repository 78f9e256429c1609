/**
 * Cash flows lie in time by the numbers of their members. Expected values are sums of flow / (1 + rate)^number, done by
 * hand; the case of years 0, 1, 2 and 5 is held to a search for the rate at which that sum is zero.
 */
import { describe, expect, it } from 'vitest';
import { computed, planOf, problemOf, type Shop } from './plan-builder';

type Year = readonly [id: string, number: number | undefined, cash: number];
const YEARS: readonly Year[] = [
	['y0', 0, -100],
	['y1', 1, 50],
	['y2', 2, 40],
	['y5', 5, 50]
];

function shop(text: string, years = YEARS, unit = 'EUR'): Shop {
	const members = years.map(([id, number]) => (number === undefined ? { id } : { id, number }));
	const numbered = years.some(([, number]) => number !== undefined);
	return {
		sets: { year: { members, ...(numbered ? { number_unit: 'year' } : {}) } },
		quantities: {
			cash: {
				per: ['year'],
				unit: 'EUR',
				value: Object.fromEntries(years.map(([id, , cash]) => [id, cash]))
			},
			result: { formula: text, ...(unit === '1' ? {} : { unit }) }
		}
	};
}
const valueAt = (rate: number, years = YEARS) =>
	years.reduce((sum, [, number = 0, cash]) => sum + cash / (1 + rate) ** number, 0);
const messageOf = (text: string, years: readonly Year[], unit = 'EUR') =>
	problemOf(planOf(shop(text, years, unit))).message;

describe('periods', () => {
	const text = 'cash[y0] + NPV(10%; cash over year where year > y0)';

	it('are counted by the numbers of the members', () => {
		expect(computed(shop(text), 'result')).toBeCloseTo(9.558, 3);
		expect(computed(shop(text), 'result')).toBeCloseTo(valueAt(0.1), 10);
	});

	it('pass where a condition leaves a member out', () => {
		const without = 'NPV(10%; cash over year where AND(year > y0; year <> y2))';
		expect(computed(shop(without), 'result')).toBeCloseTo(50 / 1.1 + 50 / 1.1 ** 5, 10);
		const late = 'NPV(10%; cash over year where year > y1)';
		expect(computed(shop(late), 'result')).toBeCloseTo(40 / 1.1 ** 2 + 50 / 1.1 ** 5, 10);
	});

	it('do not depend on the order in which the members stand', () => {
		const turned = [YEARS[2]!, YEARS[0]!, YEARS[3]!, YEARS[1]!];
		const all = 'NPV(10%; cash over year where year <> y0) + cash[y0]';
		expect(computed(shop(all, turned), 'result')).toBeCloseTo(valueAt(0.1), 10);
		const rate = computed(shop('IRR(cash over year)', turned, '1'), 'result') as number;
		expect(valueAt(rate)).toBeCloseTo(0, 9);
		const payback = 'PAYBACK(cash over year)';
		const early = turned.map(([id, number, cash]): Year => [id, number, id === 'y1' ? 90 : cash]);
		// -100 + 90 after a year; a quarter of the second year's 40.
		expect(computed(shop(payback, early, 'year'), 'result')).toBe(1.25);
	});

	it('tell the rate of return, plain and modified', () => {
		const rate = computed(shop('IRR(cash over year)', YEARS, '1'), 'result') as number;
		expect(rate).toBeCloseTo(0.143, 4);
		expect(valueAt(rate)).toBeCloseTo(0, 9);
		const modified = computed(shop('MIRR(cash over year; 10%; 12%)', YEARS, '1'), 'result');
		const received = 50 * 1.12 ** 4 + 40 * 1.12 ** 3 + 50;
		expect(modified).toBeCloseTo((received / 100) ** (1 / 5) - 1, 10);
	});

	it('without numbers follow one another, and none may be left out', () => {
		const plain = YEARS.map(([id, , cash]): Year => [id, undefined, cash]);
		expect(computed(shop('NPV(10%; cash over year where year > y0)', plain), 'result')).toBeCloseTo(
			50 / 1.1 + 40 / 1.21 + 50 / 1.331,
			10
		);
		expect(messageOf('NPV(10%; cash over year where year <> y2)', plain)).toBe(
			'NPV takes one value a period, but y2 is left out between others, and the members of year have no numbers to tell how far apart they are: give each a number, such as 0, 1, 2 for years.'
		);
	});

	it('are whole, and counted from today rather than by the calendar', () => {
		const numbered = (...numbers: number[]) =>
			numbers.map((number, at): Year => [`m${at}`, number, at === 0 ? -100 : 60]);
		expect(messageOf('IRR(cash over year)', numbered(0, 0.5, 1), '1')).toContain(
			'IRR counts whole periods by the numbers of year, but m1 has number 0.5'
		);
		expect(messageOf('NPV(10%; cash over year)', numbered(2026, 2027))).toContain(
			'm1 has number 2027: number the members by periods from today'
		);
		expect(messageOf('NPV(10%; cash over year)', numbered(-1, 1))).toContain(
			'm0 has number -1, which is before it'
		);
		// A rate of return counts from its first flow, whatever the calendar says.
		const years = shop('IRR(cash over year)', numbered(2026, 2028), '1');
		expect(computed(years, 'result')).toBeCloseTo(Math.sqrt(0.6) - 1, 12);
	});

	it('take amounts, and no money a year', () => {
		const flow = (text: string, unit: string): Shop => {
			const written = shop(text, YEARS, unit);
			written.quantities.cash!.unit = 'EUR/year';
			return written;
		};
		for (const [text, unit] of [
			['PAYBACK(cash over year)', 'year'],
			['IRR(cash over year)', '1']
		] as const) {
			const problem = problemOf(planOf(flow(text, unit)));
			expect(problem.message).toBe(
				'cash is in EUR/year, which is a flow, and what is added up here are the amounts of each member: write cash * 1[year] if a member lasts 1 year.'
			);
			const better = text.replace('cash', problem.suggestion!);
			expect(planOf(flow(better, unit)).problems).toEqual([]);
		}
	});
});
