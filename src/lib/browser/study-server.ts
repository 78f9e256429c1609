/**
 * What a worker of studies does with a message: everything but the posting, which is `study.worker.ts`'s, so that
 * tests may run one in place.
 */
import type { Solver } from '$lib/programmes/highs';
import { Memory } from '$lib/programmes/memory';
import { verifierSteps } from '$lib/studies/first-draw';
import { asksForPlans, type PlanningProgress, type Replanning } from '$lib/studies/following';
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
import type { Plan } from '$lib/engine/plan';
import type { Workbook } from '$lib/workbook/schema';
import type { LentPlan } from './engine-messages';
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
/** The first message of a run. */
type Beginning = Extract<ToStudyWorker, { kind: 'run' | 'open' }>;
/** The workbook that a study is run on, with its plan where that was made elsewhere. */
type StudyGround = Pick<LentPlan, 'workbook'> & Partial<Pick<LentPlan, 'plan'>>;

function guarded(run: number, reply: Reply, act: () => void): void {
	try {
		act();
	} catch (error) {
		reply(failed(run, error));
	}
}

/** Points that are planned, told one by one until there is an answer. */
class Told implements PlanningProgress {
	#tell: ((done: number, of: number) => void) | null;
	#done = 0;
	#of = 0;

	constructor(tell: (done: number, of: number) => void) {
		this.#tell = tell;
	}

	ahead(points: number): void {
		this.#of += points;
	}

	planned(): void {
		this.#tell?.(++this.#done, this.#of);
	}

	/** What is planned from here on is the second engine's. */
	end(): void {
		this.#tell = null;
	}
}

export class StudyServer {
	readonly #runs = new Map<number, OpenRun>();
	readonly #checking = new Set<number>();
	/** Runs that wait for the plan which was promised to them, or for the solver. */
	readonly #waiting = new Set<number>();
	readonly #loadSolver: () => Promise<Solver>;
	#replanning: Promise<Replanning> | null = null;

	/** `loadSolver`: asked for with the first study whose plans follow. */
	constructor(loadSolver: () => Promise<Solver>) {
		this.#loadSolver = loadSolver;
	}

	/** Replies once, or with an early answer first, or not at all. */
	hear(message: ToStudyWorker, reply: Reply): void {
		const { run } = message;
		if (message.kind !== 'run' && message.kind !== 'open')
			return guarded(run, reply, () => this.#answer(message, reply));
		const begin = (on: StudyGround) => this.#ready(message, on, reply);
		if ('workbook' in message.source) return begin(message.source);
		const { port } = message.source;
		this.#waiting.add(run);
		port.onmessage = ({ data }: MessageEvent<StudyGround>) => {
			port.close();
			if (this.#waiting.delete(run)) begin(data);
		};
	}

	/** A study whose plans follow begins when the solver is there. */
	#ready(message: Beginning, on: StudyGround, reply: Reply): void {
		const { run, study } = message;
		const begin = (replanning?: Replanning) =>
			guarded(run, reply, () => this.#begin(message, { ...on, replanning }, reply));
		if (!asksForPlans(on.workbook, study)) return begin();
		this.#waiting.add(run);
		this.#replanning ??= this.#loadSolver().then((solver) => ({ solver, memory: new Memory() }));
		this.#replanning.then(
			(replanning) => {
				if (this.#waiting.delete(run)) begin(replanning);
			},
			(error: unknown) => {
				this.#replanning = null;
				if (this.#waiting.delete(run)) reply(failed(run, error));
			}
		);
	}

	#begin(
		message: Beginning,
		{ workbook, plan, replanning }: StudyGround & { readonly replanning?: Replanning | undefined },
		reply: Reply
	): void {
		if (message.kind === 'open') return reply(this.#open(message, workbook, plan, replanning));
		const { run } = message;
		const told = new Told((done, of) => reply({ kind: 'progress', run, done, of }));
		const answered = answerStudy(workbook, message.study, {
			plan,
			replanning: replanning && { ...replanning, progress: told }
		});
		told.end();
		if (!answered.ok) return reply({ kind: 'finished', run, answer: answered });
		reply({ kind: 'early', run, result: answered.value.result });
		this.#check(run, answered.value.check(), reply);
	}

	#answer(message: Exclude<ToStudyWorker, Beginning>, reply: Reply): void {
		const { run } = message;
		const open = this.#runs.get(run);
		if (message.kind === 'close') {
			this.#waiting.delete(run);
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

	#open(
		message: Extract<Beginning, { kind: 'open' }>,
		workbook: Workbook,
		plan: Plan | undefined,
		replanning: Replanning | undefined
	): FromStudyWorker {
		const { run, study, settings, isLead } = message;
		if (study.kind !== 'risk') throw new Error('Only a risk study is drawn in parts.');
		const prepared = prepareRisk(workbook, study, { ...settings, plan, replanning });
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
