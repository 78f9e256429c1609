/**
 * When the second engine is asked, and for which edit its answer stands. It is fetched only after the first has
 * answered, and waits for quiet, so that it never delays a number; what it is to check it gets from the first
 * engine itself, through a channel of their own.
 */
import type { Agreement } from '$lib/engine/results';
import type { FromVerifier, ToEngine, ToVerifier } from './engine-messages';

/**
 * How long nothing must be asked before the second engine begins to build, in ms: that takes some seconds of a
 * processor for the shipped plant, and whoever has just opened a page has better use for it.
 */
const REST_BEFORE_BUILD = 3000;
const REST_AFTER_EDIT = 200;

/** The second engine's worker; tests have one of their own. */
export interface VerifierEndpoint {
	post(message: ToVerifier, transfer: Transferable[]): void;
	terminate(): void;
}
export type StartVerifier = (events: {
	onmessage(message: FromVerifier): void;
	onfailed(message: string): void;
}) => VerifierEndpoint;

interface Events {
	onagreement(agreement: Agreement, revision: number): void;
	onfailed(message: string): void;
}

export class Verification {
	readonly #tellEngine: (message: ToEngine, transfer: Transferable[]) => void;
	readonly #start: StartVerifier;
	readonly #events: Events;
	#worker: VerifierEndpoint | null = null;
	#rest: ReturnType<typeof setTimeout> | null = null;
	/** The plan that the second engine was last asked to check by. */
	#plan = 0;
	/** What it was last given to check, and the last edit for which that stands as well. */
	#given = 0;
	#standsFor = 0;
	#last: Agreement | null = null;

	constructor(
		tellEngine: (message: ToEngine, transfer: Transferable[]) => void,
		start: StartVerifier,
		events: Events
	) {
		this.#tellEngine = tellEngine;
		this.#start = start;
		this.#events = events;
	}

	/** An edit is on its way to the first engine. */
	edited(): void {
		if (this.#rest !== null) clearTimeout(this.#rest);
		this.#rest = null;
	}

	/** The first engine has answered an edit in full. */
	settled(revision: number, plan: number): void {
		this.edited();
		const isSamePlan = plan === this.#plan;
		if (!isSamePlan) this.#worker?.post({ kind: 'stop' }, []);
		this.#rest = setTimeout(
			() => this.#ask(revision, plan),
			isSamePlan ? REST_AFTER_EDIT : REST_BEFORE_BUILD
		);
	}

	/** The first engine has handed over what is to be checked; where nothing was new, the last answer stands. */
	handed(revision: number, isNew: boolean): void {
		if (isNew) this.#give(revision);
		this.#standsFor = revision;
		if (this.#last) this.#events.onagreement(this.#last, revision);
	}

	close(): void {
		this.edited();
		this.#worker?.terminate();
	}

	#ask(revision: number, plan: number): void {
		this.#worker ??= this.#connect();
		this.#plan = plan;
		this.#tellEngine({ kind: 'check', revision }, []);
	}

	#connect(): VerifierEndpoint {
		const worker = this.#start({
			onmessage: (message) => this.#hear(message),
			onfailed: (message) => this.#events.onfailed(message)
		});
		const { port1, port2 } = new MessageChannel();
		this.#tellEngine({ kind: 'connect', port: port1 }, [port1]);
		worker.post({ kind: 'connect', port: port2 }, [port2]);
		return worker;
	}

	#hear(message: FromVerifier): void {
		if (message.kind === 'failed') return this.#events.onfailed(message.message);
		const { agreement, revision } = message;
		if (revision < this.#given) return;
		this.#give(revision);
		this.#last = agreement;
		this.#events.onagreement(agreement, this.#standsFor);
	}

	/** The second engine may say so before the first does. */
	#give(revision: number): void {
		if (revision === this.#given) return;
		this.#given = this.#standsFor = revision;
		this.#last = null;
	}
}
