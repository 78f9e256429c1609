/** A quote of last year beside what it would be today: the same digits, and what each input did. */
import { describe, expect, it } from 'vitest';
import { frozenColumn } from '$lib/engine/frozen';
import { quoteOver } from '$lib/engine/quote-over';
import { withWorkbook } from '$lib/engine/structure';
import { overlaid, withEntries } from '$lib/workbook/quote-overlay';
import type { QuotePicture } from '$lib/workbook/quote-schema';
import type { QuoteEntry, QuoteItem } from '$lib/workbook/schema';
import { offeredInputs } from '$lib/ui/quote/fields';
import { lastDay, quoteOfOrder, standingItem } from '$lib/ui/quotes/making';
import { effectOf, figuresSince, inputsSince, largestFirst, restOf } from '$lib/ui/quotes/since';
import { apply, enter, openShipped } from '../../reference/shipped';

const ORDER: QuoteEntry[] = [
	{ quantity: 'quote_product', value: 'PX15B' },
	{ quantity: 'quote_item', value: null },
	{ quantity: 'quote_customer', value: 'Tidewell' },
	{ quantity: 'quote_quantity', value: 40_000 },
	{ quantity: 'quote_coil_length', value: 50 },
	{ quantity: 'quote_month', value: 'Sep' }
];

/** Sent from the shipped plant. */
function sent() {
	const model = openShipped('marram');
	const picture = model.workbook.pictures!.find(({ kind }) => kind === 'quote') as QuotePicture;
	const over = quoteOver(model, ORDER, true);
	const { workbook, id } = overlaid(model.workbook, ORDER);
	const layout = withWorkbook(model.layout, workbook);
	const source = { layout, results: over.results, faults: over.faults };
	const item = standingItem(
		{ id: 'one', entries: ORDER },
		{
			...{ layout: model.layout, picture, over, date: '2028-03-14', of: 'Base', revision: 12 },
			offered: offeredInputs([...picture.order, ...picture.terms!], {
				...{ source, scenario: id, base: 'base' }
			})
		}
	);
	return { model, picture, item, before: over.results };
}

describe('a quote that was sent', () => {
	it('holds its order and the terms of its customer as entries of its own', () => {
		const { item } = sent();
		expect(item.entries).toContainEqual({ quantity: 'payment_days', at: ['Tidewell'], value: 30 });
		expect(item.entries).toContainEqual({
			...{ quantity: 'list_price', at: ['PX15B'], value: expect.any(Number) as number }
		});
		expect(item.grounds).toMatchObject({ date: '2028-03-14', of: 'Base', revision: 12 });
	});

	it('ends after as long as the workbook says that quotes hold', () => {
		const { item, picture } = sent();
		// Three weeks.
		expect(lastDay(item, picture, '2028-03-14')).toBe('2028-04-04');
	});

	it('would be the same in the same plant', () => {
		const { model, picture, item } = sent();
		const today = quoteOver(model, item.entries, false).results;
		for (const { then, today: now } of figuresSince(item.grounds!, picture, model.layout, today))
			expect(now).toBe(then);
		expect(inputsSince(item.grounds!, item.entries, model.layout, today)).toEqual([]);
	});

	it('shows its own digits in a plant of other prices, and says what moved and by how much', () => {
		const { model, picture, item, before } = sent();
		enter(
			model,
			['main_price', ['PEXB'], 2.6],
			['wage', ['extrusion operator'], 30],
			['payment_days', ['Tidewell'], 90],
			['list_price', ['PX15B'], 0.5]
		);
		const today = quoteOver(model, item.entries, false).results;
		const figures = figuresSince(item.grounds!, picture, model.layout, today);
		const floor = figures.find(({ name }) => name === picture.floor)!;
		expect(floor.then).toBe(before.values[model.layout.byName.get(picture.floor)!.base]);
		expect(floor.today).toBeGreaterThan(floor.then);
		// Terms and list price are the quote's own: what the customer has today does not move it.
		const price = figures.find(({ name }) => name === picture.invoice)!;
		expect(price.today).toBe(price.then);

		const inputs = inputsSince(item.grounds!, item.entries, model.layout, today);
		expect(inputs.map(({ entry }) => entry.quantity).sort()).toEqual(['main_price', 'wage']);
		const effects = largestFirst(
			inputs.map((input) => {
				const back = quoteOver(model, withEntries(item.entries, [input.entry]), false).results;
				return effectOf(input, picture, model.layout, today, back);
			})
		);
		expect(effects[0]!.entry).toEqual({ quantity: 'main_price', at: ['PEXB'], value: 2.02 });
		expect(effects[0]!.onFloor).toBeGreaterThan(effects[1]!.onFloor!);
		// One by one they explain the whole but for what they do together.
		const rest = restOf(figures, picture.floor, effects, 'onFloor')!;
		expect(Math.abs(rest)).toBeLessThan(0.02 * (floor.today! - floor.then));
	});

	it('of a pipe that is deleted since keeps its figures, and names the pipe', () => {
		const { model, picture, item, before } = sent();
		apply(model, { kind: 'remove_member', set: 'product', id: 'PX15B', also: true });
		const { gone } = overlaid(model.workbook, item.entries);
		expect(gone).toEqual(['PX15B']);
		const grounds = item.grounds!;
		const column = frozenColumn(model.layout, {
			...{ id: 'kept', title: '', of: grounds.of, date: grounds.date, quantities: grounds.figures }
		});
		const { base } = model.layout.byName.get(picture.price)!;
		const was = openShipped('marram').layout.byName.get(picture.price)!.base;
		expect(column.values[base]).toBe(before.values[was]);
	});
});

describe('a quote that is begun', () => {
	it('takes every input of the order, and none of the terms, under a number of its own', () => {
		const { model, picture } = sent();
		const source = { layout: model.layout, results: model.results('base'), faults: [] };
		const order = offeredInputs(picture.order, { source, scenario: 'base', base: 'base' });
		const quote = quoteOfOrder(model.workbook, order, {
			...{ id: 'q_new', date: '2028-03-14', by: 'Cy Dent' }
		});
		expect(quote).toMatchObject({ number: '28-CD-001', version: 1, state: 'asked', by: 'Cy Dent' });
		const names = (quote.items as QuoteItem[])[0]!.entries.map(({ quantity }) => quantity);
		expect(names).toEqual(picture.order);
	});
});
