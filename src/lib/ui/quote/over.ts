/** A quote that is kept, as its page sees it: entries go to the quote, and never to the workbook's own cells. */
import type { InputEntry } from '$lib/workbook/commands';

export interface QuoteOver {
	/** Takes entries, or says why not. */
	put(entries: readonly InputEntry[]): string;
	readonly readOnly: boolean;
	/** The scenario that it stands on; null: on figures of its own day, which nobody plans anew. */
	readonly standing: string | null;
}
