/** A worker of studies: hears, computes, and hands its answers over. What it does is `study-server.ts`'s. */
import { transfersOf, type ToStudyWorker } from './study-messages';
import { StudyServer } from './study-server';

const server = new StudyServer();

self.onmessage = ({ data }: MessageEvent<ToStudyWorker>) =>
	server.hear(data, (reply) =>
		self.postMessage(reply, { transfer: transfersOf(reply) as Transferable[] })
	);
