/** Where the plant's hours and kilograms go in money, worked out again beside the workbook's own formulas. */
import { describe, expect, it } from 'vitest';
import { findQuantity } from '$lib/workbook/lookup';
import { enter, openShipped, read } from '../reference/shipped';

const LINES = ['L1', 'L2', 'L3', 'L4', 'L5', 'L6', 'L7'];
const LOGGED = ['2027-01', '2027-02', '2027-03', '2027-04'];
const MONTHS: Readonly<Record<string, string>> = {
	'2027-01': 'Jan',
	'2027-02': 'Feb',
	'2027-03': 'Mar',
	'2027-04': 'Apr'
};

const model = openShipped('marram');
const losses = model.workbook.sets.find(({ name }) => name === 'loss')!.members.map(({ id }) => id);
const entered = (name: string) =>
	findQuantity(model.workbook, name)?.value as Record<
		string,
		Record<string, Record<string, number>>
	>;

describe('stops from the log', () => {
	it('cost their hours at what one more is worth in the month, and the scrap of each restart', () => {
		const hours = entered('stop_hours');
		const stops = entered('stop_count');
		let sum = 0;
		for (const line of LINES)
			for (const period of LOGGED) {
				const lost =
					read(model, 'hour_value', MONTHS[period]!, line) +
					read(model, 'standby_power_of_line', line) * read(model, 'tariff_of_line', line);
				const scrap = read(model, 'restart_scrap', line) * read(model, 'scrap_cost_of_line', line);
				const cost =
					hours[line]!.haul_off![period]! * lost + stops[line]!.haul_off![period]! * scrap;
				expect(read(model, 'stop_cost', line, 'haul_off', period)).toBeCloseTo(cost, 6);
				sum += cost;
			}
		// Four months, brought to twelve.
		expect(read(model, 'cost_of_loss', 'haul_off')).toBeCloseTo((sum * 12) / 4, 4);
	});

	it('cost scrap and the heat of the line alone where hours are to spare', () => {
		const free = LINES.find((line) => read(model, 'hour_value', 'Jan', line) === 0)!;
		const hot = read(model, 'standby_power_of_line', free) * read(model, 'tariff_of_line', free);
		expect(read(model, 'lost_hour_cost', free, 'Jan')).toBeCloseTo(hot, 9);
	});

	it('are left out of months that nobody logged, and a month more is brought to a year as one of five', () => {
		const other = openShipped('marram');
		expect(() => read(other, 'loss_in_month', 'haul_off', '2027-05')).toThrow('state 1');
		const before = read(other, 'hours_of_loss', 'haul_off', 'L5') / 3;
		enter(other, ['stop_hours', ['L5', 'haul_off', '2027-05'], 7]);
		expect(read(other, 'months_logged')).toBe(5);
		expect(read(other, 'hours_of_loss', 'haul_off', 'L5')).toBeCloseTo(((before + 7) * 12) / 5, 6);
		// Nobody counted how often it stood: its hours alone.
		const hour = read(other, 'lost_hour_cost', 'L5', 'May');
		expect(read(other, 'loss_in_month', 'haul_off', '2027-05')).toBeCloseTo(7 * hour, 6);
	});

	it('are cautioned where a line stands longer than it is scheduled, and where the plan has others', () => {
		const other = openShipped('marram');
		const cautions = () => other.checks('base').cautions.map(({ place }) => place.quantity);
		expect(cautions()).not.toContain('stops_exceed_hours');
		expect(cautions()).not.toContain('stops_far_off');
		enter(other, ['stop_hours', ['L5', 'haul_off', '2027-04'], 9000]);
		expect(cautions()).toContain('stops_exceed_hours');
		expect(cautions()).toContain('stops_far_off');
	});
});

describe('all losses', () => {
	it('rank by their cost, with shares that run up to all', () => {
		const costs = losses.map((id) => read(model, 'cost_of_loss', id));
		const order = losses.toSorted(
			(a, b) => read(model, 'rank_of_loss', a) - read(model, 'rank_of_loss', b)
		);
		const sum = costs.reduce((all, one) => all + one, 0);
		expect(read(model, 'cost_of_losses')).toBeCloseTo(sum, 4);
		let run = 0;
		let last = Infinity;
		for (const id of order) {
			const cost = read(model, 'cost_of_loss', id);
			expect(cost).toBeLessThanOrEqual(last);
			last = cost;
			run += cost;
			expect(read(model, 'cumulative_share_of_loss', id)).toBeCloseTo((100 * run) / sum, 8);
		}
	});

	it('hold the set-ups of the plan: hours of each month at their worth there, with the heat of the line', () => {
		let cost = read(model, 'loss_of_kind', 'set_up');
		for (const line of LINES) {
			const hours = read(model, 'setup_hours', line);
			const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep'];
			months.push('Oct', 'Nov', 'Dec');
			const run = months.map((month) => read(model, 'line_hours_planned', line, month, 'today'));
			const all = run.reduce((sum, one) => sum + one, 0);
			months.forEach((month, i) => {
				cost += (hours * run[i]! * read(model, 'lost_hour_cost', line, month)) / all;
			});
		}
		expect(read(model, 'cost_of_loss', 'set_ups')).toBeCloseTo(cost, 4);
	});

	it('weigh the diameter above its least by its ring, as its cost does', () => {
		let cost = 0;
		const products = model.workbook.sets.find(({ name }) => name === 'product')!.members;
		for (const { id } of products)
			cost += read(model, 'diameter_cost_per_metre', id) * read(model, 'good_metres', id);
		expect(read(model, 'material_cost_of_loss', 'diameter_giveaway')).toBeCloseTo(cost, 4);
	});
});
