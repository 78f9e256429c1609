/** The one thing that a screen calls to run a study: the workers are started on the first, and kept. */
import wasmUrl from 'highs/runtime?url';
import type { Answer } from '$lib/studies/problem';
import type { StudyResult } from '$lib/studies/kinds';
import type { Workbook } from '$lib/workbook/schema';
import type { Study } from '$lib/workbook/study-schema';
import { transfersOf, type FromStudyWorker, type WhereSolverLies } from './study-messages';
import { StudyPool, type RunRequest, type StartEndpoint } from './study-pool';

/** More workers than this only divide the memory's speed among themselves. */
const MOST_WORKERS = 8;

/** One core is left to the page; a machine with one has one worker all the same. */
export const workersFor = (cores: number | undefined): number =>
	Math.max(1, Math.min(MOST_WORKERS, (cores ?? 2) - 1));

const startWorker: StartEndpoint = (events) => {
	const worker = new Worker(new URL('./study.worker.ts', import.meta.url), { type: 'module' });
	worker.onmessage = (event: MessageEvent<FromStudyWorker>) => events.onmessage(event.data);
	worker.onerror = (event) => events.onfailed(event.message || 'its worker could not be started');
	worker.postMessage({ kind: 'solver', wasmUrl } satisfies WhereSolverLies);
	return {
		post: (message) => worker.postMessage(message, transfersOf(message) as Transferable[]),
		terminate: () => worker.terminate()
	};
};

let pool: StudyPool | null = null;

/** Ends with a problem of code "cancelled" when the signal says so. */
export function runStudy(
	study: Study,
	workbook: Workbook,
	request: RunRequest = {}
): Promise<Answer<StudyResult>> {
	pool ??= new StudyPool(startWorker, workersFor(navigator.hardwareConcurrency));
	return pool.run(workbook, study, request);
}
