/**
 * `account …`: the first owner, and what a steward does when nobody can sign in to do it: a new password, another
 * steward, the workbooks of somebody who left.
 */
import { note, type AuditEvent } from '$lib/server/people/audit';
import { handOver, handOverWords } from '$lib/server/people/hand-over';
import { hashPassword, passwordProblem } from '$lib/server/people/passwords';
import {
	addPerson,
	adoptWorkbooks,
	asEmail,
	listPeople,
	personByEmail
} from '$lib/server/people/people';
import { setPassword } from '$lib/server/people/resets';
import { setRights } from '$lib/server/people/rights';
import type { Store } from '$lib/server/store/open';
import { z } from '$lib/server/zod';
import type { CommandOutput } from './command-output';

/** Gives the new password: asked for, or read where nobody is there to ask. */
export type AskPassword = () => Promise<string | null>;

/** How many addresses each takes. */
const TAKES: Readonly<Record<string, number>> = {
	list: 0,
	'add-owner': 1,
	reset: 1,
	'make-administrator': 1,
	'unmake-administrator': 1,
	'hand-over': 2
};

export function accountWordsProblem([what, ...emails]: readonly string[]): string | null {
	if (what === undefined || TAKES[what] !== emails.length)
		return 'account takes "list", "add-owner EMAIL", "reset EMAIL", "make-administrator EMAIL", "unmake-administrator EMAIL" or "hand-over FROM TO". A new password is asked for, or read from METREWRIGHT_PASSWORD or standard input.';
	const wrong = emails.find((email) => !z.email().safeParse(email).success);
	return wrong === undefined
		? null
		: `"${wrong}" is no e-mail address. Write one such as name@plant.example.`;
}

export async function accountCommand(
	store: Store,
	[what, email = '', to = '']: readonly string[],
	ask: AskPassword
): Promise<CommandOutput> {
	switch (what) {
		case 'list':
			return list(store);
		case 'add-owner':
			return addOwner(store, email, ask);
		case 'reset':
			return reset(store, email, ask);
		case 'hand-over':
			return handOverAll(store, email, to);
		default:
			return administrator(store, email, what === 'make-administrator');
	}
}

const refused = (err: string): CommandOutput => ({ out: '', err, code: 2 });
const done = (out: string): CommandOutput => ({ out: `${out}\n`, code: 0 });
const nobody = (email: string): CommandOutput =>
	refused(`${email} has no account here. "account list" names those who have.`);

/** What the machine itself did, for the trail. */
const noted = (store: Store, event: AuditEvent, more: { subject: string; detail?: string }) =>
	note(store.db, { now: Date.now(), event, personId: null, address: 'command line', ...more });

/** The hash of a password that is good enough for this address, or why there is none. */
async function newPassword(
	email: string,
	ask: AskPassword
): Promise<{ readonly hash: string } | CommandOutput> {
	const password = await ask();
	if (password === null)
		return refused(
			'No password was given. Set METREWRIGHT_PASSWORD, pipe it in, or run the command in a terminal.'
		);
	const bad = await passwordProblem(password, email);
	return bad ? refused(bad) : { hash: await hashPassword(password) };
}

async function addOwner(store: Store, email: string, ask: AskPassword): Promise<CommandOutput> {
	const made = await newPassword(email, ask);
	if (!('hash' in made)) return made;
	const now = Date.now();
	const person = await addPerson(store.db, {
		email,
		name: asEmail(email).split('@')[0]!,
		password: made.hash,
		steward: true,
		now
	});
	if (!person)
		return refused(
			`${email} has an account already. "account make-administrator ${email}" lets them manage this installation, "account reset ${email}" gives them a new password.`
		);
	await adoptWorkbooks(store.db, person.id);
	const address = 'command line';
	await note(store.db, { now, event: 'account_made', personId: person.id, address });
	return done(
		`${person.email} has an account, manages this installation, and owns every workbook that nobody owned.`
	);
}

async function reset(store: Store, email: string, ask: AskPassword): Promise<CommandOutput> {
	const person = await personByEmail(store.db, email);
	if (!person) return nobody(email);
	const made = await newPassword(email, ask);
	if (!('hash' in made)) return made;
	await setPassword(store.db, person.id, made.hash, { session: null });
	await noted(store, 'password_reset', { subject: person.id });
	return done(`${person.email} has a new password, and is signed out everywhere.`);
}

async function administrator(store: Store, email: string, steward: boolean) {
	const person = await personByEmail(store.db, email);
	if (!person) return nobody(email);
	if ((await setRights(store.db, person.id, { steward })) === 'last_steward')
		return refused(
			`${person.email} is the last administrator. Make another person one first: "account make-administrator EMAIL".`
		);
	const detail = `steward ${steward ? 'yes' : 'no'}`;
	await noted(store, 'rights_changed', { subject: person.id, detail });
	return done(
		steward
			? `${person.email} manages this installation.`
			: `${person.email} no longer manages this installation.`
	);
}

async function handOverAll(store: Store, from: string, to: string): Promise<CommandOutput> {
	const leaver = await personByEmail(store.db, from);
	if (!leaver) return nobody(from);
	const taker = await personByEmail(store.db, to);
	if (!taker) return nobody(to);
	if (leaver.id === taker.id) return refused('Name two people: who hands over, and who takes.');
	const workbooks = await handOver(store.db, leaver.id, taker.id);
	const detail = handOverWords(leaver, taker);
	for (const subject of workbooks) await noted(store, 'handed_over', { subject, detail });
	const count = workbooks.length === 1 ? '1 workbook' : `${workbooks.length} workbooks`;
	return done(`${taker.email} owns ${count} of ${leaver.email} now.`);
}

async function list(store: Store): Promise<CommandOutput> {
	const people = await listPeople(store.db);
	const lines = people.map(({ email, name, steward }) =>
		[email, name, ...(steward ? ['administrator'] : [])].join('\t')
	);
	return done(lines.length > 0 ? lines.join('\n') : 'Nobody has an account.');
}
