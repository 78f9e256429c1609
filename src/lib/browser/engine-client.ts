/**
 * The page's side of the first engine: starts its worker and hands on its answers, once a frame. When the second
 * engine is asked is `verification.ts`'s.
 */
import type { QuantityFault } from '$lib/engine/faults';
import type { Agreement, Results, Why } from '$lib/engine/results';
import type { PlanProblem } from '$lib/engine/plan';
import type { FiguresAsked, OrderFigures } from '$lib/engine/quote-figures';
import type { QuoteOver } from '$lib/engine/quote-over';
import type { Trial } from '$lib/engine/trial';
import type { Command } from '$lib/workbook/commands';
import type { Quantity, QuoteEntry, Workbook } from '$lib/workbook/schema';
import type { FromEngine, FromVerifier, ToEngine } from './engine-messages';
import { FrameBatch } from './frame-batch';
import { Verification, type StartVerifier } from './verification';

/** What a session hears. The revision is that of the edit which the answer belongs to. */
export interface EngineEvents {
	onresults(results: Results, revision: number): void;
	onfaults(scenario: string, faults: readonly QuantityFault[], revision: number): void;
	onproblems(problems: readonly PlanProblem[], revision: number): void;
	onsettled(revision: number): void;
	/** It has lost the workbook, which must be opened again. */
	onlost(): void;
	onagreement(agreement: Agreement, revision: number): void;
	onfailed(message: string): void;
}

/** What a session asks for; tests have one of their own. */
export interface Engine {
	open(workbook: Workbook, revision: number, order: readonly string[]): void;
	apply(command: Command, revision: number, order: readonly string[]): void;
	why(scenario: string, cell: number, from: number | null): Promise<Why | null>;
	/** A quantity as it would be, in place of the one of that name, or as a new one. */
	tryQuantity(quantity: Quantity, replaces: string | null): Promise<Trial | null>;
	/** A quote over the workbook; `keep`: with the inputs behind it. Null where it could not be computed. */
	quote?(entries: readonly QuoteEntry[], keep: boolean): Promise<QuoteOver | null>;
	/** Figures of several orders over the workbook; null where they could not be computed. */
	figures?(asked: FiguresAsked): Promise<readonly OrderFigures[] | null>;
	/** Gives the plan of the last edit to whoever listens at the other end of a port. */
	lend(port: MessagePort): void;
	close(): void;
}

export type StartEngine = (events: EngineEvents) => Engine;

/** What is shown; an answer to a question goes to who asked. */
type EngineAnswer = Extract<
	FromEngine,
	{ readonly kind: 'results' | 'faults' | 'problems' | 'settled' }
>;
type OnMessage = (message: FromEngine) => void;

class WorkerEngine implements Engine {
	readonly #events: EngineEvents;
	readonly #first: Worker;
	readonly #verification: Verification;
	#question = 0;
	/** One frame's answers, so that the page is drawn once for all of them. */
	readonly #answers = new FrameBatch();
	readonly #waiting = new Map<number, OnMessage>();

	constructor(events: EngineEvents) {
		this.#events = events;
		this.#first = new Worker(new URL('./engine.worker.ts', import.meta.url), { type: 'module' });
		this.#first.onmessage = (event: MessageEvent<FromEngine>) => this.#hear(event.data);
		this.#first.onerror = (event) => this.#fail(event.message);
		this.#verification = new Verification(
			(message, transfer) => this.#tell(message, transfer),
			startVerifier,
			{
				onagreement: (agreement, revision) => events.onagreement(agreement, revision),
				onfailed: (message) => this.#fail(message)
			}
		);
	}

	open(workbook: Workbook, revision: number, order: readonly string[]): void {
		this.#verification.edited();
		this.#tell({ kind: 'open', workbook, revision, order });
	}

	apply(command: Command, revision: number, order: readonly string[]): void {
		this.#verification.edited();
		this.#tell({ kind: 'apply', command, revision, order });
	}

	async why(scenario: string, cell: number, from: number | null): Promise<Why | null> {
		const question = ++this.#question;
		const answer = this.#ask({ kind: 'why', question, scenario, cell, from });
		const message = await answer;
		return message.kind === 'why' ? message.why : null;
	}

	async tryQuantity(quantity: Quantity, replaces: string | null): Promise<Trial | null> {
		const question = ++this.#question;
		const message = await this.#ask({ kind: 'try', question, quantity, replaces });
		return message.kind === 'trial' ? message.trial : null;
	}

	async quote(entries: readonly QuoteEntry[], keep: boolean): Promise<QuoteOver | null> {
		const question = ++this.#question;
		const message = await this.#ask({ kind: 'quote', question, entries, keep });
		return message.kind === 'quoted' ? message.quoted : null;
	}

	async figures(asked: FiguresAsked): Promise<readonly OrderFigures[] | null> {
		const question = ++this.#question;
		const message = await this.#ask({ kind: 'figures', question, asked });
		return message.kind === 'figures' ? message.figures : null;
	}

	lend(port: MessagePort): void {
		this.#tell({ kind: 'lend', port }, [port]);
	}

	close(): void {
		this.#verification.close();
		this.#first.terminate();
		this.#waiting.clear();
	}

	#ask(message: Extract<ToEngine, { question: number }>): Promise<FromEngine> {
		return new Promise((resolve) => {
			this.#waiting.set(message.question, resolve);
			this.#tell(message);
		});
	}

	#tell(message: ToEngine, transfer: Transferable[] = []): void {
		this.#first.postMessage(message, transfer);
	}

	#hear(message: FromEngine): void {
		switch (message.kind) {
			case 'results':
			case 'faults':
			case 'problems':
			case 'settled':
				this.#answers.add(() => this.#take(message));
				// Nothing more is to come for this edit: no need to wait for the frame.
				if (message.kind === 'settled') this.#answers.handOn();
				break;
			case 'handed':
				return this.#verification.handed(message.revision, message.isNew);
			case 'lost':
				return this.#events.onlost();
			case 'failed':
				return this.#fail(message.message);
			default:
				this.#waiting.get(message.question)?.(message);
				this.#waiting.delete(message.question);
		}
	}

	#take(message: EngineAnswer): void {
		switch (message.kind) {
			case 'results':
				return this.#events.onresults(message.results, message.revision);
			case 'faults':
				return this.#events.onfaults(message.scenario, message.faults, message.revision);
			case 'problems':
				return this.#events.onproblems(message.problems, message.revision);
			case 'settled':
				this.#events.onsettled(message.revision);
				this.#verification.settled(message.revision, message.plan);
		}
	}

	#fail(message: string): void {
		this.#events.onfailed(message || 'The engine stopped. Load the page again; the work is kept.');
	}
}

const startVerifier: StartVerifier = ({ onmessage, onfailed }) => {
	const worker = new Worker(new URL('./verifier.worker.ts', import.meta.url), { type: 'module' });
	worker.onmessage = (event: MessageEvent<FromVerifier>) => onmessage(event.data);
	worker.onerror = (event) => onfailed(event.message);
	return {
		post: (message, transfer) => worker.postMessage(message, transfer),
		terminate: () => worker.terminate()
	};
};

export const startWorkerEngine: StartEngine = (events) => new WorkerEngine(events);
