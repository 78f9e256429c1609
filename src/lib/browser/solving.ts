/**
 * The page's side of the worker that plans. It is started with the first workbook that has a programme to solve; for
 * any other nothing of it is fetched.
 */
import wasmUrl from 'highs/runtime?url';
import type { Resting } from '$lib/engine/resting';
import type { AnyAnswer, AnswerTo, Question } from '$lib/programmes/inquiry/questions';
import type { Command } from '$lib/workbook/commands';
import { afterDrawing } from './frame-batch';
import type { FromSolver, PlanReport, ToSolver } from './solver-messages';

export interface SolvingEvents {
	/** New plans, or null; they fit the workbook of that edit. */
	onplanned(command: Command | null, report: PlanReport, revision: number): void;
	/** Which cells rest on plans, before any is made for the edit. */
	onresting(resting: Resting, revision: number): void;
	onfailed(message: string): void;
}

/** What a session asks for; tests have one of their own. */
export interface Solving {
	/** Has the engine give its plan of cells to the solver, in place of any before. */
	open(lend: (port: MessagePort) => void): void;
	apply(command: Command): void;
	plan(revision: number): void;
	/** What a reader asks about a plan; the workbook is the one of all that was told before. */
	ask<K extends Question['kind']>(question: Extract<Question, { kind: K }>): Promise<AnswerTo<K>>;
	close(): void;
}

export type StartSolving = (events: SolvingEvents) => Solving;

/** Edits that wait for a plan at most; where none is ever asked for, they must not pile up. */
const MOST_WAITING = 100;

export const startWorkerSolving: StartSolving = (events) => {
	const worker = new Worker(new URL('./solver.worker.ts', import.meta.url), { type: 'module' });
	const tell = (message: ToSolver, transfer: Transferable[] = []) =>
		worker.postMessage(message, transfer);
	const waiting = new Map<number, (answer: AnyAnswer) => void>();
	let asked = 0;
	/** How many edits were told: a plan asked for before the last of them is asked for again after it. */
	let edits = 0;
	/** What the solver hears when it is next asked: following an edit at once would take a processor from its answers. */
	let untold: Command[] = [];
	const tellEdits = () => {
		for (const command of untold.splice(0)) tell({ kind: 'apply', command });
	};
	const fail = (message: string) => {
		for (const answer of waiting.values()) answer({ ok: false, problems: [message] });
		waiting.clear();
		events.onfailed(message);
	};
	worker.onmessage = ({ data }: MessageEvent<FromSolver>) => {
		if (data.kind === 'failed') fail(data.message);
		else if (data.kind === 'resting') events.onresting(data.resting, data.revision);
		else if (data.kind === 'planned') events.onplanned(data.command, data.report, data.revision);
		else {
			waiting.get(data.id)?.(data.answer);
			waiting.delete(data.id);
		}
	};
	worker.onerror = (event) =>
		fail(event.message || 'Planning stopped. Load the page again; the work is kept.');
	return {
		open(lend) {
			const { port1, port2 } = new MessageChannel();
			// The plan that is lent knows of them.
			untold = [];
			tell({ kind: 'open', port: port2, wasmUrl }, [port2]);
			lend(port1);
		},
		apply(command) {
			edits++;
			// What it plans now is of no use any more.
			if (untold.push(command) === 1) tell({ kind: 'halt' });
			if (untold.length >= MOST_WAITING) tellEdits();
		},
		// The numbers that an edit moved are drawn first: on two processors the solver would keep them waiting.
		plan(revision) {
			const edit = edits;
			afterDrawing(() => {
				if (edit !== edits) return;
				tellEdits();
				tell({ kind: 'plan', revision });
			});
		},
		ask: (question) =>
			new Promise((resolve) => {
				const id = ++asked;
				tellEdits();
				// The worker answers each question in its own kind.
				waiting.set(id, resolve as (answer: AnyAnswer) => void);
				tell({ kind: 'ask', id, question });
			}),
		close: () => worker.terminate()
	};
};
