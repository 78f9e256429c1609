/** What was chosen and written for papers of the open workbook: it outlives a walk to another page. */
import type { Format } from '$lib/papers/pdf/sheets';
import { getSession } from '../context';
import type { Session } from '../session.svelte';

export class PaperDraft {
	name = $state('');
	/** Null until somebody chooses. */
	scenarios = $state.raw<readonly string[] | null>(null);
	author = $state('');
	question = $state('');
	openPoints = $state('');
	leftOut = $state('');
	format = $state<Format>('a4');
}

const drafts = new WeakMap<Session, PaperDraft>();

/** To be called while a component is made. */
export function getPaperDraft(): PaperDraft {
	const session = getSession();
	let draft = drafts.get(session);
	if (!draft) drafts.set(session, (draft = new PaperDraft()));
	return draft;
}
