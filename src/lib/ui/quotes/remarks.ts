/** What is amiss with an item of a quote, each named, with what can be done: said beside it, and nothing of the item is lost. */
import type { OrderFigures } from '$lib/engine/quote-figures';
import type { QuotePicture } from '$lib/workbook/quote-schema';
import type { QuoteItem } from '$lib/workbook/schema';
import { marginOf, standingOf, type Dated, type ItemAnswer, type Tender } from './tender';
import { itemsTexts as texts } from './items-texts';

export interface Remark {
	readonly text: string;
	/** A quantity that would do, offered as a button. */
	readonly quantities: readonly { readonly text: string; readonly amount: number }[];
	/** Whether the item cannot go out so. */
	readonly isBad: boolean;
}

export interface RemarksOf {
	readonly item: QuoteItem;
	readonly picture: QuotePicture;
	readonly tender: Tender;
	readonly gone: readonly string[];
	readonly figures: Pick<OrderFigures, 'values' | 'why'> | null;
	readonly answer: ItemAnswer | null;
	/** The sheet's cautions that speak of it, by label. */
	readonly cautions: readonly string[];
	/** Labels of the terms that nothing is entered for, as "Payment terms, Skerrow". */
	readonly termless: readonly string[];
	/** ISO 8601 day of the quote. */
	readonly date: string;
	readonly dated: Dated;
	/** A number in the unit of a quantity. */
	readonly amount: (value: number, name: string) => string;
}

const say = (text: string, isBad = true): Remark => ({ text, isBad, quantities: [] });

export function remarksOf(of: RemarksOf): Remark[] {
	const { item, picture, tender, gone, figures, answer } = of;
	const remarks: Remark[] = [];
	if (gone.length > 0) remarks.push(say(texts.gone(gone.join(', '))));
	const goods = picture.offer?.goods ?? [];
	const hasGoods = goods.some((name) =>
		item.entries.some((one) => one.quantity === name && one.value !== null)
	);
	if (goods.length > 0 && !hasGoods && gone.length === 0)
		remarks.push(say(texts.noGoods(item.text)));
	else if (figures) {
		const { values, why } = figures;
		const { taken_by: takenBy } = picture;
		const isUnpriced = values[picture.price] === null && gone.length === 0;
		const takenNot = takenBy !== undefined && values[takenBy] === null && gone.length === 0;
		if (of.termless.length > 0) remarks.push(say(texts.noTerms(of.termless.join(', '))));
		if (takenNot)
			remarks.push(
				say(
					texts.noLine(
						goods.map((name) => values[name]).find((one) => typeof one === 'string') ?? '',
						why[takenBy] ?? ''
					)
				)
			);
		else if (isUnpriced && of.termless.length === 0)
			remarks.push(say(texts.noPrice(why[picture.price] ?? '')));
		const coils = coilsOf(of, values);
		if (coils) remarks.push(coils);
	}
	for (const { month } of item.calls ?? []) {
		if (month < of.date.slice(0, 7)) remarks.push(say(texts.past(month, of.date)));
		else if (of.dated.size > 0 && !of.dated.has(month))
			remarks.push(say(texts.noSuchMonth(month, [...of.dated.keys()])));
	}
	if (answer) {
		const { whole } = answer;
		if (standingOf(whole) === 'below')
			remarks.push(
				say(texts.below(of.amount(-(whole.contribution ?? 0), tender.contribution)), false)
			);
	}
	if (of.cautions.length > 0) remarks.push(say(`${of.cautions.join('; ')}.`, false));
	return remarks;
}

/** "374.09 coils": the whole numbers below and above. */
function coilsOf(
	{ picture, tender, item, amount }: RemarksOf,
	values: OrderFigures['values']
): Remark | null {
	const [asked, coil] = [
		values[picture.size],
		tender.coil === undefined ? null : values[tender.coil]
	];
	if (typeof asked !== 'number' || typeof coil !== 'number' || coil <= 0) return null;
	const count = asked / coil;
	const near = Math.round(count);
	if (Math.abs(count - near) < 1e-9 * Math.max(1, count)) return null;
	const below = Math.floor(count);
	const offered = [below, below + 1].filter((coils) => coils > 0);
	return {
		text: texts.notWhole(
			amount(asked, picture.size),
			amount(coil, picture.size),
			Math.round(count * 100) / 100
		),
		isBad: false,
		quantities:
			(item.calls?.length ?? 0) > 1
				? []
				: offered.map((coils) => ({
						text: texts.coils(coils, amount(coils * coil, picture.size)),
						amount: coils * coil
					}))
	};
}

/** Whether a price that is named can be matched, in words. */
export function testedWords(
	tested: ItemAnswer['tested'],
	{ picture, tender, amount }: Pick<RemarksOf, 'picture' | 'tender' | 'amount'>
): string {
	if (!tested) return '';
	const { contribution, hours } = tested;
	const standing = standingOf(tested);
	const margin = marginOf(tested);
	if (standing === null || contribution === null) return texts.testedNothing;
	return texts.tested(
		standing,
		amount(contribution, tender.contribution),
		margin === null ? '–' : amount(margin, picture.margin),
		hours === null || picture.hours === undefined ? '–' : amount(hours, picture.hours)
	);
}
