/** What the months of the plan add up to in a year, and what is told of it where the plan is overridden. */
import { describe, expect, it } from 'vitest';
import { enter, makeInYear, openShipped, read, wanted } from '../reference/shipped';
import { MONTH_NAMES } from './workbook-plan';

const LINES = ['L1', 'L2', 'L3', 'L4', 'L5', 'L6', 'L7'];

describe('the plan of the shipped plant', () => {
	const model = openShipped('marram');

	it('makes and leaves open what customers would take: 52.6 Mm', () => {
		const all = read(model, 'total_good_metres') + read(model, 'unmet_metres');
		expect(all).toBeCloseTo(52.6, 6);
		expect(read(model, 'unmet_metres')).toBeGreaterThan(0);
	});

	it('plans no more than 95 of 100 net hours of a line in any month', () => {
		for (const line of LINES) {
			expect(read(model, 'planning_factor', line)).toBe(95);
			for (const month of ['Jan', 'Aug', 'Oct']) {
				const load = read(model, 'planned_load_by_month', line, month);
				expect(load, `${line} ${month}`).toBeLessThanOrEqual(95.000_001);
			}
		}
	});

	it('adds the months up to the year', () => {
		const hours = MONTH_NAMES.map((month) =>
			read(model, 'line_hours_planned', 'L5', month, 'today')
		).reduce((sum, one) => sum + one, 0);
		expect(read(model, 'load', 'L5')).toBeCloseTo((100 * hours) / 5587, 6);
	});

	it('counts the cost of holding stock: 1.25 % of its material a month', () => {
		let holding = 0;
		for (const product of model.workbook.sets.find(({ name }) => name === 'product')!.members)
			for (const month of model.workbook.sets.find(({ name }) => name === 'month')!.members)
				holding +=
					read(model, 'stock', product.id, month.id, 'today') *
					read(model, 'material_cost', product.id) *
					0.0125;
		expect(holding).toBeGreaterThan(0);
		expect(read(model, 'holding_cost', 'today')).toBeCloseTo(holding, 6);
		// and EBIT bears it, as every case does
		const before = read(model, 'ebit');
		enter(model, ['holding_rate', [], 2.5]);
		expect(before - read(model, 'ebit')).toBeCloseTo(holding, 6);
		expect(read(model, 'result_closes')).toBeCloseTo(0, 6);
	});
});

describe('a plan overridden by hand', () => {
	it('is told where it takes more hours than may be planned', () => {
		const model = openShipped('marram');
		expect(read(model, 'line_hours_over', 'L7')).toBeLessThan(0.001);
		enter(model, ['made', ['RT15B', 'L7', 'Oct', 'today'], 1_000_000]);
		// 1,000 km in October, less 95 % of the net hours of its 20 working days of 242
		const over = read(model, 'hours_per_metre', 'RT15B', 'L7') * 1000 - (0.95 * 5587 * 20) / 242;
		expect(read(model, 'line_hours_over', 'L7')).toBeCloseTo(over, 6);
		const failing = model.checks('base').fail.map(({ place }) => place.quantity);
		expect(failing).toContain('line_hours_over');
	});

	it('is told where stock does not balance, and where more is sold than customers take', () => {
		const model = openShipped('marram');
		enter(model, ...makeInYear('RT15B', 'L7', 0));
		expect(read(model, 'stock_lost', 'RT15B')).toBeGreaterThan(100_000);
		enter(model, ...wanted(model, 'PX10B', 1_000_000));
		expect(read(model, 'sold_beyond', 'PX10B')).toBeGreaterThan(100_000);
	});
});
