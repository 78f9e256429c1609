/** Hours, plan and fill: what longer hours make of the shipped plant's volumes. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Model } from '$lib/engine/model';
import { apply, openShipped, read } from '../reference/shipped';

const SATURDAY = { scenario: 'saturday' };

describe('a shift more on lines L5 and L6', () => {
	let model: Model;
	beforeAll(() => {
		model = openShipped('marram');
		apply(model, {
			kind: 'add_scenario',
			index: 1,
			scenario: {
				id: 'saturday',
				title: 'Saturday shift',
				parent: 'base',
				changes: [{ quantity: 'pattern_of_line', value: { L5: '6x24', L6: '6x24' } }]
			}
		});
	});

	it('gives each of them a Saturday more a week', () => {
		// 5,808 h + 51 Saturdays x 24 h
		expect(read(model, 'scheduled_hours', 'L5', SATURDAY)).toBe(7032);
	});

	it('is cautioned while the planned metres are still those of the base', () => {
		expect(read(model, 'plan_not_revised', SATURDAY)).toBe(1);
		expect(read(model, 'plan_not_revised')).toBe(0);
		expect(read(model, 'total_good_metres', SATURDAY)).toBe(read(model, 'total_good_metres'));
	});

	it('needs heads for the weekend', () => {
		expect(read(model, 'weekend_heads')).toBe(0);
		expect(read(model, 'weekend_heads', SATURDAY)).toBeGreaterThan(1);
	});

	describe('with the plan, then a fill', () => {
		beforeAll(() =>
			apply(model, {
				kind: 'set_inputs',
				scenario: 'saturday',
				entries: [{ quantity: 'volume_rule_in_use', at: [], value: 'plan_and_fill' }]
			})
		);

		it('makes more, and no more than the demand', () => {
			expect(read(model, 'plan_not_revised', SATURDAY)).toBe(0);
			const made = read(model, 'total_good_metres', SATURDAY);
			expect(made).toBeGreaterThan(read(model, 'total_good_metres'));
			// what is made and what is lost are the demand: 52.6 Mm
			expect(made + read(model, 'unmet_metres', SATURDAY)).toBeCloseTo(52.6, 9);
		});

		it('fills within the hours of lines, chambers and rewinders', () => {
			for (const line of ['L1', 'L2', 'L3', 'L4', 'L5', 'L6', 'L7'])
				expect(read(model, 'load', line, SATURDAY), line).toBeLessThanOrEqual(100.0001);
			for (const stage of ['extrude', 'rewind', 'crosslink'])
				expect(read(model, 'stage_load', stage, SATURDAY), stage).toBeLessThanOrEqual(100.0001);
		});
	});

	it('cuts the plan in proportion where hours are taken away', () => {
		const short = openShipped('marram');
		apply(short, {
			kind: 'set_inputs',
			scenario: 'base',
			entries: [{ quantity: 'pattern_of_line', at: ['L7'], value: '2x8x5' }]
		});
		// L7 makes one product: its metres are the hours it has, over the hours a metre takes.
		const hours = read(short, 'net_hours', 'L7');
		const metres = (hours / read(short, 'hours_per_metre', 'RT15B', 'L7')) * 1000; // unit h/km
		expect(read(short, 'good_metres', 'RT15B')).toBeCloseTo(metres, 3);
		expect(metres).toBeLessThan(7_400_000);
	});
});
