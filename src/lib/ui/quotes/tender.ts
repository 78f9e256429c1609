/**
 * What the items of a quote come to: which orders are computed for each, what is read of them, and the sums. An item that
 * is called off is priced by its whole and worked out run by run: each call-off is an order in its own month, at the price of
 * the whole.
 */
import type { OrderFigures } from '$lib/engine/quote-figures';
import type { AnswerFigures, QuoteAnswers } from '$lib/workbook/quote-list-schema';
import { withEntries } from '$lib/workbook/quote-overlay';
import type { QuotePicture, TenderPicture } from '$lib/workbook/quote-schema';
import type { QuoteEntry, QuoteItem, Scalar } from '$lib/workbook/schema';

export type ItemAnswer = QuoteAnswers['items'][number];
export type Tender = TenderPicture;

export const NO_FIGURES: AnswerFigures = {
	...{ revenue: null, net: null, contribution: null, result: null, hours: null },
	...{ floor: null, target: null, price: null, invoice: null }
};

/** A dated month as the order and the plan know it. */
export interface DatedMonth {
	readonly month: string;
	/** The part of the plan; null: the first. */
	readonly part: string | null;
}
export type Dated = ReadonlyMap<string, DatedMonth>;

/** What is read of an order, by the names of the workbook. */
export function namesRead(picture: QuotePicture, tender: Tender): string[] {
	const { hours, taken_by: takenBy, order, offer, hour_value: hourValue } = picture;
	const names = [
		...[tender.revenue, tender.net, tender.contribution, tender.result, tender.least, tender.coil],
		...[tender.plan?.beyond, hours, picture.floor, picture.target, picture.price, picture.invoice],
		...[picture.margin, takenBy, hourValue?.chosen, offer?.asked, ...(offer?.goods ?? []), ...order]
	];
	return [...new Set(names.flatMap((name) => name ?? []))];
}

const numberOf = (value: Scalar | undefined) => (typeof value === 'number' ? value : null);

export function figuresRead(
	{ values }: Pick<OrderFigures, 'values'>,
	picture: QuotePicture,
	tender: Tender
): AnswerFigures {
	const of = (name: string | undefined) => (name === undefined ? null : numberOf(values[name]));
	return {
		...{ revenue: of(tender.revenue), net: of(tender.net), contribution: of(tender.contribution) },
		...{ result: of(tender.result), hours: of(picture.hours), floor: of(picture.floor) },
		...{ target: of(picture.target), price: of(picture.price), invoice: of(picture.invoice) }
	};
}

/** An order at a price by hand, on the invoice. */
export function atPrice(
	entries: readonly QuoteEntry[],
	price: number,
	{ set_price: name, price_basis: basis }: Tender
): QuoteEntry[] {
	return withEntries(entries, [
		{ quantity: name, value: price },
		...(basis ? [{ quantity: basis.quantity, value: basis.member }] : [])
	]);
}

/** The item as one order of what a month calls off, at the price of the whole. */
export function callEntries(
	item: QuoteItem,
	call: { readonly amount: number; readonly month: string },
	invoice: number | null,
	picture: QuotePicture,
	tender: Tender
): QuoteEntry[] {
	const month = picture.hour_value?.chosen;
	const own = withEntries(item.entries, [
		{ quantity: picture.size, value: call.amount },
		...(month === undefined ? [] : [{ quantity: month, value: call.month }])
	]);
	return invoice === null ? own : atPrice(own, invoice, tender);
}

/** Of what is called off: the sums, and prices by the mean of what is called off. */
export function sumOfCalls(
	whole: AnswerFigures,
	calls: readonly { readonly amount: number; readonly figures: AnswerFigures }[]
): AnswerFigures {
	const sum = (name: keyof AnswerFigures, by: 'amount' | 'once') =>
		calls.reduce<number | null>((all, { amount, figures }) => {
			const one = figures[name];
			return all === null || one === null ? null : all + one * (by === 'amount' ? amount : 1);
		}, 0);
	const amount = calls.reduce((all, call) => all + call.amount, 0);
	const mean = (name: keyof AnswerFigures) => {
		const all = sum(name, 'amount');
		return all === null || amount === 0 ? null : all / amount;
	};
	return {
		...{ revenue: sum('revenue', 'once'), net: sum('net', 'once'), hours: sum('hours', 'once') },
		...{ contribution: sum('contribution', 'once'), result: sum('result', 'once') },
		...{ floor: mean('floor'), price: mean('price') },
		...{ target: whole.target, invoice: whole.invoice }
	};
}

/** Percent of what stays; null where nothing does. */
export const marginOf = ({ result, net }: Pick<AnswerFigures, 'result' | 'net'>): number | null =>
	result === null || net === null || net <= 0 ? null : (100 * result) / net;

export interface Whole {
	readonly revenue: number;
	readonly net: number;
	readonly contribution: number;
	readonly result: number;
	readonly hours: number;
	/** Items that have no figures, and are in no sum. */
	readonly without: number;
	readonly below: number;
}

/** What all items come to together. */
export function wholeOf(items: readonly ItemAnswer[]): Whole {
	const known = items.filter(({ whole }) => whole.net !== null && whole.contribution !== null);
	const sum = (name: keyof AnswerFigures) =>
		known.reduce((all, { whole }) => all + (whole[name] ?? 0), 0);
	return {
		...{ revenue: sum('revenue'), net: sum('net'), contribution: sum('contribution') },
		...{ result: sum('result'), hours: sum('hours'), without: items.length - known.length },
		below: known.filter(({ whole }) => standingOf(whole) === 'below').length
	};
}

/** Where a price stands: below its floor, below its target, or at it and more. */
export function standingOf({
	price,
	floor,
	target
}: AnswerFigures): 'below' | 'under' | 'over' | null {
	if (price === null || floor === null) return null;
	if (price < floor) return 'below';
	return target !== null && price < target ? 'under' : 'over';
}

export const byItem = <Of>(
	items: readonly { readonly id: string }[],
	all: readonly Of[]
): ReadonlyMap<string, Of> => new Map(items.map(({ id }, i) => [id, all[i]!]));
