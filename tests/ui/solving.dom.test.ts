/** When the worker that plans hears of edits: with the next question, as following one takes a processor from its answers. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import { startWorkerSolving, type Solving } from '$lib/browser/solving';
import type { ToSolver } from '$lib/browser/solver-messages';

let told: ToSolver[] = [];

class SilentWorker {
	postMessage(message: ToSolver) {
		told.push(message);
	}
	terminate() {}
}

function begun(): Solving {
	told = [];
	vi.stubGlobal('Worker', SilentWorker);
	return startWorkerSolving({ onplanned() {}, onresting() {}, onfailed() {} });
}
const edit = (solving: Solving, title: string) => solving.apply({ kind: 'set_title', title });
const kinds = () => told.map(({ kind }) => kind);
/** A plan is asked for once the page is drawn. */
const heard = (expected: readonly string[]) =>
	vi.waitFor(() => expect(kinds()).toEqual(expected), { timeout: 600_000 });

afterEach(() => vi.unstubAllGlobals());

describe('the solver', () => {
	it('stops planning with the first edit, and hears of all when it is asked to plan', async () => {
		const solving = begun();
		edit(solving, 'one');
		edit(solving, 'two');
		expect(kinds()).toEqual(['halt']);
		solving.plan(3);
		await heard(['halt', 'apply', 'apply', 'plan']);
		edit(solving, 'three');
		expect(kinds().at(-1)).toBe('halt');
	});

	it('hears of edits before a question about them', () => {
		const solving = begun();
		edit(solving, 'one');
		const where = { programme: 'allocation', scenario: 'base', members: [] };
		void solving.ask({ kind: 'look', where });
		expect(kinds()).toEqual(['halt', 'apply', 'ask']);
	});

	it('is not told of edits that a plan of cells lent anew holds already', async () => {
		const solving = begun();
		edit(solving, 'one');
		solving.open(() => {});
		solving.plan(2);
		await heard(['halt', 'open', 'plan']);
	});

	it('hears of a hundred edits even if nothing is ever asked', () => {
		const solving = begun();
		for (let at = 0; at < 100; at++) edit(solving, `title ${at}`);
		expect(kinds().filter((kind) => kind === 'apply')).toHaveLength(100);
	});
});
