/** A rota of full crews in place of week and weekend crews, in the shipped plant, worked by hand. */
import { describe, expect, it } from 'vitest';
import type { Model } from '$lib/engine/model';
import { enter, openAgainstBase, openShipped, read } from '../reference/shipped';
import { MONTH_NAMES } from './workbook-plan';

const LINES = ['L1', 'L2', 'L3', 'L4', 'L5', 'L6', 'L7'];
const REWINDERS = ['R1', 'R2', 'R3'];
/** A leader, three operators, four packers, one at the chambers, one for quality, one fitter. */
const WAGES = 24.8 + 3 * 20.6 + 4 * 17.9 + 18.6 + 22.4 + 25.2;
/** 8,256 h round the clock: eight night hours of 242 weekdays at 25 %, 51 Saturdays and Sundays at 37.5 % on average. */
const PREMIUM = 242 * 8 * 0.25 + 2448 * 0.375;
/** Of 2,080 h of a contract, 1,687 are attended: leave, nine holidays, sickness, training. */
const ATTENDED = 1687 / 2080;

function onRota({ crews, paid, allowance = 0, shift = 8 }: Record<string, number>): Model {
	const model = openAgainstBase();
	enter(
		model,
		['manned_by', ['7x24'], 'full_rota'],
		['crews_manned', ['7x24', 'rota'], crews!],
		['paid_week', ['7x24'], paid!],
		['shift_allowance', ['7x24'], allowance],
		['rota_shift_length', ['7x24'], shift],
		...LINES.map((line) => ['pattern_of_line', [line], '7x24'] as const),
		...REWINDERS.map((rewinder) => ['pattern_of_rewinder', [rewinder], '7x24'] as const)
	);
	return model;
}

describe('seven days round the clock on a rota', () => {
	it.each([
		['four crews of 42 hours', 4, 42],
		['five crews of 33.6 hours', 5, 33.6]
	])('of %s need so many heads for eleven positions, and cost the same', (_, crews, week) => {
		const model = onRota({ crews, paid: week });
		const staffed = 8256 * (1 + 0.25 / 8);
		expect(read(model, 'rota_hours')).toBe(8256);
		expect(read(model, 'crew_hours')).toBe(0);
		expect(read(model, 'weekend_crew_hours')).toBe(0);
		expect(read(model, 'roster_hours', '7x24')).toBeCloseTo(week * 52, 9);
		expect(read(model, 'all_heads')).toBeCloseTo((11 * staffed) / (week * 52 * ATTENDED), 9);
		const labour = WAGES * (1 + 0.25 / 8) * (8256 / ATTENDED + PREMIUM) * 1.24;
		expect(read(model, 'shift_labour')).toBeCloseTo(labour, 3);
	});

	it('cost more where more hours are paid than worked, and by the allowance', () => {
		const cost = (paid: number, allowance: number) =>
			read(onRota({ crews: 5, paid, allowance }), 'shift_labour');
		const staffed = WAGES * (1 + 0.25 / 8) * 1.24;
		expect(cost(36, 0) - cost(33.6, 0)).toBeCloseTo(
			(staffed * (8256 / ATTENDED) * (36 - 33.6)) / 33.6,
			3
		);
		expect(cost(33.6, 5) - cost(33.6, 0)).toBeCloseTo(staffed * (8256 / ATTENDED) * 0.05, 3);
	});

	it('hand over half as often in shifts of twelve hours', () => {
		const model = onRota({ crews: 4, paid: 42, shift: 12 });
		expect(read(model, 'all_heads')).toBeCloseTo(
			(11 * 8256 * (1 + 0.25 / 12)) / (42 * 52 * ATTENDED),
			9
		);
	});

	it('cost so much more than week crews with a thin weekend crew for the same hours', () => {
		const rota = onRota({ crews: 4, paid: 42 });
		const thin = openShipped('marram');
		const staffed = WAGES * (1 + 0.25 / 8) * 1.24;
		const week = staffed * (5808 / ATTENDED + 242 * 8 * 0.25);
		// at the weekend a leader, 7/3 operators, three packers, half a position at the chambers and half a fitter
		const few = 24.8 + (7 / 3) * 20.6 + 3 * 17.9 + 0.5 * 18.6 + 0.5 * 25.2;
		const absent = (25 * 8 * 0.95 + 2080 * 0.05 + 30.6) / 2080;
		const weekend = (few * (1 + 0.25 / 12) * 1.24 * 1.15 * 2448 * 1.375) / (1 - absent);
		expect(
			read(rota, 'people_cost_of_pattern', '7x24') - read(thin, 'people_cost_of_pattern', '7x24')
		).toBeCloseTo(staffed * (8256 / ATTENDED + PREMIUM) - week - weekend, 3);
		expect(staffed * (8256 / ATTENDED + PREMIUM)).toBeGreaterThan(1.08 * (week + weekend));
	});

	it('come to the same people in the comparison of patterns and in the year', () => {
		const model = onRota({ crews: 5, paid: 35, allowance: 4 });
		expect(read(model, 'heads_of_pattern', '7x24')).toBeCloseTo(read(model, 'all_heads'), 9);
		expect(read(model, 'people_cost_of_pattern', '7x24')).toBeCloseTo(
			read(model, 'shift_labour'),
			4
		);
		// a position for a year, eleven times by wage
		const leader = read(model, 'cost_of_post', 'shift leader');
		expect((leader / 24.8) * WAGES).toBeCloseTo(read(model, 'shift_labour'), 4);
		const budgeted = MONTH_NAMES.map((_, i) => `2027-${String(i + 1).padStart(2, '0')}`).reduce(
			(sum, dated) => sum + read(model, 'standard_paid_hours', 'shift leader', dated),
			0
		);
		expect(budgeted).toBeCloseTo(8256 * (1 + 0.25 / 8), 6);
		const pay = MONTH_NAMES.map((month) => read(model, 'premium_pay_of_month', month)).reduce(
			(sum, month) => sum + month,
			0
		);
		expect(pay).toBeCloseTo(WAGES * (1 + 0.25 / 8) * PREMIUM * 1.24, 3);
	});

	it('give the cautions on working time their own crews', () => {
		const model = onRota({ crews: 4, paid: 42 });
		// 168 h ÷ 4 with a quarter of an hour for eight
		expect(read(model, 'average_week', '7x24', 'rota')).toBeCloseTo(42 * (1 + 0.25 / 8), 9);
		expect(read(model, 'hours_per_head', '7x24')).toBeCloseTo(42, 9);
		expect(read(model, 'long_week', '7x24')).toBe(0);
		enter(model, ['crews_manned', ['7x24', 'rota'], 3.5]);
		expect(read(model, 'long_week', '7x24')).toBe(1); // 49.5 h
		enter(model, ['crews_manned', ['7x24', 'rota'], 4], ['rest_in_week', ['7x24', 'rota'], 30]);
		expect(read(model, 'short_weekly_rest', '7x24')).toBe(1);
	});
});

describe('a rota of some months', () => {
	it('counts its people for so long, and leaves the week crews the rest', () => {
		const model = openShipped('marram');
		const months = ['Sep', 'Oct', 'Nov'];
		enter(
			model,
			['manned_by', ['7x24'], 'full_rota'],
			['paid_week', ['7x24'], 33.6],
			['shift_allowance', ['7x24'], 0],
			...months.map((month) => ['changed_pattern_of_line', ['L2', month], '7x24'] as const)
		);
		// September has 22 working weekdays and 8 weekend days, October 20 and 10, November 21 and 8
		const hours = (22 + 8 + 20 + 10 + 21 + 8) * 24;
		expect(read(model, 'rota_hours')).toBe(hours);
		expect(read(model, 'crew_hours')).toBe(5808 - (22 + 20 + 21) * 24);
		expect(read(model, 'rota_heads_of_position')).toBeCloseTo(
			(hours * (1 + 0.25 / 8)) / (33.6 * 52 * ATTENDED),
			9
		);
		expect(read(model, 'two_rotas', 'Oct')).toBe(0);
		enter(model, ['manned_by', ['5x24'], 'full_rota']);
		expect(read(model, 'two_rotas', 'Oct')).toBe(1);
		expect(read(model, 'two_rotas', 'Jan')).toBe(0);
	});

	it('mans what runs, where manning follows it', () => {
		const model = openShipped('marram');
		enter(
			model,
			['manned_by', ['7x24'], 'full_rota'],
			['manning_rule_in_use', [], 'what_runs'],
			['lines_per_operator', [], 2],
			['pattern_of_line', ['L2'], '7x24'],
			['pattern_of_line', ['L5'], '7x24']
		);
		// two lines of 8,256 h, one operator for both, on the rota; five of 5,808 h on week crews
		expect(read(model, 'rota_post_hours', 'extrusion operator')).toBeCloseTo(
			8256 * (1 + 0.25 / 8),
			6
		);
		expect(read(model, 'post_hours', 'extrusion operator')).toBeCloseTo(
			2.5 * 5808 * (1 + 0.25 / 8),
			6
		);
	});
});
