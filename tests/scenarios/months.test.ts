/** Patterns that hold for some months: hours, starts, premiums and energy of the shipped plant follow by date. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Model } from '$lib/engine/model';
import { apply, enter, openShipped, read } from '../reference/shipped';

const SUMMER = { scenario: 'weekend_crews_jul_nov' };

describe('weekend crews from July to November', () => {
	const model = openShipped('marram');

	it('run the weekends of these months and no other', () => {
		// Working weekdays × 24 h; in July five Saturdays and four Sundays more, in August less 2 to 13.
		expect(read(model, 'scheduled_hours_of_month', 'L2', 'Jun', SUMMER)).toBe(22 * 24);
		expect(read(model, 'scheduled_hours_of_month', 'L2', 'Jul', SUMMER)).toBe((22 + 9) * 24);
		expect(read(model, 'scheduled_hours_of_month', 'L2', 'Aug', SUMMER)).toBe((12 + 7) * 24);
		expect(read(model, 'scheduled_hours_of_month', 'L1', 'Jul', SUMMER)).toBe(22 * 24);
	});

	it('save the weekly starts of these months', () => {
		expect(read(model, 'starts_of_month', 'L5', 'Jul', SUMMER)).toBe(0);
		// 50 weeks × 22 of 242 working weekdays
		expect(read(model, 'starts_of_month', 'L5', 'Jun', SUMMER)).toBeCloseTo((50 * 22) / 242, 9);
		// 97 of the 242 lie in the five months
		expect(read(model, 'starts_of_line', 'L5', SUMMER)).toBeCloseTo((50 * 145) / 242, 9);
	});

	it('buy power at the tariff of each month, weighed by its hours', () => {
		const five = 3.752 / 24; // EUR/kWh, five days round the clock
		const seven = (5 * 3.752 + 48 * 0.112) / 168;
		const summer = (97 + 42) * 24; // working weekdays and weekend days from July to November
		const rest = 145 * 24;
		const tariff = (five * rest + seven * summer) / (rest + summer);
		expect(read(model, 'tariff_of_line', 'L6', SUMMER)).toBeCloseTo(tariff, 9);
	});

	it('pay weekend premiums in these months only', () => {
		// July: 5 Saturdays at 25 % and 4 Sundays at 50 %, 24 h each
		expect(read(model, 'crew_premium_of_month', 'weekend', 'Jul', SUMMER)).toBeCloseTo(
			24 * (5 * 0.25 + 4 * 0.5),
			9
		);
		expect(read(model, 'crew_premium_of_month', 'weekend', 'Jun', SUMMER)).toBe(0);
		const month = (name: string) => read(model, 'premium_pay_of_month', name, SUMMER);
		expect(month('Jul')).toBeGreaterThan(month('Jun') * 1.5);
		// 22 working days in both: the same pay in the base
		expect(read(model, 'premium_pay_of_month', 'Jul')).toBeCloseTo(month('Jun'), 6);
	});

	it('pay back on a smaller outlay than weekends all year', () => {
		expect(read(model, 'outlay', SUMMER)).toBe(60_000);
		const summer = read(model, 'npv', SUMMER);
		expect(summer).toBeGreaterThan(read(model, 'npv', { scenario: 'weekend_crews' }));
	});
});

describe('the usual pattern', () => {
	it('holds in every month for which no other is entered', () => {
		const model = openShipped('marram');
		enter(
			model,
			['pattern_of_line', ['L1'], '2x8x5'],
			['changed_pattern_of_line', ['L1', 'Mar'], '7x24']
		);
		// 20 working weekdays in February and 21 in March; 8 weekend days in March
		expect(read(model, 'scheduled_hours_of_month', 'L1', 'Feb')).toBe(20 * 16);
		expect(read(model, 'scheduled_hours_of_month', 'L1', 'Mar')).toBe((21 + 8) * 24);
		const other = openShipped('marram');
		enter(other, ['pattern_of_line', ['L1'], '2x8x5']);
		expect(read(other, 'scheduled_hours', 'L1')).toBe(242 * 16);
	});
});

describe('public holidays', () => {
	let model: Model;
	beforeAll(() => {
		model = openShipped('marram');
		enter(model, ['works_on_holidays', ['5x24'], true]);
	});

	it('that are worked add their hours by date', () => {
		// nine on weekdays, 24 h each; two of them in May, on a Thursday and a Monday
		expect(read(model, 'pattern_hours', '5x24')).toBe(5808 + 9 * 24);
		expect(read(model, 'holiday_hours_of_month', 'May')).toBe(48);
		expect(read(model, 'holiday_hours_of_month', 'Jul')).toBe(0);
	});

	it('earn their own premium where it is the highest', () => {
		expect(read(model, 'holiday_premium_of_month', 'May')).toBe(48); // 48 h at 100 %
	});

	it('add it to the others where premiums stack', () => {
		enter(model, ['premiums_stack', [], true]);
		// each day 24 h at 100 % and 8 night hours at 25 %
		expect(read(model, 'holiday_premium_of_month', 'May')).toBeCloseTo(2 * (24 + 8 * 0.25), 9);
	});

	it('are bought at their own band', () => {
		// May has 19 working days and two holidays: 24 h each at 0.112 EUR/kWh
		const tariff = (19 * 3.752 + 2 * 24 * 0.112) / (21 * 24);
		expect(read(model, 'tariff_of_month', '5x24', 'May')).toBeCloseTo(tariff, 9);
	});
});

describe('chambers', () => {
	const batches = ['PX10B', 'PX15P', 'PX15B', 'PX22B', 'PX28B'];
	/** h: the batch that runs on alone when the week is over. */
	const last = (model: Model) =>
		batches.reduce((sum, one) => sum + read(model, 'batch_time', one), 0) / batches.length;

	it('work while somebody is there, and a batch runs on alone at each stop', () => {
		const model = openShipped('marram');
		// July: 22 working weekdays of 242, so many of the fifty weeks; 97 % of the time
		expect(read(model, 'chamber_hours_of_month', 'Jul')).toBeCloseTo(
			3 * 0.97 * (22 * 24 + ((50 * 22) / 242) * last(model)),
			9
		);
		expect(read(model, 'chamber_hours_on_offer')).toBeCloseTo(
			3 * 0.97 * (5808 + 50 * last(model)),
			6
		);
		enter(model, ['pattern_of_chambers', [], '7x24']);
		expect(read(model, 'chamber_hours_on_offer')).toBeCloseTo(3 * 0.97 * 8256, 6);
		// two shifts stop every evening
		enter(model, ['changed_pattern_of_chambers', ['Jul'], '2x8x5']);
		expect(read(model, 'chamber_hours_of_month', 'Jul')).toBeCloseTo(
			3 * 0.97 * (22 * 16 + ((5 * 50 * 22) / 242) * last(model)),
			9
		);
	});

	it('never work more than the hours of the month', () => {
		const model = openShipped('marram');
		enter(model, ['pattern_of_chambers', [], '2x8x5'], ['chamber_handling', [], 30]);
		expect(read(model, 'chamber_hours_of_month', 'Jul')).toBeCloseTo(3 * 0.97 * 31 * 24, 9);
	});

	it('may be fewer in a month', () => {
		const model = openShipped('marram');
		const all = read(model, 'chamber_hours_of_month', 'Aug');
		enter(model, ['changed_chambers', ['Aug'], 1]);
		expect(read(model, 'chamber_hours_of_month', 'Aug')).toBeCloseTo(all / 3, 9);
	});
});

describe('a rewinder on another pattern in autumn', () => {
	it('relieves those months alone', () => {
		const model = openShipped('marram');
		apply(model, {
			kind: 'add_scenario',
			index: 1,
			scenario: {
				id: 'autumn',
				title: 'Autumn',
				parent: 'base',
				changes: [{ quantity: 'changed_pattern_of_rewinder', value: { R1: { Oct: '7x24' } } }]
			}
		});
		const load = (month: string, scenario: string) =>
			read(model, 'load_by_month', 'rewind', month, { scenario });
		expect(load('Oct', 'autumn')).toBeLessThan(load('Oct', 'base'));
		expect(load('Sep', 'autumn')).toBe(load('Sep', 'base'));
	});
});
