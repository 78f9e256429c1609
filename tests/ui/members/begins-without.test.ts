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
	it('begins without the demand, the plan and the bookings of the first, in every scenario', () => {
		const model = openShipped('marram');
		const { workbook } = model;
		// A scenario that asks for another demand of the first one.
		apply(model, {
			...{ kind: 'set_inputs', scenario: 'new_line' },
			entries: [{ quantity: 'demand', at: ['PX15B'], value: 15e6 }]
		});
		const commands = beginsWithout(model.workbook, copied);
		apply(model, { kind: 'several', commands: [copy, ...commands] });
		for (const { id: scenario } of workbook.scenarios) {
			expect(read(model, 'demand', 'PX15X', { scenario })).toBe(0);
			expect(model.checks(scenario).fail).toEqual([]);
		}
		expect(read(model, 'demand', 'PX15B', { scenario: 'new_line' })).toBe(15e6);
		const metres = findQuantity(model.workbook, 'actual_metres')?.value as Record<string, object>;
		expect(Object.values(metres.PX15X!)).toEqual([0, 0, 0, 0]);
		// What it costs to make is known all the same.
		expect(read(model, 'cost_per_metre', 'PX15X')).toBeGreaterThan(0);
	});

	it('is asked about nothing in a set that names nothing', () => {
		const { workbook } = openShipped('marram');
		expect(askedOfCopies(workbook, 'product').map(({ name }) => name)).toContain('demand');
		expect(askedOfCopies(workbook, 'month')).toEqual([]);
		expect(beginsWithout(workbook, { set: 'month', like: 'Jan', id: 'J2' })).toEqual([]);
	});
});
