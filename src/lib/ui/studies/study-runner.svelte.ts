/**
 * The studies at work: which is being answered, how far it is, what each has found since the workbook
 * was opened. Answers are kept here while the page is open; what the workbook keeps is in `ran`.
 */
import { SvelteMap } from 'svelte/reactivity';
import type { RunRequest } from '$lib/browser/study-pool';
import type { Answer } from '$lib/studies/problem';
import type { StudyResult } from '$lib/studies/kinds';
import type { Workbook } from '$lib/workbook/schema';
import type { Study } from '$lib/workbook/study-schema';
import type { Session } from '../session.svelte';
import { PaceMeter, paceKey, type Pace } from './pace';

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
	/** Milliseconds that it will still take; null where that is not known. */
	readonly left: number | null;
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
	readonly #measuring = new SvelteMap<string, AbortController>();
	readonly #paces = new SvelteMap<string, Pace & { readonly key: string }>();
	readonly #now: () => number;

	/** `now`: milliseconds of any clock that goes on evenly. */
	constructor(session: Session, ask: AskStudy, now = () => performance.now()) {
		this.#session = session;
		this.#ask = ask;
		this.#now = now;
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

	/** How fast a study with these settings goes on this machine; undefined until it was measured. */
	pace(study: Study): Pace | undefined {
		const known = this.#paces.get(study.name);
		return known?.key === paceKey(study) ? known : undefined;
	}

	isMeasuring(name: string): boolean {
		return this.#measuring.has(name);
	}

	/**
	 * Has the first few points computed, to tell how long all of them take: not while it is being answered, as that tells
	 * it too. The check of an answer to other settings gives way.
	 */
	async measure(study: Study): Promise<void> {
		const { workbook } = this.#session;
		const running = this.#running.get(study.name);
		if (!workbook || (running && !running.isChecking)) return;
		this.cancel(study.name);
		this.#stopMeasuring(study.name);
		const control = new AbortController();
		this.#measuring.set(study.name, control);
		const meter = new PaceMeter(this.#now());
		const tell = (pace: Pace | null) => {
			if (!pace || control.signal.aborted) return;
			this.#know(study, pace);
			control.abort();
		};
		await this.#ask(study, workbook, {
			signal: control.signal,
			lend: (port) => this.#session.lend(port),
			onprogress: ({ phase, done, of }) => {
				if (phase === 'drawing') tell(meter.mark(done, of, this.#now()));
			},
			onearly: () => tell(meter.whole(this.#now()))
		});
		if (this.#measuring.get(study.name) === control) this.#measuring.delete(study.name);
	}

	#stopMeasuring(name: string): void {
		this.#measuring.get(name)?.abort();
		this.#measuring.delete(name);
	}

	#know(study: Study, pace: Pace): void {
		this.#paces.set(study.name, { key: paceKey(study), ...pace });
	}

	/** Answers a study; keeps the headline in the workbook if so asked. */
	async run(study: Study, keep: boolean): Promise<void> {
		const { workbook } = this.#session;
		if (!workbook) return;
		this.#stopMeasuring(study.name);
		this.#running.get(study.name)?.control.abort();
		const control = new AbortController();
		const isCurrent = () => this.#running.get(study.name)?.control === control;
		this.#running.set(study.name, { control, done: 0, of: 0, isChecking: false, left: null });
		const meter = new PaceMeter(this.#now());
		const answer = await this.#ask(study, workbook, {
			signal: control.signal,
			lend: (port) => this.#session.lend(port),
			onprogress: ({ phase, done, of }) => {
				if (!isCurrent()) return;
				const isChecking = phase === 'checking';
				const pace = phase === 'drawing' ? meter.mark(done, of, this.#now()) : null;
				if (pace) this.#know(study, pace);
				const left = pace && pace.perPoint * (of - done);
				this.#running.set(study.name, { control, done, of, isChecking, left });
			},
			onearly: (result) => {
				if (!isCurrent()) return;
				if (!this.pace(study)) this.#know(study, meter.whole(this.#now()));
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
