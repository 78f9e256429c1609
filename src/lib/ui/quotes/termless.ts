/** Terms of the customer of an order for which nothing is entered, by label: without them there is no price. */
import { axesOf } from '$lib/workbook/axes';
import { findQuantity, setOfChoice } from '$lib/workbook/lookup';
import { overlaid } from '$lib/workbook/quote-overlay';
import type { QuotePicture } from '$lib/workbook/quote-schema';
import { inputAt } from '$lib/workbook/scenario';
import type { QuoteEntry, Workbook } from '$lib/workbook/schema';

export function termlessOf(
	workbook: Workbook,
	entries: readonly QuoteEntry[],
	{ offer, terms = [] }: QuotePicture
): string[] {
	const set = setOfChoice(workbook, offer?.customer);
	if (!offer || !set) return [];
	const over = overlaid(workbook, entries);
	const customer = inputAt(over.workbook, over.id, offer.customer, []).value;
	if (typeof customer !== 'string') return [];
	const member = set.members.find(({ id }) => id === customer);
	return terms.flatMap((name) => {
		const quantity = findQuantity(workbook, name);
		const axes = quantity ? axesOf(quantity) : [];
		if (!quantity || quantity.formula !== undefined) return [];
		if (axes.length !== 1 || axes[0]!.set !== set.name) return [];
		const { value } = inputAt(over.workbook, over.id, name, [customer]);
		return value === null || value === undefined
			? [`${quantity.label}, ${member?.label ?? customer}`]
			: [];
	});
}
