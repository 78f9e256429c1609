/** A small invented workbook with as many prices as wanted: one for each editor and some that they share. */
import type { Workbook } from '$lib/workbook/schema';
import { VERSION } from '$lib/workbook/schema';

export const withPrices = (prices: readonly number[]): Workbook => ({
	format: 'metrewright',
	version: VERSION,
	title: 'Prices',
	invented: true,
	sets: [],
	sheets: [
		{
			title: 'Prices',
			quantities: prices.map((value, i) => ({
				name: `price_${i}`,
				label: `Price ${i}`,
				unit: 'EUR/kg',
				value
			}))
		}
	],
	scenarios: [{ id: 'base', title: 'Base', parent: null, changes: [] }]
});

export const pricesIn = (text: string): number[] =>
	(JSON.parse(text) as Workbook).sheets[0]!.quantities.map(({ value }) => Number(value));
