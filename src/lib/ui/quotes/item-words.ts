/** Items of a quote in words, by the workbook's labels; and what an item that stands comes to, where it was kept without answers. */
import { setOfChoice } from '$lib/workbook/lookup';
import type { QuotePicture } from '$lib/workbook/quote-schema';
import { inputAt } from '$lib/workbook/scenario';
import type { KeptQuote, QuoteItem, Workbook } from '$lib/workbook/schema';
import { heldLabel, heldNumber, heldValue } from './held';
import { itemsTexts as texts } from './items-texts';
import { figuresRead, type ItemAnswer } from './tender';

function chosenWord(
	item: QuoteItem,
	name: string | undefined,
	workbook: Workbook | null | undefined
): { readonly id: string; readonly label: string } | null {
	const id = item.entries.find(({ quantity }) => quantity === name)?.value;
	if (typeof id !== 'string') return null;
	const set = workbook ? setOfChoice(workbook, name) : undefined;
	const member = set?.members.find((one) => one.id === id);
	const held = item.grounds ? heldLabel(item.grounds, set?.name, id) : id;
	return { id, label: member?.label ?? held };
}

/** "PEX-b barrier 15 mm, 50 m"; empty where nothing is chosen. */
export function nameOfItem(
	item: QuoteItem,
	picture: QuotePicture | undefined,
	workbook: Workbook | null | undefined
): string {
	for (const name of picture?.offer?.goods ?? []) {
		const found = chosenWord(item, name, workbook);
		if (found) return found.label === found.id ? found.id : `${found.label} (${found.id})`;
	}
	return '';
}

export function whenOfItem(
	item: QuoteItem,
	picture: QuotePicture | undefined,
	workbook: Workbook | null | undefined
): string {
	const { calls } = item;
	if (calls && calls.length > 0)
		return texts.calledOff(calls.length, calls[0]!.month, calls.at(-1)!.month);
	return chosenWord(item, picture?.hour_value?.chosen, workbook)?.label ?? '';
}

/** Of a quote that was sent before such answers were kept: what its figures hold. */
export function heldAnswers(
	quote: KeptQuote | undefined,
	picture: QuotePicture | undefined
): ItemAnswer[] {
	const tender = picture?.tender;
	if (!quote || !picture || !tender) return [];
	return quote.items.flatMap(({ id, grounds }) => {
		if (!grounds) return [];
		const values = Object.fromEntries(
			grounds.figures.map(({ name }) => [name, heldNumber(grounds, name)])
		);
		const whole = figuresRead({ values }, picture, tender);
		// Before sums were kept: by the piece, times as many.
		const size = heldNumber(grounds, picture.size);
		const times = (one: number | null) => (one === null || size === null ? null : one * size);
		const { price, floor, invoice } = whole;
		const net = whole.net ?? times(price);
		const margin = heldNumber(grounds, picture.margin);
		const over = price === null || floor === null ? null : price - floor;
		return [
			{
				id,
				whole: {
					...{ ...whole, net, revenue: whole.revenue ?? times(invoice) },
					contribution: whole.contribution ?? times(over),
					result: whole.result ?? (net === null || margin === null ? null : (net * margin) / 100)
				}
			}
		];
	});
}

/** How discounts are combined in the price of an item, in the workbook's words. */
export function discountWords(
	workbook: Workbook,
	scenario: string,
	rule: NonNullable<QuotePicture['tender']>['discounts'],
	item: QuoteItem | undefined
): string {
	if (!rule) return '';
	const own = item?.grounds ? heldValue(item.grounds, rule.quantity) : undefined;
	const value = own ?? inputAt(workbook, scenario, rule.quantity, []).value;
	return typeof value === 'string' ? (rule.words[value] ?? '') : '';
}
