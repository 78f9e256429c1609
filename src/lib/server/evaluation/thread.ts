/**
 * Both ends of the evaluating thread: loaded in a thread it answers; loaded by the server it says where it
 * stands, so that a thread can be started from it, built or not.
 */
import { isMainThread, parentPort, workerData } from 'node:worker_threads';
import { answerOf, type Ask } from './answer';

export const THREAD_URL = import.meta.url;
/** Tells this thread from any other that loads the module. */
export const MARK = 'metrewright-evaluation';

if (!isMainThread && parentPort && workerData === MARK) {
	const port = parentPort;
	port.on(
		'message',
		(ask: Ask) => void answerOf(ask).then((answered) => port.postMessage(answered))
	);
}
