/** What the header and the pages say of a shared workbook: when it was saved, what waits. */
import type { Role } from '$lib/protocol/roles';
import type { SyncState } from '$lib/browser/sync/sync';

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
