/**
 * The workers of studies, as many as the machine has cores to spare, and the studies at work on them.
 *
 * A risk study's draws are cut into chunks that go to whichever worker is free; what a draw comes to does not depend
 * on who computes it. Every other study is small and goes to one worker. Several studies may be at work
 * at once: they take turns, chunk by chunk.
 */
import { refuse, type Answer } from '$lib/studies/problem';
import { CHUNK } from '$lib/studies/chunk';
import type { StudyResult } from '$lib/studies/kinds';
import type { Workbook } from '$lib/workbook/schema';
import { plansOf } from '$lib/workbook/study-parts';
import type { Study } from '$lib/workbook/study-schema';
import { RiskRun } from './risk-run';
import {
	stopped,
	type FromStudyWorker,
	type RunSettings,
	type StudySource,
	type StudyProgress,
	type ToStudyWorker
} from './study-messages';

/** Draws at a time where each is planned anew, which takes so long that each is worth telling. */
const CHUNK_PLANNED = 1;

/** One worker as the pool sees it; tests have their own. */
export interface Endpoint {
	post(message: ToStudyWorker): void;
	terminate(): void;
}

export interface EndpointEvents {
	onmessage(message: FromStudyWorker): void;
	onfailed(why: string): void;
}

export type StartEndpoint = (events: EndpointEvents) => Endpoint;

export interface RunRequest extends RunSettings {
	/** Hears the answer before the second engine has looked at it. */
	readonly onearly?: ((result: StudyResult) => void) | undefined;
	readonly onprogress?: ((progress: StudyProgress) => void) | undefined;
	readonly signal?: AbortSignal | undefined;
	/** Gives the plan of the workbook to whoever listens at the other end; left out: each worker makes its own. */
	readonly lend?: ((port: MessagePort) => void) | undefined;
	/** Draws that a worker takes at a time. */
	readonly chunk?: number | undefined;
}

/** What the pool knows of a study at work. */
export interface ActiveRun {
	hear(worker: number, message: FromStudyWorker): void;
	settle(answer: Answer<StudyResult>): void;
	readonly lead: number;
}

export class StudyPool {
	readonly #start: StartEndpoint;
	readonly #size: number;
	#workers: Endpoint[] = [];
	#runs = new Map<number, ActiveRun>();
	#next = 1;

	constructor(start: StartEndpoint, size: number) {
		this.#start = start;
		this.#size = Math.max(1, Math.floor(size));
	}

	run(workbook: Workbook, study: Study, request: RunRequest = {}): Promise<Answer<StudyResult>> {
		const { signal, onprogress } = request;
		return new Promise((resolve) => {
			if (signal?.aborted) return resolve(CANCELLED);
			const run = this.#next++;
			const cancel = () => this.#end(run, CANCELLED);
			signal?.addEventListener('abort', cancel, { once: true });
			const settle = (answer: Answer<StudyResult>) => {
				signal?.removeEventListener('abort', cancel);
				resolve(answer);
			};
			const lead = this.#leastLed();
			const onearly = (result: StudyResult) => {
				onprogress?.({ phase: 'checking', done: 0, of: 0 });
				request.onearly?.(result);
			};
			onprogress?.({ phase: 'preparing', done: 0, of: 0 });
			if (study.kind !== 'risk') {
				this.#runs.set(run, {
					lead,
					settle,
					hear: (_, message) => {
						if (message.kind === 'progress')
							onprogress?.({ phase: 'drawing', done: message.done, of: message.of });
						if (message.kind === 'early') onearly(message.result);
						if (message.kind === 'finished') this.#end(run, message.answer);
						if (message.kind === 'failed') this.#end(run, stopped(message.why));
					}
				});
				this.#tell(lead, { kind: 'run', run, source: sourceOf(workbook, request), study });
				return;
			}
			const risk = new RiskRun({
				run,
				lead,
				workers: this.#size,
				source: () => sourceOf(workbook, request),
				study,
				chunk: request.chunk ?? (plansOf(study) === 'follow' ? CHUNK_PLANNED : CHUNK),
				settings: { draws: request.draws, seed: request.seed },
				tell: (worker, message) => this.#tell(worker, message),
				end: (answer) => this.#end(run, answer),
				onearly,
				onprogress: onprogress ?? (() => {})
			});
			this.#runs.set(run, { lead, settle, hear: (worker, message) => risk.hear(worker, message) });
			risk.begin();
		});
	}

	/** Stops everything; studies at work end as cancelled. */
	close(): void {
		for (const run of [...this.#runs.keys()]) this.#end(run, CANCELLED);
		this.#terminate();
	}

	#leastLed(): number {
		const leads = [...this.#runs.values()].map(({ lead }) => lead);
		const counts = Array.from(
			{ length: this.#size },
			(_, worker) => leads.filter((lead) => lead === worker).length
		);
		return counts.indexOf(Math.min(...counts));
	}

	#tell(worker: number, message: ToStudyWorker): void {
		this.#workers[worker] ??= this.#start({
			onmessage: (reply) => this.#runs.get(reply.run)?.hear(worker, reply),
			onfailed: (why) => this.#fail(why)
		});
		this.#workers[worker].post(message);
	}

	#end(run: number, answer: Answer<StudyResult>): void {
		const active = this.#runs.get(run);
		if (!active) return;
		this.#runs.delete(run);
		// A worker in the middle of a long step hears nothing; with nobody else waiting, it is ended.
		if (this.#runs.size === 0 && !answer.ok) this.#terminate();
		else for (const worker of this.#workers) worker?.post({ kind: 'close', run });
		active.settle(answer);
	}

	/** A worker broke down: nothing that was at work on it can be trusted to end. */
	#fail(why: string): void {
		const runs = [...this.#runs.keys()];
		this.#terminate();
		for (const run of runs) this.#end(run, stopped(why));
	}

	#terminate(): void {
		for (const worker of this.#workers) worker?.terminate();
		this.#workers = [];
	}
}

function sourceOf(workbook: Workbook, { lend }: RunRequest): StudySource {
	if (!lend) return { workbook };
	const { port1, port2 } = new MessageChannel();
	lend(port1);
	return { port: port2 };
}

const CANCELLED = refuse('cancelled', 'The study was cancelled. Its last result is kept.');
