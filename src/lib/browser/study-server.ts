/**
 * What a worker of studies does with a message: everything but the posting, which is `study.worker.ts`'s, so that
 * tests may run one in place.
 */
import { verifierSteps } from '$lib/studies/first-draw';
import { answer } from '$lib/studies/problem';
import {
	finishRisk,
	firstDrawOf,
	layOutRisk,
	prepareRisk,
	runRisk,
	type PreparedRisk
} from '$lib/studies/risk';
import { answerStudy, checked, type CheckSteps } from '$lib/studies/run';
import type { LaidOut } from '$lib/studies/random/sampling';
import type { FromStudyWorker, ToStudyWorker } from './study-messages';

interface OpenRun {
	readonly prepared: PreparedRisk;
	/** Of all draws in the lead; empty elsewhere. */
	readonly laidOut: LaidOut;
}

const failed = (run: number, error: unknown): FromStudyWorker => ({
	...{ kind: 'failed', run },
	why: error instanceof Error ? error.message : String(error)
});

type Reply = (message: FromStudyWorker) => void;

export class StudyServer {
	readonly #runs = new Map<number, OpenRun>();
	readonly #checking = new Set<number>();

	/** Replies once, or with an early answer first, or not at all. */
	hear(message: ToStudyWorker, reply: Reply): void {
		try {
			this.#answer(message, reply);
		} catch (error) {
			reply(failed(message.run, error));
		}
	}

	#answer(message: ToStudyWorker, reply: Reply): void {
		const { run } = message;
		if (message.kind === 'run') {
			const answered = answerStudy(message.workbook, message.study);
			if (!answered.ok) return reply({ kind: 'finished', run, answer: answered });
			reply({ kind: 'early', run, result: answered.value.result });
			return this.#check(run, answered.value.check(), reply);
		}
		if (message.kind === 'open') return reply(this.#open(message));
		const open = this.#runs.get(run);
		if (message.kind === 'close') {
			this.#runs.delete(run);
			this.#checking.delete(run);
		}
		if (!open || message.kind === 'close') return;
		const { prepared, laidOut } = open;
		if (message.kind === 'draw') {
			const { from, count, strata } = message;
			return reply({
				...{ kind: 'part', run, from },
				...runRisk(prepared, new Map(strata), from, from, count)
			});
		}
		const result = finishRisk(prepared, laidOut, message);
		reply({ kind: 'early', run, result });
		this.#runs.delete(run);
		const steps = verifierSteps(prepared.columns, firstDrawOf(prepared, laidOut));
		this.#check(run, checked(result, steps), reply);
	}

	/** Between steps the worker hears what others want of it, or that nobody waits for this check any more. */
	#check(run: number, steps: CheckSteps, reply: Reply): void {
		this.#checking.add(run);
		const next = () => {
			if (!this.#checking.has(run)) return;
			try {
				const step = steps.next();
				if (step.done !== true) return void setTimeout(next);
				reply({ kind: 'finished', run, answer: step.value });
			} catch (error) {
				reply(failed(run, error));
			}
			this.#checking.delete(run);
		};
		next();
	}

	#open(message: Extract<ToStudyWorker, { kind: 'open' }>): FromStudyWorker {
		const { run, workbook, study, settings, isLead } = message;
		if (study.kind !== 'risk') throw new Error('Only a risk study is drawn in parts.');
		const prepared = prepareRisk(workbook, study, settings);
		if (!prepared.ok) return { kind: 'opened', run, answer: prepared };
		const laidOut: LaidOut = isLead ? layOutRisk(prepared.value) : new Map();
		this.#runs.set(run, { prepared: prepared.value, laidOut });
		const { draws, columns } = prepared.value;
		// The page cuts its copy up for all workers; the lead keeps its own for the figures.
		const strata = [...laidOut].map(([input, own]) => [input, own.slice()] as const);
		return {
			kind: 'opened',
			run,
			answer: answer({ draws, results: columns.results.length, strata })
		};
	}
}
