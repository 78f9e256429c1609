/**
 * News of other people's saves. The browser's own stream comes back by itself after a lost connection, but gives up
 * when something else than a stream answers; this then tries again, waiting longer each time.
 */
import type { Revision } from '$lib/protocol/answers';

export interface NewsEvents {
	/** Listening (again): what was missed meanwhile is for the listener to ask. */
	onlistening: () => void;
	onrevision: (revision: Revision) => void;
	/** The stream broke off; it is being tried again. */
	onlost: () => void;
}

/** The part of the browser's EventSource that is used. */
export interface Source {
	readonly readyState: number;
	addEventListener(type: string, listener: (event: Event) => void): void;
	close(): void;
}

const CLOSED = 2;

/** Milliseconds to wait before try number `tries`, from 1: 2 s, 4 s, … up to a minute. */
export const waitBefore = (tries: number): number => Math.min(1000 * 2 ** tries, 60_000);

/** Gives the function that ends it. */
export function listen(
	workbookId: string,
	events: NewsEvents,
	open: (address: string) => Source = (address) => new EventSource(address)
): () => void {
	let source: Source | null = null;
	let timer: ReturnType<typeof setTimeout> | null = null;
	let tries = 0;
	let closed = false;

	function start(): void {
		timer = null;
		const own = open(`/api/v1/workbooks/${workbookId}/events`);
		source = own;
		own.addEventListener('open', () => {
			if (own !== source) return;
			tries = 0;
			events.onlistening();
		});
		own.addEventListener('revision', (event) => {
			if (own !== source || !(event instanceof MessageEvent)) return;
			events.onrevision(JSON.parse(String(event.data)) as Revision);
		});
		own.addEventListener('error', () => {
			if (own !== source || closed) return;
			events.onlost();
			if (own.readyState !== CLOSED || timer !== null) return;
			timer = setTimeout(start, waitBefore(++tries));
		});
	}

	start();
	return () => {
		closed = true;
		if (timer !== null) clearTimeout(timer);
		source?.close();
		source = null;
	};
}
