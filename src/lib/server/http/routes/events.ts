/** News of a workbook as they happen: server-sent events, one for each new revision. */
import { listRevisions } from '../../store/revisions';
import { headOf } from '../../store/workbooks';
import { noSuchWorkbook, refusal } from '../permission';
import { problem } from '../problem';
import { route, type Call } from '../route';
import { bearerOf, findToken } from '../../people/tokens';
import { findSession } from '../../people/sessions';
import { cookieNames, readCookie } from '../cookies';

/** How often a line is sent where nothing happens, so that proxies keep the connection; permission is asked anew. */
const BEAT_MS = 15_000;
/** Connections that one process holds. */
const MOST = 500;
/** Revisions told after a time away; older ones are read from the list. */
const MOST_MISSED = 100;

export const eventRoutes = [
	route({
		method: 'GET',
		path: '/api/v1/workbooks/{workbook}/events',
		needs: 'viewer',
		group: 'events',
		summary:
			'Server-sent events: `revision` with number, author, time, reason and changes; Last-Event-ID goes on from there',
		answers: {
			200: { description: 'A stream', type: 'text/event-stream' },
			503: { description: 'Too many are listening' }
		},
		handle: async (call) => {
			const { services, path, request } = call;
			const head = await headOf(services.store.db, path('workbook'));
			if (head === null) return noSuchWorkbook();
			if (services.hub.watchers >= MOST)
				return problem('busy', 'Too many are listening. Try again later.', {
					headers: { 'retry-after': '60' }
				});
			const last = Number(request.headers.get('last-event-id') ?? NaN);
			const from = Number.isInteger(last) && last > 0 && last <= head ? last : head;
			return new Response(stream(call, from, head), {
				headers: { 'content-type': 'text/event-stream; charset=utf-8', 'x-accel-buffering': 'no' }
			});
		}
	})
];

function stream(call: Call, from: number, head: number): ReadableStream<Uint8Array> {
	const { services, path } = call;
	const workbookId = path('workbook');
	const text = new TextEncoder();
	let sent = from;
	let end = () => {};
	return new ReadableStream({
		start(controller) {
			let work = Promise.resolve();
			const close = () => {
				end();
				try {
					controller.close();
				} catch {
					// The other side has closed it already.
				}
			};
			const send = (lines: string) => controller.enqueue(text.encode(`${lines}\n\n`));
			const tell = async (newest: number) => {
				if (newest <= sent) return;
				if (!(await mayStill(call))) return close();
				const limit = Math.min(newest - sent, MOST_MISSED);
				const news = await listRevisions(services.store.db, workbookId, {
					before: newest + 1,
					limit
				});
				for (const { changes, ...revision } of news.reverse()) {
					const data = JSON.stringify({ ...revision, changes: changes.slice(0, 50) });
					send(`id: ${revision.number}\nevent: revision\ndata: ${data}`);
				}
				sent = newest;
			};
			// One after the other, so that none overtakes another.
			const soon = (step: () => Promise<void>) => {
				work = work.then(step).catch(close);
			};
			const stop = services.hub.watch(workbookId, head, (newest) => soon(() => tell(newest)));
			const beat = setInterval(
				() =>
					soon(async () => {
						if (!services.isOpen() || !(await mayStill(call))) close();
						else send(': still here');
					}),
				BEAT_MS
			).unref();
			const onStop = services.whenStopping(close);
			end = () => {
				stop();
				clearInterval(beat);
				onStop();
			};
			send('retry: 2000\n: listening');
			soon(() => tell(head));
		},
		cancel: () => end()
	});
}

/** A session may have ended and a role been taken away since the stream began. */
async function mayStill({ services, request, who, path }: Call): Promise<boolean> {
	const { settings, store, now } = services;
	const secret = bearerOf(request);
	if (who.mode === 'accounts' && secret !== null) {
		if (!(await findToken(store.db, secret, now()))) return false;
	} else if (who.mode === 'accounts') {
		const token = readCookie(request, cookieNames(settings, request).session);
		const session =
			// A stream that stays open is not use.
			token === null ? null : await findSession(store.db, token, now(), null);
		if (!session) return false;
	}
	return (await refusal(store.db, who, 'viewer', path('workbook'))) === null;
}
