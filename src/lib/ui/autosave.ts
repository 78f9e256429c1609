/**
 * Keeps the work of one workbook as it goes: each command is written down at once, the whole workbook
 * after a quiet moment or when the page goes away. What cannot be written is said, and tried again.
 *
 * How the store writes belongs to `$lib/browser/store`.
 */
import type { StoredDocument, BrowserStore } from '$lib/browser/store';
import type { Command } from '$lib/workbook/commands';
import type { Workbook } from '$lib/workbook/schema';

export interface KeeperEvents {
	/** All commands so far would survive a killed tab. */
	onsaved: (at: number) => void;
	onfailed: (reason: string) => void;
}

/** How long no command must come before the whole workbook is written. */
const QUIET = 3000;

export class Autosave {
	readonly id: string;
	readonly #store: BrowserStore;
	readonly #events: KeeperEvents;
	readonly #from: string;
	#workbook: Workbook;
	#number: number;
	#whole: number;
	#timer: ReturnType<typeof setTimeout> | null = null;
	#writing: Promise<void> = Promise.resolve();
	#stopped = false;
	#failed = false;

	/** `upTo` is the last command that the workbook holds; nothing is written before the first command. */
	constructor(
		store: BrowserStore,
		document: { id: string; workbook: Workbook; from: string; upTo: number; whole: number },
		events: KeeperEvents
	) {
		this.#store = store;
		this.id = document.id;
		this.#workbook = document.workbook;
		this.#from = document.from;
		this.#number = document.upTo;
		this.#whole = document.whole;
		this.#events = events;
	}

	/** Writes the whole workbook for the first time. */
	begin(): Promise<void> {
		return this.#inTurn(() => this.#writeWhole());
	}

	/** One edit: the commands, and the workbook after them. */
	keep(commands: readonly Command[], workbook: Workbook): void {
		if (this.#stopped) return;
		const savedAt = Date.now();
		this.#workbook = workbook;
		const kept = commands.map((command) => ({
			document: this.id,
			number: ++this.#number,
			command,
			savedAt
		}));
		const upTo = this.#number;
		void this.#inTurn(async () => {
			// After a failure the whole is written, so that no command is missing between.
			if (this.#failed) await this.#writeWhole();
			else await this.#store.keepCommands(kept);
			if (upTo === this.#number) this.#events.onsaved(savedAt);
		});
		if (this.#timer !== null) clearTimeout(this.#timer);
		this.#timer = setTimeout(() => void this.flush(), QUIET);
	}

	/** Resolves once all that was done so far would survive a killed tab; rejects while it would not. */
	async written(): Promise<void> {
		await this.#writing;
		if (this.#failed) await this.flush();
		if (this.#failed || this.#stopped) throw new Error('the work is not kept in this browser');
	}

	/** Writes the whole workbook if commands stand beside it. */
	flush(): Promise<void> {
		if (this.#timer !== null) clearTimeout(this.#timer);
		this.#timer = null;
		return this.#inTurn(async () => {
			if (this.#whole !== this.#number || this.#failed) await this.#writeWhole();
		});
	}

	/** Writes what is left, unless another tab already writes, and never again. */
	async stop(taken: boolean): Promise<void> {
		if (!taken) await this.flush();
		if (this.#timer !== null) clearTimeout(this.#timer);
		this.#stopped = true;
	}

	async #writeWhole(): Promise<void> {
		const upTo = this.#number;
		const document: StoredDocument = {
			id: this.id,
			title: this.#workbook.title,
			workbook: this.#workbook,
			upTo,
			savedAt: Date.now(),
			from: this.#from
		};
		await this.#store.keepWhole(document);
		this.#whole = upTo;
		this.#failed = false;
		this.#events.onsaved(document.savedAt);
	}

	#inTurn(write: () => Promise<void>): Promise<void> {
		this.#writing = this.#writing.then(async () => {
			if (this.#stopped) return;
			try {
				await write();
			} catch (error) {
				this.#failed = true;
				this.#events.onfailed(error instanceof Error ? error.message : String(error));
			}
		});
		return this.#writing;
	}
}
