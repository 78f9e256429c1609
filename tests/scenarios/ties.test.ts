/**
 * Checks of prices, quotes and cases that hold two ways to one number against each other, and cautions that hold the base
 * against what was booked in the month: each is quiet as shipped, and speaks when one of its sides is spoiled.
 */
import { describe, expect, it } from 'vitest';
import type { Model } from '$lib/engine/model';
import { enter, openShipped, read } from '../reference/shipped';
import { spoil, Spoilable } from '../reference/spoiled';

const CASE = { scenario: 'new_line' };

const WAYS = [
	['ladder_meets_quote', 'ladder_floor', 'base'],
	['ladder_meets_quote', 'ladder_freight', 'base'],
	['invoice_comes_back', 'target_on_invoice', 'base'],
	['order_hours_close', 'quote_running_hours', 'base'],
	['order_value_closes', 'mark_per_coil', 'base'],
	['revenue_closes', 'good_metres', 'base'],
	['npv_by_year_closes', 'discount_factor', CASE.scenario],
	['outlay_closes', 'outlay_of_year', CASE.scenario]
] as const;

const spoilable = new Spoilable(
	WAYS.map(([, spoiled]) => [spoiled, (formula) => `(${formula}) * 1.01`])
);

describe('a way to a number that is spoiled', () => {
	it.each(WAYS)('is found by %s: %s times 1.01', (check, spoiled, scenario) => {
		const failing = (model: Model) =>
			model.checks(scenario).fail.map(({ place }) => place.quantity);
		expect(failing(openShipped('marram'))).not.toContain(check);
		const model = spoilable.open();
		expect(failing(model)).not.toContain(check);
		spoil(model, spoiled);
		expect(failing(model)).toContain(check);
	});

	it('is found where scrap is worth as much as resin', () => {
		const model = openShipped('marram');
		enter(model, ['scrap_value', ['PERT'], 1.92]);
		expect(model.checks('base').fail.map(({ place }) => place.quantity)).toContain(
			'scrap_below_resin'
		);
	});
});

/** One of the closed months. */
const MONTH = '2027-03';

describe('a base that lies away from what was booked', () => {
	it.each([
		['price_off', 'PX15B', ['price', ['PX15B'], 0.364 * 1.3]],
		['material_price_off', 'PB1', ['actual_material_price', ['PB1', MONTH], 3.28 * 1.22]],
		['mass_off', 'PB28B', ['actual_mass_per_metre', ['PB28B', MONTH], 0.20565 * 0.76]],
		['wage_off', 'shift leader', ['actual_hour_cost', ['shift leader', MONTH], 40.48 * 1.22]],
		['overhead_off', 'hall', ['actual_overhead', ['hall', MONTH], 42_590 * 1.3]]
	] as const)('is cautioned by %s of %s', (caution, member, entry) => {
		const model = openShipped('marram');
		const members = () => {
			const { base, count } = model.layout.byName.get(caution)!;
			return [...model.results('base').values.subarray(base, base + count)];
		};
		expect(members().filter((value) => value === 1)).toEqual([]);
		enter(model, entry);
		expect(read(model, caution, member, MONTH)).toBe(1);
		// A price of the base lies away from what each closed month brought, an entry from its own alone.
		const months = entry[0] === 'price' ? 4 : 1;
		expect(members().filter((value) => value === 1)).toHaveLength(months);
		// The base's, in whatever scenario one looks: a case need not weigh what the plant weighs today.
		expect(read(model, caution, member, MONTH, { scenario: 'better_gauging' })).toBe(1);
		enter(model, ['booked_tolerance', [], 27], ['overhead_tolerance', [], 35]);
		expect(read(model, caution, member, MONTH)).toBe(0);
	});
});
