/** Inputs behind the prices of a quote's items: most are the plant's, so each item after the first keeps those alone that differ. */
import type { KeptQuote, QuoteItem } from '$lib/workbook/schema';

/** Items as they are kept. */
export function withSharedInputs(items: readonly QuoteItem[]): QuoteItem[] {
	const first = items[0]?.grounds?.inputs ?? {};
	return items.map((item, i) => {
		const { inputs } = item.grounds ?? {};
		if (i === 0 || !item.grounds || !inputs) return item;
		const own = Object.entries(inputs).filter(
			([name, value]) => JSON.stringify(first[name]) !== JSON.stringify(value)
		);
		return { ...item, grounds: { ...item.grounds, inputs: Object.fromEntries(own) } };
	});
}

/** All inputs of an item: its own, and those of the first that it does not hold otherwise. */
export function allInputs({ items }: KeptQuote, item: QuoteItem): QuoteItem {
	const first = items[0]?.grounds?.inputs;
	if (!item.grounds || !first || items[0] === item) return item;
	return { ...item, grounds: { ...item.grounds, inputs: { ...first, ...item.grounds.inputs } } };
}
