/**
 * An offer as the customer reads it. It is made of what the workbook names for offers and of nothing else, so that a
 * figure that is not named cannot leave the house; choices go out in words that were written for the customer, as the
 * workbook's own may speak of floors.
 */
import type { QuotePicture } from '$lib/workbook/quote-schema';
import { quoteName } from '$lib/workbook/quotes';
import type { KeptQuote, Letterhead, QuoteCall } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';
import { formatUnit } from '../format';
import {
	amountFor,
	amountWithUnit,
	heldChoice,
	heldFigure,
	heldLabel,
	heldNumber,
	heldValue,
	type Held
} from './held';
import { offerTexts as texts } from './offer-texts';

export interface Offer {
	readonly title: string;
	readonly isDraft: boolean;
	readonly letterhead: Letterhead;
	readonly to: string;
	/** "Number", "26-AB-014". */
	readonly facts: readonly (readonly [title: string, text: string])[];
	readonly columns: readonly string[];
	readonly rows: readonly (readonly string[])[];
	/** Of several items. */
	readonly total: string | null;
	readonly terms: readonly (readonly [title: string, text: string])[];
	readonly says: readonly string[];
	readonly clause: { readonly text: string; readonly shares: readonly string[] } | null;
	readonly cautions: readonly string[];
}

export interface OfferMade {
	readonly offer: Offer;
	/** What keeps it from being sent, for the seller and on no paper. */
	readonly lacks: readonly string[];
}

export interface OfferOf {
	readonly quote: KeptQuote;
	readonly picture: QuotePicture;
	/** The figures of each item. */
	readonly held: readonly Held[];
	readonly letterhead: Letterhead;
	readonly locale: string;
}

/** Null where the workbook does not say what an offer holds. */
export function offerOf({ quote, picture, held, letterhead, locale }: OfferOf): OfferMade | null {
	const { offer: says } = picture;
	if (!says) return null;
	const lacks: string[] = [];
	const first = held[0];
	const number = (one: Held, name: string, title: string) => {
		const value = heldNumber(one, name);
		if (value === null) lacks.push(texts.lacks(title));
		return value;
	};
	const unitIn = (name: string) => (first && heldFigure(first, name)?.unit) ?? '';
	const counted = [...says.counts, ...says.prices, says.total];
	const columns = [
		texts.article,
		// "Metres", "Coils": what is counted is in the word.
		...says.counts.map(({ title }) => title),
		...[...says.prices, says.total].map(({ title, quantity }) => {
			const unit = formatUnit(unitIn(quantity));
			return unit ? `${title}, ${unit}` : title;
		})
	];
	const rows = held.map((one, i) => {
		const goods = says.goods.map((name) => heldChoice(one, name)).find((choice) => choice !== null);
		const own = quote.items[i]?.text;
		if (!goods && !own) lacks.push(texts.noGoods);
		return [
			`${held.length > 1 ? `${i + 1}. ` : ''}${nameOf(own, goods)}`,
			...counted.map(({ title, quantity }) => {
				const value = number(one, quantity, title);
				return value === null ? '' : amountFor(value, unitIn(quantity), locale);
			})
		];
	});
	const customer = first && heldChoice(first, says.customer);
	const totals = held.map((one) => heldNumber(one, says.total.quantity));
	const sum = totals.every((value) => value !== null)
		? totals.reduce<number>((all, value) => all + value, 0)
		: null;
	const termOf = (
		one: Held,
		{ title, quantity, words }: NonNullable<typeof says.terms>[number]
	): string | null => {
		const value = heldValue(one, quantity);
		if (typeof value === 'number') return amountWithUnit(value, unitIn(quantity), locale);
		if (typeof value === 'string' && words && Object.hasOwn(words, value)) return words[value]!;
		if (typeof value === 'string' && words === undefined)
			return heldLabel(one, heldFigure(one, quantity)?.member_of, value);
		lacks.push(
			typeof value === 'string' ? texts.noWords(title, value) : texts.noTerm(title, customer?.label)
		);
		return null;
	};
	const month = picture.hour_value?.chosen;
	const terms = (says.terms ?? []).flatMap((term) => {
		const each = held.map((one, i) => {
			const calls = term.quantity === month ? quote.items[i]?.calls : undefined;
			return calls ? callsText(calls, unitIn(picture.size), locale) : termOf(one, term);
		});
		const [own] = each;
		if (own !== undefined && each.every((text) => text === own))
			return own === null ? [] : [[term.title, own] as const];
		// Where items differ, each says its own.
		const told = each.flatMap((text, i) => (text === null ? [] : [texts.ofItem(i + 1, text)]));
		return told.length > 0 ? [[term.title, told.join('\n')] as const] : [];
	});
	if (!letterhead.name) lacks.push(texts.noLetterhead);
	if (!customer && !quote.to) lacks.push(texts.noCustomer);
	const whole = held.flatMap((one, i) =>
		wholeOf(one, picture, locale).map((text) =>
			held.length > 1 ? texts.ofItem(i + 1, text) : text
		)
	);
	const cautions = (says.cautions ?? []).filter(({ when }) =>
		held.some((one) => heldValue(one, when) === true)
	);
	const day = (text: string) =>
		new Intl.DateTimeFormat(locale, { dateStyle: 'long', timeZone: 'UTC' }).format(
			new Date(`${text}T00:00:00Z`)
		);
	const isDraft = quote.state === 'asked';
	return {
		lacks: [...new Set(lacks)],
		offer: {
			title: texts.offer(quoteName(quote)),
			isDraft,
			letterhead,
			to: quote.to ?? customer?.label ?? '',
			facts: [
				[texts.number, quoteName(quote)],
				[texts.date, day(quote.date)],
				...(quote.valid_until !== undefined
					? ([[texts.validUntil, day(quote.valid_until)]] as const)
					: []),
				...(quote.by !== undefined ? ([[texts.contact, quote.by]] as const) : [])
			],
			columns,
			rows,
			total:
				held.length > 1 && sum !== null
					? amountWithUnit(sum, unitIn(says.total.quantity), locale)
					: null,
			terms,
			says: quote.terms ? [quote.terms] : [],
			clause: clauseOf(picture, first, locale),
			cautions: [...whole, ...cautions.map(({ note }) => note)]
		}
	};
}

/** What the customer calls it, and what it is. */
function nameOf(
	own: string | undefined,
	goods: { readonly id: string; readonly label: string } | null | undefined
): string {
	const what = goods ? texts.goods(goods.label, goods.id) : '';
	return own && what ? `${own}: ${what}` : (own ?? what);
}

/** "October 2028 20,000 m, November 2028 20,000 m". */
function callsText(calls: readonly QuoteCall[], unit: string, locale: string): string {
	const month = new Intl.DateTimeFormat(locale, {
		month: 'long',
		year: 'numeric',
		timeZone: 'UTC'
	});
	return calls
		.map((call) =>
			texts.call(
				month.format(new Date(`${call.month}-01T00:00:00Z`)),
				amountWithUnit(call.amount, unit, locale)
			)
		)
		.join(', ');
}

/** Says where more is offered than was asked for, as whole coils ask for it. */
function wholeOf(held: Held, { offer }: QuotePicture, locale: string): string[] {
	const count = offer?.counts[0]?.quantity;
	if (offer?.asked === undefined || count === undefined) return [];
	const [asked, offered] = [heldNumber(held, offer.asked), heldNumber(held, count)];
	if (asked === null || offered === null || asked === offered) return [];
	const text = (value: number, name: string) =>
		amountWithUnit(value, heldFigure(held, name)?.unit ?? '', locale);
	return [texts.whole(text(asked, offer.asked), text(offered, count))];
}

function clauseOf(
	{ offer, clause }: QuotePicture,
	held: Held | undefined,
	locale: string
): Offer['clause'] {
	if (offer?.note === undefined) return null;
	const share = clause && held && heldFigure(held, clause.share);
	const set = share?.per?.[0];
	const shares = flatten(share?.value).flatMap(({ at, value }) =>
		typeof value === 'number' && value !== 0 && held
			? [`${heldLabel(held, set, at[0] ?? '')} ${amountWithUnit(value, share?.unit ?? '', locale)}`]
			: []
	);
	return { text: offer.note, shares };
}
