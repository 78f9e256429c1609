/**
 * A save: the document is checked, merged with what others saved meanwhile, and added as the next revision.
 *
 * The store decides who comes first; whoever comes second merges again with what is newest then. All reading of
 * workbooks is done by `documents/`; here are texts, which are remembered because a revision never changes.
 */
import type { Change } from '$lib/workbook/compare/change';
import type { FileProblem } from '$lib/workbook/load';
import { Documents } from './documents/documents';
import { newId } from './store/ids';
import { addRevision, createWorkbook, readDocument, type Author } from './store/revisions';
import type { Database } from './store/tables';
import { headOf } from './store/workbooks';

export interface Save {
	readonly workbookId: string;
	/** Number of the revision that the document was made from. */
	readonly base: number;
	/** The text as sent. */
	readonly text: string;
	readonly author: Author;
	readonly reason: string;
	readonly now: number;
	readonly restores?: number;
}

export type Saved =
	| {
			readonly kind: 'saved';
			readonly number: number;
			/** Whether others' changes are in it, so that the page must take it over. */
			readonly merged: boolean;
			readonly document: string;
			readonly changes: readonly Change[];
	  }
	/** Nothing differs from the newest revision: a save that had arrived already, or no change. */
	| { readonly kind: 'unchanged'; readonly number: number; readonly document: string }
	| {
			readonly kind: 'conflict';
			readonly number: number;
			readonly document: string;
			/** As JSON. */
			readonly conflicts: string;
			readonly count: number;
	  }
	| { readonly kind: 'refused'; readonly problem: FileProblem }
	| { readonly kind: 'missing' }
	| { readonly kind: 'unknown_base' }
	| { readonly kind: 'too_busy' };

/** Times that a save starts again because another came first. */
const MOST_TRIES = 20;
/** Characters of the texts remembered. */
const REMEMBERED = 64 * 1024 * 1024;

export class Saver {
	readonly #texts = new Map<string, string>();
	#size = 0;
	/** The last save of each workbook, so that one process does not race with itself. */
	readonly #queues = new Map<string, Promise<unknown>>();

	constructor(
		readonly db: Database,
		readonly onSaved: (workbookId: string, number: number) => void = () => undefined,
		readonly documents = new Documents()
	) {}

	/** A new workbook. The first revision tells that it was begun, not each of its values. */
	async create(
		text: string,
		author: Author,
		reason: string,
		now: number
	): Promise<
		| { readonly ok: true; readonly id: string; readonly document: string }
		| { readonly ok: false; readonly problem: FileProblem }
	> {
		const begun = await this.documents.begin(text);
		if (begun.kind === 'refused') return { ok: false, problem: begun.problem };
		const { document } = begun.revision;
		const id = newId();
		const first = { ...begun.revision, author, madeAt: now, reason };
		await createWorkbook(this.db, id, first, author.id);
		this.#remember(id, 1, document);
		return { ok: true, id, document };
	}

	async save(save: Save): Promise<Saved> {
		const before = this.#queues.get(save.workbookId) ?? Promise.resolve();
		const mine = before.then(() => this.#save(save));
		const settled = mine.catch(() => undefined);
		this.#queues.set(save.workbookId, settled);
		try {
			return await mine;
		} finally {
			if (this.#queues.get(save.workbookId) === settled) this.#queues.delete(save.workbookId);
		}
	}

	async #save(save: Save): Promise<Saved> {
		const { workbookId, base, author, reason, restores } = save;
		for (let tries = 0; tries < MOST_TRIES; tries++) {
			const head = await headOf(this.db, workbookId);
			if (head === null) return { kind: 'missing' };
			const was = await this.text(workbookId, base);
			const newest = await this.text(workbookId, head);
			if (was === null || newest === null) return { kind: 'unknown_base' };
			const texts = { mine: save.text, base: was, newest };
			const made = await this.documents.save(texts, workbookId);
			if (made.kind === 'refused') return made;
			if (made.kind === 'conflict') return { ...made, number: head, document: newest };
			if (made.kind === 'unchanged') return { ...made, number: head, document: newest };
			const revision = {
				...made.revision,
				author,
				madeAt: save.now,
				reason,
				...(restores !== undefined && { restores })
			};
			if (!(await addRevision(this.db, workbookId, head, revision))) continue;
			const { document, changes } = revision;
			const number = head + 1;
			this.#remember(workbookId, number, document);
			this.onSaved(workbookId, number);
			return { kind: 'saved', number, merged: head !== base, document, changes };
		}
		return { kind: 'too_busy' };
	}

	/** The text of a revision; null where there is none. */
	async text(workbookId: string, number: number): Promise<string | null> {
		const known = this.#texts.get(`${workbookId} ${number}`);
		const packed = known ?? (await readDocument(this.db, workbookId, number));
		if (packed === null) return null;
		const text = known ?? (await this.documents.open(packed, workbookId));
		this.#remember(workbookId, number, text);
		return text;
	}

	/** What differs between two revisions, as JSON; null where one of them is not there. */
	async compare(workbookId: string, from: number, to: number): Promise<string | null> {
		const before = await this.text(workbookId, from);
		const after = await this.text(workbookId, to);
		if (before === null || after === null) return null;
		return this.documents.compare(before, after, workbookId);
	}

	/** The latest used come last; the first go when there is no more room. */
	#remember(workbookId: string, number: number, text: string): void {
		const key = `${workbookId} ${number}`;
		this.#forget(key);
		this.#texts.set(key, text);
		this.#size += text.length;
		for (const oldest of this.#texts.keys()) {
			if (this.#size <= REMEMBERED) break;
			this.#forget(oldest);
		}
	}

	#forget(key: string): void {
		this.#size -= this.#texts.get(key)?.length ?? 0;
		this.#texts.delete(key);
	}
}
