import { expect, it } from 'vitest';
import { broughtAlong, companionsOf } from '$lib/ui/quote/companions';
import { quoteOf } from '$lib/ui/quote/quote';
import { quoteLine, quoteTitle } from '$lib/ui/quote/quote-words';
import { UnitSystem } from '$lib/units/system';
import type { Workbook } from '$lib/workbook/schema';
import { openShipped } from '../reference/shipped';

const { workbook, layout } = openShipped('marram');
const picture = workbook.pictures!.find((one) => one.kind === 'quote')!;
const length = { order: 'quote_coil_length', own: 'coil_length' };

it('the coil length of an order comes from the product, because a formula holds the one against the other', () => {
	expect(companionsOf(workbook, picture.order, 'quote_product')).toEqual([length]);
	expect(companionsOf(workbook, picture.order, 'quote_month')).toEqual([]);
	expect(companionsOf(workbook, ['quote_quantity'], 'quote_product')).toEqual([]);
	const silent: Workbook = {
		...workbook,
		sheets: workbook.sheets.map((sheet) => ({
			...sheet,
			quantities: sheet.quantities.filter(({ name }) => name !== 'extra_wanted')
		}))
	};
	expect(companionsOf(silent, picture.order, 'quote_product')).toEqual([]);
});

it('what another product is coiled in is entered with it, unless it stands there', () => {
	expect(broughtAlong(workbook, 'base', [length], 'PX15P')).toEqual([
		{ quantity: 'quote_coil_length', at: [], value: 25 }
	]);
	expect(broughtAlong(workbook, 'base', [length], 'PX22B')).toEqual([]);
});

it('a quote that has no results yet says that it is being computed', () => {
	const quote = quoteOf(picture, { layout, results: undefined, faults: undefined });
	const tongue = { units: UnitSystem.create([]).system, locale: 'en' };
	expect(quoteTitle(quote, tongue)).toBe('The quote is being computed');
	expect(quoteLine(quote)).toMatch(/^EUR\/m throughout$/);
});
