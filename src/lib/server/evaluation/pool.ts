/** The threads that evaluate. */
import { Threads, type Limits, type NotDone } from '../threads';
import type { Answered, Ask } from './answer';

export type JobOutcome = Answered | NotDone;

export class Pool {
	readonly #threads: Threads<Ask, Answered>;

	constructor(readonly limits: Limits) {
		this.#threads = new Threads(limits, () => import('./thread'));
	}

	evaluate(ask: Omit<Ask, 'megabytes' | 'seconds'>): Promise<JobOutcome> {
		const { megabytes, seconds } = this.limits;
		return this.#threads.run({ ...ask, megabytes, seconds }, ask.key);
	}

	close(): Promise<void> {
		return this.#threads.close();
	}
}
