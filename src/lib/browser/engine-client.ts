/**
 * The page's side of the two engines: starts their workers, numbers every edit, and hands on answers.
 * The second engine is fetched only after the first has answered, so that it never delays a number.
 */
import type { QuantityFault } from '$lib/engine/faults';
import type { Agreement, Results, Why } from '$lib/engine/results';
import type { PlanProblem } from '$lib/engine/plan';
import type { Trial } from '$lib/engine/trial';
import type { Command } from '$lib/workbook/commands';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import type { FromEngine, FromVerifier, ToEngine, ToVerifier } from './engine-messages';
import { FrameBatch } from './frame-batch';

/** What a session hears. The revision is that of the edit which the answer belongs to. */
export interface EngineEvents {
	onresults(results: Results, revision: number): void;
	onfaults(scenario: string, faults: readonly QuantityFault[], revision: number): void;
	onproblems(problems: readonly PlanProblem[], revision: number): void;
	onsettled(revision: number): void;
	onagreement(agreement: Agreement, revision: number): void;
	onfailed(message: string): void;
}

/** What a session asks for; tests have one of their own. */
export interface Engine {
	open(workbook: Workbook, revision: number, order: readonly string[]): void;
	apply(commands: readonly Command[], revision: number, order: readonly string[]): void;
	why(scenario: string, cell: number): Promise<Why | null>;
	/** A quantity as it would be, in place of the one of that name, or as a new one. */
	tryQuantity(quantity: Quantity, replaces: string | null): Promise<Trial | null>;
	close(): void;
}

export type StartEngine = (events: EngineEvents) => Engine;

/** What is shown; an answer to a question goes to who asked. */
type EngineAnswer = Extract<
	FromEngine,
	{ readonly kind: 'results' | 'faults' | 'problems' | 'settled' }
>;
type OnMessage = (message: FromEngine) => void;

/**
 * How long nothing must be asked before the second engine begins, in ms: its first build takes some ten seconds of
 * a processor for the shipped plant, and whoever has just opened a page has better use for it.
 */
const REST_BEFORE_START = 3000;
const REST_AFTER_EDIT = 200;

class WorkerEngine implements Engine {
	readonly #events: EngineEvents;
	readonly #first: Worker;
	#second: Worker | null = null;
	/** What the second engine is told once the first has answered, so that it takes no time from it. */
	#held: ToVerifier[] = [];
	#rest: ReturnType<typeof setTimeout> | null = null;
	#closed = false;
	#question = 0;
	/** One frame's answers, so that the page is drawn once for all of them. */
	readonly #answers = new FrameBatch();
	readonly #waiting = new Map<number, OnMessage>();
	/** The last answer for each scenario, for the second engine to compare. */
	readonly #results = new Map<string, Results>();

	constructor(events: EngineEvents) {
		this.#events = events;
		this.#first = new Worker(new URL('./engine.worker.ts', import.meta.url), { type: 'module' });
		this.#first.onmessage = (event: MessageEvent<FromEngine>) => this.#hear(event.data);
		this.#first.onerror = (event) => this.#fail(event.message);
	}

	open(workbook: Workbook, revision: number, order: readonly string[]): void {
		this.#results.clear();
		this.#tell({ kind: 'open', workbook, revision, order });
		this.#held = [{ kind: 'open', workbook, revision }];
	}

	apply(commands: readonly Command[], revision: number, order: readonly string[]): void {
		this.#tell({ kind: 'apply', commands, revision, order });
		this.#held.push({ kind: 'apply', commands, revision });
	}

	async why(scenario: string, cell: number): Promise<Why | null> {
		const question = ++this.#question;
		const answer = this.#ask({ kind: 'why', question, scenario, cell });
		const message = await answer;
		return message.kind === 'why' ? message.why : null;
	}

	async tryQuantity(quantity: Quantity, replaces: string | null): Promise<Trial | null> {
		const question = ++this.#question;
		const message = await this.#ask({ kind: 'try', question, quantity, replaces });
		return message.kind === 'trial' ? message.trial : null;
	}

	close(): void {
		this.#closed = true;
		if (this.#rest !== null) clearTimeout(this.#rest);
		this.#first.terminate();
		this.#second?.terminate();
		this.#waiting.clear();
	}

	#ask(message: Extract<ToEngine, { question: number }>): Promise<FromEngine> {
		return new Promise((resolve) => {
			this.#waiting.set(message.question, resolve);
			this.#tell(message);
		});
	}

	#tell(message: ToEngine): void {
		this.#first.postMessage(message);
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
			case 'failed':
				this.#fail(message.message);
				break;
			default:
				this.#waiting.get(message.question)?.(message);
				this.#waiting.delete(message.question);
		}
	}

	#take(message: EngineAnswer): void {
		switch (message.kind) {
			case 'results':
				this.#results.set(message.results.scenario, message.results);
				return this.#events.onresults(message.results, message.revision);
			case 'faults':
				return this.#events.onfaults(message.scenario, message.faults, message.revision);
			case 'problems':
				return this.#events.onproblems(message.problems, message.revision);
			case 'settled':
				this.#events.onsettled(message.revision);
				if (this.#rest !== null) clearTimeout(this.#rest);
				this.#rest = setTimeout(
					() => this.#compare(message.revision),
					this.#second ? REST_AFTER_EDIT : REST_BEFORE_START
				);
		}
	}

	#compare(revision: number): void {
		if (this.#closed) return;
		const second = (this.#second ??= this.#startSecond());
		for (const message of this.#held.splice(0)) second.postMessage(message);
		const message: ToVerifier = { kind: 'compare', revision, results: [...this.#results.values()] };
		second.postMessage(message);
	}

	#startSecond(): Worker {
		const second = new Worker(new URL('./verifier.worker.ts', import.meta.url), { type: 'module' });
		second.onmessage = (event: MessageEvent<FromVerifier>) => {
			if (event.data.kind === 'agreement')
				this.#events.onagreement(event.data.agreement, event.data.revision);
			else this.#fail(event.data.message);
		};
		second.onerror = (event) => this.#fail(event.message);
		return second;
	}

	#fail(message: string): void {
		this.#events.onfailed(message || 'The engine stopped. Load the page again; the work is kept.');
	}
}

export const startWorkerEngine: StartEngine = (events) => new WorkerEngine(events);
