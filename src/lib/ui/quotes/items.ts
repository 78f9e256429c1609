/** The items of a quote: one more, a copy, one less, another order; and what is entered for all of them at once. */
import { withEntries } from '$lib/workbook/quote-overlay';
import type { QuotePicture } from '$lib/workbook/quote-schema';
import type { KeptQuote, QuoteCall, QuoteEntry, QuoteItem } from '$lib/workbook/schema';
import type { TenderLine } from './tender-list';

export const MOST_ITEMS = 60;

/** An id that none of the items has. */
export function freshItemId(items: readonly { readonly id: string }[]): string {
	const taken = new Set(items.map(({ id }) => id));
	let i = items.length + 1;
	while (taken.has(`item_${i}`)) i++;
	return `item_${i}`;
}

/** Whether an entry holds for the whole quote: the customer, and the terms that are the customer's. */
export const isShared = (picture: QuotePicture, { quantity }: Pick<QuoteEntry, 'quantity'>) =>
	picture.tender?.shared.includes(quantity) ?? false;

/** The quote with entries for one item; those that hold for all go to all. */
export function withItemEntries(
	quote: KeptQuote,
	id: string,
	entries: readonly QuoteEntry[],
	picture: QuotePicture
): KeptQuote {
	const shared = entries.filter((entry) => isShared(picture, entry));
	return {
		...quote,
		items: quote.items.map((item) => {
			const own = item.id === id ? entries : shared;
			return own.length > 0 ? { ...item, entries: withEntries(item.entries, own) } : item;
		})
	};
}

const without = ({
	grounds: _grounds,
	calls: _calls,
	text: _text,
	test_price: _price,
	...item
}: QuoteItem) => item;

/** What the goods of an order are chosen by, emptied. */
export const noGoods = (picture: QuotePicture): QuoteEntry[] =>
	(picture.offer?.goods ?? []).map((quantity) => ({ quantity, value: null }));

/** One more at the end, for the same customer and on the same terms, of nothing yet. */
export function withNewItem(quote: KeptQuote, picture: QuotePicture): KeptQuote {
	const last = quote.items.at(-1)!;
	const price = picture.tender ? [{ quantity: picture.tender.set_price, value: null }] : [];
	const entries = withEntries(last.entries, [...noGoods(picture), ...price]);
	return {
		...quote,
		items: [...quote.items, { ...without(last), id: freshItemId(quote.items), entries }]
	};
}

export function withCopy(quote: KeptQuote, id: string): KeptQuote {
	const at = quote.items.findIndex((one) => one.id === id);
	if (at < 0) return quote;
	const { grounds: _grounds, ...item } = quote.items[at]!;
	return {
		...quote,
		items: quote.items.toSpliced(at + 1, 0, { ...item, id: freshItemId(quote.items) })
	};
}

/** The last one stays: a quote is of something. */
export const withoutItem = (quote: KeptQuote, id: string): KeptQuote =>
	quote.items.length < 2 ? quote : { ...quote, items: quote.items.filter((one) => one.id !== id) };

export function withMoved(quote: KeptQuote, id: string, by: -1 | 1): KeptQuote {
	const at = quote.items.findIndex((one) => one.id === id);
	const to = at + by;
	if (at < 0 || to < 0 || to >= quote.items.length) return quote;
	const items = [...quote.items];
	[items[at], items[to]] = [items[to]!, items[at]!];
	return { ...quote, items };
}

/** Called off so; what is ordered is the sum. Null: all of it in the month of the order. */
export function withCalls(
	quote: KeptQuote,
	id: string,
	calls: readonly QuoteCall[] | null,
	picture: QuotePicture
): KeptQuote {
	const sum = (calls ?? []).reduce((all, { amount }) => all + amount, 0);
	return {
		...quote,
		items: quote.items.map((item) => {
			if (item.id !== id) return item;
			const { calls: _before, ...rest } = item;
			if (!calls || calls.length === 0) return rest;
			const ordered = [...calls].sort((a, b) => (a.month < b.month ? -1 : 1));
			const entries = withEntries(item.entries, [{ quantity: picture.size, value: sum }]);
			return { ...rest, entries, calls: ordered };
		})
	};
}

export function withItem(quote: KeptQuote, next: QuoteItem): KeptQuote {
	return { ...quote, items: quote.items.map((item) => (item.id === next.id ? next : item)) };
}

/** The lines of a tender as items at the end, or in place of those that stand; `added` are their ids. */
export function withLines(
	quote: KeptQuote,
	picture: QuotePicture,
	lines: readonly TenderLine[],
	how: {
		readonly replace: boolean;
		readonly entriesOf: (goods: NonNullable<TenderLine['goods']>) => readonly QuoteEntry[];
		/** What a line without words is called. */
		readonly called: (line: number) => string;
	}
): { readonly quote: KeptQuote; readonly added: readonly string[] } {
	let next = quote;
	const added: string[] = [];
	for (const line of lines) {
		next = withNewItem(next, picture);
		const one = next.items.at(-1)!;
		added.push(one.id);
		const own = [
			...(line.goods ? how.entriesOf(line.goods) : []),
			...(line.amount === null ? [] : [{ quantity: picture.size, value: line.amount }])
		];
		const { text: _text, test_price: _price, ...rest } = one;
		next = withItem(next, {
			...rest,
			...(line.goods ? {} : { text: line.text.slice(0, 200) || how.called(line.line) }),
			entries: withEntries(one.entries, own),
			...(line.price !== null && { test_price: line.price })
		});
		if (line.calls) next = withCalls(next, one.id, line.calls, picture);
	}
	if (how.replace) next = { ...next, items: next.items.filter(({ id }) => added.includes(id)) };
	return { quote: next, added };
}
