/**
 * The open workbook and the one on the server that it is: whether it is in step, what waits, what is asked. Nothing is
 * asked of the server before the first numbers stand, and nothing at all for a workbook that is not shared.
 *
 * How two versions are put together belongs to `$lib/browser/sync/sync`; the words for it all, to `words.ts`.
 */
import type { BrowserStore } from '$lib/browser/store';
import { dropLink, keepLink, readLink, type StoredLink } from '$lib/browser/sync/stored-link';
import type { Connection } from '$lib/browser/sync/connection';
import { mayEdit, type Role } from '$lib/protocol/roles';
import type { LocalDocument, Link, SyncState } from '$lib/browser/sync/sync';
import type { Workbook } from '$lib/workbook/schema';
import type { Conflict, Side } from '$lib/workbook/merge';
import type { Session } from '../session.svelte';

/* eslint-disable svelte/prefer-svelte-reactivity -- maps here are replaced whole, or nothing is drawn from them */
/** How long no edit must come before it is sent. */
const QUIET_MS = 2000;

/** What was opened, and who writes it down. */
export interface OpenedDocument {
	readonly document: string;
	/** Whether this tab may write. */
	readonly owns: boolean;
	/** Resolves once all work so far is written down. */
	readonly written: () => Promise<void>;
}

export class Sharing {
	readonly #session: Session;
	readonly #store: BrowserStore;
	#openDocument: OpenedDocument | null = null;
	#connection: Connection | null = null;
	/** The first numbers stand. */
	#standing = false;
	#starting = false;
	#taking = false;
	#tries = 0;
	#timer: ReturnType<typeof setTimeout> | null = null;
	/** When revisions were saved that were heard of. */
	readonly #moments = new Map<number, number>();

	link = $state.raw<StoredLink | null>(null);
	/** Null until the server has been asked. */
	state = $state.raw<SyncState | null>(null);
	/** Edits that wait for a quiet moment. */
	pending = $state(false);
	/** Said with the next save. */
	reason = $state('');
	/** Which side stands, as far as chosen; by the key of the conflict. */
	choices = $state.raw<ReadonlyMap<string, Side>>(new Map());
	choosing = $state(false);
	/** What is asked; it stands while the server is asked anew. */
	asked = $state.raw<readonly Conflict[]>([]);

	constructor(session: Session, store: BrowserStore) {
		this.#session = session;
		this.#store = store;
	}

	get role(): Role | null {
		return this.link?.role ?? null;
	}

	/** Another workbook is about to be opened. */
	leave(): void {
		this.#halt();
		this.#openDocument = null;
		this.#standing = false;
		this.link = null;
		this.reason = '';
	}

	/** A workbook has been opened. `link` where it is known already. */
	async attach(openDocument: OpenedDocument, link?: StoredLink): Promise<void> {
		this.#openDocument = openDocument;
		const found = link ?? (await readLink(this.#store, openDocument.document).catch(() => null));
		if (this.#openDocument !== openDocument) return;
		this.#showLink(found);
		await this.#start();
	}

	/** The first numbers stand. */
	wake(): void {
		this.#standing = true;
		void this.#start();
	}

	/** Something was done here. */
	edited(): void {
		if (!this.link || this.#taking) return;
		this.pending = true;
		this.#later(QUIET_MS);
	}

	/** Now, not after a quiet moment: the connection is back, or somebody asks for it. */
	async now(): Promise<void> {
		this.#clear();
		await (this.#connection ? this.#connection.catchUp() : this.#start());
	}

	say(reason: string): void {
		this.reason = reason;
		if (this.#connection) this.#connection.sync.reason = reason;
	}

	/** The choices are made: theirs and mine are put together by them. */
	async settle(): Promise<void> {
		const { choices } = this;
		this.choosing = false;
		await this.#connection?.sync.answer(choices);
	}

	/** From now on this is a workbook of one's own; the one on the server stays as it is. */
	async part(): Promise<void> {
		const openDocument = this.#openDocument;
		if (!openDocument) return;
		await dropLink(this.#store, openDocument.document);
		this.#halt();
		this.link = null;
		this.#session.readOnly = !openDocument.owns;
		this.#session.readOnlyFor = 'tab';
	}

	async #start(): Promise<void> {
		const openDocument = this.#openDocument;
		if (!openDocument?.owns || !this.link || !this.#standing || this.#connection || this.#starting)
			return;
		this.#starting = true;
		try {
			const [{ connect }, { othersWords }] = await Promise.all([
				import('$lib/browser/sync/connection'),
				import('./others-words')
			]);
			const { link } = this;
			if (this.#openDocument !== openDocument || !link) return;
			this.#connection = connect(link, this.#localDocument(openDocument), {
				onstate: (state, at) => this.#follow(state, at),
				onentry: ({ role }) => void this.#changeRole(openDocument, role).catch(() => undefined),
				onothers: (revisions) =>
					(this.#session.said = othersWords(revisions, this.role !== null, this.#session.locale)),
				onmoment: (number, at) => this.#moments.set(number, at)
			});
			this.#connection.sync.reason = this.reason;
		} catch {
			// A part of the program could not be fetched: the connection is lost.
			this.state = { is: 'offline' };
			this.#tryAgain();
		} finally {
			this.#starting = false;
		}
	}

	#localDocument(openDocument: OpenedDocument): LocalDocument {
		return {
			workbook: () => {
				const { workbook } = this.#session;
				if (!workbook || this.#openDocument !== openDocument)
					throw new Error('another workbook is open');
				return workbook;
			},
			take: async (workbook: Workbook) => {
				this.#taking = true;
				try {
					this.#session.takeIn(workbook);
				} finally {
					this.#taking = false;
				}
				await openDocument.written();
			},
			keepLink: async (link: Link) => {
				// What is sent must be found here again after a crash, or it would seem to be taken back here.
				await openDocument.written();
				await keepLink(this.#store, openDocument.document, this.#dated(link));
			}
		};
	}

	#follow(state: SyncState, link: Link): void {
		if (this.link && (link.number !== this.link.number || link.base !== this.link.base))
			this.link = this.#dated(link);
		this.state = state;
		const sync = this.#connection?.sync;
		if (sync && sync.reason !== this.reason) this.reason = sync.reason;
		if (state.is !== 'sending') this.pending = sync?.ahead ?? false;
		if (state.is === 'asking') this.#ask(state.conflicts);
		else if (state.is === 'in_step') {
			this.asked = [];
			this.choices = new Map();
		}
		if (state.is === 'offline') this.#tryAgain();
		else if (state.is !== 'sending') this.#tries = 0;
	}

	/** A choice holds for the two values that were shown, and no later ones. */
	#ask(conflicts: readonly Conflict[]): void {
		const shown = new Set(this.asked.map(versionsOf));
		const standing = conflicts
			.filter((conflict) => shown.has(versionsOf(conflict)))
			.map(({ key }) => key);
		this.choices = new Map([...this.choices].filter(([key]) => standing.includes(key)));
		this.asked = conflicts;
	}

	#tryAgain(): void {
		if (this.#timer === null) this.#later(QUIET_MS * 2 ** Math.min(this.#tries++, 5));
	}

	#dated(link: Link): StoredLink {
		const before = this.link;
		const heard = this.#moments.get(link.number);
		const known = before && before.number === link.number ? before.at : undefined;
		const at = heard ?? known ?? Date.now();
		return { ...link, at, role: before?.role ?? null };
	}

	async #changeRole(openDocument: OpenedDocument, role: Role | null): Promise<void> {
		if (!this.link || role === this.link.role) return;
		this.#showLink({ ...this.link, role });
		await openDocument.written();
		const { link } = this.#connection?.sync ?? this;
		if (link && this.#openDocument === openDocument)
			await keepLink(this.#store, openDocument.document, this.#dated(link));
	}

	#showLink(link: StoredLink | null): void {
		this.link = link;
		if (!this.#openDocument?.owns) return;
		const readOnly = !mayEdit(link?.role ?? null);
		this.#session.readOnly = readOnly;
		this.#session.readOnlyFor = readOnly ? 'role' : 'tab';
	}

	#later(ms: number): void {
		this.#clear();
		this.#timer = setTimeout(() => void this.now(), ms);
	}

	#clear(): void {
		if (this.#timer !== null) clearTimeout(this.#timer);
		this.#timer = null;
	}

	#halt(): void {
		this.#clear();
		this.#connection?.close();
		this.#connection = null;
		this.#moments.clear();
		this.#tries = 0;
		this.state = null;
		this.pending = false;
		this.choices = new Map();
		this.choosing = false;
		this.asked = [];
	}
}

const versionsOf = ({ key, mine, theirs, message }: Conflict) =>
	JSON.stringify([key, mine ?? null, theirs ?? null, message ?? null]);
