/** What the header and the pages say of a shared workbook: when it was saved, what waits, who did what. */
import type { Revision } from '$lib/protocol/answers';
import type { Role } from '$lib/protocol/roles';
import type { Change } from '$lib/workbook/compare/change';
import type { SyncState } from '$lib/browser/sync/sync';
import { changeText } from './change-text';

export interface SharedState {
	readonly link: { readonly number: number; readonly at: number } | null;
	readonly state: SyncState | null;
	/** Something was done here that is not on the server. */
	readonly pending: boolean;
}

/** "saved 14:02, revision 41"; null for a workbook that is not shared. */
export function sharedWords(
	{ link, state, pending }: SharedState,
	timeOf: (at: number) => string
): string | null {
	if (!link) return null;
	const saved = `saved ${timeOf(link.at)}, revision ${link.number}`;
	switch (state?.is) {
		case 'sending':
			return pending ? 'sending' : saved;
		case 'offline':
			return 'kept here, no connection';
		case 'asking':
			return 'kept here, waits for your choice';
		case 'refused':
			return 'kept here, not sent';
		default:
			return pending ? 'kept here, to be sent' : saved;
	}
}

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

export const ROLE_WORDS: Readonly<Record<Role, string>> = {
	owner: 'owner',
	editor: 'editor',
	viewer: 'viewer of all values',
	open_viewer: 'viewer without confidential values'
};

/** What a role lets one do, for whoever gives it. */
export const ROLE_MEANS: Readonly<Record<Role, string>> = {
	owner: 'reads, changes, invites and removes',
	editor: 'reads and changes',
	viewer: 'reads everything: values, formulas, history',
	open_viewer: 'sees the values that are not confidential, and nothing of what they come from'
};
