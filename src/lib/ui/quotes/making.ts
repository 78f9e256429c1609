/** Making a quote, and keeping what its figures stood on as it goes out. */
import { figuresOf } from '$lib/engine/quote-grounds';
import type { QuoteOver } from '$lib/engine/quote-over';
import type { Layout } from '$lib/engine/layout';
import { dateText, readDate } from '$lib/workbook/date-text';
import { withEntries } from '$lib/workbook/quote-overlay';
import type { QuotePicture } from '$lib/workbook/quote-schema';
import { nextNumber, signOf } from '$lib/workbook/quotes';
import type { KeptQuote, QuoteEntry, QuoteItem, Workbook } from '$lib/workbook/schema';
import type { OfferedInput } from '../quote/fields';
import { heldFigure, heldNumber } from './held';

/** "q_3f9a…": so many letters that two people's never meet. */
export function freshId(): string {
	const bytes = crypto.getRandomValues(new Uint8Array(8));
	return `q_${[...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('')}`;
}

export const entryOf = ({ name, at, value }: OfferedInput): QuoteEntry => ({
	quantity: name,
	...(at.length > 0 && { at: [...at] }),
	value
});

/** A quote of the order that is tried: every input of the order is its own from now on. */
export function quoteOfOrder(
	{ quotes = [] }: Workbook,
	order: readonly OfferedInput[],
	{ id, date, by }: { readonly id: string; readonly date: string; readonly by: string }
): KeptQuote {
	return {
		...{ id, number: nextNumber(quotes, date, signOf(by)), version: 1, state: 'asked', date },
		...(by && { by }),
		items: [{ id: 'one', entries: order.map(entryOf) }]
	};
}

export interface Sending {
	readonly layout: Layout;
	readonly picture: QuotePicture;
	readonly over: QuoteOver;
	/** All inputs that the page offers, as they hold. */
	readonly offered: readonly OfferedInput[];
	readonly date: string;
	/** The title of the scenario that it stands on. */
	readonly of: string;
	readonly revision: number | undefined;
}

/** An item with its figures, its inputs and every entry of its page: nothing of it is anyone else's any more. */
export function standingItem(item: QuoteItem, sending: Sending): QuoteItem {
	const { layout, picture, over, offered, date, of, revision } = sending;
	return {
		...item,
		entries: withEntries(item.entries, offered.map(entryOf)),
		grounds: {
			...{ date, of },
			...(revision !== undefined && { revision }),
			...figuresOf(layout, over.results, picture),
			...(over.inputs && { inputs: over.inputs })
		}
	};
}

/** Of the calendar: a week is seven of its days, whatever a plant works in one. */
const DAYS: Readonly<Record<string, number>> = { day: 1, week: 7 };

/** The last day of a quote, by how long the workbook says that quotes hold; undefined where it says nothing that is days or weeks. */
export function lastDay(
	{ grounds }: QuoteItem,
	picture: QuotePicture,
	date: string
): string | undefined {
	if (!grounds || picture.validity === undefined) return undefined;
	const value = heldNumber(grounds, picture.validity);
	const days = DAYS[heldFigure(grounds, picture.validity)?.unit ?? ''];
	const begun = readDate(date);
	if (value === null || begun === null || days === undefined) return undefined;
	return dateText(begun + Math.floor(value * days));
}
