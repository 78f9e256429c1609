/** Under which name matches are offered to be kept, and what a kept table is said to hold. */
import { describe, expect, it } from 'vitest';
import { keptName } from '$lib/ui/files/kept-name';
import { keptSummary } from '$lib/ui/files/kept-words';
import type { KeptTable } from '$lib/workbook/schema';
import { openShipped } from '../../reference/shipped';

describe('the name that is offered', () => {
	it.each([
		['items.csv', 'items'],
		['item_list_2027-06.csv', 'item list'],
		['Preise 06.2027.xlsx', 'Preise'],
		['price-list (2).csv', 'price list'],
		['L12.csv', 'L12'],
		['2027-06.csv', '2027 06'],
		['.csv', '.csv']
	])('of %s is %s', (file, name) => expect(keptName(file)).toBe(name));
});

describe('a kept table in words', () => {
	const { workbook } = openShipped('shop');
	const column = (quantity: string) =>
		({ heading: quantity, is: 'value', scenario: 'base', quantity }) as const;

	it('names what its rows are about, and the quantities by label', () => {
		const table: KeptTable = {
			title: 'Items',
			columns: [
				{ heading: 'Item', is: 'member', of: 'product' },
				// Nothing here is by line.
				{ heading: 'Made on', is: 'member', of: 'line' },
				column('coil_length'),
				...['a', 'b', 'c', 'd'].map(column)
			]
		};
		expect(keptSummary(table, workbook)).toBe(
			'by product: Standard coil length, a, b, c and 1 more'
		);
	});

	it('says so where each row names its quantity', () => {
		const table: KeptTable = { title: 'All', columns: [{ heading: 'Name', is: 'quantity' }] };
		expect(keptSummary(table, workbook)).toBe('the quantity stands in each row');
	});
});
