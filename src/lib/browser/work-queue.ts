/**
 * What a worker still has to do, oldest first: one thing after the other, however long each takes. One that fails does
 * not keep the others from their turn.
 */
export class WorkQueue<Task> {
	readonly #take: (task: Task) => Promise<void>;
	readonly #failed: (why: string) => void;
	#tasks: Task[] = [];
	/** For when nothing else is to be done. */
	#last: Task[] = [];
	#isWorking = false;

	constructor(take: (task: Task) => Promise<void>, failed: (why: string) => void) {
		this.#take = take;
		this.#failed = failed;
	}

	/** Whether more has come in than what is being done, what can wait apart. */
	get hasMore(): boolean {
		return this.#tasks.length > 0;
	}

	push(task: Task): void {
		this.#tasks.push(task);
		void this.#work();
	}

	/** Waits until nothing else is to be done. */
	pushLast(task: Task): void {
		this.#last.push(task);
		void this.#work();
	}

	/** Nothing that waits matters any more. */
	clear(): void {
		this.#tasks = [];
		this.#last = [];
	}

	async #work(): Promise<void> {
		if (this.#isWorking) return;
		this.#isWorking = true;
		for (let next = this.#next(); next !== undefined; next = this.#next()) {
			try {
				await this.#take(next);
			} catch (error) {
				this.#failed(error instanceof Error ? error.message : String(error));
			}
			// What has come in meanwhile is heard first.
			await pause();
		}
		this.#isWorking = false;
	}

	#next(): Task | undefined {
		return this.#tasks.shift() ?? this.#last.shift();
	}
}

/** A turn for messages that came in meanwhile. */
export const pause = () => new Promise((resume) => setTimeout(resume));
