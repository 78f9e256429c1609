/** Whether the one who asks may use a route. A stranger to a workbook is not told that it exists. */
import { includes, type Role } from '$lib/protocol/roles';
import { roleOf } from '../people/memberships';
import { isFor, through } from '../people/tokens';
import type { Database } from '../store/tables';
import { headOf } from '../store/workbooks';
import { problem } from './problem';
import type { Needs, Who } from './route';

/** Null where they may. */
export async function refusal(
	db: Database,
	who: Who,
	needs: Needs,
	workbookId: string | null
): Promise<Response | null> {
	if (needs === 'anyone') return null;
	if (who.mode === 'single') {
		if (needs === 'person' || needs === 'steward')
			return problem(
				'no-accounts',
				'This server has no accounts: whoever sits at this machine may do everything. Make the first account on the command line.'
			);
		return workbookId === null || needs === 'worker' ? null : missing(db, workbookId);
	}
	const { person, token } = who;
	if (!person) return problem('sign-in-needed', 'Sign in, then try again.');
	if (token && (needs === 'person' || needs === 'steward'))
		return problem(
			'not-allowed',
			'An API token works on workbooks alone. Sign in as a person for this.'
		);
	if (needs === 'worker' || needs === 'person') return null;
	if (needs === 'steward')
		return person.steward
			? null
			: problem('not-allowed', 'Only an administrator of this installation may do this. Ask one.');
	const role = workbookId === null ? null : await roleOf(db, workbookId, person.id);
	if (role === null || workbookId === null || (token && !isFor(token, workbookId)))
		return noSuchWorkbook();
	if (!includes(role, needs)) return notInRole(role, needs);
	if (token && !includes(through(role, token), needs))
		return problem(
			'not-allowed',
			needs === 'editor'
				? `The API token “${token.name}” may only read. Make one that may read and save.`
				: 'An API token does nothing that only owners may. Sign in as a person for this.'
		);
	return missing(db, workbookId);
}

const missing = async (db: Database, workbookId: string) =>
	(await headOf(db, workbookId)) === null ? noSuchWorkbook() : null;

export const noSuchWorkbook = (): Response =>
	problem('not-found', 'There is no such workbook, or you have no part in it. Ask its owner.');

export const noSuchAccount = (): Response => problem('not-found', 'There is no such account.');

const WORDS: Readonly<Record<Role, string>> = {
	owner: 'an owner',
	editor: 'an editor',
	viewer: 'a viewer of all values',
	open_viewer: 'a viewer without confidential values'
};

const notInRole = (role: Role, needed: Role): Response =>
	problem(
		'not-allowed',
		`You are ${WORDS[role]} of this workbook; this takes ${WORDS[needed]}. Ask an owner.`
	);
