/** A worker of studies: hears, computes, and hands its answers over. What it does is `study-server.ts`'s. */
import { Solver } from '$lib/programmes/highs';
import { transfersOf, type ToStudyWorker, type WhereSolverLies } from './study-messages';
import { StudyServer } from './study-server';

let wasmUrl: string | undefined;
const server = new StudyServer(() => Solver.load(wasmUrl));

self.onmessage = ({ data }: MessageEvent<ToStudyWorker | WhereSolverLies>) => {
	if (data.kind === 'solver') wasmUrl = data.wasmUrl;
	else
		server.hear(data, (reply) =>
			self.postMessage(reply, { transfer: transfersOf(reply) as Transferable[] })
		);
};
