/** News of others' saves: what is told, and how the stream is tried again. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { listen, waitBefore, type Source } from '$lib/browser/sync/events';

class Stream implements Source {
	readyState = 0;
	closed = false;
	readonly #listeners = new Map<string, (event: Event) => void>();
	addEventListener(type: string, listener: (event: Event) => void) {
		this.#listeners.set(type, listener);
	}
	fire(event: Event) {
		this.#listeners.get(event.type)?.(event);
	}
	/** Gives up, as a browser does when something else than a stream answers. */
	breakOff() {
		this.readyState = 2;
		this.fire(new Event('error'));
	}
	close() {
		this.closed = true;
	}
}

function listening() {
	const streams: Stream[] = [];
	const said: string[] = [];
	const stop = listen(
		'w1',
		{
			onlistening: () => said.push('listening'),
			onrevision: ({ number }) => said.push(`revision ${number}`),
			onlost: () => said.push('lost')
		},
		(address) => {
			expect(address).toBe('/api/v1/workbooks/w1/events');
			const stream = new Stream();
			streams.push(stream);
			return stream;
		}
	);
	return { streams, said, stop };
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('news of others’ saves', () => {
	it('tells that it listens, and of each revision', () => {
		const { streams, said } = listening();
		streams[0]?.fire(new Event('open'));
		streams[0]?.fire(new MessageEvent('revision', { data: '{"number":8,"changes":[]}' }));
		expect(said).toEqual(['listening', 'revision 8']);
	});
	it('leaves a lost connection to the browser, which comes back by itself', () => {
		const { streams, said } = listening();
		streams[0]?.fire(new Event('error'));
		vi.advanceTimersByTime(200_000);
		expect(streams).toHaveLength(1);
		streams[0]?.fire(new Event('open'));
		expect(said).toEqual(['lost', 'listening']);
	});
	it('tries again where the browser gave up, longer each time and never longer than a minute', () => {
		const { streams } = listening();
		for (const wait of [2000, 4000, 8000, 16_000, 32_000, 60_000, 60_000]) {
			streams.at(-1)?.breakOff();
			const before = streams.length;
			vi.advanceTimersByTime(wait - 1);
			expect(streams).toHaveLength(before);
			vi.advanceTimersByTime(1);
			expect(streams).toHaveLength(before + 1);
		}
		streams.at(-1)?.fire(new Event('open'));
		streams.at(-1)?.breakOff();
		const before = streams.length;
		vi.advanceTimersByTime(waitBefore(1));
		expect(streams).toHaveLength(before + 1);
	});
	it('says nothing more once it is ended', () => {
		const { streams, said, stop } = listening();
		streams[0]?.breakOff();
		stop();
		vi.advanceTimersByTime(100_000);
		streams[0]?.fire(new Event('open'));
		expect(said).toEqual(['lost']);
		expect(streams).toHaveLength(1);
		expect(streams[0]?.closed).toBe(true);
	});
});
