/** When the Investment sheet tells of a payback: an investment is entered for what is put in, on the demand of the reference. */
import { afterAll, describe, expect, it } from 'vitest';
import { ABSENT } from '$lib/engine/state';
import { Model } from '$lib/engine/model';
import type { Plan } from '$lib/engine/plan';
import { copyIn } from '$lib/ui/members/only-in';
import type { Workbook } from '$lib/workbook/schema';
import { apply, enter, openShipped, read } from '../reference/shipped';

const NEW = { scenario: 'with_copy' };

const copies = new Map<string, { readonly workbook: Workbook; readonly plan: Plan }>();

/** A line or a rewinder like another one, in a scenario of its own; each is planned once. */
function copied(set: 'line' | 'rewinder', like: string): Model {
	const key = `${set} ${like}`;
	const before = copies.get(key);
	if (before) return Model.open(before.workbook, before.plan);
	const model = openShipped('marram');
	const { commands } = copyIn(
		model.workbook,
		{ kind: 'add_member', set, index: 3, member: { id: 'N' }, like },
		`${set}_installed`,
		{ in: 'new', title: 'With copy' }
	);
	apply(model, { kind: 'several', commands });
	copies.set(key, { workbook: model.workbook, plan: model.plan });
	return model;
}

afterAll(() => copies.clear());

const stateOf = (model: Model, quantity: string, { scenario } = NEW) =>
	model.results(scenario).states[model.layout.byName.get(quantity)!.base];

function set(
	model: Model,
	scenario: string,
	quantity: string,
	at: string[],
	value: number | boolean
) {
	apply(model, { kind: 'set_inputs', scenario, entries: [{ quantity, at, value }] });
}

describe('what is put in without an investment', () => {
	it.each([
		['line', 'L6'],
		['line', 'L2'],
		['rewinder', 'R2']
	] as const)('a %s like %s has no payback, until one is entered', (kind, like) => {
		const model = copied(kind, like);
		expect(read(model, 'put_in', NEW)).toBe(1);
		expect(read(model, 'investment_missing', NEW)).toBe(1);
		for (const name of ['payback', 'discounted_payback', 'irr', 'mirr', 'profitability_index'])
			expect(stateOf(model, name), name).toBe(ABSENT);
		expect(read(model, 'investment_missing')).toBe(0);
		set(model, 'with_copy', 'other_outlay', [], 1_500_000);
		expect(read(model, 'investment_missing', NEW)).toBe(0);
		expect(stateOf(model, 'payback')).not.toBe(ABSENT);
		expect(read(model, 'outlay', NEW)).toBe(1_500_000);
	});

	it('is taken at its word where nothing is to be paid', () => {
		const model = copied('line', 'L6');
		set(model, 'with_copy', 'nothing_to_pay', [], true);
		expect(read(model, 'investment_missing', NEW)).toBe(0);
		expect(stateOf(model, 'payback')).not.toBe(ABSENT);
	});

	it('is asked of an option without a cost item too', () => {
		const model = openShipped('marram');
		apply(model, {
			kind: 'add_member',
			set: 'option',
			index: 5,
			member: { id: 'N' },
			like: 'better_gauging'
		});
		apply(model, {
			...{ kind: 'add_scenario', index: 8 },
			scenario: { id: 'with_copy', title: 'N', parent: 'base', changes: [] }
		});
		set(model, 'with_copy', 'chosen', ['N'], true);
		expect(read(model, 'investment_missing', NEW)).toBe(1);
		expect(stateOf(model, 'payback')).toBe(ABSENT);
	});

	it('is asked of none of the shipped scenarios, nor of one that only runs other hours', () => {
		const model = openShipped('marram');
		for (const { id } of model.workbook.scenarios)
			expect(read(model, 'investment_missing', { scenario: id }), id).toBe(0);
		apply(model, {
			...{ kind: 'add_scenario', index: 8 },
			scenario: { id: 'with_copy', title: 'N', parent: 'base', changes: [] }
		});
		expect(read(model, 'investment_missing', NEW)).toBe(0);
	});
});

describe('the other investment', () => {
	it('starts and ends by its own years, beside those of options', () => {
		const model = copied('line', 'L6');
		set(model, 'with_copy', 'other_outlay', [], 1_500_000);
		expect(read(model, 'project_life', NEW)).toBe(5);
		set(model, 'with_copy', 'life_without_option', [], 9);
		set(model, 'with_copy', 'other_start', [], 2);
		expect(read(model, 'project_life', NEW)).toBe(9);
		expect(read(model, 'case_start', NEW)).toBe(2);
		expect(read(model, 'outlay_of_year', 'y0', NEW)).toBe(0);
		// Prices rise by 2 % a year.
		expect(read(model, 'outlay_of_year', 'y2', NEW)).toBeCloseTo(1_500_000 * 1.02 ** 2, 6);
		expect(read(model, 'outlay_closes', NEW)).toBeCloseTo(0, 6);
		set(model, 'with_copy', 'chosen', ['new_rewinder'], true);
		expect(read(model, 'project_life', NEW)).toBe(9);
		set(model, 'with_copy', 'life_without_option', [], 12);
		expect(read(model, 'project_life', NEW)).toBe(10);
	});
});

describe('another demand than that of the reference', () => {
	it('is cautioned for each product that it is of', () => {
		const model = openShipped('marram');
		set(model, 'new_line', 'item_demand', ['PX15B-50'], 3_000_000);
		const LINE = { scenario: 'new_line' };
		expect(read(model, 'demand_differs', 'PX15B', LINE)).toBe(1);
		expect(read(model, 'demand_differs', 'PB10B', LINE)).toBe(0);
		// What stands on it is measured against the base as well.
		expect(read(model, 'demand_differs', 'PX15B', { scenario: 'new_line_and_rewinder' })).toBe(1);
		expect(read(model, 'demand_differs', 'PX15B', { scenario: 'better_gauging' })).toBe(0);
	});

	it('of a later year is of all products', () => {
		const model = openShipped('marram');
		set(model, 'new_line', 'demand_path', ['y3'], 130);
		for (const product of ['PX10B', 'RT15B'])
			expect(read(model, 'demand_differs', product, { scenario: 'new_line' })).toBe(1);
	});

	it('is none where both have it', () => {
		const model = openShipped('marram');
		enter(model, ['item_demand', ['PX15B-50'], 3_000_000]);
		expect(read(model, 'demand_differs', 'PX15B', { scenario: 'new_line' })).toBe(0);
		apply(model, {
			...{ kind: 'add_scenario', index: 8 },
			scenario: { id: 'half', title: 'Half', parent: 'base', changes: [] }
		});
		set(model, 'half', 'item_demand', ['PB10B-100'], 1_000_000);
		apply(model, {
			...{ kind: 'add_scenario', index: 9 },
			scenario: { id: 'with_copy', title: 'N', parent: 'half', against: 'half', changes: [] }
		});
		expect(read(model, 'demand_differs', 'PB10B', { scenario: 'half' })).toBe(1);
		expect(read(model, 'demand_differs', 'PB10B', NEW)).toBe(0);
	});
});

describe('hours that a copied line adds', () => {
	const UNMET = 1;
	/** Lines whose products customers get in full today. */
	const idle = (model: Model) =>
		['L1', 'L2', 'L3', 'L4', 'L5', 'L6', 'L7'].filter((line) =>
			(model.workbook.relations ?? [])
				.find(({ name }) => name === 'runs')!
				.pairs.filter(([, on]) => on === line)
				.every(([product]) => read(model, 'unmet_demand', product!, 'today') < UNMET)
		);

	it('are cautioned where nothing that it makes is short today, and nowhere else', () => {
		const without = idle(openShipped('marram'));
		expect(without.length).toBeGreaterThan(0);
		expect(without).not.toContain('L6');
		for (const like of [without[0]!, 'L6']) {
			const model = copied('line', like);
			const said = read(model, 'line_without_use', 'N', NEW);
			expect(said, like).toBe(like === 'L6' ? 0 : 1);
			// A line that the reference has is none that is put in.
			expect(read(model, 'line_without_use', 'L7', NEW)).toBe(0);
		}
	});
});

it('pages that show loads of different hours say which hours are their 100 %', () => {
	const { workbook } = openShipped('marram');
	const capacity = workbook.pictures?.find(({ kind }) => kind === 'capacity');
	expect(capacity).toMatchObject({ note: expect.stringContaining('100 is all net hours') });
	const model = openShipped('marram');
	const share = read(model, 'planning_factor', 'L5') / 100;
	// Full by the plan, and by as much less of all net hours.
	const hours = read(model, 'line_hours_planned', 'L5', 'Aug', 'today');
	const net = read(model, 'net_hours_of_month', 'L5', 'Aug');
	expect(hours / (share * net)).toBeCloseTo(1, 5);
	expect(read(model, 'planned_load_by_month', 'L5', 'Aug')).toBeCloseTo(100 * share, 3);
});

describe('a line that is put in without people', () => {
	it.each([
		['line', 'L6'],
		['rewinder', 'R2']
	] as const)(
		'a %s like %s is cautioned until somebody mans it, or those who are there do',
		(kind, like) => {
			const model = copied(kind, like);
			expect(read(model, 'people_missing', NEW)).toBe(1);
			expect(read(model, 'people_missing')).toBe(0);
			set(model, 'with_copy', 'posts', ['extrusion operator'], 3.5);
			expect(read(model, 'people_missing', NEW)).toBe(0);
			set(model, 'with_copy', 'posts', ['extrusion operator'], 3);
			expect(read(model, 'people_missing', NEW)).toBe(1);
			set(model, 'with_copy', 'manned_by_those_there', [], true);
			expect(read(model, 'people_missing', NEW)).toBe(0);
		}
	);

	it('is asked of none of the shipped scenarios', () => {
		const model = openShipped('marram');
		for (const { id } of model.workbook.scenarios)
			expect(read(model, 'people_missing', { scenario: id }), id).toBe(0);
	});
});
