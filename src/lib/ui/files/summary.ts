/** The look before an import in one line: what is new, changed, the same, doubted, refused. */
import type { Look } from '$lib/exchange/table/look';
import { texts } from './texts';

export function summaryOf({ changes, doubted, same, results, problems }: Look): string {
	const fresh = changes.filter(({ before }) => before === null).length;
	const parts = [
		texts.changed(changes.length - fresh),
		texts.fresh(fresh),
		...(doubted.size > 0 ? [texts.ofTheseDoubted(doubted.size)] : []),
		texts.same(same),
		...(results > 0 ? [texts.resultsPassedOver(results)] : []),
		...(problems.length > 0 ? [texts.refused(problems.length)] : [])
	];
	return `${parts.join(', ')}.`;
}
