/** The close of dated months in the shipped workbook: variances add up to result less budget, whatever came. */
import { describe, expect, it } from 'vitest';
import type { Model } from '$lib/engine/model';
import { cellAt } from '$lib/engine/layout';
import { apply, enter, openShipped, read, type Entry } from '../reference/shipped';
import { asBudgeted } from './as-budgeted';
import { WorkbookFigures } from './workbook-figures';

const figures = new WorkbookFigures('scenarios/marram-coil-works.json');
const of = (name: string, ...at: string[]) => figures.number('base', name, ...at);
const MONTHS = Array.from({ length: 12 }, (_, at) => `2027-${String(at + 1).padStart(2, '0')}`);
const CLOSED = MONTHS.slice(0, 4);
const OPEN = MONTHS.slice(4);

const idsOf = (model: Model, set: string) =>
	model.layout.sets.get(set)!.members.map(({ id }) => id);

/** The state of a value: 0 is a number, the others are in `engine/state.ts`. */
function stateOf(model: Model, quantity: string, ...at: readonly string[]): number {
	const place = model.layout.byName.get(quantity)!;
	const ordinals = place.axes.map(
		(axis, i) => model.layout.ordinals.get(axis.set)?.get(at[i] ?? '') ?? -1
	);
	return model.results('base').states[cellAt(place, ordinals)] ?? -1;
}

const ABSENT = 1;

describe('the months as shipped', () => {
	it('have four closed, January to April 2027, and no more', () => {
		const model = openShipped('marram');
		const closed = idsOf(model, 'period').filter((id) => read(model, 'closed', id) === 1);
		expect(closed).toEqual(CLOSED);
		expect(figures.member('base', 'last_closed')).toBe('2027-04');
	});

	it('are budgeted by the months of the plan, which add up to the year', () => {
		const budgets = MONTHS.map((month) => of('budget_result', month));
		expect(budgets.reduce((sum, one) => sum + one, 0)).toBeCloseTo(of('ebit'), 2);
		// Not by twelfths: August with its shut-down earns a fifth of September.
		expect(of('budget_result', '2027-08')).toBeLessThan(0.25 * of('budget_result', '2027-09'));
		for (const month of MONTHS)
			expect(of('budget_result', month), month).toBeCloseTo(of('month_ebit', month), 2);
	});

	it('are explained below a millionth of revenue, each and to date, in every scenario', () => {
		const least = 1e-6 * of('revenue', 'today');
		for (const id of ['base', 'weekend_crews', 'new_line', 'better_gauging'])
			for (const month of CLOSED) {
				expect(Math.abs(figures.number(id, 'variances_close', month)), id).toBeLessThan(least / 12);
				expect(Math.abs(figures.number(id, 'to_date_closes', month)), id).toBeLessThan(least / 12);
			}
	});

	it('say in words which way each variance goes', () => {
		for (const month of CLOSED) {
			const reads =
				(of('variance_amount', 'usage_giveaway', month) < 0 && 'adverse') || 'favourable';
			expect(figures.member('base', 'variance_reads', 'usage_giveaway', month)).toBe(reads);
		}
		expect(of('variance_amount', 'usage_giveaway', '2027-02')).toBeLessThan(0);
		expect(of('variance_amount', 'production', '2027-01')).toBeGreaterThan(0);
		expect(figures.member('base', 'variance_reads', 'production', '2027-01')).toBe('favourable');
	});

	it('have no result where they are open, and the year to date is that of the closed ones', () => {
		const model = openShipped('marram');
		for (const month of OPEN) {
			for (const name of ['actual_result', 'variance_in_all', 'actual_net_sales'])
				expect(stateOf(model, name, month), name).toBe(ABSENT);
			expect(read(model, 'budget_result', month)).toBeGreaterThan(0);
			expect(read(model, 'actual_to_date', month)).toBe(read(model, 'actual_to_date', '2027-04'));
		}
		const closed = CLOSED.reduce((sum, month) => sum + read(model, 'actual_result', month), 0);
		expect(read(model, 'actual_to_date', '2027-04')).toBeCloseTo(closed, 6);
		expect(read(model, 'actual_to_date', '2028-01')).toBe(0);
	});
});

describe('a month that goes as the plan means it to', () => {
	it('reports no variance at all, in each of twelve months', () => {
		const model = openShipped('marram');
		enter(model, ...MONTHS.map((month): Entry => ['closed', [month], true]));
		enter(model, ...MONTHS.flatMap((month) => asBudgeted(model, month)));
		// what was paid for a kilowatt hour is held against what the output may cost: known with the metres
		enter(
			model,
			...MONTHS.map((month): Entry => {
				return ['actual_process_price', [month], read(model, 'allowed_process_price', month)];
			})
		);
		const variances = idsOf(model, 'variance');
		for (const month of MONTHS) {
			expect(read(model, 'actual_result', month)).toBeCloseTo(
				read(model, 'budget_result', month),
				4
			);
			for (const variance of variances) {
				const amount = read(model, 'variance_amount', variance, month);
				expect(Math.abs(amount), `${variance} of ${month}`).toBeLessThan(1e-3);
			}
			expect(read(model, 'month_is_partial', month)).toBe(0);
		}
		expect(read(model, 'actual_to_date', '2027-12')).toBeCloseTo(read(model, 'ebit'), 2);
	});
});

describe('the frozen standard', () => {
	const STANDARD = 'standard_2027';
	const copy = openShipped('marram').workbook.frozen!.find(({ id }) => id === STANDARD)!;

	it('is dated, says whose it is, and that it is invented', () => {
		expect(copy).toMatchObject({ title: 'Standard 2027', of: 'Base', date: '2026-12-11' });
		expect(copy.by).toContain('invented');
		expect(copy.note).toContain('Invented');
		expect(copy.quantities.length).toBeLessThan(90);
	});

	it('holds the budget and the variances of closed May while the base goes on', () => {
		const model = openShipped('marram');
		const month = '2027-05';
		enter(model, ['closed', [month], true], ...asBudgeted(model, month));
		enter(model, ['actual_material_price', ['PEXB', month], 2]);
		const stand = () =>
			[
				...idsOf(model, 'variance').map((variance) => ['variance_amount', variance, month]),
				...['budget_result', 'actual_result', 'variances_close'].map((name) => [name, month])
			].map(([name, ...at]) => read(model, name!, ...at));
		const before = stand();
		const earned = read(model, 'ebit');
		expect(before[idsOf(model, 'variance').indexOf('price_of_material')]).not.toBeCloseTo(0, 0);
		enter(
			model,
			['main_price', ['PEXB'], 2.6],
			['wage', ['extrusion operator'], 31],
			['list_price', ['PX15B'], 9],
			['overhead_amount', ['hall'], 1],
			['mtbf', ['L4'], 20]
		);
		expect(read(model, 'ebit')).not.toBeCloseTo(earned, -2);
		expect(stand()).toEqual(before);
		expect(read(model, 'budget_closes', month)).toBeCloseTo(0, 6);
	});

	it('leaves what came since to the base', () => {
		const model = openShipped('marram');
		const without = copy.quantities.map((one) => {
			if (typeof one.value !== 'object' || !('PX15B' in (one.value as object))) return one;
			const { PX15B: _gone, ...value } = one.value as Record<string, never>;
			return { ...one, value };
		});
		apply(model, { kind: 'remove_frozen', id: STANDARD, also: true });
		apply(model, { kind: 'add_frozen', frozen: { ...copy, quantities: without } });
		enter(model, ['main_price', ['PEXB'], 2.6]);
		expect(read(model, 'standard_cost', 'PX15B')).toBe(read(model, 'cost_per_metre', 'PX15B'));
		expect(read(model, 'standard_cost', 'PB15B')).toBe(
			figures.number('base', 'standard_cost', 'PB15B')
		);
		// It was not budgeted: months of the standard know nothing of it.
		expect(read(model, 'budget_metres', 'PX15B', '2027-05')).toBe(0);
	});

	it('is what a new standard can be compared with', () => {
		const model = openShipped('marram');
		apply(model, {
			...{ kind: 'add_scenario', index: 1 },
			scenario: {
				...{ id: 'standard_next', title: 'Standard 2028', parent: 'base', against: STANDARD },
				changes: [{ quantity: 'main_price', value: { PEXB: 2.1 } }]
			}
		});
		const at = { scenario: 'standard_next' };
		const change = read(model, 'standard_change', 'PX15B', at);
		expect(change).toBeGreaterThan(0);
		// What stock costs follows the resin by a little.
		const resin = read(model, 'standard_change_by_cause', 'PX15B', 'price_of_material', at);
		expect(resin / change).toBeGreaterThan(0.99);
		expect(model.checks('standard_next').fail).toEqual([]);
		expect(Math.abs(read(model, 'standard_causes_close', 'PX15B', at))).toBeLessThan(1e-9);
	});
});

describe('each cause moves its own variance', () => {
	const model = openShipped('marram');
	const month = '2027-03';
	const variances = idsOf(model, 'variance');
	const amounts = () =>
		variances.map((variance) => read(model, 'variance_amount', variance, month));

	it.each([
		['a price obtained', 'actual_net_price', ['PX15B'], ['selling_price']],
		['a heavier metre', 'actual_mass_per_metre', ['PB15B'], ['usage_giveaway', 'usage_scrap']],
		['more dosed', 'actual_dosed', ['RT15B'], ['price_of_material', 'usage_scrap']],
		['a dearer resin', 'actual_material_price', ['PB1'], ['price_of_material']],
		['slower lines', 'actual_line_hours', ['L4'], ['efficiency', 'capacity']],
		['dearer hours', 'actual_hour_cost', ['shift leader'], ['rate']],
		['more hours paid', 'actual_paid_hours', ['shift leader'], ['rate', 'paid_hours']],
		['a repair', 'actual_overhead', ['maintenance'], ['overhead_spend']],
		['a dearer kilowatt hour', 'actual_process_price', [], ['energy_price']],
		['more kilowatt hours', 'actual_process_electricity', [], ['energy_price', 'energy_usage']],
		['a dearer base load', 'actual_site_price', [], ['energy_price']],
		['more packaging', 'actual_packaging', [], ['packaging']],
		[
			'more sold from stock',
			'invoiced_metres',
			['PX22B'],
			['selling_price', 'volume', 'mix', 'capacity', 'production']
		],
		[
			'metres made on another line',
			'actual_metres',
			['PX15P', 'L1'],
			['usage_giveaway', 'usage_scrap', 'energy_usage', 'packaging', 'efficiency', 'production']
		]
	] as const)('%s', (_cause, quantity, at, expected) => {
		const before = amounts();
		const total = read(model, 'variance_in_all', month);
		const value = read(model, quantity, ...at, month);
		enter(model, [quantity, [...at, month], value * 1.005]);
		const moved = variances.filter((_, i) => Math.abs(amounts()[i]! - before[i]!) > 1e-6);
		expect(moved).toEqual(expect.arrayContaining([...expected]));
		const explained = amounts().reduce((sum, amount, i) => sum + amount - before[i]!, 0);
		expect(explained).toBeCloseTo(read(model, 'variance_in_all', month) - total, 6);
		if (quantity !== 'actual_metres') expect(moved).toHaveLength(expected.length);
	});

	it('other layers than the recipe asks for, weighed by extruder', () => {
		const before = amounts();
		const layers = idsOf(model, 'layer');
		const dosed = read(model, 'actual_dosed', 'PX15B', month);
		const share = (layer: string) => read(model, 'standard_layer_share', 'PX15B', layer) / 100;
		const wide = layers.map((layer) => share(layer) * (layer === 'barrier' ? 1.1 : 1));
		const all = wide.reduce((sum, one) => sum + one, 0);
		enter(
			model,
			...layers.map((layer, i): Entry => {
				return ['actual_layer_dosed', ['PX15B', layer, month], (dosed * wide[i]!) / all];
			})
		);
		const at = variances.indexOf('usage_layer');
		expect(amounts()[at]! - before[at]!).toBeLessThan(-10); // barrier is the dearest of them
		expect(read(model, 'variances_close', month)).toBeCloseTo(0, 6);
	});

	it('more drawn from the silo than was dosed', () => {
		const drawn = read(model, 'dosed_of_material', 'PEXB', month) + 500;
		enter(model, ['actual_material_used', ['PEXB', month], drawn]);
		expect(read(model, 'variance_amount', 'usage_loss', month)).toBeCloseTo(
			-500 * read(model, 'standard_material_price', 'PEXB'),
			6
		);
		expect(read(model, 'variances_close', month)).toBeCloseTo(0, 6);
	});

	it('less on the shelf than the books say', () => {
		const counted = 200_000;
		const change = ['actual_product_metres', 'metres_sold'].map((name) =>
			read(model, name, 'PX22B', month)
		);
		enter(
			model,
			['stock_counted', ['PX22B', '2027-02'], counted],
			['stock_counted', ['PX22B', month], counted + change[0]! - change[1]! - 1000]
		);
		expect(read(model, 'variance_amount', 'stock_count', month)).toBeCloseTo(
			-1000 * read(model, 'standard_cost', 'PX22B'),
			5
		);
		expect(read(model, 'variances_close', month)).toBeCloseTo(0, 6);
	});
});

describe('one bad figure', () => {
	const month = '2027-02';
	const cautions = (model: Model) =>
		model
			.checks('base')
			.cautions.filter(({ place }) => place.members.at(-1) === month)
			.map(({ place }) => place.quantity);
	const others = (model: Model, line: string) =>
		idsOf(model, 'variance')
			.filter((variance) => variance !== line)
			.map((variance) => read(model, 'variance_amount', variance, month));

	const empty = (model: Model, quantity: string, ...at: string[]) =>
		apply(model, {
			...{ kind: 'set_inputs', scenario: 'base' },
			entries: [{ quantity, at: [...at, month], value: null }]
		});

	it('a scrap below zero, takes out its own line, and the result stands with what is allowed', () => {
		const model = openShipped('marram');
		const before = others(model, 'usage_scrap');
		const booked = read(model, 'actual_product_metres', 'RT15B', month);
		const weighed = booked * read(model, 'actual_mass_per_metre', 'RT15B', month);
		const price = read(model, 'variance_of_product', 'RT15B', 'by_material_price', month);
		enter(model, ['actual_dosed', ['RT15B', month], weighed - 106]);
		expect(stateOf(model, 'variance_of_product', 'RT15B', 'by_scrap', month)).toBe(ABSENT);
		expect(read(model, 'scrap_taken', 'RT15B', month)).toBeCloseTo(
			read(model, 'allowed_scrap', 'RT15B', month),
			9
		);
		expect(cautions(model)).toEqual(
			expect.arrayContaining(['booked_over_dosed', 'variance_is_partial', 'month_is_partial'])
		);
		// only what is dosed less now, at its price, moves beside it
		const now = others(model, 'usage_scrap');
		const moved = read(model, 'variance_of_product', 'RT15B', 'by_material_price', month) - price;
		const total = now.reduce((sum, one, i) => sum + one - before[i]!, 0);
		expect(total).toBeCloseTo(moved, 6);
		expect(read(model, 'variances_close', month)).toBeCloseTo(0, 6);
	});

	it.each([
		['actual_net_price', ['PX15B'], 'selling_price', ['variance_of_product', 'PX15B', 'by_price']],
		['actual_hour_cost', ['shift leader'], 'rate', ['rate_of_post', 'shift leader']],
		['actual_overhead', ['hall'], 'overhead_spend', ['spend_of_overhead', 'hall']],
		['actual_packaging', [], 'packaging', ['variance_amount', 'packaging']]
	] as const)('%s that is not entered is missing in its own line', (quantity, at, line, gone) => {
		const model = openShipped('marram');
		const before = others(model, line);
		empty(model, quantity, ...at);
		const [name, ...members] = gone;
		expect(stateOf(model, name, ...members, month)).toBe(ABSENT);
		expect(read(model, 'figures_left_out', line, month)).toBe(1);
		expect(cautions(model)).toContain('month_is_partial');
		others(model, line).forEach((amount, i) => expect(amount).toBeCloseTo(before[i]!, 6));
		expect(read(model, 'variances_close', month)).toBeCloseTo(0, 6);
		expect(read(model, 'to_date_closes', '2027-04')).toBeCloseTo(0, 6);
		expect(model.checks('base').fail).toEqual([]);
	});

	it('leaves a month that holds nothing else: closed and empty, it is its budget and says so', () => {
		const model = openShipped('marram');
		enter(model, ['closed', ['2027-05'], true]);
		expect(Number.isFinite(read(model, 'actual_result', '2027-05'))).toBe(true);
		expect(read(model, 'month_is_partial', '2027-05')).toBe(1);
		expect(read(model, 'variances_close', '2027-05')).toBeCloseTo(0, 6);
		expect(model.checks('base').fail).toEqual([]);
	});
});
