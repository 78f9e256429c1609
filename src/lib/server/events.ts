/**
 * Tells those who wait that a workbook has a new revision: at once where this process saved it, within a second where
 * another did. The store is asked only while someone waits.
 */
import { headsOf } from './store/workbooks';
import type { Database } from './store/tables';

type Listener = (head: number) => void;

export class Hub {
	readonly #listeners = new Map<string, Set<Listener>>();
	readonly #heads = new Map<string, number>();
	#timer: NodeJS.Timeout | undefined;

	constructor(
		readonly db: Database,
		readonly everyMs = 1000
	) {}

	/** How many wait, for the limit on them. */
	get watchers(): number {
		return [...this.#listeners.values()].reduce((sum, listener) => sum + listener.size, 0);
	}

	/** Calls back with each newer head; gives the function that ends it. */
	watch(workbookId: string, head: number, listener: Listener): () => void {
		const those = this.#listeners.get(workbookId) ?? new Set();
		this.#listeners.set(workbookId, those.add(listener));
		this.#heads.set(workbookId, Math.max(head, this.#heads.get(workbookId) ?? 0));
		this.#timer ??= setInterval(() => void this.#look(), this.everyMs).unref();
		return () => {
			those.delete(listener);
			if (those.size === 0) {
				this.#listeners.delete(workbookId);
				this.#heads.delete(workbookId);
			}
			if (this.#listeners.size === 0) this.close();
		};
	}

	/** A save of this process. */
	tell(workbookId: string, head: number): void {
		if (head <= (this.#heads.get(workbookId) ?? Infinity)) return;
		this.#heads.set(workbookId, head);
		for (const listener of [...(this.#listeners.get(workbookId) ?? [])]) listener(head);
	}

	close(): void {
		clearInterval(this.#timer);
		this.#timer = undefined;
	}

	async #look(): Promise<void> {
		try {
			const heads = await headsOf(this.db, [...this.#listeners.keys()]);
			for (const [workbookId, head] of heads) this.tell(workbookId, head);
		} catch {
			// The store does not answer just now; the next look may find it again.
		}
	}
}
