/** What the quote's page reads, says and where it puts it, from the shipped workbook's own results. */
import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { offeredInputs } from '$lib/ui/quote/fields';
import { clauseTerms, validityTitle } from '$lib/ui/quote/clause';
import { bareLabels, ladderLines } from '$lib/ui/quote/ladder-chart';
import { numberLine, type Priced } from '$lib/ui/quote/number-line';
import { quoteOf, type PriceStep } from '$lib/ui/quote/quote';
import {
	capacityLine,
	fits,
	hoursLine,
	quoteLine,
	quoteSummary,
	quoteTable,
	quoteTitle,
	standing
} from '$lib/ui/quote/quote-words';
import { waterfallOf } from '$lib/ui/quote/waterfall';
import type { Source } from '$lib/ui/figure/read';
import { UnitSystem } from '$lib/units/system';
import { apply, enter, openShipped, read } from '../reference/shipped';

const tongue = { units: UnitSystem.create([]).system, locale: 'en' };

function pageOf(model: Model, scenario = 'base') {
	const source: Source = {
		layout: model.layout,
		results: model.results(scenario),
		faults: model.faults(scenario)
	};
	const picture = model.workbook.pictures!.find((picture) => picture.kind === 'quote')!;
	return { picture, source, quote: quoteOf(picture, source) };
}

describe('the words of a quote', () => {
	it('say in the title how far the price stands from the floor', () => {
		const model = openShipped('marram');
		const { quote } = pageOf(model);
		const perKm = Number((1000 * read(model, 'quote_over_floor')).toPrecision(2));
		expect(quoteTitle(quote, tongue)).toBe(
			`60,000\u00a0m of PX15B in October: ${perKm}\u00a0EUR per km over the floor, short of the target`
		);
		expect(quoteLine(quote)).toBe(
			`PEX-b barrier 15 mm, 50 m, Skerrow Heating Supplies, dedicated run, delivered (freight off the price), on ${quote.takenBy!.id}; EUR/m throughout`
		);
		expect(standing(quote, tongue)).toMatch(
			/^net-net, [+−][\d.]+\u00a0% to target, [\d.]+\u00a0EUR per km over floor$/
		);
	});

	it('hold a price against the floor of the plan made again, once that is known', () => {
		const { quote } = pageOf(openShipped('marram'));
		const known = (value: number) => ({ ...quote, planFloor: { ...quote.floor, value } });
		const over = known(quote.price.value - 0.002);
		expect(quoteTitle(over, tongue)).toMatch(/: 2\s?EUR per km over the plan’s floor, short of/);
		expect(standing(over, tongue)).toMatch(/2\sEUR per km over the plan’s floor$/);
		const under = known(quote.price.value + 0.03);
		expect(quoteTitle(under, tongue)).toMatch(/: 30\sEUR per km under the plan’s floor/);
		expect(quoteSummary(under, tongue)).toContain('by the plan made again ');
		// A target under that floor is none.
		expect(quoteTitle(known(quote.target.value + 1), tongue)).toMatch(
			/; the target lies under it$/
		);
	});

	it('call hours free only where the order has enough of them', () => {
		const { quote } = pageOf(openShipped('marram'));
		const hours = { ...quote.hours!, kind: 'value' as const, value: 40 };
		const free = (value: number) => ({ ...quote.months[0]!, free: { ...hours, value } });
		expect(fits({ hours }, free(40))).toBe(true);
		expect(fits({ hours }, free(39))).toBe(false);
		expect(fits({ hours }, { ...free(0), free: null })).toBe(true);
	});

	it('hold no price against a target that lies under the floor, and say so', () => {
		const model = openShipped('marram');
		enter(model, ['target_margin', [], -40]);
		const { quote } = pageOf(model);
		expect(quote.target.value).toBeLessThan(quote.floor.value);
		expect(quoteTitle(quote, tongue)).toMatch(/over the floor; the target lies under it$/);
		expect(quoteTitle(quote, tongue, true)).toMatch(/: the plan has no hours for it$/);
		expect(standing(quote, tongue)).not.toContain('to target');
	});

	it('say so under the floor, and in a month in which an hour more is worth nothing', () => {
		const model = openShipped('marram');
		enter(model, ['further_discount', ['Skerrow'], 45], ['quote_month', [], 'Feb']);
		const { quote } = pageOf(model);
		expect(quoteTitle(quote, tongue)).toMatch(/in February: \d+\u00a0EUR per km under the floor$/);
		expect(hoursLine(quote, tongue)).toBe(
			'EUR/h over all hours of this order; in February one hour more is worth nothing'
		);
	});

	it('set the hours of the order against those that are free on its line in its month', () => {
		const model = openShipped('marram');
		expect(capacityLine(pageOf(model).quote, tongue)).toMatch(
			/^The order takes [\d.]+\u00a0h of L\d in October; the plan leaves none free: other work has to move or give way\.$/
		);
		enter(model, ['quote_product', [], 'RT15B'], ['quote_month', [], 'Feb']);
		const { quote } = pageOf(model);
		expect(capacityLine(quote, tongue)).toMatch(
			/^The order takes [\d.]+\u00a0h of L7 in February; the plan leaves \d+\u00a0h free: it fits\.$/
		);
		expect(capacityLine({ ...quote, months: [] }, tongue)).toBe('');
	});

	it('give floor, target and quote as the customer reads them, by metre, coil, 100 m and pallet', () => {
		const { onInvoice } = pageOf(openShipped('marram')).quote;
		expect(onInvoice!.columns.map(({ unit }) => unit)).toEqual([
			...['EUR/m', 'EUR/coil', 'EUR', 'EUR/pallet']
		]);
		expect(onInvoice!.rows.map(({ label }) => label)).toEqual(['floor', 'target', 'this quote']);
		const [metre, coil, hundred, pallet] = onInvoice!.rows[2]!.prices.map(({ value }) => value);
		expect([coil, hundred, pallet]).toEqual([
			expect.closeTo(50 * metre!, 9),
			expect.closeTo(100 * metre!, 9),
			expect.closeTo(36 * 50 * metre!, 9)
		]);
	});

	it('say on which scenario it stands where that is not the base, in the table to take along too', () => {
		const model = openShipped('marram');
		expect(quoteTable(pageOf(model).quote).rows.flat().join()).not.toContain('Stands on');
		apply(model, { kind: 'quote_on', id: 'new_line' });
		const { quote } = pageOf(model, 'new_line');
		expect(quoteTitle(quote, tongue)).toMatch(/^60,000\u00a0m of PX15B in October, on New line: /);
		expect(quoteTable(quote).rows[0]).toEqual([
			'This order',
			'Stands on, which is not the base',
			'New line',
			''
		]);
	});

	it('say whose error it is where there is no price', () => {
		const model = openShipped('marram');
		apply(model, {
			kind: 'set_inputs',
			scenario: 'base',
			entries: [{ quantity: 'list_price', at: ['PX15B'], value: null }]
		});
		expect(quoteTitle(pageOf(model).quote, tongue)).toBe('No quote for PX15B: error of list price');
	});

	it('give every figure as a row, and the prices in the summary', () => {
		const { quote } = pageOf(openShipped('marram'));
		const { columns, rows } = quoteTable(quote);
		expect(columns).toHaveLength(4);
		expect(rows.every((row) => row.length === 4)).toBe(true);
		// 8 of the order, 16 steps, 6 sizes, 4 lengths, 12 months, 3 prices in 4 ways, 5 extras, 2 of buying, validity, the clause
		expect(rows).toHaveLength(8 + 16 + 18 + 8 + 24 + 12 + 5 + 2 + 1 + 9);
		expect(quoteSummary(quote, tongue)).toMatch(/Floor 0\.\d{4} EUR\/m, this quote 0\.\d{4}/);
	});

	it('set the clause as parts of one, and say how long the price stands', () => {
		const { quote } = pageOf(openShipped('marram'));
		expect(clauseTerms(quote)).toEqual([
			{ label: 'fixed', share: 0.25, index: 1 },
			{ label: 'resin', share: 0.5, index: 1.034 },
			{ label: 'wages', share: 0.17, index: 1.012 },
			{ label: 'energy', share: 0.08, index: 0.985 }
		]);
		expect(validityTitle(quote, 'en')).toBe('Valid for 3 weeks, then by index');
	});
});

describe('the inputs that the page offers', () => {
	const of = (model: Model, scenario: string) =>
		offeredInputs(['quote_quantity', 'payment_days', 'discount_of_step', 'quote_floor'], {
			...{ source: pageOf(model, scenario).source, scenario, base: 'base' }
		});

	it('are those of the customer and the size in question; a result is none', () => {
		const model = openShipped('marram');
		const found = of(model, 'base').map(({ name, whose, value }) => [name, whose, value]);
		expect(found).toEqual([
			['quote_quantity', '', 60_000],
			['payment_days', 'Skerrow', 58],
			['discount_of_step', '60 km', 8]
		]);
		enter(model, ['quote_customer', [], 'Tidewell'], ['quote_quantity', [], 12_000]);
		expect(of(model, 'base').map(({ whose, value }) => [whose, value])).toEqual([
			['', 12_000],
			['Tidewell', 30],
			['10 km', 2]
		]);
	});

	it('are marked where the scenario says something else than the base', () => {
		const model = openShipped('marram');
		apply(model, {
			kind: 'set_inputs',
			scenario: 'new_line',
			entries: [{ quantity: 'payment_days', at: ['Skerrow'], value: 90 }]
		});
		const [size, days] = of(model, 'new_line');
		expect([size!.isChanged, days!.isChanged]).toEqual([false, true]);
		expect([days!.value, days!.baseValue]).toEqual([90, 58]);
	});
});

describe('the number line', () => {
	const priced = (name: Priced['name'], value: number): Priced => ({
		...{ name, value, title: `${name} ${value}`, below: '' }
	});

	it('stands in the order of the prices, words apart and within the width', () => {
		const prices = [
			priced('floor', 0.26),
			priced('target', 0.262),
			priced('list', 0.41),
			priced('quote', 0.33),
			priced('invoice', 0.331)
		];
		const { marks, hatched } = numberLine(prices, 800);
		const at = (name: Priced['name']) => marks.find((mark) => mark.name === name)!;
		expect(hatched).toBe(at('floor').x);
		expect(at('floor').x).toBeLessThan(at('target').x);
		expect(at('target').x).toBeLessThan(at('quote').x);
		expect(at('quote').x).toBeLessThan(at('list').x);
		expect(at('target').words - at('floor').words).toBeGreaterThan(60);
		expect(at('invoice').words - at('quote').words).toBeGreaterThan(60);
		for (const mark of marks) {
			expect(mark.x).toBeGreaterThanOrEqual(0);
			expect(mark.words).toBeLessThanOrEqual(800);
		}
	});

	it('leaves the invoice to the waterfall where there is no room', () => {
		const prices = [priced('floor', 0.2), priced('quote', 0.3), priced('invoice', 0.35)];
		const names = numberLine(prices, 358).marks.map(({ name }) => name);
		expect(names).toEqual(['floor', 'quote']);
	});

	it('has nothing without prices, and room around a single one', () => {
		expect(numberLine([], 400).marks).toEqual([]);
		const [only] = numberLine([priced('floor', 0.3)], 400).marks;
		expect(only!.x).toBeGreaterThan(0);
		expect(only!.x).toBeLessThan(400);
	});
});

describe('the waterfall', () => {
	const reading = (value: number) => ({
		...{ kind: 'value' as const, value, quantity: undefined, because: '' }
	});
	const step = (label: string, amount: number, level: number, isTotal = false): PriceStep => ({
		...{ label, amount: reading(amount), level: reading(level), isTotal }
	});
	const steps = [
		step('list', 100, 100, true),
		step('discount', -20, 80),
		step('nothing', 0, 80),
		step('extra', 5, 85),
		step('net', 85, 85, true),
		step('cost', -60, 25),
		step('left', 25, 25, true)
	];

	it('hangs each step where the price stood, and leaves out what is nothing', () => {
		const { bars, zero } = waterfallOf(steps);
		expect(zero).toBe(0);
		expect(bars.map(({ label, from, to, look }) => [label, from, to, look])).toEqual([
			['list', 0, 100, 'total'],
			['discount', 80, 100, 'leaves'],
			['extra', 80, 85, 'adds'],
			['net', 0, 85, 'total'],
			['cost', 25, 85, 'cost'],
			['left', 0, 25, 'total']
		]);
		expect(bars.map(({ join }) => join)).toEqual([100, 80, 85, 85, 25, null]);
	});

	it('reaches below zero where less than nothing is left', () => {
		const { bars, zero } = waterfallOf([
			step('net', 50, 50, true),
			step('cost', -75, -25),
			step('left', -25, -25, true)
		]);
		expect(zero).toBeCloseTo(100 / 3, 9);
		expect(bars.at(-1)!.from).toBe(0);
		expect(bars.at(-1)!.to).toBeCloseTo(zero, 9);
	});
});

it('the ladder names its sizes by their number and their common unit', () => {
	const { quote } = pageOf(openShipped('marram'));
	expect(bareLabels(quote.bySize)).toEqual({
		texts: ['5', '10', '25', '60', '120', '240'],
		unit: 'km'
	});
	const [first, second] = quote.bySize;
	const mixed = [first!, { ...second!, label: 'a lot' }];
	expect(bareLabels(mixed)).toEqual({ texts: ['5 km', 'a lot'], unit: '' });
});

it('the ladder stands by the logarithm of the size, and its last step holds on', () => {
	const { quote } = pageOf(openShipped('marram'));
	const { floor, offered } = ladderLines(quote.bySize);
	expect(floor.map(({ x }) => Math.round(10 ** x))).toEqual([
		5000, 10000, 25000, 60000, 120000, 240000
	]);
	expect(offered).toHaveLength(7);
	expect(offered.at(-1)!.y).toBe(offered.at(-2)!.y);
});
