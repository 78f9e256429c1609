/** Asks a worker for a workbook as an OOXML file. */
import type { StalePlan } from '$lib/engine/stale';
import type { Workbook } from '$lib/workbook/schema';
import type { FileAnswer, FileRequest } from './file-messages';
import FileWorker from './file.worker?worker';

export function ooxmlOf(workbook: Workbook, stale: readonly StalePlan[]): Promise<FileAnswer> {
	const worker = new FileWorker();
	return new Promise<FileAnswer>((done) => {
		worker.onmessage = ({ data }: MessageEvent<FileAnswer>) => done(data);
		worker.onerror = () =>
			done({ ok: false, message: 'the part of the program that writes it could not be fetched' });
		const request: FileRequest = { workbook, stale };
		worker.postMessage(request);
	}).finally(() => worker.terminate());
}
