/**
 * The page's side of the worker that plans. It is started with the first workbook that has a programme to solve; for
 * any other nothing of it is fetched.
 */
import wasmUrl from 'highs/runtime?url';
import type { Command } from '$lib/workbook/commands';
import type { FromSolver, PlanReport, ToSolver } from './solver-messages';

export interface SolvingEvents {
	/** New plans, or null; they fit the workbook of that edit. */
	onplanned(command: Command | null, report: PlanReport, revision: number): void;
	onfailed(message: string): void;
}

/** What a session asks for; tests have one of their own. */
export interface Solving {
	/** Has the engine give its plan of cells to the solver, in place of any before. */
	open(lend: (port: MessagePort) => void): void;
	apply(command: Command): void;
	plan(revision: number): void;
	close(): void;
}

export type StartSolving = (events: SolvingEvents) => Solving;

export const startWorkerSolving: StartSolving = (events) => {
	const worker = new Worker(new URL('./solver.worker.ts', import.meta.url), { type: 'module' });
	const tell = (message: ToSolver, transfer: Transferable[] = []) =>
		worker.postMessage(message, transfer);
	worker.onmessage = ({ data }: MessageEvent<FromSolver>) => {
		if (data.kind === 'failed') events.onfailed(data.message);
		else events.onplanned(data.command, data.report, data.revision);
	};
	worker.onerror = (event) =>
		events.onfailed(event.message || 'Planning stopped. Load the page again; the work is kept.');
	return {
		open(lend) {
			const { port1, port2 } = new MessageChannel();
			tell({ kind: 'open', port: port2, wasmUrl }, [port2]);
			lend(port1);
		},
		apply: (command) => tell({ kind: 'apply', command }),
		plan: (revision) => tell({ kind: 'plan', revision }),
		close: () => worker.terminate()
	};
};
