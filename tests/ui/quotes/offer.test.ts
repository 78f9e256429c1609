/** What leaves the house with an offer: what is named for it, and nothing of what the quote stands on. */
import { describe, expect, it } from 'vitest';
import { figuresOf } from '$lib/engine/quote-grounds';
import { overlayColumn } from '$lib/engine/overlay';
import type { QuotePicture } from '$lib/workbook/quote-schema';
import type { KeptQuote, Letterhead, QuoteEntry } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';
import { offerOf } from '$lib/ui/quotes/offer';
import { getDocumentProxy } from 'unpdf';
import { offerPaper } from '$lib/papers/offer';
import { paperText } from '$lib/papers/paper';
import { paperPdf } from '$lib/papers/pdf/pdf';
import { readFontFiles } from '$lib/server/papers/font-files';
import { offerPage, offerText } from '$lib/ui/quotes/offer-paper';
import { openShipped } from '../../reference/shipped';

const model = openShipped('marram');
const { layout, workbook } = model;
const picture = workbook.pictures!.find(({ kind }) => kind === 'quote') as QuotePicture;
const letterhead: Letterhead = { name: 'Marram Coil Works', address: '1 Strandway' };
const ORDER: QuoteEntry[] = [
	{ quantity: 'quote_product', value: 'PX15B' },
	{ quantity: 'quote_item', value: 'PX15B-50' },
	{ quantity: 'quote_customer', value: 'Skerrow' },
	{ quantity: 'quote_quantity', value: 60_000 },
	{ quantity: 'quote_coil_length', value: 50 },
	{ quantity: 'quote_month', value: 'Oct' },
	{ quantity: 'quote_freight_rule', value: 'in_floor' }
];

function offered(
	more: readonly QuoteEntry[] = [],
	head: Partial<KeptQuote> = {},
	locale = 'en-GB'
) {
	const entries = [
		...ORDER.filter((one) => !more.some((m) => m.quantity === one.quantity)),
		...more
	];
	const { results } = overlayColumn(model, entries);
	const held = figuresOf(layout, results, picture);
	const quote: KeptQuote = {
		...{ id: 'q_one', number: '28-AB-001', version: 2, state: 'sent', date: '2028-03-14' },
		...{ valid_until: '2028-04-04', to: 'Skerrow <Heating>\nQuay Road', note: 'Ceiling 0.41' },
		...head,
		items: [{ id: 'one', entries }]
	};
	const made = offerOf({ quote, picture, held: [held], letterhead, locale })!;
	return { ...made, held, page: offerPage(made.offer), text: offerText(made.offer) };
}

/** All that a document says: texts, titles and what stands in attributes. */
const wordsOf = (page: string) => page.replace(/<style>[^]*?<\/style>/, '');

describe('an offer', () => {
	const { page, text, held, lacks, offer } = offered();

	it('says number, days, address, coils, pallets, prices and total', () => {
		expect(lacks).toEqual([]);
		for (const words of [page, text]) {
			expect(words).toContain('28-AB-001, version 2');
			expect(words).toContain('14 March 2028');
			expect(words).toContain('4 April 2028');
			expect(words).toContain('PEX-b barrier 15 mm, 50 m (PX15B-50)');
			// 60,000 m in coils of 50 m.
			expect(words).toContain('60,000');
			expect(words).toContain('1,200');
			expect(words).toContain('delivered, freight included');
			expect(words.replaceAll('\u00a0', ' ')).toContain('58 days');
			expect(words.replaceAll('\u00a0', ' ')).toMatch(/resin 50 %/);
		}
		const price = flatten(held.figures.find(({ name }) => name === 'quote_invoice')!.value)[0]!
			.value as number;
		expect(text).toContain(`Price, EUR/m: ${price.toFixed(4)}`);
		expect(text).toContain(`For 100 m, EUR: ${(price * 100).toFixed(2)}`);
		expect(text).toContain(`Coil price, EUR/coil: ${(price * 50).toFixed(2)}`);
		const value = new Intl.NumberFormat('en-GB', {
			minimumFractionDigits: 2,
			maximumFractionDigits: 2
		});
		expect(text).toContain(`Value, EUR: ${value.format(price * 60_000)}`);
	});

	it('is of a document of its own, that calls nothing and holds nothing but its words', () => {
		expect(page).toMatch(/^<!doctype html><html lang="en">/);
		expect(page).toContain('<title>Offer 28-AB-001, version 2</title>');
		expect(page).not.toMatch(/<script|<link|<meta name="(?!viewport)|src=|href=|<!--/);
		expect(page).toContain('Skerrow &lt;Heating&gt;<br>Quay Road');
	});

	it('is the same as a PDF, whose properties hold its title and nothing of ours', async () => {
		const paper = offerPaper(offer);
		const made = new Date('2028-03-14T00:00:00Z');
		const { bytes, missing } = await paperPdf(paper, { fonts: readFontFiles(), made });
		expect(missing).toEqual([]);
		const raw = Buffer.from(bytes).toString('latin1');
		const doc = await getDocumentProxy(bytes.slice());
		const { info } = (await doc.getMetadata()) as unknown as { info: Record<string, unknown> };
		expect(info).toMatchObject({ Title: 'Offer 28-AB-001, version 2', Creator: 'Metrewright' });
		expect(info).not.toHaveProperty('Author');
		expect(info).not.toHaveProperty('Subject');
		expect(info).not.toHaveProperty('Keywords');
		expect(raw).not.toContain('/EmbeddedFile');
		const pages: string[] = [];
		for (let i = 1; i <= doc.numPages; i++) {
			const { items } = await (await doc.getPage(i)).getTextContent();
			pages.push(items.map((item) => ('str' in item ? item.str : '')).join(''));
		}
		const plain = (words: string) => words.replace(/[\s•]+/g, '');
		for (const line of paperText(paper).split(/[\n\t]/))
			expect(plain(pages.join(''))).toContain(plain(line));
		// What the seller notes for the house.
		for (const words of [paperText(paper), raw]) expect(words).not.toContain('Ceiling 0.41');
	});

	it('holds no figure of ours, however it is rounded', () => {
		const named = new Set([
			...picture.offer!.counts.map(({ quantity }) => quantity),
			...picture.offer!.prices.map(({ quantity }) => quantity),
			...picture.offer!.terms!.map(({ quantity }) => quantity),
			picture.offer!.total.quantity,
			...[picture.offer!.asked!, picture.clause!.share, picture.invoice]
		]);
		const open = new Set(
			held.figures
				.filter(({ name }) => named.has(name))
				.flatMap(({ value }) => flatten(value).map((one) => one.value))
		);
		const ours = held.figures
			.filter(({ name }) => !named.has(name))
			.flatMap(({ name, value }) =>
				flatten(value).flatMap((one) =>
					typeof one.value === 'number' && Math.abs(one.value) > 1e-6 && !open.has(one.value)
						? [{ name, value: Math.abs(one.value) }]
						: []
				)
			)
			// What is a round number of few digits may stand anywhere: a day, a count, a street.
			.filter(({ value }) => Number(value.toPrecision(3)) !== value);
		expect(ours.length).toBeGreaterThan(80);
		const numbers = new Set(
			[
				...`${wordsOf(page)}\n${text}\n${paperText(offerPaper(offer))}`.matchAll(
					/\d[\d,]*(?:\.\d+)?/g
				)
			].map(([number]) => number.replaceAll(',', ''))
		);
		// A price per coil or for 100 m may by chance be another figure rounded; to four digits and more it is not.
		for (const { name, value } of ours)
			for (const digits of [2, 3, 4, 5])
				if (value.toFixed(digits).replace(/[.0]/g, '').length >= 4)
					expect(numbers, `${name} ${value}`).not.toContain(value.toFixed(digits));
	});

	it('holds no word of ours: no scenario, no quantity, no note, no choice that speaks of a floor', () => {
		const words = `${wordsOf(page)}\n${text}`.toLowerCase();
		for (const word of ['floor', 'margin', 'target', 'hour', 'contribution', 'net-net', 'ceiling'])
			expect(words, word).not.toContain(word);
		for (const { title } of workbook.scenarios.filter(({ id }) => id !== 'base'))
			expect(words).not.toContain(title.toLowerCase());
		expect(words).not.toMatch(/\bbase\b/);
		for (const { quantity } of layout.quantities)
			if (quantity.name.includes('_')) expect(words).not.toContain(quantity.name);
	});

	it('of a quote that is not sent says that it is a draft', () => {
		expect(page).not.toContain('Draft');
		const draft = offered([], { state: 'asked' });
		expect(draft.page).toContain('Draft, not sent');
		expect(draft.text).toContain('Draft, not sent');
	});

	it('is written as its reader writes numbers', () => {
		expect(offered([], {}, 'de-DE').text).toContain('60.000');
	});
});

describe('an offer of what does not fit', () => {
	it('of 12,345 m in coils of 33 m says what whole coils make of it', () => {
		const { text } = offered([
			{ quantity: 'quote_item', value: null },
			{ quantity: 'quote_quantity', value: 12_345 },
			{ quantity: 'quote_coil_length', value: 33 }
		]);
		expect(text).toContain('12,345 m were asked for; in whole coils that is 12,375 m');
		expect(text).toContain('Coils: 375');
	});

	it('names a term that the customer does not have, and leaves it out', () => {
		const { lacks, text } = offered([{ quantity: 'payment_days', at: ['Skerrow'], value: null }]);
		expect(lacks.join('\n')).toContain('Payment within');
		expect(lacks.join('\n')).toContain('Skerrow Heating Supplies');
		expect(text).not.toContain('Payment within');
	});

	it('without anything chosen names what is missing', () => {
		const { lacks } = offered([
			{ quantity: 'quote_item', value: null },
			{ quantity: 'quote_product', value: null }
		]);
		expect(lacks.join('\n')).toMatch(/Nothing is chosen to be offered/);
		expect(lacks.join('\n')).toMatch(/There is no figure for “Price”/);
	});

	it('without a letterhead says so', () => {
		const { results } = overlayColumn(model, ORDER);
		const made = offerOf({
			quote: {
				...{ id: 'q', number: '1', version: 1, state: 'asked', date: '2028-01-01' },
				items: [{ id: 'one', entries: ORDER }]
			},
			...{ picture, held: [figuresOf(layout, results, picture)], letterhead: {}, locale: 'en-GB' }
		});
		expect(made!.lacks).toEqual([
			'There is no letterhead yet. Enter the name and address of the firm.'
		]);
	});
});

describe('an offer of several items', () => {
	const orders = [
		ORDER,
		ORDER.map((one) =>
			one.quantity === 'quote_quantity'
				? { ...one, value: 20_000 }
				: one.quantity === 'quote_month'
					? { ...one, value: 'Mar' }
					: one
		)
	];
	const held = orders.map((entries) =>
		figuresOf(layout, overlayColumn(model, entries).results, picture)
	);
	const quote: KeptQuote = {
		...{ id: 'q_two', number: '28-AB-002', version: 1, state: 'sent', date: '2028-03-14' },
		items: [
			{ id: 'one', entries: orders[0]! },
			{
				id: 'two',
				text: 'Pos. 7',
				entries: orders[1]!,
				calls: [
					{ month: '2028-04', amount: 12_000 },
					{ month: '2028-06', amount: 8_000 }
				]
			}
		]
	};
	const { offer } = offerOf({ quote, picture, held, letterhead, locale: 'en-GB' })!;
	const text = offerText(offer).replaceAll('\u00a0', ' ');

	it('numbers them, gives the total, and says of each when it is delivered', () => {
		expect(offer.rows.map(([name]) => name)).toEqual([
			'1. PEX-b barrier 15 mm, 50 m (PX15B-50)',
			'2. Pos. 7: PEX-b barrier 15 mm, 50 m (PX15B-50)'
		]);
		expect(offer.total).toContain('EUR');
		expect(text).toContain('1. October\n2. April 2028 12,000 m, June 2028 8,000 m');
	});

	it('holds no figure of the house', () => {
		for (const one of held)
			for (const name of [
				'quote_floor',
				'quote_target',
				'quote_net_net',
				'order_over_floor',
				'quote_hours'
			]) {
				const value = flatten(one.figures.find((figure) => figure.name === name)!.value)[0]!
					.value as number;
				for (const digits of [3, 4])
					expect(text).not.toMatch(
						new RegExp(`\\b${value.toFixed(digits).replace('.', '\\.')}\\b`)
					);
			}
		expect(text.toLowerCase()).not.toMatch(/floor|margin|net-net|contribution|target/);
	});
});
