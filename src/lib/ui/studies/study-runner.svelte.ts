/**
 * The studies at work: which is being answered, how far it is, what each has found since the workbook
 * was opened. Answers are kept here while the page is open; what the workbook keeps is in `ran`.
 */
import { SvelteMap } from 'svelte/reactivity';
import type { StudyProgress } from '$lib/browser/study-messages';
import type { RunRequest } from '$lib/browser/study-pool';
import type { Answer } from '$lib/studies/problem';
import type { StudyResult } from '$lib/studies/kinds';
import type { Workbook } from '$lib/workbook/schema';
import type { Study } from '$lib/workbook/study-schema';
import type { Session } from '../session.svelte';

/** An answer, and the workbook and settings that it is the answer for. */
export interface StudyRun {
	readonly study: Study;
	readonly workbook: Workbook;
	readonly answer: Answer<StudyResult>;
}

export interface Running {
	readonly control: AbortController;
	readonly done: number;
	readonly of: number;
	/** The answer is there, and the second engine is looking at it. */
	readonly isChecking: boolean;
}

/** Hears what a run comes to. */
export interface Watch {
	begins(study: Study): void;
	heard(study: Study, progress: StudyProgress): void;
	answered(study: Study): void;
}

/** How a study gets its answer; tests have a way of their own. */
export type AskStudy = (
	study: Study,
	workbook: Workbook,
	request: RunRequest
) => Promise<Answer<StudyResult>>;

/** A study of more draws than this waits until it is asked to run, as does one that plans anew in each. */
export const DRAWS_AT_ONCE = 20_000;

export class StudyRunner {
	readonly #session: Session;
	readonly #ask: AskStudy;
	readonly #found = new SvelteMap<string, StudyRun>();
	/** The last answer with plans that follow where now they are kept, and the other way about. */
	readonly #others = new SvelteMap<string, StudyRun>();
	readonly #running = new SvelteMap<string, Running>();
	/** Told of every run: what no page needs before there is one stays out of here. */
	watch: Watch | null = null;

	constructor(session: Session, ask: AskStudy) {
		this.#session = session;
		this.#ask = ask;
	}

	found(name: string): StudyRun | undefined {
		return this.#found.get(name);
	}

	running(name: string): Running | undefined {
		return this.#running.get(name);
	}

	/** What it found with the other way of treating plans, if that was run. */
	withOtherPlans(name: string): StudyRun | undefined {
		return this.#others.get(name);
	}

	/** Asks for an answer of a study, which is kept nowhere. */
	ask(study: Study, workbook: Workbook, request: RunRequest): Promise<Answer<StudyResult>> {
		return this.#ask(study, workbook, { ...request, lend: (port) => this.#session.lend(port) });
	}

	/** Answers a study; keeps the headline in the workbook if so asked. */
	async run(study: Study, keep: boolean): Promise<void> {
		const { workbook } = this.#session;
		if (!workbook) return;
		this.watch?.begins(study);
		this.#running.get(study.name)?.control.abort();
		const control = new AbortController();
		const isCurrent = () => this.#running.get(study.name)?.control === control;
		this.#running.set(study.name, { control, done: 0, of: 0, isChecking: false });
		const answer = await this.ask(study, workbook, {
			signal: control.signal,
			onprogress: (progress) => {
				if (!isCurrent()) return;
				const { phase, done, of } = progress;
				this.watch?.heard(study, progress);
				this.#running.set(study.name, { control, done, of, isChecking: phase === 'checking' });
			},
			onearly: (result) => {
				if (!isCurrent()) return;
				this.watch?.answered(study);
				this.#find(workbook, study, { ok: true, value: result });
			}
		});
		// Another run of it began meanwhile, or it was cancelled.
		if (!isCurrent()) return;
		this.#running.delete(study.name);
		if (!answer.ok && answer.problem.code === 'cancelled') return;
		this.#find(workbook, study, answer);
		if (keep && answer.ok) await this.#keep(workbook, study, answer.value);
	}

	#find(workbook: Workbook, study: Study, answer: Answer<StudyResult>): void {
		const before = this.#found.get(study.name);
		if (before && before.study.plans !== study.plans) this.#others.set(study.name, before);
		this.#found.set(study.name, { study, workbook, answer });
	}

	cancel(name: string): void {
		const own = this.#running.get(name);
		this.#running.delete(name);
		own?.control.abort();
	}

	async runAll(studies: readonly Study[]): Promise<void> {
		for (const study of studies) await this.run(study, true);
	}

	/** Only if neither the study nor what it stands on changed while it ran. */
	async #keep(workbook: Workbook, study: Study, result: StudyResult): Promise<void> {
		const parts = [import('./ran'), import('$lib/studies/fingerprint')] as const;
		const fetched = await Promise.all(parts).catch(() => null);
		if (!fetched) {
			const text = `What ${study.title} found is not kept in the workbook, because a part of the program was not fetched. Check the connection and run it again.`;
			this.#session.notice = { tone: 'error', text };
			return;
		}
		const [{ ranOf }, { fingerprintOf }] = fetched;
		const now = this.#session.workbook;
		const current = now?.studies?.find(({ name }) => name === study.name);
		if (!now || !current || this.#session.readOnly) return;
		const ran = ranOf(workbook, study, result);
		if (fingerprintOf(now, current) !== ran.stood_on) return;
		if (JSON.stringify(current.ran) === JSON.stringify(ran)) return;
		this.#session.apply({ kind: 'set_ran', name: study.name, ran });
	}
}
