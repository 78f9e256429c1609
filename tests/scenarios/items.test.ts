/**
 * Items under the pipes of the shipped plant: what one costs against the independent model, what a pipe has of its items, and that
 * an item that is not finished, or a pipe without items, takes nothing else out.
 */
import { describe, expect, it } from 'vitest';
import type { Model } from '$lib/engine/model';
import type { Command } from '$lib/workbook/commands';
import { apply, enter, openShipped, read } from '../reference/shipped';
import { itemPackaging } from './independent/cost';
import { modelOf } from './independent/model';
import { products, SCENARIOS, sum, type Item, type Product } from './independent/plant';
import { coilHours, rewindHours } from './independent/time';
import { at } from './independent/works';
import { WorkbookFigures } from './workbook-figures';
import { planOf } from './workbook-plan';

/** The workbook buying at the model's prices, so that nothing but rounding is between the two. */
const figures = new WorkbookFigures('scenarios/marram-coil-works.json', [
	{ quantity: 'main_price', at: ['PB1'], value: (3.294 - 0.02 * 4) / 0.98 },
	{ quantity: 'main_price', at: ['PERT'], value: (1.948 - 0.015 * 3.8) / 0.985 }
]);
const plan = planOf(figures);
const items: readonly (readonly [Product, Item])[] = products.flatMap((pipe) =>
	pipe.items.map((item) => [pipe, item] as const)
);

/** What cannot be computed, and what a check refuses, in words of quantity and member. */
const wrong = (model: Model) => [
	...model.faults('base').map(({ quantity }) => quantity),
	...model.checks('base').fail.map(({ place }) => place.quantity)
];
const cautioned = (model: Model, quantity: string) =>
	model
		.checks('base')
		.cautions.flatMap(({ place }) => (place.quantity === quantity ? place.members : []));

describe.each(SCENARIOS)('%s: an item', (id) => {
	const model = modelOf(id, plan);

	it('costs its metre before coiling, its rewinding and its packaging, and earns the rest', () => {
		for (const [pipe, item] of items) {
			const card = at(model.cards, pipe.id);
			const hours = pipe.route === 'inline' ? 0 : coilHours(pipe, item) / item.coil_m;
			const hourOfMean = (card.rewindLabour + card.rewindOverhead) / (rewindHours(pipe) ?? 1);
			const packed = itemPackaging(pipe, item);
			const before = card.perMetre - card.packaging - card.rewindLabour - card.rewindOverhead;
			const cost = before + hours * hourOfMean + packed;
			expect(figures.number(id, 'item_cost_per_metre', item.id)).toBeCloseTo(cost, 9);
			expect(figures.number(id, 'item_cost_per_coil', item.id)).toBeCloseTo(cost * item.coil_m, 7);
			// Its price is that of the pipe, as its list price lies to the mean of the pipe's items.
			const mean = sum(pipe.items.map((one) => one.demand_m * one.list_eur_m)) / pipe.demand_m;
			const net =
				((at(model.netNet, pipe.id) + 0.085 * at(model.pipes, pipe.id).massPerMetre) *
					item.list_eur_m) /
					mean -
				0.085 * at(model.pipes, pipe.id).massPerMetre;
			expect(figures.number(id, 'item_contribution', item.id)).toBeCloseTo(
				net - (card.variable - card.packaging + packed),
				9
			);
			const metres = (at(model.goodMetres, pipe.id) * item.demand_m) / pipe.demand_m;
			expect(figures.number(id, 'item_metres', item.id) / metres).toBeCloseTo(1, 9);
		}
	});
});

it('some thirty items in 25, 50, 100 and 200 m stand under ten pipes', () => {
	expect(items).toHaveLength(33);
	expect([...new Set(items.map(([, { coil_m }]) => coil_m))].sort((a, b) => a - b)).toEqual([
		25, 50, 100, 200
	]);
});

describe('demand, rewinding and packaging of a pipe', () => {
	it('follow the items: twice the 25 m coils of PX15B', () => {
		const model = openShipped('marram');
		const [hours, packed] = [
			read(model, 'rewind_need', 'PX15B'),
			read(model, 'packaging_cost', 'PX15B')
		];
		enter(model, ['item_demand', ['PX15B-25'], 4_020_000]);
		expect(read(model, 'demand', 'PX15B')).toBe(13_400_000 + 2_010_000);
		expect(read(model, 'rewind_need', 'PX15B')).toBeGreaterThan(hours);
		expect(read(model, 'packaging_cost', 'PX15B')).toBeGreaterThan(packed);
		// 15.41 Mm: 30 % and 85 of 115 parts as before. 27 s a coil at 82 %.
		const coils = (4.02 / 25 + (13.4 / 50 - 2.01 / 25)) / 15.41;
		const metre = 60 / 180 + 240 / 2000;
		expect(read(model, 'rewind_need', 'PX15B')).toBeCloseTo((metre + 27 * coils) / 3.6 / 0.82, 9);
	});

	it('are its own, in its standard coil, where nobody asks for any', () => {
		const model = openShipped('marram');
		for (const item of ['PX22B-25', 'PX22B-50', 'PX22B-100'])
			enter(model, ['item_demand', [item], 0]);
		expect(read(model, 'demand', 'PX22B')).toBe(0);
		expect(read(model, 'coils_of_metre', 'PX22B')).toBeCloseTo(1000 / 50, 9);
		expect(model.faults('base')).toEqual([]);
		enter(model, ['pipe_demand', ['PX22B'], 4_000_000]);
		expect(read(model, 'demand', 'PX22B')).toBe(4_000_000);
		expect(cautioned(model, 'pipe_demand_unused')).toEqual([]);
		enter(model, ['item_demand', ['PX22B-25'], 500_000]);
		expect(read(model, 'demand', 'PX22B')).toBe(500_000);
		expect(cautioned(model, 'pipe_demand_unused')).toEqual(['PX22B']);
	});
});

describe('an item that is not finished', () => {
	const added: Command = {
		...{ kind: 'add_member', set: 'item', index: 33 },
		member: { id: 'NEW', label: 'A new one' }
	};

	it('counts nowhere and says so, and no other figure is lost', () => {
		const model = openShipped('marram');
		const before = read(model, 'ebit');
		apply(model, added);
		expect(wrong(model)).toEqual([]);
		expect(cautioned(model, 'item_unfinished')).toEqual(['NEW']);
		expect(read(model, 'ebit')).toBeCloseTo(before, 3);
		// Its pipe alone does not make it one.
		enter(model, ['pipe_of_item', ['NEW'], 'PX10B'], ['length_of_item', ['NEW'], 120]);
		expect(wrong(model)).toEqual([]);
		expect(cautioned(model, 'item_unfinished')).toEqual(['NEW']);
		enter(model, ['item_demand', ['NEW'], 0], ['customer_print', ['NEW'], false]);
		enter(model, ['customer_label', ['NEW'], false]);
		expect(cautioned(model, 'item_unfinished')).toEqual([]);
		expect(wrong(model)).toEqual([]);
		// Packed like the standard coil of 100 m: a pallet of 4,500 m in whole coils of 120 m.
		expect(read(model, 'item_coils_on_pallet', 'NEW')).toBe(37);
		expect(read(model, 'item_packing', 'NEW')).toBeCloseTo((0.46 + 14 / 37) / 120, 12);
		expect(read(model, 'ebit')).toBeCloseTo(before, 3);
	});

	it('without its demand leaves the others of its pipe', () => {
		const model = openShipped('marram');
		apply(model, {
			...{ kind: 'set_inputs', scenario: 'base' },
			entries: [{ quantity: 'item_demand', at: ['PX15B-25'], value: null }]
		});
		expect(model.faults('base')).toEqual([]);
		expect(cautioned(model, 'item_unfinished')).toEqual(['PX15B-25']);
		expect(read(model, 'demand', 'PX15B')).toBe(13_400_000 - 2_010_000);
		expect(() => read(model, 'item_cost_per_metre', 'PX15B-25')).toThrow('state 1');
		expect(read(model, 'item_cost_per_metre', 'PX15B-50')).toBeGreaterThan(0);
	});

	it('like another begins without its demand', () => {
		const { workbook } = openShipped('marram');
		expect(workbook.sets.find(({ name }) => name === 'item')!.not_copied).toEqual(['item_demand']);
	});
});

it('a pipe whose items are gone has no demand, and is told by its standard coil', () => {
	const model = openShipped('marram');
	const [hours, packed] = [
		read(model, 'rewind_need', 'PX28B'),
		read(model, 'packaging_cost', 'PX28B')
	];
	apply(model, {
		kind: 'several',
		commands: ['PX28B-25', 'PX28B-25-K', 'PX28B-25-S'].map((id): Command => ({
			kind: 'remove_member',
			set: 'item',
			id
		}))
	});
	expect(model.faults('base')).toEqual([]);
	expect(read(model, 'demand', 'PX28B')).toBe(0);
	expect(read(model, 'rewind_need', 'PX28B')).toBeCloseTo(hours, 12);
	expect(read(model, 'packaging_cost', 'PX28B')).toBeCloseTo(packed, 12);
});

it('the standard coil is that of the item with most metres, or it is said', () => {
	const model = openShipped('marram');
	expect(cautioned(model, 'main_length_differs')).toEqual([]);
	enter(model, ['coil_length', ['PB15B'], 50]);
	expect(cautioned(model, 'main_length_differs')).toEqual(['PB15B']);
});

describe('an order of an item', () => {
	const order = (item: string, pipe: string, length: number) => {
		const model = openShipped('marram');
		enter(
			model,
			['quote_item', [], item],
			['quote_product', [], pipe],
			['quote_coil_length', [], length]
		);
		return model;
	};

	it('begins with its list price, its packaging and its print', () => {
		const model = order('PX15B-50-T', 'PX15B', 50);
		expect(read(model, 'quote_is_item')).toBe(1);
		expect(read(model, 'quote_list')).toBe(0.42);
		// Straps, film and label, a customer's label, its part of a pallet, its print
		const packed = (0.42 + 0.03 + 14 / 36) / 50 + 0.0004;
		expect(read(model, 'quote_packaging')).toBeCloseTo(packed, 12);
		expect(read(model, 'coil_packaging', '50 m')).toBeCloseTo(packed, 12);
		expect(wrong(model)).toEqual([]);
	});

	it('in short coils is listed at them, so they are no extra', () => {
		const model = order('PX15B-25', 'PX15B', 25);
		expect(read(model, 'extra_wanted', 'short_coils')).toBe(0);
		expect(read(model, 'quote_list')).toBe(0.426);
		// Of the pipe at that length: its list price, and the extra.
		const other = order('PX15B-50', 'PX15B', 25);
		expect(read(other, 'quote_is_item')).toBe(0);
		expect(read(other, 'quote_item_differs')).toBe(1);
		expect(read(other, 'extra_wanted', 'short_coils')).toBe(1);
		expect(read(other, 'quote_list')).toBe(0.414);
	});

	it('loads a pallet as the item says', () => {
		const model = order('PX10B-200', 'PX10B', 200);
		expect(read(model, 'quote_coils_on_pallet')).toBe(25);
		expect(read(order('PX10B-100', 'PX10B', 200), 'quote_coils_on_pallet')).toBe(22);
	});

	it('without an item is one of the pipe', () => {
		const model = openShipped('marram');
		const before = read(model, 'quote_floor');
		apply(model, {
			...{ kind: 'set_inputs', scenario: 'base' },
			entries: [{ quantity: 'quote_item', at: [], value: null }]
		});
		expect(wrong(model)).toEqual([]);
		expect(read(model, 'quote_floor')).toBeCloseTo(before, 12);
		expect(read(model, 'quote_item_differs')).toBe(0);
	});
});
