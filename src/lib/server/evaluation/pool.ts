/**
 * A few threads that evaluate, each with a limit of time and memory. One that runs away is ended and the next question
 * gets a new one; the server itself never computes a workbook.
 */
import { Worker } from 'node:worker_threads';
import type { Answered, Ask } from './answer';

export type JobOutcome =
	| Answered
	/** It took too long, or too much memory, and was stopped. */
	| { readonly kind: 'stopped'; readonly why: 'time' | 'memory' }
	/** Too many wait already. */
	| { readonly kind: 'busy' };

export interface Limits {
	readonly threads: number;
	readonly seconds: number;
	readonly megabytes: number;
}

/** Questions that wait for each thread. */
const WAITING = 8;

interface Waiting {
	readonly ask: Ask;
	readonly done: (outcome: JobOutcome) => void;
	readonly fail: (error: unknown) => void;
}

export class Pool {
	readonly #idle: Worker[] = [];
	readonly #all = new Set<Worker>();
	readonly #waiting: Waiting[] = [];
	#running = 0;
	#closed = false;

	constructor(readonly limits: Limits) {}

	evaluate(ask: Omit<Ask, 'megabytes'>): Promise<JobOutcome> {
		const { threads, megabytes } = this.limits;
		if (this.#closed || this.#waiting.length >= threads * WAITING)
			return Promise.resolve({ kind: 'busy' });
		return new Promise((done, fail) => {
			this.#waiting.push({ ask: { ...ask, megabytes }, done, fail });
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
		void this.#run(next.ask)
			.then(next.done, next.fail)
			.finally(() => {
				this.#running--;
				this.#next();
			});
	}

	async #run(ask: Ask): Promise<JobOutcome> {
		const worker = this.#idle.pop() ?? (await this.#start());
		return new Promise((resolve, reject) => {
			const finish = (outcome: JobOutcome | null, error?: unknown) => {
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
		const { THREAD_URL, MARK } = await import('./thread');
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
