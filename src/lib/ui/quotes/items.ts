/** The items of a quote: one more, a copy, one less, another order; and what is entered for all of them at once. */
import { axesOf } from '$lib/workbook/axes';
import { findQuantity } from '$lib/workbook/lookup';
import { withEntries } from '$lib/workbook/quote-overlay';
import type { QuotePicture } from '$lib/workbook/quote-schema';
import type { KeptQuote, QuoteCall, QuoteEntry, QuoteItem, Workbook } from '$lib/workbook/schema';
import { inputAt } from '$lib/workbook/scenario';
import { companionsOf, type Companion } from '../quote/companions';

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

/** The goods that can be quoted: members of the first choice of what is offered, and what comes along with each. */
export function goodsOf(workbook: Workbook, picture: QuotePicture) {
	return (picture.offer?.goods ?? []).flatMap((choice) => {
		const type = findQuantity(workbook, choice)?.type;
		const set =
			typeof type === 'object'
				? workbook.sets.find(({ name }) => name === type.member_of)
				: undefined;
		return set ? [{ choice, set }] : [];
	});
}

/** The entries that make an order one of these goods: the choice, and what it brings along. */
export function goodsEntries(
	workbook: Workbook,
	scenario: string,
	picture: QuotePicture,
	choice: string,
	member: string,
	/** Looked for in every formula: once for many members. */
	companions: readonly Companion[] = companionsOf(workbook, picture.order, choice)
): QuoteEntry[] {
	const along = companions.flatMap(({ order, own }) => {
		const { value } = inputAt(workbook, scenario, own, [member]);
		return typeof value === 'number' || typeof value === 'string'
			? [{ quantity: order, value }]
			: [];
	});
	const others = (picture.offer?.goods ?? []).filter((name) => name !== choice);
	const left = others.flatMap((quantity) =>
		along.some((one) => one.quantity === quantity) ? [] : [{ quantity, value: null }]
	);
	return [...left, { quantity: choice, value: member }, ...along];
}

/** Whether a quantity has a cell for each member of a set, as terms have for each customer. */
export const isPerSet = (workbook: Workbook, name: string, set: string): boolean => {
	const quantity = findQuantity(workbook, name);
	return quantity !== undefined && axesOf(quantity).some((axis) => axis.set === set);
};
