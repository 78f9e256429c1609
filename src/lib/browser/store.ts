/**
 * Work kept in this browser. Every command is written down before it counts as saved; now and then the
 * whole workbook is, and the commands that it holds are dropped. A tab killed at any moment finds all
 * that was called saved: the last whole workbook, and the commands after it.
 *
 * Which tab may write belongs to `tabs.ts`; when to write, to the session.
 */
import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { Command } from '$lib/workbook/commands';
import type { Workbook } from '$lib/workbook/schema';

/** A workbook as kept. */
export interface StoredDocument {
	readonly id: string;
	readonly title: string;
	readonly workbook: Workbook;
	/** The last command that the workbook holds. */
	readonly upTo: number;
	/** Milliseconds since 1970. */
	readonly savedAt: number;
	/** The file it was opened from, or the shipped plant's name. */
	readonly from: string;
}

export interface KeptCommand {
	readonly document: string;
	readonly number: number;
	readonly command: Command;
	readonly savedAt: number;
}

/** What the list of kept workbooks shows. */
export type KeptEntry = Pick<StoredDocument, 'id' | 'title' | 'savedAt' | 'from'>;

interface Schema extends DBSchema {
	documents: { key: string; value: StoredDocument };
	commands: { key: [string, number]; value: KeptCommand };
	settings: { key: string; value: unknown };
}

/** The kept workbook with the commands that came after it, oldest first. */
export interface Kept {
	readonly document: StoredDocument;
	readonly commands: readonly KeptCommand[];
}

const allOf = (document: string) =>
	IDBKeyRange.bound([document, 0], [document, Number.MAX_SAFE_INTEGER]);

/** The setting that says which workbook on the server a kept one is. */
export const linkKey = (document: string): string => `link ${document}`;

/** Longer than any store takes that is going to answer. */
const PATIENCE_MS = 5000;

/** A browser may have no store, refuse it by throwing, or never answer: all become a rejection. */
async function openStore(name: string): Promise<IDBPDatabase<Schema>> {
	if (typeof indexedDB === 'undefined') throw new Error('this browser keeps nothing for this page');
	return openDB<Schema>(name, 1, {
		upgrade(database) {
			database.createObjectStore('documents', { keyPath: 'id' });
			database.createObjectStore('commands', { keyPath: ['document', 'number'] });
			database.createObjectStore('settings');
		}
	});
}

function withinTime<T>(answer: Promise<T>): Promise<T> {
	return new Promise((resolve, reject) => {
		const timer = setTimeout(
			() => reject(new Error('the browser’s store does not answer')),
			PATIENCE_MS
		);
		answer.then(resolve, reject).finally(() => clearTimeout(timer));
	});
}

/** The browser's store. Each method fails by rejecting; the session tells the reader. */
export class BrowserStore {
	readonly #open: Promise<IDBPDatabase<Schema>>;

	constructor(name = 'metrewright') {
		this.#open = withinTime(openStore(name));
		// A rejection is reported by whoever awaits a method.
		this.#open.catch(() => undefined);
	}

	/** Writes the whole workbook and drops the commands that it holds, both or neither. */
	async keepWhole(document: StoredDocument): Promise<void> {
		const database = await this.#open;
		const work = database.transaction(['documents', 'commands'], 'readwrite', {
			durability: 'strict'
		});
		await Promise.all([
			work.objectStore('documents').put(document),
			work
				.objectStore('commands')
				.delete(IDBKeyRange.bound([document.id, 0], [document.id, document.upTo])),
			work.done
		]);
	}

	/** Resolves once the commands would survive a killed tab. */
	async keepCommands(commands: readonly KeptCommand[]): Promise<void> {
		const database = await this.#open;
		const work = database.transaction('commands', 'readwrite', { durability: 'strict' });
		await Promise.all([...commands.map((command) => work.store.put(command)), work.done]);
	}

	async read(id: string): Promise<Kept | null> {
		const database = await this.#open;
		const work = database.transaction(['documents', 'commands'], 'readonly');
		const [document, commands] = await Promise.all([
			work.objectStore('documents').get(id),
			work.objectStore('commands').getAll(allOf(id)),
			work.done
		]);
		if (!document) return null;
		return { document, commands: commands.filter((command) => command.number > document.upTo) };
	}

	/** All kept workbooks, the last saved first. */
	async list(): Promise<KeptEntry[]> {
		const database = await this.#open;
		const documents = await database.getAll('documents');
		return documents
			.map(({ id, title, savedAt, from }) => ({ id, title, savedAt, from }))
			.sort((a, b) => b.savedAt - a.savedAt);
	}

	async forget(id: string): Promise<void> {
		const database = await this.#open;
		const work = database.transaction(['documents', 'commands', 'settings'], 'readwrite');
		await Promise.all([
			work.objectStore('documents').delete(id),
			work.objectStore('commands').delete(allOf(id)),
			work.objectStore('settings').delete(linkKey(id)),
			work.done
		]);
	}

	async setting(key: string): Promise<unknown> {
		return (await this.#open).get('settings', key);
	}

	async keepSetting(key: string, value: unknown): Promise<void> {
		await (await this.#open).put('settings', value, key);
	}

	async dropSetting(key: string): Promise<void> {
		await (await this.#open).delete('settings', key);
	}

	async close(): Promise<void> {
		(await this.#open).close();
	}
}
