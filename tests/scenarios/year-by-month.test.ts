/**
 * The year of the shipped plant by dated months: what is put into one month or comes from a date is worked out by hand,
 * the sum of the months against the year, the calendar against luxon.
 */
import { DateTime } from 'luxon';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Model } from '$lib/engine/model';
import { apply, enter, openShipped, read } from '../reference/shipped';

const YEARS = [
	['today', 2027],
	['y1', 2028]
] as const;
const periods = (model: Model) => model.layout.sets.get('period')!.members;
const ofYear = (model: Model, year: number) =>
	periods(model).filter(({ id }) => id.startsWith(`${year}-`));

/** Of metres that were sold in the year and not made in it: at their price, less what a metre costs. */
const soldOfStock = (model: Model, scenario: string): number =>
	model.layout.sets
		.get('product')!
		.members.reduce(
			(sum, { id }) =>
				sum -
				read(model, 'stock_gained', id, { scenario }) *
					(read(model, 'net_net_price', id, { scenario }) -
						read(model, 'cost_per_metre', id, { scenario })),
			0
		);

describe('dated months', () => {
	const model = openShipped('marram');

	it('follow one another as the calendar has them', () => {
		const first = DateTime.fromISO('2027-01-01', { zone: 'utc' });
		periods(model).forEach(({ id }, i) => {
			const month = first.plus({ months: i });
			expect(id).toBe(month.toFormat('yyyy-MM'));
			expect(read(model, 'month_of_period', id)).toBe(month.month - 1);
			expect(read(model, 'year_of_period', id)).toBe(month.year);
		});
	});

	it('stand as the plan of their year, and outside of the plan years as the nearest', () => {
		expect(read(model, 'plan_year_of_period', '2027-12')).toBe(0);
		expect(read(model, 'plan_year_of_period', '2028-01')).toBe(1);
		const later = openShipped('marram');
		enter(later, ['calendar_year', [], 2028]);
		expect(read(later, 'plan_year_of_period', '2027-12')).toBe(0);
		expect(read(later, 'plan_year_of_period', '2028-01')).toBe(0);
	});
});

describe('the months of a year', () => {
	const model = openShipped('marram');

	it('add up to its EBIT, in every scenario and in the year after', () => {
		for (const { id: scenario } of model.workbook.scenarios) {
			for (const [year, number] of YEARS) {
				const months = ofYear(model, number);
				const of = (name: string) =>
					months.reduce((sum, { id }) => sum + read(model, name, id, { scenario }), 0);
				const moved = model.layout.sets
					.get('step_kind')!
					.members.map(({ id }) => read(model, 'step_effect_of_year', id, year, { scenario }))
					.reduce((sum, one) => sum + one, 0);
				const revenue = read(model, 'revenue', year, { scenario });
				const ebit = read(model, 'ebit_of_plan_year', year, { scenario });
				const sold = year === 'today' ? soldOfStock(model, scenario) : 0;
				expect(Math.abs(of('month_ebit') - moved - sold - ebit) / revenue).toBeLessThan(1e-6);
				if (sold === 0) expect(Math.abs(of('month_stock_change')) / revenue).toBeLessThan(1e-6);
				expect(of('month_ebit')).toBeCloseTo(read(model, 'ebit_of_months', year, { scenario }), 4);
				const last = months.at(-1)!.id;
				expect(read(model, 'ebit_to_date', last, { scenario })).toBeCloseTo(of('month_ebit'), 4);
			}
			const labour = ofYear(model, 2027).reduce(
				(sum, { id }) => sum + read(model, 'month_labour', id, { scenario }),
				0
			);
			if (scenario === 'base')
				expect(labour).toBeCloseTo(read(model, 'shift_labour', { scenario }), 3);
		}
	});

	it('pay for the days that they have: 22 working days in April, 12 in August of the shut-down', () => {
		const april = read(model, 'month_labour', '2027-04');
		expect(read(model, 'month_labour', '2027-08') / april).toBeCloseTo(12 / 22, 9);
	});

	it('keep what is made and not sold in stock, and take it out again', () => {
		const [before, after] = [
			read(model, 'month_metres_in_stock', '2027-06'),
			read(model, 'month_metres_in_stock', '2027-07')
		];
		const made = read(model, 'month_metres_made', '2027-07');
		const sold = read(model, 'month_metres_sold', '2027-07');
		expect(before + made - sold).toBeCloseTo(after, 6);
		expect(read(model, 'month_stock_change', '2027-07')).toBeGreaterThan(0);
		expect(read(model, 'month_stock_change', '2027-08')).toBeLessThan(0);
	});

	it('stand beside the same month of the year before', () => {
		expect(read(model, 'ebit_year_before', '2028-03')).toBe(read(model, 'month_ebit', '2027-03'));
		expect(() => read(model, 'ebit_year_before', '2027-03')).toThrow('state');
	});
});

describe('steps in time', () => {
	let model: Model;
	beforeAll(() => {
		model = openShipped('marram');
		enter(
			model,
			['wage_raised_from', ['shift leader', '2027-04'], 3],
			['wage_set_from', ['shift leader', '2027-10'], 30],
			['wage_raised_from', ['shift leader', '2028-01'], -2],
			['price_raised_from', ['PX15B', '2027-07'], 2]
		);
	});
	const wage = (month: string, scenario = 'base') =>
		read(model, 'wage_in_month', 'shift leader', month, { scenario });

	it('hold from their month on', () => {
		const start = read(model, 'wage', 'shift leader');
		expect(wage('2027-03')).toBe(start);
		expect(wage('2027-04')).toBeCloseTo(start * 1.03, 12);
		expect(wage('2027-09')).toBeCloseTo(start * 1.03, 12);
		expect(wage('2027-10')).toBe(30);
		expect(wage('2027-12')).toBe(30);
		expect(wage('2028-01')).toBeCloseTo(29.4, 12);
		expect(wage('2028-12')).toBeCloseTo(29.4, 12);
		expect(read(model, 'wage_in_month', 'fitter/electrician', '2028-12')).toBe(
			read(model, 'wage', 'fitter/electrician')
		);
	});

	it('reach the result of their months, and are told apart from the year', () => {
		const hours = read(model, 'paid_hours_in_month', 'shift leader', 'May');
		const start = read(model, 'wage', 'shift leader');
		const dearer = hours * start * 0.03 * (1 + read(model, 'on_costs') / 100);
		expect(read(model, 'step_effect', 'wages_moved', '2027-05')).toBeCloseTo(-dearer, 6);
		expect(read(model, 'step_effect', 'wages_moved', '2027-03')).toBe(0);
		const metres = read(model, 'month_sold', 'PX15B', '2027-08');
		const more = metres * read(model, 'price_in_force', 'PX15B') * 0.02;
		expect(read(model, 'step_effect', 'prices_moved', '2027-08')).toBeCloseTo(
			more * (1 - read(model, 'rebate_and_commission') / 100),
			6
		);
		for (const [year] of YEARS) expect(Math.abs(read(model, 'months_close', year))).toBeLessThan(1);
	});

	it('follow another figure of the year where they are shares, and reach every scenario', () => {
		expect(wage('2027-05', 'new_line')).toBe(wage('2027-05'));
		apply(model, {
			kind: 'set_inputs',
			scenario: 'new_line',
			entries: [
				{ quantity: 'wage', at: ['shift leader'], value: 20 },
				{ quantity: 'wage_raised_from', at: ['shift leader', '2027-06'], value: 1 }
			]
		});
		expect(wage('2027-05', 'new_line')).toBeCloseTo(20.6, 12);
		expect(wage('2027-06', 'new_line')).toBeCloseTo(20.6 * 1.01, 12);
		expect(wage('2027-10', 'new_line')).toBe(30);
	});
});

describe('the rolling forecast', () => {
	const model = openShipped('marram');
	const FORECAST = { scenario: 'forecast_2027' };

	it('takes closed months as they came, and open ones as the scenario plans them', () => {
		expect(read(model, 'forecast_ebit', '2027-03', FORECAST)).toBe(
			read(model, 'actual_ebit_of_month', '2027-03', FORECAST)
		);
		expect(read(model, 'forecast_ebit', '2027-06', FORECAST)).toBe(
			read(model, 'month_ebit', '2027-06', FORECAST)
		);
		expect(read(model, 'forecast_metres_made', '2027-02')).toBeCloseTo(
			read(model, 'actual_metres_in_all', '2027-02') / 1e6,
			12
		);
		const year = ofYear(model, 2027).reduce(
			(sum, { id }) => sum + read(model, 'forecast_ebit', id, FORECAST),
			0
		);
		expect(read(model, 'forecast_of_year', 'today', FORECAST)).toBeCloseTo(year, 4);
		expect(read(model, 'forecast_to_date', '2027-12', FORECAST)).toBeCloseTo(year, 4);
	});

	it('stands beside the budget, which is what the scenario is compared with', () => {
		const base = read(model, 'ebit_of_plan_year', 'today');
		expect(read(model, 'budget_of_year', 'today', FORECAST)).toBeCloseTo(base, 1);
	});

	it('differs from it by its steps alone where open months are not planned anew', () => {
		const still = openShipped('marram');
		const { scenario } = FORECAST;
		apply(still, {
			kind: 'set_inputs',
			scenario,
			entries: [{ quantity: 'plans_from_close', at: [], value: false }]
		});
		apply(still, { kind: 'set_plans', plans: [{ programme: 'allocation', scenario }] });
		expect(read(still, 'forecast_less_budget', '2027-06', FORECAST)).toBeCloseTo(
			read(still, 'step_effect', 'wages_moved', '2027-06', FORECAST),
			4
		);
	});

	it('moves with a month that is opened again', () => {
		const open = openShipped('marram');
		enter(open, ['closed', ['2027-04'], false]);
		expect(read(open, 'forecast_ebit', '2027-04')).toBe(read(open, 'month_ebit', '2027-04'));
	});

	it('has wages up by 3 % from April for every position', () => {
		const hours = (month: string) => read(model, 'month_labour', month, FORECAST);
		expect(hours('2027-03')).toBeCloseTo(read(model, 'month_labour', '2027-03'), 6);
		expect(hours('2027-04')).toBeCloseTo(read(model, 'month_labour', '2027-04') * 1.03, 6);
	});
});
