/**
 * The commands that work on the store: `account …`, `token …`, `audit …`, `backup FILE`, `restore FILE`. They find it by the same settings as
 * the server, which may run meanwhile.
 */
import { existsSync } from 'node:fs';
import { openStoreOf, settingsFrom, StartError } from '$lib/server/start';
import { backUp, restore, RestoreError } from '$lib/server/store/backup';
import type { Store } from '$lib/server/store/open';
import { accountCommand, accountWordsProblem, type AskPassword } from './account-commands';
import type { CommandOutput } from './command-output';
import { tokenCommand, tokenWordsProblem } from './token-commands';
import { auditCommand, auditWordsProblem, isOfFile, TrailFileError } from './trail-commands';

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
		if (command === 'audit' && isOfFile(rest)) return await auditCommand(null, rest);
		store = await openStoreOf(settingsFrom(environment), Date.now());
		if (command === 'backup') return await backupTo(store, rest[0]!);
		if (command === 'restore') return await restoreFrom(store, rest[0]!);
		if (command === 'audit') return await auditCommand(store, rest);
		if (command === 'token') return await tokenCommand(store, rest);
		return await accountCommand(store, rest, askPassword);
	} catch (error) {
		if (
			error instanceof StartError ||
			error instanceof RestoreError ||
			error instanceof TrailFileError
		)
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
	if (command === 'account') return accountWordsProblem(rest);
	if (command === 'audit') return auditWordsProblem(rest);
	if (command === 'token') return tokenWordsProblem(rest);
	const [first] = rest;
	if (first === undefined || rest.length > 1) return `${command} takes one file: ${command} FILE.`;
	if (command === 'backup' && existsSync(first))
		return `${first} exists already. Name a new file, so that no older back-up is lost.`;
	if (command === 'restore' && !existsSync(first))
		return `${first}: there is no such file. Check the path.`;
	return null;
}

async function backupTo(store: Store, file: string): Promise<CommandOutput> {
	const rows = await backUp(store.db, file, Date.now());
	return { out: `${file} holds everything: ${rows} rows.\n`, code: 0 };
}

async function restoreFrom(store: Store, file: string): Promise<CommandOutput> {
	const rows = await restore(store.db, file);
	return { out: `Everything of ${file} is back: ${rows} rows.\n`, code: 0 };
}
