/** A list of prices: rounded by the rule that it states, priced by the workbook's own formulas, and moved by causes that add up. */
import { describe, expect, it } from 'vitest';
import { csvFormOf, csvOf } from '$lib/exchange/csv/write';
import { freeze } from '$lib/engine/frozen';
import { orderFigures, type FiguresAsked } from '$lib/engine/quote-figures';
import { overlayColumn } from '$lib/engine/overlay';
import type { QuotePicture } from '$lib/workbook/quote-schema';
import { heldBefore, movedBy } from '$lib/ui/prices/causes';
import {
	listedOf,
	listLacks,
	namesOfList,
	rowOfList,
	shownPrice,
	sizesOf
} from '$lib/ui/prices/list';
import { at } from '$lib/exchange/ooxml/cell';
import { paperText } from '$lib/papers/paper';
import { priceListPaper } from '$lib/papers/price-list';
import { listSheet } from '$lib/ui/prices/sheet';
import { rounded } from '$lib/ui/prices/rounding';
import { enter, openShipped } from '../reference/shipped';

describe('rounding', () => {
	// ISO 80000-1:2009, annex B, examples from memory: 12.25 at a range of 0.1 is 12.2 by rule A and 12.3 by rule B;
	// 1 225.0 at a range of 10 is 1 220 and 1 230.
	it.each([
		[12.25, 0.1, 12.2, 12.3],
		[12.35, 0.1, 12.4, 12.4],
		[1225, 10, 1220, 1230],
		[1235, 10, 1240, 1240],
		[12.223, 0.1, 12.2, 12.2],
		[0.3125, 0.001, 0.312, 0.313],
		[1.005, 0.01, 1, 1.01]
	])('%f to %f is %f by rule A and %f by rule B', (value, step, even, larger) => {
		expect(rounded(value, step, 'half_even')).toBe(even);
		expect(rounded(value, step, 'half_larger')).toBe(larger);
	});
	it('up goes to the next multiple, and stays where it is one', () => {
		expect([
			rounded(0.3001, 0.01, 'up'),
			rounded(0.3, 0.01, 'up'),
			rounded(0.07, 0.01, 'up')
		]).toEqual([0.31, 0.3, 0.07]);
	});
	it('is of the price for a coil from the whole price by the metre, and not from the rounded one', () => {
		const rule = { way: 'half_larger', metre: 0.01, more: 0.01 } as const;
		expect(shownPrice(0.3456, 'metre', 50, rule)).toBe(0.35);
		expect(shownPrice(0.3456, 'hundred', 50, rule)).toBe(34.56);
		expect(shownPrice(0.3456, 'coil', 50, rule)).toBe(17.28);
		expect(shownPrice(0.3456, 'coil', null, rule)).toBeNull();
	});
});

const model = openShipped('marram');
const { layout, workbook } = model;
const picture = workbook.pictures!.find(({ kind }) => kind === 'quote') as QuotePicture;
const list = picture.price_list!;
const entries = [
	{ quantity: 'quote_customer', value: 'Tidewell' },
	{ quantity: 'price_by_hand', value: null }
];
const figures = (asked: FiguresAsked, of = model) => Promise.resolve(orderFigures(of, asked));

describe('the list of the shipped plant', () => {
	const items = listedOf(workbook, 'base', picture, list, 'item');

	it('has every item, or every pipe in every length of coil', () => {
		expect(items).toHaveLength(33);
		expect(listedOf(workbook, 'base', picture, list, 'pipe')).toHaveLength(40);
	});

	it('prices each as the order sheet would, down from the list price to the target again', async () => {
		const [found] = await figures({
			orders: [[...entries, ...items[7]!.entries]],
			...{ names: namesOfList(list), whole: false }
		});
		const row = rowOfList(items[7]!, found!, list);
		expect(row.listed.id).toBe('PX15B-50');
		expect(row.coil).toBe(50);
		const sizes = sizesOf(layout, list);
		const at = sizes.findIndex(({ id }) => id === '60 km');
		// The order sheet at the list price found, at that size: its net-net price is the target.
		const { results } = overlayColumn(model, [
			...entries,
			...items[7]!.entries,
			{ quantity: 'quote_quantity', value: 60_000 },
			{ quantity: 'own_list_price', at: ['PX15B-50'], value: row.prices.on_list[at]! }
		]);
		const read = (name: string) => results.values[layout.byName.get(name)!.base]!;
		expect(read('quote_net_net')).toBeCloseTo(row.prices.net_net[at]!, 9);
		expect(read('quote_invoice')).toBeCloseTo(row.prices.on_invoice[at]!, 9);
	});

	it('moves by causes that add up, from a frozen copy to today', async () => {
		const own = openShipped('marram');
		const copy = freeze(own.layout, own.results('base'), {
			...{ id: 'last_year', title: 'Last year', of: 'base', date: '2026-12-01' }
		} as Parameters<typeof freeze>[2])!;
		enter(own, ['main_price', ['PEXB'], 2.2], ['customer_rebate', ['Tidewell'], 5]);
		const held = heldBefore(own.layout, own.results('base'), copy, list);
		expect(held.map(({ length }) => length).filter((length) => length > 0)).toEqual([1, 1]);
		const rows = items.slice(0, 3);
		const moved = (await movedBy(
			(asked) => figures(asked, own),
			rows,
			entries,
			held,
			list.on_list,
			2
		))!;
		for (const { then, now, steps } of moved) {
			expect(steps.reduce<number>((all, step) => all + step!, 0)).toBeCloseTo(now! - then!, 9);
			const [resin, terms] = steps.filter((step) => step !== 0);
			expect(resin).toBeGreaterThan(0);
			expect(terms).toBeGreaterThan(0);
		}
		expect(own.workbook.scenarios).toHaveLength(workbook.scenarios.length);
	});

	it('says what a workbook without it lacks', () => {
		expect(listLacks(openShipped('shop').workbook)).toEqual(['quote']);
		expect(listLacks(workbook)).toEqual([]);
	});
});

describe('its file', () => {
	it('has its title, its terms and its rule above a head, and numbers as numbers', () => {
		const rows = [['PX10B-50', 50, 0.388]];
		const { cells, frozenRows } = listSheet('Price list', ['Terms', 'Rule'], {
			columns: ['Article', 'Coil', '5 km'],
			rows
		});
		expect(cells.get(at(0, 0))).toEqual({ value: 'Price list', look: 'title' });
		expect(cells.get(at(2, 0))!.value).toBe('Rule');
		expect(cells.get(at(4, 2))).toEqual({ value: '5 km', look: 'head' });
		expect(cells.get(at(5, 2))).toEqual({ value: 0.388, look: 'result' });
		expect(frozenRows).toBe(5);
	});

	it('is a paper with the rule below the table', () => {
		const paper = priceListPaper({
			...{
				title: 'Price list',
				facts: ['On the terms of Tidewell.'],
				caption: 'list price',
				rule: 'Rounded once.'
			},
			...{ columns: ['Article', '5 km'], rows: [['PX10B-50', '0.388']] }
		});
		expect(paperText(paper)).toBe(
			'Price list\nOn the terms of Tidewell.\nlist price\nArticle\t5 km\nPX10B-50\t0.388\nRounded once.'
		);
	});

	it('has semicolons and decimal commas where the reader’s numbers have', () => {
		const table = {
			caption: 'x',
			columns: ['a', 'b; c'],
			rows: [
				['x', 0.285],
				['y,z', null]
			]
		};
		expect(csvFormOf('de-DE')).toBe('semicolon');
		expect(csvFormOf('en-GB')).toBe('comma');
		expect(csvOf(table, 'semicolon')).toBe('\uFEFFa;"b; c"\r\nx;0,285\r\n"y,z";\r\n');
		expect(csvOf(table)).toBe('\uFEFFa,b; c\r\nx,0.285\r\n"y,z",\r\n');
	});
});
