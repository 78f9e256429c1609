/** What a worker has to do is done in turn, whatever fails on the way. */
import { describe, expect, it } from 'vitest';
import { pause as aTurn, WorkQueue } from '$lib/browser/work-queue';

/** Long enough for what ended to be noticed, and for the turn that messages have in between. */
async function pause(): Promise<void> {
	for (let turn = 0; turn < 3; turn++) await aTurn();
}

/** A queue whose tasks end when they are told to. */
function slowQueue() {
	const began: string[] = [];
	const failures: string[] = [];
	const ends = new Map<string, (error?: Error) => void>();
	const queue = new WorkQueue<string>(
		(task) => {
			began.push(task);
			return new Promise<void>((resolve, reject) =>
				ends.set(task, (error) => (error ? reject(error) : resolve()))
			);
		},
		(why) => failures.push(why)
	);
	return { queue, began, failures, end: (task: string, error?: Error) => ends.get(task)!(error) };
}

describe('the queue of a worker', () => {
	it('takes one thing after the other, and says whether more waits', async () => {
		const { queue, began, end } = slowQueue();
		queue.push('one');
		expect([began, queue.hasMore]).toEqual([['one'], false]);
		queue.push('two');
		expect([began, queue.hasMore]).toEqual([['one'], true]);
		end('one');
		await pause();
		expect([began, queue.hasMore]).toEqual([['one', 'two'], false]);
	});

	it('goes on after what fails, and says why it did', async () => {
		const { queue, began, failures, end } = slowQueue();
		queue.push('one');
		queue.push('two');
		end('one', new Error('no memory'));
		await pause();
		expect([began, failures]).toEqual([['one', 'two'], ['no memory']]);
		end('two');
		await pause();
		queue.push('three');
		expect(began).toEqual(['one', 'two', 'three']);
	});

	it('leaves what can wait until nothing else is to be done', async () => {
		const { queue, began, end } = slowQueue();
		queue.push('one');
		queue.pushLast('question');
		expect(queue.hasMore).toBe(false);
		queue.push('two');
		end('one');
		await pause();
		expect(began).toEqual(['one', 'two']);
		end('two');
		await pause();
		expect(began).toEqual(['one', 'two', 'question']);
	});

	it('forgets what waits when it is cleared, and ends what is at work', async () => {
		const { queue, began, end } = slowQueue();
		for (const task of ['one', 'two']) queue.push(task);
		queue.clear();
		queue.push('three');
		end('one');
		await pause();
		expect(began).toEqual(['one', 'three']);
	});
});
