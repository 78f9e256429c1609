/** Quotes over the shipped plant: columns of their own, and what is kept of them. */
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { frozenColumn } from '$lib/engine/frozen';
import { overlayColumn } from '$lib/engine/overlay';
import { figuresOf, inputsBehind, pageOf } from '$lib/engine/quote-grounds';
import { OK } from '$lib/engine/state';
import { quotesStandOn } from '$lib/workbook/lookup';
import type { QuotePicture } from '$lib/workbook/quote-schema';
import type { QuoteEntry } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';
import { openShipped } from '../reference/shipped';

const model = openShipped('marram');
const { layout, workbook } = model;
const picture = workbook.pictures!.find(({ kind }) => kind === 'quote') as QuotePicture;
const standing = quotesStandOn(workbook);
const cellOf = (name: string) => layout.byName.get(name)!.base;
const order: QuoteEntry[] = [
	{ quantity: 'quote_product', value: 'PB22B' },
	{ quantity: 'quote_item', value: null },
	{ quantity: 'quote_customer', value: 'Tidewell' },
	{ quantity: 'quote_quantity', value: 120_000 },
	{ quantity: 'quote_month', value: 'Mar' },
	{ quantity: 'payment_days', at: ['Tidewell'], value: 45 },
	{ quantity: 'further_discount', at: ['Tidewell'], value: 5 }
];

describe('a quote over the plant', () => {
	it('says what the plant says where it enters what stands there', () => {
		const own = model.results(standing);
		const { values } = overlayColumn(model, [{ quantity: 'quote_month', value: 'Oct' }]).results;
		expect(values).toEqual(own.values);
	});

	it('computes its own order and leaves every scenario as it was', () => {
		const before = workbook.scenarios.map(({ id }) => model.results(id));
		const { results, faults } = overlayColumn(model, order);
		expect(faults).toEqual([]);
		expect(results.values[cellOf('quote_quantity')]).toBe(120_000);
		expect(results.values[cellOf('quote_net_net')]).not.toBe(
			model.results(standing).values[cellOf('quote_net_net')]
		);
		expect(model.workbook).toBe(workbook);
		expect(workbook.scenarios.map(({ id }) => model.results(id))).toEqual(before);
	});
});

describe('what is kept of a quote', () => {
	const { results } = overlayColumn(model, order);
	const { figures, sets } = figuresOf(layout, results, picture);
	const inputs = inputsBehind(model.plan, results, picture);

	it('holds every figure of its page to the digit', () => {
		const copy = { id: 'kept', title: '', of: 'Base', date: '2028-03-01', quantities: figures };
		const column = frozenColumn(layout, { ...copy, ...(sets && { sets }) });
		for (const name of pageOf(layout, picture)) {
			const { base, count, axes } = layout.byName.get(name)!;
			const isTerm = axes.length > 0 && picture.terms?.includes(name);
			for (let cell = base; cell < base + count; cell++) {
				if (isTerm && column.states[cell] !== OK) continue;
				expect(column.states[cell], name).toBe(results.states[cell]);
				expect(column.values[cell], name).toBe(results.values[cell]);
			}
		}
	});

	it('holds terms of its own customer alone', () => {
		const days = figures.find(({ name }) => name === 'payment_days');
		expect(days?.value).toEqual({ Tidewell: 45 });
		expect(sets?.find(({ name }) => name === 'customer')?.members).toEqual([
			{ id: 'Tidewell', label: 'Tidewell Merchants' }
		]);
	});

	it('holds the inputs behind its prices, and not those of other pipes', () => {
		expect(inputs['main_price']).toMatchObject({ PB1: 3.28 });
		expect(Object.keys(inputs['wage'] as object).length).toBeGreaterThan(1);
		expect(inputs['list_price']).toEqual({ PB22B: expect.any(Number) as number });
		const members = Object.values(inputs).flatMap((value) =>
			flatten(value).flatMap(({ at }) => at)
		);
		expect(members).not.toContain('PX15B');
	});

	it('takes a few kilobytes', () => {
		const text = JSON.stringify({ figures, sets, inputs });
		const bytes = gzipSync(text).length;
		expect(text.length).toBeLessThan(24_000);
		expect(bytes).toBeLessThan(7_500);
	});
});
