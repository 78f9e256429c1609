/**
 * The commands that work on the store: `account add-owner EMAIL`, `account list`, `backup FILE`, `restore FILE`. They
 * find it by the same settings as the server, which may run meanwhile.
 */
import { existsSync } from 'node:fs';
import { note } from '$lib/server/people/audit';
import { hashPassword, passwordProblem } from '$lib/server/people/passwords';
import { addPerson, adoptWorkbooks, asEmail, listPeople } from '$lib/server/people/people';
import { openStoreOf, settingsFrom, StartError } from '$lib/server/start';
import { backUp, restore, RestoreError } from '$lib/server/store/backup';
import type { Store } from '$lib/server/store/open';
import { z } from '$lib/server/zod';
import type { CommandOutput } from './command-output';

/** Gives the new password: asked for, or read where nobody is there to ask. */
export type AskPassword = () => Promise<string | null>;

export async function storeCommand(
	args: readonly string[],
	environment: Readonly<Record<string, string | undefined>>,
	askPassword: AskPassword
): Promise<CommandOutput> {
	const [command, ...rest] = args;
	let store: Store | undefined;
	try {
		const words = wordsProblem(command, rest);
		if (words) return { out: '', err: words, code: 2 };
		store = await openStoreOf(settingsFrom(environment), Date.now());
		if (command === 'backup') return await backupTo(store, rest[0]!);
		if (command === 'restore') return await restoreFrom(store, rest[0]!);
		return rest[0] === 'list' ? await list(store) : await addOwner(store, rest[1]!, askPassword);
	} catch (error) {
		if (error instanceof StartError || error instanceof RestoreError)
			return { out: '', err: error.message, code: 2 };
		const code = (error as NodeJS.ErrnoException).code ?? '';
		if (/^(E[A-Z]+|Z_\w+)$/.test(code))
			return { out: '', err: `${rest[0]}: ${(error as Error).message}.`, code: 2 };
		throw error;
	} finally {
		await store?.close();
	}
}

function wordsProblem(command: string | undefined, rest: readonly string[]): string | null {
	const [first, second] = rest;
	if (command === 'account') {
		if (first === 'list' && rest.length === 1) return null;
		if (first !== 'add-owner' || second === undefined || rest.length > 2)
			return 'account takes "add-owner EMAIL" or "list". The password is asked for, or read from METREWRIGHT_PASSWORD or standard input.';
		return z.email().safeParse(second).success
			? null
			: `"${second}" is no e-mail address. Write one such as name@plant.example.`;
	}
	if (first === undefined || rest.length > 1) return `${command} takes one file: ${command} FILE.`;
	if (command === 'backup' && existsSync(first))
		return `${first} exists already. Name a new file, so that no older back-up is lost.`;
	if (command === 'restore' && !existsSync(first))
		return `${first}: there is no such file. Check the path.`;
	return null;
}

async function addOwner(store: Store, email: string, ask: AskPassword): Promise<CommandOutput> {
	const password = await ask();
	if (password === null)
		return {
			out: '',
			err: 'No password was given. Set METREWRIGHT_PASSWORD, pipe it in, or run the command in a terminal.',
			code: 2
		};
	const bad = passwordProblem(password, email);
	if (bad) return { out: '', err: bad, code: 2 };
	const now = Date.now();
	const person = await addPerson(store.db, {
		email,
		name: asEmail(email).split('@')[0]!,
		password: await hashPassword(password),
		steward: true,
		now
	});
	if (!person) return { out: '', err: `${email} has an account already.`, code: 2 };
	await adoptWorkbooks(store.db, person.id);
	const address = 'command line';
	await note(store.db, { now, event: 'account_made', personId: person.id, address });
	return {
		out: `${person.email} has an account, manages this installation, and owns every workbook that nobody owned.\n`,
		code: 0
	};
}

async function list(store: Store): Promise<CommandOutput> {
	const people = await listPeople(store.db);
	const lines = people.map(({ email, name, steward }) =>
		[email, name, ...(steward ? ['administrator'] : [])].join('\t')
	);
	return { out: lines.length > 0 ? `${lines.join('\n')}\n` : 'Nobody has an account.\n', code: 0 };
}

async function backupTo(store: Store, file: string): Promise<CommandOutput> {
	const rows = await backUp(store.db, file, Date.now());
	return { out: `${file} holds everything: ${rows} rows.\n`, code: 0 };
}

async function restoreFrom(store: Store, file: string): Promise<CommandOutput> {
	const rows = await restore(store.db, file);
	return { out: `Everything of ${file} is back: ${rows} rows.\n`, code: 0 };
}
