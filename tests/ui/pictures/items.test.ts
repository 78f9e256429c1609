import { describe, expect, it } from 'vitest';
import type { Command } from '$lib/workbook/commands';
import { itemsOf, itemsTable, rowsUnder } from '$lib/ui/pictures/items/items';
import { itemsLine, itemsSummary, itemsTitle } from '$lib/ui/pictures/items/items-words';
import { orderOf } from '$lib/ui/quote/begin';
import { findProblems } from '$lib/workbook/consistency';
import { apply, openShipped, read } from '../../reference/shipped';

const { workbook: shipped } = openShipped('marram');
const picture = shipped.pictures!.find((one) => one.kind === 'items')!;
const shownIn = (model: ReturnType<typeof openShipped>) =>
	itemsOf(picture, { layout: model.layout, results: model.results('base'), faults: [] });

describe('what a pipe is sold as', () => {
	const model = openShipped('marram');
	const items = shownIn(model);
	const rows = rowsUnder(items, 'PX15B');

	it('is its items in their order, each with the figures that the workbook names', () => {
		expect(rows.map(({ id }) => id)).toEqual([
			...['PX15B-25', 'PX15B-50', 'PX15B-50-T', 'PX15B-100', 'PX15B-200']
		]);
		expect(items.columns.map(({ unit }) => unit)).toEqual([
			...['m/coil', 'm/year', 'EUR/m', 'EUR/coil', 'EUR/m', 'EUR/m']
		]);
		expect(rows[1]!.readings[2]!.value).toBe(read(model, 'item_cost_per_metre', 'PX15B-50'));
	});

	it('is told with how many there are and between what the last figure lies', () => {
		expect(itemsTitle('PX15B', rows)).toBe('PX15B is sold as 5 items');
		expect(itemsTitle('PX15B', rows.slice(0, 1))).toBe('PX15B is sold as one item');
		expect(itemsTitle('PX15B', [])).toBe('PX15B has no items');
		expect(itemsLine(items, rows, 'en')).toMatch(
			/^Contribution of the item: 0\.13\d+ \(PX15B-200\) to 0\.14\d+ EUR\/m \(PX15B-25\)$/
		);
		expect(itemsLine(items, rows.slice(0, 1), 'en')).toBe('');
		expect(itemsSummary(items, rows, 'en')).toContain('PEX-b barrier 15 mm, 50 m: Coil length');
	});

	it('is a price list of all items where it is taken along', () => {
		const table = itemsTable(items);
		expect(table.rows).toHaveLength(33);
		expect(table.rows[6]!.slice(0, 4)).toEqual([
			'PX15B',
			'PX15B-25',
			'PEX-b barrier 15 mm, 25 m',
			25
		]);
		expect(table.rows.every((row) => row.length === 9)).toBe(true);
	});

	it('has an item that lies under nothing in the list alone', () => {
		const other = openShipped('marram');
		const added: Command = {
			...{ kind: 'add_member', set: 'item', index: 0 },
			member: { id: 'NEW' }
		};
		apply(other, added);
		const found = shownIn(other);
		expect(found.rows[0]).toMatchObject({ id: 'NEW', under: '' });
		expect(found.rows[0]!.readings.map(({ kind }) => kind)).toEqual([
			'not-entered',
			...Array(5).fill('absent')
		]);
		expect(rowsUnder(found, 'PX15B')).toHaveLength(5);
	});
});

it('a quote is begun from an item with its pipe and its length, in the scenario that quotes stand on', () => {
	const { workbook } = openShipped('marram');
	expect(orderOf(workbook, 'item', 'PB22B-100')).toEqual({
		...{ kind: 'set_inputs', scenario: 'base' },
		entries: [
			{ quantity: 'quote_item', at: [], value: 'PB22B-100' },
			{ quantity: 'quote_product', at: [], value: 'PB22B' },
			{ quantity: 'quote_coil_length', at: [], value: 100 }
		]
	});
	// A customer is chosen in an order, but is no order.
	expect(orderOf(workbook, 'customer', 'Tidewell')).toBeNull();
	expect(orderOf(openShipped('shop').workbook, 'product', 'R16')).toBeNull();
});

it('a picture of items asks for a choice of its subject, and for figures by its items', () => {
	const workbook = shipped;
	const problems = (change: object) =>
		findProblems({
			...workbook,
			pictures: workbook.pictures!.map((one) => (one === picture ? { ...one, ...change } : one))
		}).map(({ code }) => code);
	expect(problems({})).toEqual([]);
	expect(problems({ of: 'quote_product' })).toContain('not-a-choice');
	expect(problems({ of: 'customer_of_item' })).toEqual(['not-a-choice']);
	expect(problems({ of: 'base_material' })).toContain('not-a-choice');
	expect(problems({ columns: ['item_metres', 'price'] })).toEqual(['picture-axes']);
});
