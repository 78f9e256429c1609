/** The items of a quote as they go out: each with its figures of now, or why one of them cannot. */
import { withWorkbook } from '$lib/engine/structure';
import { overlaid } from '$lib/workbook/quote-overlay';
import type { QuotePicture } from '$lib/workbook/quote-schema';
import type { KeptQuote, QuoteItem } from '$lib/workbook/schema';
import { read } from '../figure/read';
import { offeredInputs } from '../quote/fields';
import type { Session } from '../session.svelte';
import { wholeEntries } from './answers.svelte';
import { standingItem } from './making';
import { quoteTexts as texts } from './quote-texts';
import { withSharedInputs } from './shared-inputs';
import type { Dated } from './tender';

export async function itemsToSend(
	session: Session,
	{ items, date }: KeptQuote,
	of: {
		readonly picture: QuotePicture;
		readonly dated: Dated;
		readonly standing: string;
		readonly names: ReadonlyMap<string, string>;
		/** Of the workbook on the server. */
		readonly revision: number | undefined;
	}
): Promise<{ readonly items: QuoteItem[] } | { readonly problem: string }> {
	const { picture, dated, standing, names, revision } = of;
	const { layout, workbook, revision: edit } = session;
	if (!layout || !workbook) return { problem: texts.notYet };
	const sent: QuoteItem[] = [];
	for (const [i, one] of items.entries()) {
		const entries = wholeEntries(one, picture, dated);
		const over = await session.quote(entries, true);
		if (!over || session.revision !== edit) return { problem: texts.notYet };
		const above = overlaid(workbook, entries, standing);
		const source = {
			...{ layout: withWorkbook(layout, above.workbook), results: over.results },
			faults: over.faults
		};
		if (read(source, picture.price).kind !== 'value')
			return {
				problem:
					items.length > 1 ? texts.noFiguresOf(i + 1, names.get(one.id) ?? '') : texts.noFigures
			};
		const offered = offeredInputs([...picture.order, ...(picture.terms ?? [])], {
			...{ source, scenario: above.id, base: standing }
		});
		const keeping = { layout, picture, over, offered, date, revision };
		sent.push(standingItem({ ...one, entries }, { ...keeping, of: session.titleOf(standing) }));
	}
	return { items: withSharedInputs(sent) };
}
