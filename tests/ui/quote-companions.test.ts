import { expect, it } from 'vitest';
import { broughtAlong, companionsOf, leftBehind, namesWhole } from '$lib/ui/quote/companions';
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

it('an item brings its product and its length, because a formula holds the order against both', () => {
	const companions = companionsOf(workbook, picture.order, 'quote_item');
	expect(companions).toEqual([
		{ order: 'quote_product', own: 'pipe_of_item' },
		{ order: 'quote_coil_length', own: 'length_of_item' }
	]);
	expect(broughtAlong(workbook, 'base', companions, 'PB22B-100')).toEqual([
		{ quantity: 'quote_product', at: [], value: 'PB22B' },
		{ quantity: 'quote_coil_length', at: [], value: 100 }
	]);
	expect(broughtAlong(workbook, 'base', companions, 'PX15B-50-T')).toEqual([]);
});

it('an item is left where another product or length is asked for, and may be none', () => {
	const left = (quantity: string, value: string | number) =>
		leftBehind(workbook, 'base', picture.order, [{ quantity, at: [], value }]);
	const none = [{ quantity: 'quote_item', at: [], value: null }];
	expect(left('quote_product', 'PX22B')).toEqual(none);
	expect(left('quote_coil_length', 25)).toEqual(none);
	expect(left('quote_coil_length', 50)).toEqual([]);
	expect(left('quote_quantity', 1000)).toEqual([]);
	expect(left('quote_item', 'PX15B-25')).toEqual([]);
	expect(namesWhole(workbook, picture.order, 'quote_item')).toBe(true);
	// A length alone does not make a product of it: the quote is of one, whatever its length.
	expect(namesWhole(workbook, picture.order, 'quote_product')).toBe(false);
});

it('a quote that has no results yet says that it is being computed', () => {
	const quote = quoteOf(picture, { layout, results: undefined, faults: undefined });
	const tongue = { units: UnitSystem.create([]).system, locale: 'en' };
	expect(quoteTitle(quote, tongue)).toBe('The quote is being computed');
	expect(quoteLine(quote)).toMatch(/^EUR\/m throughout$/);
});
