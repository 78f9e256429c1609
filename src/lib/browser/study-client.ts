/** The page's side of a study: starts a worker for it, hands on progress and the answer, and can end it. */
import { refuse, type Answer } from '$lib/studies/problem';
import type { StudyResult } from '$lib/studies/run';
import type { Workbook } from '$lib/workbook/schema';
import type { Study } from '$lib/workbook/study-schema';
import type { FromStudy, ToStudy } from './study-messages';

export interface StudyRun {
	readonly answer: Promise<Answer<StudyResult>>;
	/** The answer is then that it was cancelled. */
	cancel(): void;
}

export type AskStudy = (
	workbook: Workbook,
	study: Study,
	onprogress: (done: number, of: number) => void
) => StudyRun;

export const askInWorker: AskStudy = (workbook, study, onprogress) => {
	const worker = new Worker(new URL('./study.worker.ts', import.meta.url), { type: 'module' });
	let cancel = () => {};
	const answer = new Promise<Answer<StudyResult>>((resolve) => {
		const end = (found: Answer<StudyResult>) => {
			worker.terminate();
			resolve(found);
		};
		cancel = () => end(refuse('cancelled', 'The study was cancelled. Nothing was kept.'));
		worker.onmessage = ({ data }: MessageEvent<FromStudy>) => {
			if (data.kind === 'progress') onprogress(data.done, data.of);
			else end(data.answer);
		};
		worker.onerror = ({ message }) =>
			end(
				refuse(
					'stopped',
					`The study could not be started${message ? ` (${message})` : ''}. Check the connection and run it again.`
				)
			);
		const question: ToStudy = { workbook, study };
		worker.postMessage(question);
	});
	return { answer, cancel: () => cancel() };
};
