/** What a worker answers of a quote: its column, and where it is to be kept, the inputs behind its prices. */
import { pictureOf } from '$lib/workbook/lookup';
import type { Grounds, QuoteEntry } from '$lib/workbook/schema';
import type { Model } from './model';
import { overlayColumn, type OverlayColumn } from './overlay';
import { inputsBehind } from './quote-grounds';

export interface QuoteOver extends OverlayColumn {
	readonly inputs: NonNullable<Grounds['inputs']> | null;
}

export function quoteOver(model: Model, entries: readonly QuoteEntry[], keep: boolean): QuoteOver {
	const column = overlayColumn(model, entries);
	const picture = pictureOf(model.workbook, 'quote');
	const inputs = keep && picture ? inputsBehind(model.plan, column.results, picture) : null;
	return { ...column, inputs };
}
