/** Both ends of the thread that reads and compares workbooks, as `evaluation/thread.ts` has them. */
import { isMainThread, parentPort, workerData } from 'node:worker_threads';
import { answerOf, type DocumentAsk } from './work';

export const THREAD_URL = import.meta.url;
/** Tells this thread from any other that loads the module. */
export const MARK = 'metrewright-documents';

if (!isMainThread && parentPort && workerData === MARK) {
	const port = parentPort;
	port.on('message', (ask: DocumentAsk) => port.postMessage(answerOf(ask)));
}
