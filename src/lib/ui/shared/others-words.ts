/** What others did, for the line that tells of it; fetched when it first happens. */
import type { Revision } from '$lib/protocol/answers';
import type { Change } from '$lib/workbook/compare/change';
import { changeText } from './change-text';

/**
 * What others did, in a breath: "Anna Berg: resin price: 1.95 to 2.10 EUR/kg, and 2 more". Where nobody has an account,
 * the others are other browsers.
 */
export function othersWords(
	revisions: readonly Pick<Revision, 'author' | 'changes'>[],
	accounts = true,
	locale = 'en'
): string {
	const byAuthor = new Map<string, Change[]>();
	for (const { author, changes } of revisions) {
		const name = accounts ? author.name : 'Another browser';
		byAuthor.set(name, [...(byAuthor.get(name) ?? []), ...changes]);
	}
	return [...byAuthor]
		.map(([name, [first, ...others]]) => {
			const more = others.length > 0 ? `, and ${others.length} more` : '';
			return first === undefined ? `${name} saved` : `${name}: ${changeText(first, locale)}${more}`;
		})
		.join('; ');
}
