/**
 * One shared workbook's connection: keeps it in step, hears of other people's saves, and asks what was missed whenever
 * the line is back. When to try again after a failure is for the one who holds it.
 */
import { listen } from './events';
import { HttpRemote } from './remote';
import type { Revision, SharedEntry } from '$lib/protocol/answers';
import { Refused, Sync, type LocalDocument, type Link, type SyncState } from './sync';

export interface ConnectionEvents {
	readonly onstate: (state: SyncState, link: Link) => void;
	/** What the server's list says of it: the role may have changed. */
	readonly onentry: (entry: SharedEntry) => void;
	/** Others' revisions that are now in the workbook here, oldest first. */
	readonly onothers: (revisions: readonly Revision[]) => void;
	/** When a revision was saved that was heard of. */
	readonly onmoment: (number: number, at: number) => void;
}

export interface Connection {
	readonly sync: Sync;
	/** Asks what was missed, and gets in step. */
	catchUp(): Promise<void>;
	close(): void;
}

export function connect(
	link: Link,
	openDocument: LocalDocument,
	events: ConnectionEvents
): Connection {
	const remote = new HttpRemote();
	const own = new Set<number>();
	let news: Revision[] = [];
	let closed = false;
	let last: SyncState['is'] | null = null;
	const say = (state: SyncState, at: Link) => {
		last = state.is;
		events.onstate(state, at);
	};

	const sync = new Sync(
		{
			read: (id) => remote.read(id),
			revision: (id, number) => remote.revision(id, number),
			save: async (from, workbook, reason) => {
				const answer = await remote.save(from, workbook, reason);
				if (answer.kind === 'saved') own.add(answer.number);
				return answer;
			}
		},
		openDocument,
		link,
		(state, at) => {
			say(state, at);
			if (state.is !== 'in_step') return;
			const others = news.filter(({ number }) => number <= at.number && !own.has(number));
			news = news.filter(({ number }) => number > at.number);
			if (others.length > 0) events.onothers(others);
		}
	);

	async function catchUp(): Promise<void> {
		try {
			const entry = await remote.entry(link.id);
			if (closed) return;
			events.onentry(entry);
			events.onmoment(entry.head, entry.savedAt);
			sync.tell(entry.head);
		} catch (error) {
			if (closed) return;
			const state: SyncState =
				error instanceof Refused ? { is: 'refused', message: error.message } : { is: 'offline' };
			return say(state, sync.link);
		}
		await sync.step();
	}

	const stopListening = listen(link.id, {
		onlistening: () => void catchUp(),
		onrevision: (revision) => {
			news.push(revision);
			events.onmoment(revision.number, revision.madeAt);
			sync.tell(revision.number);
			void sync.step();
		},
		// A question or a refusal stands, whatever the line does.
		onlost: () => {
			if (last === null || last === 'in_step') say({ is: 'offline' }, sync.link);
		}
	});

	return {
		sync,
		catchUp,
		close: () => {
			closed = true;
			stopListening();
			sync.close();
		}
	};
}
