/** Checks that compare two ways to one number: each is quiet as shipped, and speaks when one of its ways is spoiled. */
import { describe, expect, it } from 'vitest';
import type { Model } from '$lib/engine/model';
import { OK } from '$lib/engine/state';
import { enter, openShipped, read } from '../reference/shipped';
import { spoil, Spoilable } from '../reference/spoiled';

/** The check, and a quantity that stands in one of its ways alone, with what is done to its formula. */
const WAYS: readonly (readonly [
	check: string,
	spoiled: string,
	how: (formula: string) => string,
	scenario?: string
])[] = [
	['position_costs_close', 'weekday_labour', (formula) => `(${formula}) * 1.01`],
	['premium_share_closes', 'post_premium_hours', (formula) => `(${formula}) * 1.01`],
	['crews_cover_lines', 'crew_hours', (formula) => `(${formula}) * 0.99`],
	['premium_pay_closes', 'premium_pay_of_month', (formula) => `(${formula}) * 1.01`],
	['people_ways_close', 'people_cost_of_pattern', (formula) => `(${formula}) * 1.01`],
	['heads_ways_close', 'heads_of_pattern', (formula) => `(${formula}) * 1.01`],
	['starts_close', 'starts_of_line', (formula) => `(${formula}) * 1.01`],
	['year_sells_what_it_makes', 'made_in_all', (formula) => `(${formula}) * 1.01`],
	['idle_hours_close', 'labour_rate', (formula) => `(${formula}) * 1.01`],
	['material_spend_closes', 'material_dosed', (formula) => `(${formula}) * 1.01`],
	['gain_ramped_closes', 'nominal_gain', (formula) => `(${formula}) * 1.01`, 'new_line'],
	['adjusted_by_clause', 'contract_adjustment', (formula) => `(${formula}) + 90 %`],
	['clause_moves_close', 'clause_factor', (formula) => `(${formula}) * 1.01`],
	['setup_hours_close', 'setup_hours_saved', (formula) => `(${formula}) + 1[h/year]`]
];

/** Whether the check holds in each of its cells. */
function holds(model: Model, check: string, scenario = 'base'): boolean {
	const place = model.layout.byName.get(check)!;
	const { values, states } = model.results(scenario);
	const { tolerance = 0 } = place.quantity.check!;
	const cells = Array.from({ length: place.count }, (_, at) => place.base + at);
	const computed = cells.filter((cell) => states[cell] === OK);
	expect(computed.length, check).toBeGreaterThan(0);
	return computed.every((cell) =>
		place.quantity.type === 'yes_no'
			? values[cell] === 1
			: Math.abs(values[cell] ?? NaN) <= tolerance
	);
}

const shipped = openShipped('marram');
const spoilable = new Spoilable(WAYS.map(([, spoiled, how]) => [spoiled, how]));
const ways = WAYS.map(([check, spoiled, , scenario]) => ({ check, spoiled, scenario }));
describe.each(ways)('$check', ({ check, spoiled, scenario }) => {
	it('holds as shipped, and not when one way alone is off', () => {
		expect(holds(shipped, check, scenario)).toBe(true);
		const model = spoilable.open();
		expect(holds(model, check, scenario)).toBe(true);
		spoil(model, spoiled);
		expect(holds(model, check, scenario)).toBe(false);
	});
});

describe('where a rota mans the plant', () => {
	it('all of them hold as well', () => {
		const model = openShipped('marram');
		enter(
			model,
			['manned_by', ['5x24'], 'full_rota'],
			['crews_manned', ['5x24', 'rota'], 3.2],
			['shift_allowance', ['5x24'], 3]
		);
		expect(read(model, 'crew_hours')).toBe(0);
		for (const [check] of WAYS)
			if (check !== 'premium_share_closes') expect(holds(model, check), check).toBe(true);
	});
});
