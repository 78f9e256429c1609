/** Quotes: ids that differ. That what they name exists is not asked here: they outlive it, and the page says so. */
import { quoteName } from '../quotes';
import type { Findings } from './findings';

export function checkQuotes(findings: Findings): void {
	const seen = new Set<string>();
	(findings.workbook.quotes ?? []).forEach((quote, i) => {
		const remedy = 'Give one of them another id.';
		if (seen.has(quote.id))
			findings.add(
				['quotes', i, 'id'],
				'duplicate-quote',
				`there are two quotes with the id ${quote.id}`,
				remedy
			);
		seen.add(quote.id);
		const items = new Set<string>();
		quote.items.forEach(({ id }, at) => {
			if (items.has(id))
				findings.add(
					['quotes', i, 'items', at, 'id'],
					'duplicate-item',
					`quote ${quoteName(quote)} has two items with the id ${id}`,
					remedy
				);
			items.add(id);
		});
	});
}
