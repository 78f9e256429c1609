/**
 * What a quote computes, as a column of its own. It is put over the open workbook and taken off again: the columns of
 * all scenarios stay as they are, and what is computed is what its entries reach.
 */
import type { QuoteEntry } from '$lib/workbook/quote-list-schema';
import { overlaid } from '$lib/workbook/quote-overlay';
import type { QuantityFault } from './faults';
import type { Model } from './model';
import type { Results } from './results';

export interface OverlayColumn {
	readonly results: Results;
	readonly faults: readonly QuantityFault[];
}

export function overlayColumn(model: Model, entries: readonly QuoteEntry[]): OverlayColumn {
	const before = model.workbook;
	const { workbook, id } = overlaid(before, entries);
	model.take(workbook);
	try {
		return { results: model.results(id), faults: model.faults(id) };
	} finally {
		model.take(before);
	}
}
