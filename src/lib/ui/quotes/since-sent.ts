/**
 * A quote that one person sent while another changed it: both are kept by a merge, so entries may say what the figures that
 * stand do not. What differs is told, and what was sent can be taken back to.
 */
import type { KeptQuote, QuoteEntry, QuoteItem, Scalar } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';
import { heldFigure, heldLabel } from './held';

export interface ChangedSince {
	readonly item: string;
	readonly label: string;
	readonly sent: string;
	readonly now: string;
	readonly entry: QuoteEntry;
}

const placeOf = (at: readonly string[] = []) => JSON.stringify(at);

/** Entries whose value is not the one that was sent. */
export function changedSinceSent(item: QuoteItem): ChangedSince[] {
	const { grounds } = item;
	if (!grounds) return [];
	return item.entries.flatMap((entry): ChangedSince[] => {
		const figure = heldFigure(grounds, entry.quantity);
		if (!figure) return [];
		const sent =
			flatten(figure.value).find(({ at }) => placeOf(at) === placeOf(entry.at))?.value ?? null;
		if (sent === entry.value) return [];
		const said = (value: Scalar) =>
			typeof value === 'string'
				? heldLabel(grounds, figure.member_of, value)
				: value === null
					? '–'
					: String(value);
		return [
			{
				...{ item: item.id, label: figure.label, sent: said(sent), now: said(entry.value) },
				entry: { ...entry, value: sent }
			}
		];
	});
}

/** Items that came after it was sent, as they have no figures of that day. */
export const addedSince = ({ items }: KeptQuote): QuoteItem[] =>
	items.some(({ grounds }) => grounds) ? items.filter(({ grounds }) => !grounds) : [];

/** As it was sent: entries of that day, and no item that came after. */
export function asSent(quote: KeptQuote): KeptQuote {
	const items = quote.items
		.filter(({ grounds }) => grounds)
		.map((item) => {
			const back = new Map(
				changedSinceSent(item).map(({ entry }) => [`${entry.quantity} ${placeOf(entry.at)}`, entry])
			);
			return {
				...item,
				entries: item.entries.map(
					(entry) => back.get(`${entry.quantity} ${placeOf(entry.at)}`) ?? entry
				)
			};
		});
	return items.length > 0 ? { ...quote, items } : quote;
}
