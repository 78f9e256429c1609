/**
 * A few threads that do one kind of work, each with a limit of time and memory. One that runs away is ended and the next
 * question gets a new one; the server itself never reads, compares or computes a workbook, so that no request keeps
 * the others waiting. What the work is belongs to the module that the thread loads.
 */
import { Worker } from 'node:worker_threads';

export type NotDone =
	/** It took too long, or too much memory, and was stopped. */
	| { readonly kind: 'stopped'; readonly why: 'time' | 'memory' }
	/** Too many wait already. */
	| { readonly kind: 'busy' };

/** What a thread loads: where it stands, and the mark by which it knows that it is one. */
export interface ThreadModule {
	readonly THREAD_URL: string;
	readonly MARK: string;
}

export interface Limits {
	readonly threads: number;
	readonly seconds: number;
	readonly megabytes: number;
	/** Questions that may wait for each thread. */
	readonly waiting: number;
}

interface Waiting<Ask, Answered> {
	readonly ask: Ask;
	readonly about: string;
	readonly done: (outcome: Answered | NotDone) => void;
	readonly fail: (error: unknown) => void;
}

export class Threads<Ask, Answered extends { readonly kind: string }> {
	readonly #idle: Worker[] = [];
	/** What each thread was last asked about: it has that open. */
	readonly #last = new WeakMap<Worker, string>();
	readonly #all = new Set<Worker>();
	readonly #waiting: Waiting<Ask, Answered>[] = [];
	#running = 0;
	#closed = false;

	constructor(
		readonly limits: Limits,
		readonly load: () => Promise<ThreadModule>
	) {}

	/** `about` names what it is about: a thread that was asked about the same before is taken first. */
	run(ask: Ask, about: string): Promise<Answered | NotDone> {
		const { threads, waiting } = this.limits;
		if (this.#closed || this.#waiting.length >= threads * waiting)
			return Promise.resolve({ kind: 'busy' });
		return new Promise((done, fail) => {
			this.#waiting.push({ ask, about, done, fail });
			this.#next();
		});
	}

	async close(): Promise<void> {
		this.#closed = true;
		for (const { done } of this.#waiting.splice(0)) done({ kind: 'busy' });
		await Promise.all([...this.#all].map((worker) => worker.terminate()));
	}

	#next(): void {
		if (this.#running >= this.limits.threads) return;
		const next = this.#waiting.shift();
		if (!next) return;
		this.#running++;
		void this.#run(next.ask, next.about)
			.then(next.done, next.fail)
			.finally(() => {
				this.#running--;
				this.#next();
			});
	}

	async #run(ask: Ask, about: string): Promise<Answered | NotDone> {
		const known = this.#idle.findIndex((worker) => this.#last.get(worker) === about);
		const [idle] = this.#idle.splice(known, 1);
		const worker = idle ?? (await this.#start());
		this.#last.set(worker, about);
		return new Promise((resolve, reject) => {
			const finish = (outcome: Answered | NotDone | null, error?: unknown) => {
				clearTimeout(timer);
				worker.off('message', onMessage).off('error', onError).off('exit', onExit);
				if (outcome && outcome.kind !== 'stopped' && !this.#closed) this.#idle.push(worker);
				else {
					this.#all.delete(worker);
					void worker.terminate();
				}
				if (outcome) resolve(outcome);
				else reject(error);
			};
			const onMessage = (answered: Answered) => finish(answered);
			const onError = (error: NodeJS.ErrnoException) =>
				error.code === 'ERR_WORKER_OUT_OF_MEMORY' ? onExit() : finish(null, error);
			const onExit = () => finish({ kind: 'stopped', why: 'memory' });
			const timer = setTimeout(
				() => finish({ kind: 'stopped', why: 'time' }),
				this.limits.seconds * 1000
			);
			worker.once('message', onMessage).once('error', onError).once('exit', onExit);
			worker.postMessage(ask);
		});
	}

	async #start(): Promise<Worker> {
		const { THREAD_URL, MARK } = await this.load();
		// From the sources, as in tests, the thread needs the same loader as the command line.
		const isSource = THREAD_URL.endsWith('.ts');
		const worker = new Worker(isSource ? loaderFor(THREAD_URL) : new URL(THREAD_URL), {
			eval: isSource,
			workerData: MARK,
			...(isSource && { env: { ...process.env, TSX_TSCONFIG_PATH: 'tsconfig.json' } }),
			resourceLimits: {
				maxOldGenerationSizeMb: this.limits.megabytes,
				maxYoungGenerationSizeMb: 64,
				stackSizeMb: 8
			}
		});
		worker.unref();
		// An error that comes after a thread was ended has nobody to tell; and an idle one that ends is not asked.
		worker.on('error', () => undefined);
		worker.on('exit', () => {
			this.#all.delete(worker);
			const at = this.#idle.indexOf(worker);
			if (at >= 0) this.#idle.splice(at, 1);
		});
		this.#all.add(worker);
		return worker;
	}
}

const loaderFor = (url: string) =>
	`import('tsx/esm/api').then(({ register }) => { register(); return import(${JSON.stringify(url)}); });`;
