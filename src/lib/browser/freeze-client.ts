/** Asks a worker for a frozen copy of a workbook that is not the open one: an earlier revision. */
import type { FreezeAnswer, FreezeRequest } from './freeze-messages';
import FreezeWorker from './freeze.worker?worker';

export function frozenOf(request: FreezeRequest): Promise<FreezeAnswer> {
	const worker = new FreezeWorker();
	return new Promise<FreezeAnswer>((done) => {
		worker.onmessage = ({ data }: MessageEvent<FreezeAnswer>) => done(data);
		worker.onerror = () =>
			done({ ok: false, message: 'the part of the program that computes it could not be fetched' });
		worker.postMessage(request);
	}).finally(() => worker.terminate());
}
