/** What people look for in their own words is found in the shipped plant. */
import { expect, it } from 'vitest';
import { findQuantities } from '$lib/ui/find';
import { openShipped } from '../reference/shipped';

const { layout } = openShipped('marram');
const found = (typed: string) =>
	findQuantities(layout, typed).map(({ quantity }) => quantity.quantity.name);

it('a line in use is found by its label first', () => {
	expect(found('line in use')[0]).toBe('line_installed');
});

it.each(['out of use', 'line closed', 'line lost', 'line sold'])(
	'a line that is "%s" is found by its note',
	(typed) => {
		expect(found(typed)).toContain('line_installed');
	}
);

it('labels come before notes, and a note is found by the beginnings of its words alone', () => {
	expect(found('lost')[0]).toBe('quality_loss_hours');
	expect(found('osed and out')).toEqual([]);
});
