import { expect, it } from 'vitest';
import { membersOf } from '$lib/engine/layout';
import { mendingCell } from '$lib/ui/mending-cell';
import { apply, openShipped } from '../reference/shipped';

/** Where a caution about a product of the shipped plant leads, in an input. */
function leadsTo(name: string, product: string, entered: readonly string[] = []) {
	const model = openShipped('marram');
	apply(model, {
		...{ kind: 'set_inputs', scenario: 'new_line' },
		entries: entered.map((item) => ({ quantity: 'item_demand', at: [item], value: 5000 }))
	});
	const { layout } = model;
	const ordinal = layout.ordinals.get('product')!.get(product)!;
	const input = layout.byName.get(name)!;
	return membersOf(layout, mendingCell(layout, input, new Map([['product', ordinal]]), 'new_line'));
}

it('an input of the product itself is mended at the product', () => {
	expect(leadsTo('mix_change', 'PX22B')).toEqual(['PX22B']);
});

it('an input of its items is mended at the first, or at what the scenario has entered of them', () => {
	expect(leadsTo('item_demand', 'PX15B')).toEqual(['PX15B-25']);
	expect(leadsTo('item_demand', 'PX15B', ['PX10B-50', 'PX15B-100'])).toEqual(['PX15B-100']);
});

it('an input by what lies under nothing is mended at its first', () => {
	expect(leadsTo('demand_path', 'PX15B')).toEqual(['today']);
});
