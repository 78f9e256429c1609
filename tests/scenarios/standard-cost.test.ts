/** A new standard against the one in force: each cause moves its own line, and all of them add up. */
import { describe, expect, it } from 'vitest';
import { freeze } from '$lib/engine/frozen';
import { findQuantity } from '$lib/workbook/lookup';
import { apply, openShipped, read } from '../reference/shipped';

const CAUSES = [
	...['price_of_material', 'mass_of_pipe', 'rate_of_scrap', 'price_of_energy', 'use_of_energy'],
	...['price_of_packing', 'cross_linking', 'line_time', 'rewinding_time', 'spending'],
	'hours_on_offer'
];

type Value = Readonly<Record<string, number>>;
const scaled = (value: unknown, factor: number): Value =>
	Object.fromEntries(Object.entries(value as Value).map(([id, one]) => [id, one * factor]));

const NEXT: readonly (readonly [quantity: string, factor: number])[] = [
	['band_price', 1.12],
	['wage', 1.03],
	['doff_time', 1.2],
	['mtbf', 0.5]
];

/** The plant with a scenario for each input that is another in the next year: a change of scenarios takes seconds. */
const model = openShipped('marram');
apply(model, {
	kind: 'several',
	commands: NEXT.map(([quantity, factor], i) => {
		const changes = [
			{ quantity, value: scaled(findQuantity(model.workbook, quantity)!.value, factor) }
		];
		const scenario = { id: `next_${quantity}`, title: quantity, parent: 'base', changes };
		return { kind: 'add_scenario', index: i + 1, scenario };
	})
});

/** The causes of one, per metre of a pipe. */
function withNext(quantity: string) {
	const scenario = { scenario: `next_${quantity}` };
	const of = (cause: string, pipe = 'PX15B') =>
		read(model, 'standard_change_by_cause', pipe, cause, scenario);
	const moved = CAUSES.filter((cause) => Math.abs(of(cause)) > 1e-12);
	return { of, moved, scenario };
}

describe('a new standard', () => {
	it('with dearer energy alone moves the price of electricity, by its use, and the pools that it is in', () => {
		const { of, moved } = withNext('band_price');
		expect(moved).toContain('price_of_energy');
		expect(moved).not.toContain('use_of_energy');
		expect(moved).not.toContain('price_of_material');
		expect(moved).not.toContain('line_time');
		// 12 % of what the energy of a metre costs.
		const energy = read(model, 'cost_part', 'PX15B', 'energy');
		expect(of('price_of_energy')).toBeCloseTo(0.12 * energy, 9);
	});

	it('with a wage round moves spending alone, and cross-linking where there is some', () => {
		const { of, moved } = withNext('wage');
		expect(moved).toEqual(['cross_linking', 'spending']);
		const people = read(model, 'cost_part', 'PX15B', 'people');
		expect(of('spending')).toBeCloseTo(0.03 * people, 9);
		expect(of('cross_linking', 'RT15B')).toBe(0);
	});

	it('with longer drum changes moves rewinder hours, at the rates that were', () => {
		const { of, moved, scenario } = withNext('doff_time');
		expect(moved).toEqual(['rewinding_time']);
		const more =
			read(model, 'rewind_need', 'PX15B', scenario) - read(model, 'rewind_need', 'PX15B');
		const rates = read(model, 'labour_rate', 'rewind') + read(model, 'overhead_rate', 'rewind');
		expect(more).toBeGreaterThan(0);
		// h/km at EUR/h, a metre.
		expect(of('rewinding_time')).toBeCloseTo((more * rates) / 1000, 12);
	});

	it('adds up by pipe and by item, and is none against itself', () => {
		const { scenario } = withNext('mtbf');
		for (const pipe of ['PX10B', 'PX15B', 'RT15B']) {
			const sum = CAUSES.reduce(
				(all, cause) => all + read(model, 'standard_change_by_cause', pipe, cause, scenario),
				0
			);
			const change =
				read(model, 'cost_per_metre', pipe, scenario) - read(model, 'cost_per_metre', pipe);
			expect(sum).toBeCloseTo(change, 12);
			expect(Math.abs(change)).toBeGreaterThan(1e-5);
			expect(read(model, 'standard_change', pipe)).toBe(0);
		}
		const item = CAUSES.reduce(
			(all, cause) => all + read(model, 'item_change_by_cause', 'PX15B-50', cause, scenario),
			0
		);
		expect(item).toBeCloseTo(
			read(model, 'item_cost_per_metre', 'PX15B-50', scenario) -
				read(model, 'item_cost_per_metre', 'PX15B-50'),
			12
		);
	});

	it('values the stock anew: as counted, else as planned for the month', () => {
		const { scenario } = withNext('wage');
		apply(model, {
			kind: 'set_inputs',
			scenario: 'next_wage',
			entries: [
				{ quantity: 'revaluation_month', at: [], value: 'Aug' },
				{ quantity: 'stock_counted_then', at: ['PB15B'], value: 250_000 }
			]
		});
		const change = (pipe: string) => read(model, 'standard_change', pipe, scenario);
		expect(read(model, 'revaluation', 'PB15B', scenario)).toBeCloseTo(250_000 * change('PB15B'), 6);
		const planned = read(model, 'stock', 'RT15B', 'Aug', 'today', scenario);
		expect(read(model, 'revaluation', 'RT15B', scenario)).toBeCloseTo(planned * change('RT15B'), 6);
	});

	it('is held against a frozen standard, which no edit of the base moves', () => {
		const { scenario } = withNext('wage');
		const frozen = freeze(model.layout, model.results('base'), {
			...{ id: 'standard_then', title: 'Standard', of: 'base', date: '2027-11-30' }
		})!;
		apply(model, { kind: 'add_frozen', frozen });
		apply(model, {
			kind: 'replace_scenario',
			id: 'next_wage',
			scenario: { id: 'next_wage', title: 'wage', parent: 'base', against: 'standard_then' }
		});
		const before = read(model, 'change_of_year', scenario);
		expect(before).toBeGreaterThan(1000);
		apply(model, {
			kind: 'set_inputs',
			scenario: 'base',
			entries: [{ quantity: 'wage', at: ['quality technician'], value: 99 }]
		});
		// What the scenario says of wages it says for all, and so stands as it was.
		expect(read(model, 'ebit')).toBeLessThan(read(model, 'ebit', scenario));
		expect(read(model, 'change_of_year', scenario)).toBeCloseTo(before, 4);
	});
});
