import { describe, expect, it } from 'vitest';
import { askedOfCopies, beginsWithout } from '$lib/ui/members/begins-without';
import type { Command } from '$lib/workbook/commands';
import { findQuantity } from '$lib/workbook/lookup';
import { apply, openShipped, read } from '../../reference/shipped';

const copy: Command = {
	...{ kind: 'add_member', set: 'product', index: 3 },
	...{ member: { id: 'PX15X' }, like: 'PX15B' }
};
const copied = { set: 'product', like: 'PX15B', id: 'PX15X' };

describe('a copy of a product', () => {
	it('begins without the items, the plan and the bookings of the first, in every scenario', () => {
		const model = openShipped('marram');
		const { workbook } = model;
		// A scenario that asks for another contract of the first one.
		apply(model, {
			...{ kind: 'set_inputs', scenario: 'new_line' },
			entries: [{ quantity: 'contract_minimum', at: ['PX15B', 'Oct'], value: 300_000 }]
		});
		const commands = beginsWithout(model.workbook, copied);
		apply(model, { kind: 'several', commands: [copy, ...commands] });
		for (const { id: scenario } of workbook.scenarios) {
			expect(read(model, 'demand', 'PX15X', { scenario })).toBe(0);
			expect(read(model, 'contract_minimum', 'PX15X', 'Oct', { scenario })).toBe(0);
			expect(model.checks(scenario).fail).toEqual([]);
		}
		expect(read(model, 'contract_minimum', 'PX15B', 'Oct', { scenario: 'new_line' })).toBe(300_000);
		const metres = findQuantity(model.workbook, 'actual_metres')?.value as Record<string, object>;
		const months = Object.values(metres.PX15X!).flatMap((one) => Object.values(one as object));
		expect(months.length).toBeGreaterThan(4);
		expect(new Set(months)).toEqual(new Set([0]));
		// What it costs to make is known all the same.
		expect(read(model, 'cost_per_metre', 'PX15X')).toBeGreaterThan(0);
	});

	it('of one of its items begins without the demand, in every scenario, and with all else', () => {
		const model = openShipped('marram');
		apply(model, {
			...{ kind: 'set_inputs', scenario: 'new_line' },
			entries: [{ quantity: 'item_demand', at: ['PX15B-100'], value: 3e6 }]
		});
		const item = { set: 'item', like: 'PX15B-100', id: 'PX15B-120' };
		apply(model, {
			kind: 'several',
			commands: [
				{
					...{ kind: 'add_member', set: 'item', index: 3 },
					...{ member: { id: item.id }, like: item.like }
				},
				...beginsWithout(model.workbook, item)
			]
		});
		for (const { id: scenario } of model.workbook.scenarios) {
			expect(read(model, 'item_demand', item.id, { scenario })).toBe(0);
			expect(model.checks(scenario).fail).toEqual([]);
			expect(read(model, 'item_cost_per_metre', item.id, { scenario })).toBe(
				read(model, 'item_cost_per_metre', item.like, { scenario })
			);
		}
	});

	it('is asked about nothing in a set that names nothing', () => {
		const { workbook } = openShipped('marram');
		expect(askedOfCopies(workbook, 'product').map(({ name }) => name)).toContain(
			'contract_minimum'
		);
		expect(askedOfCopies(workbook, 'month')).toEqual([]);
		expect(beginsWithout(workbook, { set: 'month', like: 'Jan', id: 'J2' })).toEqual([]);
	});
});
