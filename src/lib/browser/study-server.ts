/**
 * What a worker of studies does with a message: everything but the posting, which is `study.worker.ts`'s, so that
 * tests may run one in place.
 */
import { refereeFirstDraw } from '$lib/studies/first-draw';
import { answer } from '$lib/studies/problem';
import {
	finishRisk,
	firstDrawOf,
	layOutRisk,
	prepareRisk,
	runRisk,
	type PreparedRisk
} from '$lib/studies/risk';
import { answerStudy, checked } from '$lib/studies/run';
import type { LaidOut } from '$lib/studies/sampling';
import type { FromStudyWorker, ToStudyWorker } from './study-messages';

interface OpenRun {
	readonly prepared: PreparedRisk;
	/** Of all draws in the lead; empty elsewhere. */
	readonly laidOut: LaidOut;
}

type Reply = (message: FromStudyWorker) => void;

export class StudyServer {
	readonly #runs = new Map<number, OpenRun>();

	/** Replies once, or with an early answer first, or not at all. */
	hear(message: ToStudyWorker, reply: Reply): void {
		try {
			this.#answer(message, reply);
		} catch (error) {
			const why = error instanceof Error ? error.message : String(error);
			reply({ kind: 'failed', run: message.run, why });
		}
	}

	#answer(message: ToStudyWorker, reply: Reply): void {
		const { run } = message;
		if (message.kind === 'run') {
			const answered = answerStudy(message.workbook, message.study);
			if (!answered.ok) return reply({ kind: 'finished', run, answer: answered });
			reply({ kind: 'early', run, result: answered.value.result });
			return reply({ kind: 'finished', run, answer: answered.value.check() });
		}
		if (message.kind === 'open') return reply(this.#open(message));
		const open = this.#runs.get(run);
		if (message.kind === 'close') this.#runs.delete(run);
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
		const check = refereeFirstDraw(prepared.columns, firstDrawOf(prepared, laidOut));
		this.#runs.delete(run);
		reply({ kind: 'finished', run, answer: checked(result, check) });
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
