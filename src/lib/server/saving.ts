/**
 * A save: the document is checked, merged with what others saved meanwhile, and added as the next revision.
 *
 * The store decides who comes first; whoever comes second merges again with what is newest then. Parsed revisions are
 * remembered, because they never change; nothing else is kept between saves.
 */
import { compareWorkbooks, type ValueDifference } from '$lib/workbook/compare';
import { loadWorkbook, type FileProblem } from '$lib/workbook/load';
import { mergeWorkbooks, type Conflict } from '$lib/workbook/merge';
import { saveWorkbook } from '$lib/workbook/save';
import type { Workbook } from '$lib/workbook/schema';
import { newId } from './store/ids';
import {
	addRevision,
	createWorkbook,
	readDocument,
	type Author,
	type NewRevision,
	type ValueChange
} from './store/revisions';
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
			readonly changes: readonly string[];
	  }
	/** Nothing differs from the newest revision: a save that had arrived already, or no change. */
	| { readonly kind: 'unchanged'; readonly number: number; readonly document: string }
	| {
			readonly kind: 'conflict';
			readonly number: number;
			readonly document: string;
			readonly conflicts: readonly Conflict[];
	  }
	| { readonly kind: 'refused'; readonly problem: FileProblem }
	| { readonly kind: 'missing' }
	| { readonly kind: 'unknown_base' }
	| { readonly kind: 'too_busy' };

/** Times that a save starts again because another came first. */
const MOST_TRIES = 20;
/** Lines of a change list that are kept. */
const MOST_LINES = 400;
/** Parsed revisions remembered. */
const REMEMBERED = 24;

interface Opened {
	readonly workbook: Workbook;
	readonly text: string;
}

export class Saver {
	readonly #opened = new Map<string, Opened>();
	/** The last save of each workbook, so that one process does not race with itself. */
	readonly #queues = new Map<string, Promise<unknown>>();

	constructor(
		readonly db: Database,
		readonly onSaved: (workbookId: string, number: number) => void = () => undefined
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
		const loaded = loadWorkbook(text, 'the workbook');
		if (!loaded.ok) return loaded;
		const { workbook } = loaded;
		const document = saveWorkbook(workbook);
		const id = newId();
		const first: NewRevision = {
			title: workbook.title,
			author,
			madeAt: now,
			reason,
			document,
			changes: [`begin ${workbook.title}`],
			values: []
		};
		await createWorkbook(this.db, id, first, author.id);
		this.#remember(id, 1, { workbook, text: document });
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
		const { workbookId, base } = save;
		const loaded = loadWorkbook(save.text, 'the workbook');
		if (!loaded.ok) return { kind: 'refused', problem: loaded.problem };
		for (let tries = 0; tries < MOST_TRIES; tries++) {
			const head = await headOf(this.db, workbookId);
			if (head === null) return { kind: 'missing' };
			const [was, newest] = [await this.open(workbookId, base), await this.open(workbookId, head)];
			if (!was || !newest) return { kind: 'unknown_base' };
			const merged = mergeWorkbooks({
				base: was.workbook,
				mine: loaded.workbook,
				theirs: newest.workbook
			});
			if (merged.conflicts.length > 0)
				return {
					kind: 'conflict',
					number: head,
					document: newest.text,
					conflicts: merged.conflicts
				};
			const document = saveWorkbook(merged.workbook);
			if (document === newest.text) return { kind: 'unchanged', number: head, document };
			const revision = revisionOf(save, newest.workbook, merged.workbook, document);
			if (!(await addRevision(this.db, workbookId, head, revision))) continue;
			const number = head + 1;
			this.#remember(workbookId, number, { workbook: merged.workbook, text: document });
			this.onSaved(workbookId, number);
			return {
				kind: 'saved',
				number,
				merged: head !== base,
				document,
				changes: revision.changes
			};
		}
		return { kind: 'too_busy' };
	}

	/** A revision, parsed; null where there is none. */
	async open(workbookId: string, number: number): Promise<Opened | null> {
		const key = `${workbookId} ${number}`;
		const known = this.#opened.get(key);
		if (known) {
			this.#opened.delete(key);
			this.#opened.set(key, known);
			return known;
		}
		const text = await readDocument(this.db, workbookId, number);
		if (text === null) return null;
		// Saved by an earlier version of the app, it is brought up as a file would be.
		const loaded = loadWorkbook(text, `revision ${number}`);
		if (!loaded.ok) throw new Error(`A stored revision does not open: ${loaded.problem.code}`);
		const opened = { workbook: loaded.workbook, text: saveWorkbook(loaded.workbook) };
		this.#remember(workbookId, number, opened);
		return opened;
	}

	#remember(workbookId: string, number: number, opened: Opened): void {
		this.#opened.set(`${workbookId} ${number}`, opened);
		for (const key of this.#opened.keys()) {
			if (this.#opened.size <= REMEMBERED) break;
			this.#opened.delete(key);
		}
	}
}

function revisionOf(save: Save, before: Workbook, after: Workbook, document: string): NewRevision {
	const { lines, values } = compareWorkbooks(before, after);
	const changes =
		lines.length > MOST_LINES
			? [...lines.slice(0, MOST_LINES), `and ${lines.length - MOST_LINES} more`]
			: lines;
	return {
		title: after.title,
		author: save.author,
		madeAt: save.now,
		reason: save.reason,
		document,
		changes,
		values: values.map(asChange),
		...(save.restores !== undefined && { restores: save.restores })
	};
}

const asChange = ({ quantity, scenario, at, was, now }: ValueDifference): ValueChange => ({
	quantity,
	scenario,
	at,
	was: was === undefined ? null : JSON.stringify(was),
	now: now === undefined ? null : JSON.stringify(now)
});
