/** How fast studies go on this machine: measured before they are asked to run, and by every run. One for each bench. */
import { SvelteMap } from 'svelte/reactivity';
import type { StudyProgress } from '$lib/browser/study-messages';
import type { Workbook } from '$lib/workbook/schema';
import type { Study } from '$lib/workbook/study-schema';
import { PaceMeter, paceKey, type Pace } from './pace';
import type { StudyRunner, Watch } from './study-runner.svelte';

const known = new WeakMap<StudyRunner, Paces>();

/** `now`: milliseconds of any clock that goes on evenly. */
export function pacesOf(runner: StudyRunner, now = () => performance.now()): Paces {
	let paces = known.get(runner);
	if (!paces) known.set(runner, (runner.watch = paces = new Paces(runner, now)));
	return paces;
}

class Paces implements Watch {
	readonly #runner: StudyRunner;
	readonly #now: () => number;
	readonly #measuring = new SvelteMap<string, AbortController>();
	readonly #paces = new SvelteMap<string, Pace & { readonly key: string }>();
	/** Of the run of each study. */
	readonly #meters: Record<string, PaceMeter> = {};

	constructor(runner: StudyRunner, now: () => number) {
		this.#runner = runner;
		this.#now = now;
	}

	/** Of a study with these settings; undefined until it was measured. */
	pace(study: Study): Pace | undefined {
		const pace = this.#paces.get(study.name);
		return pace?.key === paceKey(study) ? pace : undefined;
	}

	isMeasuring(name: string): boolean {
		return this.#measuring.has(name);
	}

	/**
	 * Has the first few points computed, to tell how long all of them take: not while it is being answered, as that tells
	 * it too. The check of an answer to other settings gives way.
	 */
	async measure(study: Study, workbook: Workbook): Promise<void> {
		const running = this.#runner.running(study.name);
		if (running && !running.isChecking) return;
		this.#runner.cancel(study.name);
		this.#stop(study.name);
		const control = new AbortController();
		this.#measuring.set(study.name, control);
		const meter = new PaceMeter(this.#now());
		const tell = (pace: Pace | null) => {
			if (!pace || control.signal.aborted) return;
			this.#know(study, pace);
			control.abort();
		};
		await this.#runner.ask(study, workbook, {
			signal: control.signal,
			onprogress: ({ phase, done, of }) => {
				if (phase === 'drawing') tell(meter.mark(done, of, this.#now()));
			},
			onearly: () => tell(meter.whole(this.#now()))
		});
		if (this.#measuring.get(study.name) === control) this.#measuring.delete(study.name);
	}

	begins(study: Study): void {
		this.#stop(study.name);
		this.#meters[study.name] = new PaceMeter(this.#now());
	}

	heard(study: Study, { phase, done, of }: StudyProgress): void {
		const pace = phase === 'drawing' ? this.#meters[study.name]?.mark(done, of, this.#now()) : null;
		if (pace) this.#know(study, pace);
	}

	answered(study: Study): void {
		const meter = this.#meters[study.name];
		if (meter && !this.pace(study)) this.#know(study, meter.whole(this.#now()));
	}

	#stop(name: string): void {
		this.#measuring.get(name)?.abort();
		this.#measuring.delete(name);
	}

	#know(study: Study, pace: Pace): void {
		this.#paces.set(study.name, { key: paceKey(study), ...pace });
	}
}
