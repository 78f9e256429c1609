/**
 * A list of prices: of every item, or of every pipe by length of coil, per size of an order, at the margin that is wanted.
 * The workbook's own formulas price each as an order that is put over it, so nothing of a list is a cell of the plant.
 */
import type { OrderFigures } from '$lib/engine/quote-figures';
import type { Layout } from '$lib/engine/layout';
import { axesOf } from '$lib/workbook/axes';
import { findQuantity, findSet, pictureOf, setOfChoice } from '$lib/workbook/lookup';
import type { PriceListPicture, QuotePicture } from '$lib/workbook/quote-schema';
import type { QuoteEntry, Workbook } from '$lib/workbook/schema';
import { withEntries } from '$lib/workbook/quote-overlay';
import { goodsEntries } from '../quotes/goods';
import { companionsOf } from '../quote/companions';
import { rounded, type Rounding } from './rounding';

export type PriceOf = 'net_net' | 'on_invoice' | 'on_list';
export type Per = 'metre' | 'hundred' | 'coil';

export interface Listed {
	/** Unique within the list. */
	readonly key: string;
	readonly id: string;
	readonly label: string;
	readonly entries: readonly QuoteEntry[];
}

/** What a workbook's quote lacks for a list of prices, in names of the picture; empty: nothing. */
export function listLacks(workbook: Workbook): readonly ('quote' | 'price_list')[] {
	const picture = pictureOf(workbook, 'quote');
	if (!picture) return ['quote'];
	return picture.price_list ? [] : ['price_list'];
}

/** Everything that the list is of, each with the entries that make an order of it. */
export function listedOf(
	workbook: Workbook,
	scenario: string,
	picture: QuotePicture,
	list: PriceListPicture,
	by: 'item' | 'pipe'
): Listed[] {
	const choice = by === 'item' ? list.item : list.pipe;
	if (choice === undefined) return [];
	const companions = companionsOf(workbook, picture.order, choice);
	const entriesOf = (member: string) =>
		goodsEntries(workbook, scenario, picture, choice, member, companions);
	const lengths = by === 'pipe' ? lengthsOf(workbook, picture) : [];
	return (setOfChoice(workbook, choice)?.members ?? []).flatMap(({ id, label = id }): Listed[] => {
		const entries = entriesOf(id);
		if (by === 'item') return [{ key: id, id, label, entries }];
		return lengths.map((length) => ({
			...{ key: `${id} ${length.number}`, id, label: `${label}, ${length.label}` },
			entries: withEntries(entries, [{ quantity: list.length, value: length.number }])
		}));
	});
}

/** Lengths of coils that prices are worked out for: the set of the quote's own ladder by length. */
function lengthsOf(workbook: Workbook, picture: QuotePicture) {
	const quantity = picture.by_length && findQuantity(workbook, picture.by_length.floor);
	const set = quantity && axesOf(quantity)[0]?.set;
	const members = (set !== undefined && findSet(workbook, set)?.members) || [];
	return members.flatMap(({ id, label = id, number }) =>
		number === undefined ? [] : [{ label, number }]
	);
}

/** Sizes of an order, in the order of the workbook. */
export function sizesOf(layout: Layout, { net_net: name }: PriceListPicture) {
	const set = layout.byName.get(name)?.axes[0]?.set;
	const members = set === undefined ? [] : (layout.sets.get(set)?.members ?? []);
	return members.map(({ id, label = id }) => ({ id, label }));
}

export const namesOfList = ({
	net_net,
	on_invoice,
	on_list,
	today,
	length,
	pipe
}: PriceListPicture): string[] => [
	...[net_net, on_invoice, on_list, length, pipe],
	...(today === undefined ? [] : [today])
];

export interface ListRow {
	readonly listed: Listed;
	/** Metres of a coil; null where it has none. */
	readonly coil: number | null;
	/** Per size, unrounded, by the metre. */
	readonly prices: Readonly<Record<PriceOf, readonly (number | null)[]>>;
	/** Today's list, by the metre. */
	readonly today: number | null;
	/** Why it has no price. */
	readonly why: string;
}

export function rowOfList(listed: Listed, figures: OrderFigures, list: PriceListPicture): ListRow {
	const row = (name: string) => figures.rows[name] ?? [];
	const number = (name: string | undefined) => {
		const value = name === undefined ? null : figures.values[name];
		return typeof value === 'number' ? value : null;
	};
	return {
		listed,
		coil: number(list.length),
		prices: {
			net_net: row(list.net_net),
			on_invoice: row(list.on_invoice),
			on_list: row(list.on_list)
		},
		today: number(list.today),
		why: Object.values(figures.why)[0] ?? ''
	};
}

export interface Rule {
	readonly way: Rounding;
	/** Steps: of a price by the metre, and of one for 100 m or a coil. */
	readonly metre: number;
	readonly more: number;
}

/** A price as it stands on the list: counted, then rounded once. */
export function shownPrice(
	value: number | null | undefined,
	per: Per,
	coil: number | null,
	rule: Rule
): number | null {
	if (value === null || value === undefined || value <= 0) return null;
	if (per === 'metre') return rounded(value, rule.metre, rule.way);
	if (per === 'hundred') return rounded(value * 100, rule.more, rule.way);
	return coil === null ? null : rounded(value * coil, rule.more, rule.way);
}
