/**
 * Full cost, how costs behave, and contract prices of the shipped workbook: what stands beside the year's result
 * and must lead to it.
 */
import { describe, expect, it } from 'vitest';
import { apply, enter, makeInYear, openShipped, read } from '../reference/shipped';
import { WorkbookFigures } from './workbook-figures';

const figures = new WorkbookFigures('scenarios/marram-coil-works.json');
const products = [
	'PX10B',
	'PX15P',
	'PX15B',
	'PX22B',
	'PX28B',
	'PB10B',
	'PB15B',
	'PB22B',
	'PB28B',
	'RT15B'
];
const SCENARIOS = ['base', 'weekend_crews', 'new_line', 'better_gauging'];

describe.each(SCENARIOS)('in %s, full cost', (id) => {
	const of = (name: string, ...at: string[]) => figures.number(id, name, ...at);

	it('leads to EBIT after the depreciation of what is chosen: margins over it less idle capacity', () => {
		const margins = products.reduce(
			(sum, product) =>
				sum +
				(of('net_net_price', product) - of('full_cost', product)) * of('good_metres', product),
			0
		);
		const below = of('idle_capacity_cost') + of('stock_cost_today');
		expect(margins - below).toBeCloseTo(of('ebit'), 3);
	});

	it('lies above the factory cost, by the coil and by the pallet', () => {
		expect(of('full_cost', 'PX15B')).toBeGreaterThan(of('cost_per_metre', 'PX15B'));
		expect(of('full_cost_per_coil', 'PX15B')).toBeCloseTo(50 * of('full_cost', 'PX15B'), 12);
		expect(of('full_cost_per_pallet', 'PX15B')).toBeCloseTo(36 * 50 * of('full_cost', 'PX15B'), 9);
	});
});

describe('the depreciation of an option', () => {
	it('is taken off before EBIT, wherever an EBIT is told, and not before the cash of the case', () => {
		const of = (name: string, ...at: string[]) => figures.number('new_line', name, ...at);
		const depreciation = 1_618_000 / 12;
		const before = of('earned_before_depreciation', 'today') - depreciation;
		expect(of('ebit')).toBeCloseTo(before, 4);
		expect(of('ebit_of_plan_year', 'today')).toBeCloseTo(before, 4);
		expect(of('ebit_share')).toBeCloseTo((100 * before) / of('revenue_today'), 9);
		const months = Array.from({ length: 12 }, (_, i) => `2027-${String(i + 1).padStart(2, '0')}`);
		const byMonth = months.reduce((sum, month) => sum + of('month_ebit', month), 0);
		expect(byMonth).toBeCloseTo(before, 2);
		expect(of('ebit_gained')).toBeCloseTo(before - figures.number('base', 'ebit'), 3);
		const gain = figures.number('base', 'earned_before_depreciation', 'y1');
		expect(of('gain', 'y1')).toBeCloseTo(of('earned_before_depreciation', 'y1') - gain, 3);
	});

	it('makes a metre dearer by what its hours take up of it', () => {
		const of = (name: string, ...at: string[]) => figures.number('new_line', name, ...at);
		// 1,618,000 EUR over twelve years.
		expect(of('option_depreciation')).toBeCloseTo(1_618_000 / 12, 6);
		// Lines bear the overheads of their stage by their own rates: in the proportion of the pool.
		const part =
			(of('line_overhead_cost', 'PX15B') * of('option_depreciation')) /
			of('overhead_pool', 'extrude');
		const model = openShipped('marram');
		enter(model, ['outlay_amount', ['line_machine'], 0]);
		const without = read(model, 'cost_per_metre', 'PX15B', { scenario: 'new_line' });
		const machine = 1_085_000 / 1_618_000;
		expect(of('cost_per_metre', 'PX15B') - without).toBeCloseTo(machine * part, 9);
	});

	it('of a scenario made the base stays in the cost of a metre, and leaves its case alone', () => {
		const model = openShipped('marram');
		const before = read(model, 'cost_per_metre', 'RT15B', { scenario: 'new_line' });
		apply(model, { kind: 'promote_scenario', id: 'new_line' });
		expect(read(model, 'cost_per_metre', 'RT15B')).toBeCloseTo(before, 12);
		expect(read(model, 'profitability_index', { scenario: 'better_gauging' })).toBeGreaterThan(1);
	});
});

describe('a warranty provision', () => {
	it('is taken out of selling, so that it moves products against each other and not the year', () => {
		const model = openShipped('marram');
		const before = ['PX22B', 'RT15B'].map((one) => read(model, 'full_cost', one));
		const ebit = read(model, 'ebit');
		// Not of the product quoted, whose floor it would raise.
		enter(model, ['warranty_provision', ['PX22B'], 0.01]);
		expect(read(model, 'full_cost', 'PX22B')).toBeGreaterThan(before[0]!);
		expect(read(model, 'full_cost', 'RT15B')).toBeLessThan(before[1]!);
		expect(read(model, 'ebit')).toBe(ebit);
		expect(model.checks('base').fail).toEqual([]);
		enter(model, ['warranty_provision', ['PX22B'], 0.2]);
		const failing = model.checks('base').fail.map(({ place }) => place.quantity);
		expect(failing).toContain('warranty_within_selling');
	});
});

describe('the laboratory', () => {
	const of = (name: string, ...at: string[]) => figures.number('base', name, ...at);

	it('is testing, certification and audits, of which testing is the remainder', () => {
		expect(of('laboratory_amount', 'testing')).toBeCloseTo(215_000 - 46_000 - 31_000, 9);
	});

	it('stands in the factory cost for what the metres take up of it', () => {
		const inCards = products.reduce(
			(sum, product) =>
				sum + of('laboratory_cost', product, 'testing') * of('good_metres', product),
			0
		);
		expect(inCards).toBeLessThan(138_000);
		expect(inCards).toBeGreaterThan(0.9 * 138_000);
	});
});

describe('costs by behaviour', () => {
	it('leave a metre less what it saves: fewer metres lower the variable part alone', () => {
		const model = openShipped('marram');
		const parts = () =>
			['variable', 'stepped', 'fixed'].map((part) => read(model, 'cost_of_behaviour', part));
		const before = parts();
		enter(model, ...makeInYear('RT15B', 'L7', read(model, 'good_metres', 'RT15B') - 3_700_000));
		const after = parts();
		const metre = figures.number('base', 'variable_cost_per_metre', 'RT15B');
		expect(before[0]! - after[0]!).toBeCloseTo(3_700_000 * metre, 3);
		expect(after.slice(1)).toEqual(before.slice(1));
	});
});

describe('a contract price', () => {
	const of = (name: string, ...at: string[]) => figures.number('base', name, ...at);

	it('follows the indices of the month before by their shares', () => {
		// Skerrow in May: April's 104.8, 102.4 and 99.1 at 50, 15 and 8 %
		const moved = 0.5 * 4.8 + 0.15 * 2.4 + 0.08 * -0.9;
		expect(of('contract_movement', 'Skerrow', 'PEXB', 'May')).toBeCloseTo(moved, 10);
		expect(of('contract_adjustment', 'Skerrow', 'PEXB', 'May')).toBeCloseTo(moved, 10);
	});

	it('stays where it is below the trigger', () => {
		expect(of('contract_movement', 'Skerrow', 'PEXB', 'Apr')).toBeGreaterThan(1);
		expect(of('contract_adjustment', 'Skerrow', 'PEXB', 'Apr')).toBe(0);
	});

	it('moves by its cap and no more, up or down', () => {
		const model = openShipped('marram');
		enter(model, ['resin_index', ['PEXB', 'Nov'], 140]);
		expect(read(model, 'contract_move', 'Tidewell', 'PEXB')).toBeCloseTo(5, 12);
		expect(read(model, 'contract_price', 'PX15B', 'Tidewell')).toBeCloseTo(0.364 * 1.05, 12);
		enter(model, ['resin_index', ['PEXB', 'Nov'], 60]);
		expect(read(model, 'contract_move', 'Tidewell', 'PEXB')).toBeCloseTo(-5, 12);
	});

	it('closes to 100 % by its fixed part when a share changes', () => {
		const model = openShipped('marram');
		enter(model, ['contract_share', ['Skerrow', 'resin'], 60]);
		expect(read(model, 'contract_share', 'Skerrow', 'fixed')).toBeCloseTo(17, 12);
	});
});

describe('a resin price', () => {
	it('moves the contract prices of its own pipe, and no other', () => {
		const model = openShipped('marram');
		const before = ['PX15B', 'PB15B', 'RT15B'].map((one) =>
			read(model, 'contract_price', one, 'Ouseburn')
		);
		enter(model, ['resin_index', ['PB1', 'Nov'], 110]);
		const after = ['PX15B', 'PB15B', 'RT15B'].map((one) =>
			read(model, 'contract_price', one, 'Ouseburn')
		);
		expect([after[0], after[2]]).toEqual([before[0], before[2]]);
		// 58 % of the price follows the resin, 15 % wages at 102.4, 9 % energy at 106.9; a month later.
		const moved = 0.18 + 0.58 * 1.1 + 0.15 * 1.024 + 0.09 * 1.069;
		expect(after[1]).toBeCloseTo(0.48 * moved, 10);
	});

	it('that stays where the contracts were made passes nothing on', () => {
		for (const product of products)
			expect(figures.number('base', 'price_in_force', product)).toBe(
				figures.number('base', 'price', product)
			);
	});

	it('that rises reaches the result by what contracts pass on, later and under their caps', () => {
		const model = openShipped('marram');
		const before = read(model, 'net_net_price', 'PX15B');
		const revenue = read(model, 'revenue', 'today');
		enter(model, ['main_price', ['PEXB'], 2.02 * 1.1]);
		// 24 % of the metres pass on 50 % of 10 %, 18 % pass on 45 %, 10 % pass on 58 %; a month late.
		const passed = ((0.24 * 0.5 + 0.18 * 0.45 + 0.1 * 0.58) * 0.1 * 11) / 12;
		expect(read(model, 'price_in_force', 'PX15B')).toBeCloseTo(0.364 * (1 + passed), 12);
		expect(read(model, 'net_net_price', 'PX15B') - before).toBeCloseTo(
			0.364 * passed * (1 - 0.055),
			12
		);
		expect(read(model, 'price_in_force', 'PB15B')).toBe(0.48);
		expect(read(model, 'revenue', 'today')).toBeGreaterThan(revenue);
		// Doubled, it would pass on 50 % and more: the caps of 8, 5 and 10 % hold.
		enter(model, ['main_price', ['PEXB'], 2.02 * 2]);
		const capped = ((0.24 * 0.08 + 0.18 * 0.05 + 0.1 * 0.1) * 11) / 12;
		expect(read(model, 'price_in_force', 'PX15B')).toBeCloseTo(0.364 * (1 + capped), 12);
		// 2 % of the resin move the price by 1 %, 0.9 % and 1.16 %: under two of the triggers.
		enter(model, ['main_price', ['PEXB'], 2.02 * 1.02]);
		const little = (0.1 * 0.58 * 0.02 * 11) / 12;
		expect(read(model, 'price_in_force', 'PX15B')).toBeCloseTo(0.364 * (1 + little), 12);
	});
});

describe('prices of the result and of quotes', () => {
	it('are cautioned where list and discounts do not lead to the price, or terms are others', () => {
		const model = openShipped('marram');
		const off = () => [
			read(model, 'price_off_list', 'PB15B'),
			read(model, 'price_off_list', 'PX15B')
		];
		expect(off()).toEqual([0, 0]);
		expect(read(model, 'rebate_far')).toBe(0);
		// 15 % over the list, or under its largest discounts, is the room that two dates need.
		enter(model, ['list_price', ['PB15B'], 0.42]);
		expect(off()).toEqual([0, 0]);
		enter(model, ['list_price', ['PB15B'], 0.41]);
		expect(off()).toEqual([1, 0]);
		// 0.545 × 0.86 × 0.98 × 0.85 = 0.3904
		enter(model, ['list_price', ['PB15B'], 0.545], ['price', ['PB15B'], 0.391]);
		expect(off()).toEqual([0, 0]);
		enter(model, ['price', ['PB15B'], 0.39]);
		expect(off()).toEqual([1, 0]);
		// A new list before the new prices, or the other way about, is no fault.
		expect(model.checks('base').fail).toEqual([]);
		enter(model, ['customer_rebate', ['Tidewell'], 9]);
		// (24 × 5.5 + 18 × 9 + 10 × 6) / 52
		expect(read(model, 'rebate_of_customers')).toBeCloseTo(354 / 52, 10);
		expect(read(model, 'rebate_far')).toBe(1);
	});

	it('take a freight that the pallets, zones and loads of the customers come to', () => {
		const model = openShipped('marram');
		// Mean of the customers by their shares, of full loads near and in the country and half a load abroad.
		const pallet = (24 * 14 + 18 * 21 + 10 * 66) / 52;
		const products = model.workbook.sets.find(({ name }) => name === 'product')!.members;
		const sum = (of: (id: string) => number) =>
			products.reduce((total, { id }) => total + of(id), 0);
		const mass = sum((id) => read(model, 'good_metres', id) * read(model, 'mass_per_metre', id));
		const pallets = sum(
			(id) =>
				read(model, 'good_metres', id) /
				(read(model, 'coils_per_pallet', id) * read(model, 'coil_length', id))
		);
		expect(read(model, 'freight_by_pallet')).toBeCloseTo((pallet * 0.42 * pallets) / mass, 12);
		expect(read(model, 'freight_far')).toBe(0);
		// A slip in either is met: the freight of a kilogram for that of a pallet, a zone abroad for one near.
		enter(model, ['freight', [], 0.15]);
		expect(read(model, 'freight_far')).toBe(1);
		enter(model, ['freight', [], 0.085], ['zone_of_customer', ['Skerrow'], 'abroad']);
		expect(read(model, 'freight_far')).toBe(1);
	});
});
