/** What an entry of the trail says, in words. An event that is not known here is told by its name. */
import { inLanguage } from '../language';

const en: Readonly<Record<string, string>> = {
	signed_in: 'signed in',
	password_refused: 'gave a wrong password',
	signed_out: 'signed out',
	sessions_ended: 'ended sessions',
	password_changed: 'changed the password',
	account_made: 'got an account',
	account_removed: 'removed an account',
	data_exported: 'took their own data away',
	invited: 'invited',
	invitation_withdrawn: 'withdrew an invitation',
	joined: 'joined',
	role_changed: 'changed a role',
	rights_changed: 'set what a person may do',
	reset_made: 'made a link for a new password',
	password_reset: 'has a new password by a link',
	handed_over: 'handed a workbook over',
	token_made: 'made an API token',
	token_ended: 'ended an API token',
	tokens_ended: 'ended all API tokens of a person',
	trail_exported: 'exported the trail',
	revision_named: 'named a revision',
	workbook_begun: 'put a workbook on the server',
	workbook_saved: 'saved',
	workbook_read: 'read a whole workbook',
	revision_read: 'read an earlier revision',
	workbook_removed: 'removed a workbook'
};
const WORDS = inLanguage({ en });

/** "saved: Marram Coil Works, revision 3" */
export function eventWords(entry: {
	readonly event: string;
	readonly subject: string;
	readonly subjectName: string;
	readonly detail: string;
}): string {
	const what = WORDS[entry.event] ?? entry.event;
	const about = [entry.subjectName || entry.subject, entry.detail].filter((part) => part !== '');
	return about.length > 0 ? `${what}: ${about.join(', ')}` : what;
}
