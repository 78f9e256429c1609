/**
 * One risk study at work on a pool: opens it in every worker, hands out chunks, and has the lead put the figures
 * together and then check the first draw.
 */
import type { Answer } from '$lib/studies/problem';
import type { StudyResult } from '$lib/studies/kinds';
import type { Study } from '$lib/workbook/study-schema';
import {
	stopped,
	type FromStudyWorker,
	type RunSettings,
	type Strata,
	type StudySource,
	type StudyProgress,
	type ToStudyWorker
} from './study-messages';

interface Options {
	readonly run: number;
	readonly lead: number;
	readonly workers: number;
	/** For one worker more, as it stands when asked. */
	readonly source: () => StudySource;
	readonly study: Study;
	readonly settings: RunSettings;
	readonly chunk: number;
	readonly tell: (worker: number, message: ToStudyWorker) => void;
	readonly end: (answer: Answer<StudyResult>) => void;
	readonly onearly: (result: StudyResult) => void;
	readonly onprogress: (progress: StudyProgress) => void;
}

export class RiskRun {
	readonly #options: Options;
	#draws = 0;
	#strata: Strata = [];
	#values: Float64Array[] = [];
	#states: Uint8Array[] = [];
	#isLaidOut = false;
	/** One for each worker that is still to be opened. */
	#sources: StudySource[] = [];
	/** The next draw to hand out, and how many have come back. */
	#next = 0;
	#done = 0;
	/** Workers that are open and have nothing to do. */
	readonly #idle: number[] = [];

	constructor(options: Options) {
		this.#options = options;
	}

	begin(): void {
		const { study, settings, workers, chunk, source, lead } = this.#options;
		const draws = settings.draws ?? (study.kind === 'risk' ? study.draws : 1);
		// All now: by the time that the helpers are opened, the workbook may be another.
		const most = Math.max(1, Math.min(workers, Math.ceil(draws / chunk)) || 1);
		this.#sources = Array.from({ length: most }, source);
		this.#open(lead);
	}

	hear(worker: number, message: FromStudyWorker): void {
		switch (message.kind) {
			case 'opened':
				if (!message.answer.ok) return this.#options.end(message.answer);
				if (worker === this.#options.lead) this.#begun(message.answer.value);
				this.#idle.push(worker);
				break;
			case 'part':
				message.values.forEach((value, i) => this.#values[i]!.set(value, message.from));
				message.states.forEach((state, i) => this.#states[i]!.set(state, message.from));
				this.#done += message.states[0]?.length ?? 0;
				this.#options.onprogress({ phase: 'drawing', done: this.#done, of: this.#draws });
				this.#idle.push(worker);
				break;
			case 'early':
				return this.#options.onearly(message.result);
			case 'finished':
				return this.#options.end(message.answer);
			case 'failed':
				return this.#options.end(stopped(message.why));
		}
		this.#handOut();
	}

	#open(worker: number): void {
		const { run, lead, study, settings, tell } = this.#options;
		const source = this.#sources.pop();
		if (source)
			tell(worker, { kind: 'open', run, source, study, settings, isLead: worker === lead });
	}

	/** The lead has laid out the study: the others are opened for the draws. */
	#begun({ draws, results, strata }: { draws: number; results: number; strata: Strata }): void {
		const { lead, workers, chunk } = this.#options;
		this.#draws = draws;
		this.#strata = strata;
		this.#values = Array.from({ length: results }, () => new Float64Array(draws));
		this.#states = Array.from({ length: results }, () => new Uint8Array(draws));
		this.#isLaidOut = true;
		// No more workers than there are chunks to share.
		const helpers = Math.min(workers, Math.ceil(draws / chunk)) - 1;
		let opened = 0;
		for (let worker = 0; worker < workers && opened < helpers; worker++)
			if (worker !== lead) {
				this.#open(worker);
				opened++;
			}
	}

	#handOut(): void {
		const { run, lead, chunk, tell, onprogress } = this.#options;
		if (!this.#isLaidOut) return;
		while (this.#next < this.#draws && this.#idle.length > 0) {
			const from = this.#next;
			const count = Math.min(chunk, this.#draws - from);
			this.#next += count;
			const strata = this.#strata.map(
				([input, own]) => [input, own.slice(from, from + count)] as const
			);
			tell(this.#idle.pop()!, { kind: 'draw', run, from, count, strata });
		}
		if (this.#done < this.#draws) return;
		this.#isLaidOut = false;
		onprogress({ phase: 'finishing', done: this.#done, of: this.#draws });
		tell(lead, {
			kind: 'finish',
			run,
			values: this.#values,
			states: this.#states
		});
	}
}
