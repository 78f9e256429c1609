/**
 * What a worker of studies does with a message: everything but the posting, which is `study.worker.ts`'s, so that
 * tests may run one in place.
 */
import {
	checkRisk,
	finishRisk,
	layOutRisk,
	prepareRisk,
	runRisk,
	type PreparedRisk
} from '$lib/studies/risk';
import { answer } from '$lib/studies/problem';
import { runStudyHere } from '$lib/studies/run';
import type { LaidOut } from '$lib/studies/sampling';
import type { FromStudyWorker, ToStudyWorker } from './study-messages';

interface OpenRun {
	readonly prepared: PreparedRisk;
	/** Of all draws in the lead; empty elsewhere. */
	readonly laidOut: LaidOut;
}

export class StudyServer {
	readonly #runs = new Map<number, OpenRun>();

	/** The answer, null where there is none to give. */
	hear(message: ToStudyWorker): FromStudyWorker | null {
		try {
			return this.#answer(message);
		} catch (error) {
			const why = error instanceof Error ? error.message : String(error);
			return { kind: 'failed', run: message.run, why };
		}
	}

	#answer(message: ToStudyWorker): FromStudyWorker | null {
		const { run } = message;
		if (message.kind === 'run')
			return { kind: 'finished', run, answer: runStudyHere(message.workbook, message.study) };
		if (message.kind === 'open') return this.#open(message);
		const open = this.#runs.get(run);
		if (message.kind === 'close') this.#runs.delete(run);
		if (!open || message.kind === 'close') return null;
		switch (message.kind) {
			case 'check':
				return { kind: 'checked', run, answer: checkRisk(open.prepared, open.laidOut) };
			case 'draw': {
				const { from, count, strata } = message;
				const part = runRisk(open.prepared, new Map(strata), from, from, count);
				return { kind: 'part', run, from, ...part };
			}
			case 'finish': {
				const result = finishRisk(open.prepared, open.laidOut, message, message.check);
				this.#runs.delete(run);
				return { kind: 'finished', run, answer: answer(result) };
			}
		}
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
