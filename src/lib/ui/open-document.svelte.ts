/**
 * What is open: which workbook is open, from where, whether its work is kept, and whether this
 * tab may change it. Opens the last one again, the shipped ones, files, and those kept in this browser.
 */
import { version } from '$app/environment';
import { download, fileNameOf, readTextFile } from '$lib/browser/files';
import { fetchShipped, fetchShippedValues } from '$lib/browser/shipped';
import type { KeptEntry, BrowserStore } from '$lib/browser/store';
import { DocumentLock } from '$lib/browser/document-lock';
import { checkedWorkbook, unpackValues, type Answered } from '$lib/engine/shipped-values';
import type { Command } from '$lib/workbook/commands';
import type { Workbook } from '$lib/workbook/schema';
import type { StoredLink } from '$lib/browser/sync/stored-link';
import { Autosave } from './autosave';
import { replay } from './replay';
import type { Session } from './session.svelte';
import { Sharing } from './shared/sharing.svelte';

export type DeskState = 'starting' | 'ready' | 'failed';

/** The workbooks that come with the app, by the name of their file. */
export const SHIPPED = [
	{ name: 'marram-coil-works', title: 'Marram Coil Works, the invented plant' },
	{ name: 'one-line-shop', title: 'One line, two products: a small shop to copy' }
] as const;
export type ShippedName = (typeof SHIPPED)[number]['name'];

const VIEW = 'view';
/** Milliseconds from a change of what is open to its being kept. */
const VIEW_DELAY = 200;
const CURRENT = 'current';

export class OpenDocument {
	readonly #session: Session;
	readonly #store: BrowserStore;
	#autosave: Autosave | null = null;
	#hold: DocumentLock | null = null;
	#viewTimer: ReturnType<typeof setTimeout> | null = null;

	/** The workbook on the server that the open one is. */
	readonly sharing: Sharing;
	state = $state<DeskState>('starting');
	/** Why nothing is open. */
	problem = $state('');
	savedAt = $state<number | null>(null);
	/** Why work is not kept; empty while it is. */
	keepingProblem = $state('');
	kept = $state.raw<readonly KeptEntry[]>([]);
	/** An edit that is not yet written down. */
	unsaved = $state(false);

	constructor(session: Session, store: BrowserStore) {
		this.#session = session;
		this.#store = store;
		this.sharing = new Sharing(session, store);
		session.onedit = (commands, workbook) => this.#edited(commands, workbook);
	}

	/** Opens what was open last, else the shipped plant. */
	async start(): Promise<void> {
		this.#session.prepare();
		try {
			const current = await this.#store.setting(CURRENT);
			if (typeof current === 'string' && (await this.openKept(current))) return;
		} catch (error) {
			this.#keepingFailed(error);
		}
		await this.openShipped('marram-coil-works');
	}

	/** A fresh copy of a shipped workbook; what was open stays kept. */
	async openShipped(name: ShippedName): Promise<void> {
		this.problem = '';
		try {
			const [text, values] = await Promise.all([fetchShipped(name), fetchShippedValues(name)]);
			const shipped = values && unpackValues(values, text, version);
			if (shipped) return await this.#put(checkedWorkbook(text), name, { shipped });
			const { loadWorkbook } = await import('$lib/workbook/load');
			const loaded = loadWorkbook(text, `${name}.json`);
			if (!loaded.ok) return this.#failed(loaded.problem.line);
			await this.#put(loaded.workbook, name);
		} catch (error) {
			const why = error instanceof Error ? error.message : String(error);
			this.#failed(
				`The shipped workbook could not be fetched (${why}). Check the connection and load the page again, or open a file.`
			);
		}
	}

	/** A workbook that was made here; what was open stays kept. */
	openNew(workbook: Workbook): Promise<void> {
		return this.#put(workbook, workbook.title);
	}

	/** Gives a sentence if the file does not open; what was open then stays open. */
	async openFile(file: File): Promise<string | null> {
		const read = await readTextFile(file);
		if ('problem' in read) return this.#say(read.problem);
		const { loadWorkbook } = await import('$lib/workbook/load');
		const loaded = loadWorkbook(read.text, read.name);
		if (!loaded.ok) return this.#say(loaded.problem.line, loaded.problem.others);
		await this.#put(loaded.workbook, read.name);
		for (const notice of loaded.notices) this.#session.notice = { tone: 'said', text: notice };
		return null;
	}

	/** One of the workbooks kept in this browser. */
	async openKept(id: string): Promise<boolean> {
		const kept = await this.#store.read(id);
		if (!kept) return false;
		const played = await replay(kept);
		if ('problem' in played) {
			this.#say(played.problem);
			return false;
		}
		const { workbook, upTo, savedAt, refused } = played;
		const view = await this.#store.setting(`${VIEW} ${id}`);
		await this.#open(
			workbook,
			{ id, from: kept.document.from, upTo, whole: kept.document.upTo },
			view
		);
		this.savedAt = savedAt;
		if (refused !== null)
			this.#say(`A kept change of ${workbook.title} could not be made again: ${refused}`);
		this.#attach();
		return true;
	}

	/** A workbook as it stands on the server, in place of what is open. */
	async openShared(link: StoredLink): Promise<void> {
		const { findLinked } = await import('$lib/browser/sync/stored-link');
		const kept = await findLinked(this.#store, link.id).catch(() => null);
		if (kept !== null && (await this.openKept(kept))) return;
		await this.#put(link.base, 'this server', { link });
	}

	/** From now on the open workbook is that one on the server. */
	async share(link: StoredLink): Promise<void> {
		await this.#keepLink(link);
		this.#attach(link);
	}

	async #keepLink(link: StoredLink): Promise<void> {
		const autosave = this.#autosave;
		if (!autosave) return;
		try {
			const { keepLink } = await import('$lib/browser/sync/stored-link');
			await autosave.written();
			await keepLink(this.#store, autosave.id, link);
		} catch (error) {
			this.#keepingFailed(error);
		}
	}

	#attach(link?: StoredLink): void {
		const [autosave, hold] = [this.#autosave, this.#hold];
		if (!autosave || !hold) return;
		const openDocument = {
			document: autosave.id,
			owns: hold.owns,
			written: () => autosave.written()
		};
		void this.sharing.attach(openDocument, link);
	}

	/** The workbook as a file, as it is on screen. */
	async saveCopy(): Promise<void> {
		const { workbook } = this.#session;
		if (!workbook) return;
		try {
			const { saveWorkbook } = await import('$lib/workbook/save');
			download(`${fileNameOf(workbook.title)}.json`, saveWorkbook(workbook));
		} catch {
			this.#say(
				'The copy could not be written, because a part of the program was not fetched. Check the connection and try again; do not close the page.'
			);
		}
	}

	/** Fetches what a lost connection would keep from us: opening and saving files. */
	async fetchAhead(): Promise<void> {
		await Promise.allSettled([import('$lib/workbook/save'), import('$lib/workbook/load')]);
	}

	async list(): Promise<void> {
		try {
			this.kept = await this.#store.list();
		} catch (error) {
			this.#keepingFailed(error);
		}
	}

	async forget(id: string): Promise<void> {
		await this.#store.forget(id);
		await this.list();
	}

	/** Takes the workbook from the other tab and shows it as that tab left it. */
	async takeOver(): Promise<void> {
		const id = this.#autosave?.id;
		if (!id || !this.#hold) return;
		await this.#hold.takeOver();
		await this.openKept(id);
	}

	/** Before the page goes away. */
	async leave(): Promise<void> {
		this.#keepView();
		await this.#autosave?.flush();
	}

	/** Call when something that a reader has open changes. */
	viewChanged(): void {
		// Not put off by the next change: what is open is never further behind than an edit that is called saved.
		this.#viewTimer ??= setTimeout(() => this.#keepView(), VIEW_DELAY);
	}

	#keepView(): void {
		if (this.#viewTimer !== null) clearTimeout(this.#viewTimer);
		this.#viewTimer = null;
		const id = this.#autosave?.id;
		if (!id || this.#session.readOnly) return;
		const view = JSON.parse(JSON.stringify(this.#session.view.kept)) as unknown;
		this.#store.keepSetting(`${VIEW} ${id}`, view).catch(() => undefined);
	}

	async #put(
		workbook: Workbook,
		from: string,
		{ link, shipped = null }: { link?: StoredLink; shipped?: Answered | null } = {}
	): Promise<void> {
		const id = crypto.randomUUID();
		await this.#open(workbook, { id, from, upTo: 0, whole: 0 }, null, shipped);
		await this.#autosave?.begin();
		if (link) await this.#keepLink(link);
		this.#attach(link);
	}

	async #open(
		workbook: Workbook,
		document: { id: string; from: string; upTo: number; whole: number },
		view: unknown,
		shipped: Answered | null = null
	): Promise<void> {
		this.sharing.leave();
		const again = this.#autosave?.id === document.id;
		if (!again) {
			await this.leave();
			this.#hold?.close();
			this.#hold = new DocumentLock(document.id, {
				onlost: (taken) => this.#lost(taken),
				onsavedelsewhere: () => void this.#refresh(document.id)
			});
		}
		this.#autosave = new Autosave(
			this.#store,
			{ ...document, workbook },
			{
				onsaved: (at) => this.#saved(at),
				onfailed: (reason) => this.#keepingFailed(reason)
			}
		);
		this.#session.readOnly = false;
		this.#session.readOnlyFor = 'tab';
		this.#session.open(workbook, view, shipped);
		this.state = 'ready';
		this.savedAt = null;
		const owns = this.#hold?.owns || (await this.#hold?.take());
		this.#session.readOnly = owns === false;
		this.#store.keepSetting(CURRENT, document.id).catch((error) => this.#keepingFailed(error));
	}

	#edited(commands: readonly Command[], workbook: Workbook): void {
		this.unsaved = true;
		this.#autosave?.keep(commands, workbook);
		this.sharing.edited();
	}

	#saved(at: number): void {
		this.savedAt = at;
		this.unsaved = false;
		this.keepingProblem = '';
		this.#hold?.tellSaved();
	}

	async #lost(taken: boolean): Promise<void> {
		this.sharing.leave();
		await this.#autosave?.stop(taken);
		this.#session.readOnly = true;
		this.#session.readOnlyFor = 'tab';
	}

	/** The other tab saved: show what it has. */
	async #refresh(id: string): Promise<void> {
		if (!this.#session.readOnly || this.#autosave?.id !== id) return;
		const kept = await this.#store.read(id);
		if (!kept) return;
		const played = await replay(kept);
		if (!('problem' in played)) this.#session.open(played.workbook, this.#session.view.kept);
	}

	#keepingFailed(error: unknown): void {
		const why = error instanceof Error ? error.message : String(error);
		this.keepingProblem = `Your work is not being kept in this browser (${why}). Save a copy before you close the page.`;
	}

	#failed(problem: string): void {
		if (this.#session.workbook) {
			this.#say(problem);
			return;
		}
		this.state = 'failed';
		this.problem = problem;
	}

	#say(text: string, details: readonly string[] = []): string {
		this.#session.notice = { tone: 'error', text, details };
		return text;
	}
}
