/**
 * One workbook, one tab that may change it. A second tab reads only, until it takes over; the first is
 * told before that, writes down what it holds, and reads only from then on.
 */

interface Note {
	readonly kind: 'take-over' | 'let-go' | 'saved';
	readonly document: string;
	readonly from: string;
}

export interface TabEvents {
	/**
	 * Another tab takes over: write down what is left, and resolve when that is done. If the hold was
	 * taken without asking, the other tab already writes: write nothing more.
	 */
	onlost: (taken: boolean) => Promise<void> | void;
	/** The tab that may write has saved: what is read here is old. */
	onsavedelsewhere: () => void;
}

/** Longest wait for the other tab to let go before its hold is taken from it. */
const TIMEOUT_MS = 1500;

export class DocumentLock {
	readonly #document: string;
	readonly #events: TabEvents;
	readonly #me = crypto.randomUUID();
	readonly #channel: BroadcastChannel | null;
	#release: (() => void) | null = null;
	#owns = false;

	constructor(document: string, events: TabEvents) {
		this.#document = document;
		this.#events = events;
		this.#channel =
			typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('metrewright');
		this.#channel?.addEventListener('message', (event: MessageEvent<Note>) =>
			this.#hear(event.data)
		);
	}

	/** Whether this tab may write. */
	get owns(): boolean {
		return this.#owns;
	}

	get #lockName(): string {
		return `metrewright workbook ${this.#document}`;
	}

	/** Takes the workbook if no other tab has it. True: this tab may write. */
	async take(): Promise<boolean> {
		return this.#request({ ifAvailable: true });
	}

	/** Asks the other tab to let go, and takes its hold if it does not answer. */
	async takeOver(): Promise<void> {
		this.#say('take-over');
		const patience = new AbortController();
		const timer = setTimeout(() => patience.abort(), TIMEOUT_MS);
		try {
			await this.#request({ signal: patience.signal });
		} catch {
			await this.#request({ steal: true });
		} finally {
			clearTimeout(timer);
		}
	}

	tellSaved(): void {
		if (this.#owns) this.#say('saved');
	}

	/** Lets the workbook go. */
	close(): void {
		this.#letGo();
		this.#channel?.close();
	}

	#letGo(): void {
		this.#owns = false;
		this.#release?.();
		this.#release = null;
	}

	#say(kind: Note['kind']): void {
		this.#channel?.postMessage({ kind, document: this.#document, from: this.#me } satisfies Note);
	}

	async #hear(note: Note): Promise<void> {
		if (note.document !== this.#document || note.from === this.#me) return;
		if (note.kind === 'saved' && !this.#owns) this.#events.onsavedelsewhere();
		if (note.kind !== 'take-over' || !this.#owns) return;
		await this.#events.onlost(false);
		this.#letGo();
	}

	/** Without the browser's locks (a page not served securely) every tab may write. */
	#request(options: LockOptions): Promise<boolean> {
		if (typeof navigator === 'undefined' || !('locks' in navigator)) {
			this.#owns = true;
			return Promise.resolve(true);
		}
		return new Promise((resolve, reject) => {
			const held = navigator.locks.request(this.#lockName, options, (lock) => {
				if (!lock) {
					resolve(false);
					return;
				}
				this.#owns = true;
				resolve(true);
				return new Promise<void>((release) => (this.#release = release));
			});
			held.catch((reason: unknown) => {
				// Either the wait was given up, or another tab took the hold away.
				if (this.#owns) {
					this.#owns = false;
					void this.#events.onlost(true);
				}
				reject(reason);
			});
		});
	}
}
