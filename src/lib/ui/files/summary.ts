/** The look before an import in one line: what is new, changed, the same, doubted, refused. */
import type { ShortLook } from '$lib/exchange/table/desk';
import { texts } from './texts';

export function summaryOf({ changes, doubted, same, results, refused }: ShortLook): string {
	const fresh = changes.filter(({ before }) => before === null).length;
	const parts = [
		texts.changed(changes.length - fresh),
		texts.fresh(fresh),
		...(doubted.size > 0 ? [texts.ofTheseDoubted(doubted.size)] : []),
		texts.same(same),
		...(results > 0 ? [texts.resultsPassedOver(results)] : []),
		...(refused > 0 ? [texts.refused(refused)] : [])
	];
	return `${parts.join(', ')}.`;
}
