/** The threads that read, merge, compare and pack workbooks, asked as functions. */
import { availableParallelism } from 'node:os';
import { Threads, type Limits } from '../threads';
import type { DocumentAnswer, DocumentAsk } from './work';

/** The work was not done: it took more time or memory than it may, or too many wait. */
export class NotDoneError extends Error {
	override name = 'NotDoneError';
	constructor(
		readonly why: 'time' | 'memory' | 'busy',
		readonly seconds: number
	) {
		super(`a workbook was not read: ${why}`);
	}
}

/** A few threads, so that one workbook that takes long leaves the others to those who save beside it. */
const LIMITS: Limits = {
	threads: Math.max(2, Math.min(4, availableParallelism())),
	seconds: 45,
	megabytes: 1024,
	waiting: 100
};

type Answers<Kind> = Extract<DocumentAnswer, { kind: Kind }>;

export class Documents {
	readonly #threads: Threads<DocumentAsk, DocumentAnswer>;

	constructor(readonly limits: Limits = LIMITS) {
		this.#threads = new Threads(limits, () => import('./thread'));
	}

	/** The text of a new workbook. */
	async begin(text: string): Promise<Answers<'refused' | 'prepared'>> {
		return (await this.#ask({ work: 'begin', text }, '')) as Answers<'refused' | 'prepared'>;
	}

	/** The text of a revision, as this version of the app writes it. */
	async open(packed: string, workbookId: string): Promise<string> {
		const answer = await this.#ask({ work: 'open', packed }, workbookId);
		return (answer as Answers<'opened'>).document;
	}

	async save(
		texts: { readonly mine: string; readonly base: string; readonly newest: string },
		workbookId: string
	): Promise<Answers<'refused' | 'unchanged' | 'conflict' | 'prepared'>> {
		const answer = await this.#ask({ work: 'save', ...texts }, workbookId);
		return answer as Answers<'refused' | 'unchanged' | 'conflict' | 'prepared'>;
	}

	/** What differs, as JSON. */
	async compare(before: string, after: string, workbookId: string): Promise<string> {
		const answer = await this.#ask({ work: 'compare', before, after }, workbookId);
		return (answer as Answers<'compared'>).json;
	}

	close(): Promise<void> {
		return this.#threads.close();
	}

	async #ask(ask: DocumentAsk, about: string): Promise<DocumentAnswer> {
		const answer = await this.#threads.run(ask, about);
		const { seconds } = this.limits;
		if (answer.kind === 'stopped') throw new NotDoneError(answer.why, seconds);
		if (answer.kind === 'busy') throw new NotDoneError('busy', seconds);
		return answer;
	}
}
