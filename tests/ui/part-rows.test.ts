/** The rows of all that is entered for one product: its own cells, and nobody else's. */
import { describe, expect, it } from 'vitest';
import { membersOf } from '$lib/engine/layout';
import { ownInputs, type Under } from '$lib/ui/own-inputs/own-inputs';
import { partRows } from '$lib/ui/part-rows';
import { rowKey, type QuantityRow } from '$lib/ui/rows';
import type { QuantityLayout } from '$lib/engine/layout';
import { pathsOf } from '$lib/workbook/paths';
import { openShipped } from '../reference/shipped';

const { layout } = openShipped('marram');
const items = layout.sets.get('item')!.members.map(({ id }) => id);
const two: Under = { set: 'item', ids: items.slice(0, 2) };

function rowsOf(id: string, under: readonly Under[] = [], open: readonly string[] = []) {
	const { part } = ownInputs(layout, 'product', id, under);
	const rows = partRows({ layout, open: new Set(open), results: [], messages: [] }, part);
	return rows.filter((row): row is QuantityRow => row.kind === 'quantity');
}
const of = (rows: readonly QuantityRow[], name: string) =>
	rows.filter((row) => row.quantity.quantity.name === name && row.depth === 0);

describe('all that is entered for a product', () => {
	it('is every quantity that is per product and takes entries', () => {
		const inputs = layout.quantities.filter(
			({ quantity, axes }) =>
				quantity.formula === undefined && axes.some(({ set }) => set === 'product')
		);
		const names = new Set(rowsOf('PX15B').map((row) => row.quantity.quantity.name));
		expect(inputs.length).toBeGreaterThan(40);
		// What sets or moves a path in time is entered on the row of the path.
		const { byInput } = pathsOf(layout.workbook);
		const path = ({ quantity: { name } }: QuantityLayout) =>
			byInput.get(name)?.quantity.name ?? name;
		expect(inputs.map(path).filter((name) => !names.has(name))).toEqual([]);
		expect(names.has('mass_per_metre')).toBe(false);
	});

	it('has only cells of that product, folded or not', () => {
		for (const row of rowsOf('PX15B', [], [rowKey('layer_material', ['PX15B'])]))
			for (let cell = row.from; cell < row.to; cell++)
				expect(membersOf(layout, cell)[0]).toBe('PX15B');
	});

	it('is one value on a row of its own, and unfolds where it is per more', () => {
		expect(of(rowsOf('PX15B'), 'outside_diameter')).toMatchObject([
			{ ids: ['PX15B'], open: null, aside: '', label: 'Outside diameter' }
		]);
		const [folded] = of(rowsOf('PX15B'), 'layer_material');
		expect(folded).toMatchObject({ ids: ['PX15B'], open: false });
		const unfolded = rowsOf('PX15B', [], [rowKey('layer_material', ['PX15B'])]);
		const below = unfolded.filter(
			({ quantity, depth }) => depth === 1 && quantity.quantity.name === 'layer_material'
		);
		expect(below.length).toBeGreaterThan(1);
	});

	it('holds the way from it to all others where it is per product twice', () => {
		const [row] = of(rowsOf('PX15B'), 'entered_setup');
		expect(row!.to - row!.from).toBe(layout.sets.get('product')!.members.length);
	});

	it('lists what lies under it one by one where that is little', () => {
		const rows = of(rowsOf('PX15B', [two]), 'length_of_item');
		expect(rows.map(({ label }) => label)).toEqual(
			two.ids.map((id) => `${id}: Coil length of the item`)
		);
		expect(rows.every(({ from, to }) => to === from + 1)).toBe(true);
		// One alone is named too: nothing else on the page says which it is.
		const one: Under = { set: 'item', ids: items.slice(2, 3) };
		expect(of(rowsOf('PX15B', [one]), 'length_of_item')).toMatchObject([
			{ label: `${one.ids[0]}: Coil length of the item` }
		]);
	});

	it('leaves out what is too much, and says so', () => {
		const many: Under = { set: 'item', ids: items.slice(0, 13) };
		expect(ownInputs(layout, 'product', 'PX15B', [many]).leftOut).toEqual([many]);
		expect(of(rowsOf('PX15B', [many]), 'length_of_item')).toEqual([]);
	});
});
