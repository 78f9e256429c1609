/** The column of a quote, asked for anew after each edit; the one before stays until the next is there. */
import type { QuoteOver } from '$lib/engine/quote-over';
import type { QuoteEntry } from '$lib/workbook/schema';
import type { Session } from '../session.svelte';

export class QuoteColumn {
	found = $state.raw<QuoteOver | null>(null);
	failed = $state(false);

	/** Null entries: nothing is asked. */
	constructor(session: Session, entries: () => readonly QuoteEntry[] | null) {
		$effect(() => {
			const asked = entries();
			const { layout } = session;
			// Asked after each edit, as it may move what the quote stands on.
			if (!asked || !layout || session.revision < 0) return;
			let isLast = true;
			void session.quote(asked).then((found) => {
				if (!isLast) return;
				const fits = found?.results.values.length === layout.cells;
				this.failed = !fits;
				if (fits) this.found = found;
			});
			return () => (isLast = false);
		});
	}

	/** Of a layout of so many cells: an answer of another has none of its values. */
	of(cells: number): QuoteOver | null {
		return this.found?.results.values.length === cells ? this.found : null;
	}
}
