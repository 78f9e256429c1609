/** Several items on one quote: what each comes to, the whole, the plan made again with it, and what is amiss, each named. */
import { goodsEntries } from '$lib/ui/quotes/goods';
import { beforeAll, describe, expect, it } from 'vitest';
import { orderFigures } from '$lib/engine/quote-figures';
import { overlayColumn } from '$lib/engine/overlay';
import { Solver } from '$lib/programmes/highs';
import { Inquiry } from '$lib/programmes/inquiry/inquiry';
import type { AnswerTo } from '$lib/programmes/inquiry/questions';
import type { QuotePicture } from '$lib/workbook/quote-schema';
import { overlaid } from '$lib/workbook/quote-overlay';
import type { KeptQuote, QuoteEntry, QuoteItem } from '$lib/workbook/schema';
import { findAnswers, type Found } from '$lib/ui/quotes/answers.svelte';
import { datedMonths } from '$lib/ui/quotes/dated';
import {
	withCalls,
	withCopy,
	withItemEntries,
	withMoved,
	withNewItem,
	withoutItem
} from '$lib/ui/quotes/items';
import { remarksOf } from '$lib/ui/quotes/remarks';
import { planAnswer, planQuestions } from '$lib/ui/quotes/tender-plan';
import { termlessOf } from '$lib/ui/quotes/termless';
import { marginOf, standingOf, wholeOf } from '$lib/ui/quotes/tender';
import { apply, openShipped } from '../../reference/shipped';

const model = openShipped('marram');
const { layout, workbook } = model;
const picture = workbook.pictures!.find(({ kind }) => kind === 'quote') as QuotePicture;
const tender = picture.tender!;
const dated = datedMonths(layout, model.results('base'), tender);

const SHARED: QuoteEntry[] = [
	{ quantity: 'quote_customer', value: 'Tidewell' },
	{ quantity: 'quote_run_rule', value: 'own' },
	{ quantity: 'quote_freight_rule', value: 'off_price' }
];
const itemOf = (
	id: string,
	article: string,
	metres: number,
	month: string,
	more: Partial<QuoteItem> = {}
): QuoteItem => ({
	id,
	entries: [
		...SHARED,
		...goodsEntries(workbook, 'base', picture, 'quote_item', article),
		{ quantity: 'quote_quantity', value: metres },
		{ quantity: 'quote_month', value: month }
	],
	...more
});
const quoteOf = (items: QuoteItem[]): KeptQuote => ({
	...{ id: 'q', number: '27-AB-001', version: 1, state: 'asked', date: '2027-02-10', items }
});
const ask = (items: readonly QuoteItem[], of = model) =>
	findAnswers(
		(asked) => Promise.resolve(orderFigures(of, asked)),
		...([items, picture, tender, dated, ['quote_pushes_out', 'coil_beyond_facts']] as const)
	) as Promise<Found>;
const readOf = (entries: readonly QuoteEntry[], name: string) => {
	const { results } = overlayColumn(model, entries);
	return results.values[layout.byName.get(name)!.base]!;
};
const remarks = (
	item: QuoteItem,
	found: Found | null,
	more: Partial<Parameters<typeof remarksOf>[0]> = {}
) =>
	remarksOf({
		...{ item, picture, tender, gone: overlaid(workbook, item.entries).gone, dated },
		...{ figures: found?.wholes.get(item.id) ?? null, answer: found?.answers[0] ?? null },
		...{ cautions: [], termless: [], date: '2027-02-10' },
		amount: (value) => String(Math.round(value * 100) / 100),
		...more
	});
const said = (list: ReturnType<typeof remarks>) => list.map(({ text }) => text).join('\n');

describe('items of a quote', () => {
	const one = quoteOf([itemOf('one', 'PX15B-50', 40_000, 'Sep')]);

	it('are added, copied, removed and put in another order, the last never removed', () => {
		const two = withNewItem(one, picture);
		expect(two.items).toHaveLength(2);
		const fresh = two.items[1]!.entries;
		expect(fresh.find(({ quantity }) => quantity === 'quote_item')!.value).toBeNull();
		expect(fresh.find(({ quantity }) => quantity === 'quote_customer')!.value).toBe('Tidewell');
		const copied = withCopy(two, 'one');
		expect(copied.items[1]!.entries).toEqual(copied.items[0]!.entries);
		expect(new Set(copied.items.map(({ id }) => id)).size).toBe(3);
		expect(withMoved(two, 'one', 1).items.map(({ id }) => id)).toEqual([two.items[1]!.id, 'one']);
		expect(withMoved(two, 'one', -1)).toBe(two);
		expect(withoutItem(two, 'one').items).toHaveLength(1);
		expect(withoutItem(one, 'one')).toBe(one);
	});

	it('share the customer and the terms, and nothing of the order', () => {
		const two = quoteOf([...one.items, itemOf('two', 'PB22B-50', 20_000, 'Mar')]);
		const next = withItemEntries(
			two,
			'one',
			[
				{ quantity: 'quote_customer', value: 'Skerrow' },
				{ quantity: 'payment_days', at: ['Skerrow'], value: 60 },
				{ quantity: 'quote_quantity', value: 1000 }
			],
			picture
		);
		const value = (i: number, name: string) =>
			next.items[i]!.entries.find(({ quantity }) => quantity === name)?.value;
		expect([value(1, 'quote_customer'), value(1, 'payment_days')]).toEqual(['Skerrow', 60]);
		expect([value(0, 'quote_quantity'), value(1, 'quote_quantity')]).toEqual([1000, 20_000]);
	});
});

describe('what they come to', () => {
	const items = [
		itemOf('one', 'PX15B-50', 40_000, 'Sep', { test_price: 0.285 }),
		itemOf('two', 'PB22B-50', 120_000, 'Mar'),
		itemOf('three', 'RT15B-100', 60_000, 'Jan', {
			calls: [
				{ month: '2028-01', amount: 20_000 },
				{ month: '2028-05', amount: 40_000 }
			]
		})
	];
	let found: Found;
	beforeAll(async () => {
		found = await ask(items);
	});

	it('is of each what the order sheet says of it', () => {
		const [one] = found.answers;
		for (const [name, figure] of [
			['quote_floor', one!.whole.floor],
			['quote_net_net', one!.whole.price],
			['order_over_floor', one!.whole.contribution],
			['quote_hours', one!.whole.hours]
		] as const)
			expect(figure).toBe(readOf(items[0]!.entries, name));
		expect(marginOf(one!.whole)).toBeCloseTo(readOf(items[0]!.entries, 'quote_margin'), 9);
	});

	it('is of the whole the sum, and the margin by what stays', () => {
		const whole = wholeOf(found.answers);
		const sum = (name: 'net' | 'contribution' | 'hours') =>
			found.answers.reduce((all, { whole }) => all + whole[name]!, 0);
		expect(whole.net).toBeCloseTo(sum('net'), 9);
		expect(whole.contribution).toBeCloseTo(sum('contribution'), 9);
		expect(whole.hours).toBeCloseTo(sum('hours'), 9);
		expect(whole.without).toBe(0);
	});

	it('is of call-offs run by run, each in its month at the price of the whole', () => {
		const three = found.answers[2]!;
		expect(three.calls!.map(({ figures }) => figures.invoice)).toEqual([
			three.whole.invoice,
			three.whole.invoice
		]);
		const alone = (month: string, amount: number) =>
			readOf(
				[
					...items[2]!.entries.filter(
						({ quantity }) => !['quote_month', 'quote_quantity'].includes(quantity)
					),
					{ quantity: 'quote_month', value: month },
					{ quantity: 'quote_quantity', value: amount },
					{ quantity: 'price_by_hand', value: three.whole.invoice }
				],
				'order_over_floor'
			);
		expect(three.whole.contribution).toBeCloseTo(alone('Jan', 20_000) + alone('May', 40_000), 6);
	});

	it('tests a price: what it leaves, and whether it can be matched', () => {
		const { tested } = found.answers[0]!;
		expect(tested!.invoice).toBe(0.285);
		expect(standingOf(tested!)).toBe('below');
		// What is left is the price less the floor, by the metres.
		expect(tested!.contribution).toBeCloseTo((tested!.price! - tested!.floor!) * 40_000, 6);
	});

	it('takes a price by hand as the invoice price, or as what stays of it', () => {
		const by = (value: number, is: string) => [
			...items[0]!.entries,
			{ quantity: 'price_by_hand', value },
			{ quantity: 'price_by_hand_is', value: is }
		];
		expect(readOf(by(0.33, 'on_invoice'), 'quote_invoice')).toBe(0.33);
		expect(readOf(by(0.33, 'net_of_all'), 'quote_net_net')).toBeCloseTo(0.33, 12);
	});

	it('says the smallest order in whole coils that covers its floor', () => {
		const entries = items[0]!.entries;
		const least = readOf(entries, 'least_in_coils');
		expect(least % 50).toBe(0);
		const at = (metres: number) => {
			const own = [
				...entries.filter(({ quantity }) => quantity !== 'quote_quantity'),
				{ quantity: 'quote_quantity', value: metres },
				// At the price of this order, whatever the size: the list's discount is of the size.
				{ quantity: 'price_by_hand', value: readOf(entries, 'quote_net_net') },
				{ quantity: 'price_by_hand_is', value: 'net_of_all' }
			];
			return readOf(own, 'order_over_floor') - readOf(own, 'quote_freight') * 0;
		};
		// Hours that are free are worth nothing, so the formula is exact where no work gives way.
		expect(at(least)).toBeGreaterThan(-1);
	});
});

describe('a quote in the plan', () => {
	let inquiry: Inquiry;
	beforeAll(async () => {
		inquiry = new Inquiry(model, await Solver.load());
	});
	async function planned(items: QuoteItem[]) {
		const found = await ask(items);
		const questions = planQuestions(layout, 'base', picture, tender, found.runs)!;
		const asked = questions.map((question) => {
			const { where, takes, hours } = question;
			const reply = inquiry.ask({ kind: 'placing', where, takes, hours }) as AnswerTo<'placing'>;
			if (!reply.ok) throw new Error(reply.problems.join());
			return { question, answer: reply.answer };
		});
		return planAnswer(layout, picture, tender, asked)!;
	}

	it('leaves the plan of the workbook as it is', async () => {
		const before = JSON.stringify(model.workbook.plans);
		await planned([itemOf('one', 'PX15B-50', 40_000, 'Sep')]);
		expect(JSON.stringify(model.workbook.plans)).toBe(before);
		expect(model.workbook).toBe(workbook);
	});

	it('costs the plan what making it costs where hours are free, and more where other work gives way', async () => {
		const free = await planned([itemOf('one', 'PX15B-50', 40_000, 'Jan')]);
		expect(free.gives).toEqual([]);
		const full = await planned([itemOf('one', 'PX15B-50', 400_000, 'Sep')]);
		expect(full.gives.length).toBeGreaterThan(0);
		expect(full.gives[0]).toMatchObject({ unit: 'm' });
		expect(full.loses! / 400_000).toBeGreaterThan(free.loses! / 40_000);
	});

	it('takes all items together: what both lose is more than each alone', async () => {
		const one = itemOf('one', 'PX15B-50', 300_000, 'Sep');
		const two = itemOf('two', 'PX10B-100', 300_000, 'Sep');
		const [a, b, both] = [await planned([one]), await planned([two]), await planned([one, two])];
		expect(both.loses!).toBeGreaterThanOrEqual(a.loses! + b.loses! - 1e-3);
	});

	it('says that 5,000 km do not fit, with the hours that they take and those that are free', async () => {
		const plan = await planned([itemOf('one', 'PX15B-50', 5_000_000, 'Oct')]);
		expect(plan.loses).toBeNull();
		expect(plan.fits).toBeGreaterThan(0);
		expect(plan.fits).toBeLessThan(1);
		const row = plan.hours.find(({ taken }) => taken !== null)!;
		expect(row.taken!).toBeGreaterThan(2000);
		expect(row.free).toBeLessThan(row.taken!);
	});

	it('asks the part of the plan that a dated month lies in', async () => {
		const found = await ask([
			itemOf('one', 'PX15B-50', 20_000, 'Jan', { calls: [{ month: '2028-03', amount: 20_000 }] })
		]);
		const [question] = planQuestions(layout, 'base', picture, tender, found.runs)!;
		expect(question!.where.members).toEqual(['y1']);
	});
});

describe('what is amiss is named', () => {
	it('12,345 m in coils of 33 m: the whole numbers below and above', async () => {
		const item = itemOf('one', 'PX15B-50', 12_345, 'Sep');
		item.entries = [
			...item.entries.filter(
				({ quantity }) => !['quote_coil_length', 'quote_item'].includes(quantity)
			),
			{ quantity: 'quote_item', value: null },
			{ quantity: 'quote_coil_length', value: 33 }
		];
		const found = await ask([item]);
		const [remark] = remarks(item, found).filter(({ quantities }) => quantities.length > 0);
		expect(remark!.text).toContain('374.09 coils');
		expect(remark!.quantities.map(({ amount }) => amount)).toEqual([374 * 33, 375 * 33]);
	});

	it('a coil of 500 m that is longer than any that is sold of 15 mm', async () => {
		const item = itemOf('one', 'PX15B-50', 40_000, 'Sep');
		const long = [...item.entries.filter(({ quantity }) => quantity !== 'quote_coil_length')];
		expect(
			readOf([...long, { quantity: 'quote_coil_length', value: 500 }], 'coil_beyond_facts')
		).toBe(1);
		expect(
			readOf([...long, { quantity: 'quote_coil_length', value: 200 }], 'coil_beyond_facts')
		).toBe(0);
	});

	it('a customer without terms, by the terms that are missing', async () => {
		const own = openShipped('marram');
		const { name: set, members } = own.workbook.sets.find(({ name }) => name === 'customer')!;
		apply(own, { kind: 'add_member', set, index: members.length, member: { id: 'Newcomer' } });
		const item = itemOf('one', 'PX15B-50', 40_000, 'Sep');
		item.entries = [
			...item.entries.filter(({ quantity }) => quantity !== 'quote_customer'),
			{ quantity: 'quote_customer', value: 'Newcomer' }
		];
		const found = await ask([item], own);
		expect(found.answers[0]!.whole.price).toBeNull();
		const termless = termlessOf(own.workbook, item.entries, picture);
		expect(termless.join()).toContain('Payment terms, Newcomer');
		expect(said(remarks(item, found, { termless, gone: [] }))).toContain('Payment terms, Newcomer');
	});

	it('an item that no line makes', async () => {
		const own = openShipped('marram');
		const { members, name: set } = own.workbook.sets.find(({ name }) => name === 'product')!;
		apply(own, { kind: 'add_member', set, index: members.length, member: { id: 'NEW9' } });
		const item: QuoteItem = {
			id: 'one',
			entries: [
				...SHARED,
				{ quantity: 'quote_product', value: 'NEW9' },
				{ quantity: 'quote_item', value: null },
				{ quantity: 'quote_coil_length', value: 50 },
				{ quantity: 'quote_quantity', value: 1000 },
				{ quantity: 'quote_month', value: 'Sep' }
			]
		};
		const found = await ask([item], own);
		expect(said(remarks(item, found, { gone: [] }))).toContain('No line can be found for NEW9');
	});

	it('a month in the past, and one that the plan does not have', async () => {
		const item = itemOf('one', 'PX15B-50', 20_000, 'Sep', {
			calls: [
				{ month: '2027-01', amount: 10_000 },
				{ month: '2031-05', amount: 10_000 }
			]
		});
		const text = said(remarks(item, await ask([item])));
		expect(text).toContain('2027-01 lies before the quote’s own day, 2027-02-10');
		expect(text).toContain('The plan has no month 2031-05: it runs from 2027-01 to 2028-12');
	});

	it('a pipe that was deleted, and everything entered stays', async () => {
		const item = itemOf('one', 'PX15B-50', 40_000, 'Sep');
		item.entries = item.entries.map((entry) =>
			entry.quantity === 'quote_product' ? { ...entry, value: 'GONE7' } : entry
		);
		const before = JSON.stringify(item);
		expect(said(remarks(item, await ask([item])))).toContain('No longer in the workbook: GONE7');
		expect(JSON.stringify(item)).toBe(before);
	});

	it('an item without goods, under the name that the customer has for it', async () => {
		const item: QuoteItem = { id: 'one', text: 'Foo 16x2', entries: [...SHARED] };
		expect(said(remarks(item, null))).toContain('“Foo 16x2”');
	});

	it('metres that are called off are the sum of the months', () => {
		const quote = withCalls(
			quoteOf([itemOf('one', 'PX15B-50', 1, 'Sep')]),
			...([
				'one',
				[
					{ month: '2028-05', amount: 300 },
					{ month: '2028-03', amount: 200 }
				],
				picture
			] as const)
		);
		expect(quote.items[0]!.calls!.map(({ month }) => month)).toEqual(['2028-03', '2028-05']);
		expect(
			quote.items[0]!.entries.find(({ quantity }) => quantity === 'quote_quantity')!.value
		).toBe(500);
	});
});
