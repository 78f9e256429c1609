/**
 * The pool of workers, with workers that run in place and answer in an order of their own: the same answer from any
 * number of them, cancelled in the middle, two studies at once, one core, a worker that breaks down.
 */
import { Solver } from '$lib/programmes/highs';
import { afterEach, describe, expect, it } from 'vitest';
import { workersFor } from '$lib/browser/run-study';
import { transfersOf, type ToStudyWorker } from '$lib/browser/study-messages';
import { StudyPool, type StartEndpoint } from '$lib/browser/study-pool';
import { StudyServer } from '$lib/browser/study-server';
import { buildPlan } from '$lib/engine/planner/plan';
import type { RiskStudy } from '$lib/studies/risk';
import type { StudyResult } from '$lib/studies/kinds';
import { runStudyHere } from '$lib/studies/run';
import type { Study } from '$lib/workbook/study-schema';
import { metre } from './small-book';

interface Office {
	readonly pool: StudyPool;
	/** What each worker was told, in the order in which they did it. */
	readonly done: { readonly worker: number; readonly message: ToStudyWorker }[];
	readonly terminated: number[];
	readonly started: number[];
}

const offices: Office[] = [];
afterEach(() => offices.splice(0).forEach(({ pool }) => pool.close()));

/** Workers in place: everything is copied on its way, one message at a time, the later workers first. */
function office(size: number, breaks?: (message: ToStudyWorker) => boolean): Office {
	const started: number[] = [];
	const terminated: number[] = [];
	const done: Office['done'] = [];
	const start: StartEndpoint = (events) => {
		const worker = started.length;
		started.push(worker);
		const server = new StudyServer(() => Solver.load());
		let isOver = false;
		let queue = Promise.resolve();
		return {
			post(message) {
				const copy = structuredClone(message, { transfer: transfersOf(message) as ArrayBuffer[] });
				queue = queue.then(async () => {
					await new Promise((resume) => setTimeout(resume, (7 * worker) % 5));
					if (isOver) return;
					if (breaks?.(copy)) return events.onfailed('out of memory');
					done.push({ worker, message: copy });
					server.hear(copy, (reply) => {
						if (!isOver) events.onmessage(structuredClone(reply));
					});
				});
			},
			terminate() {
				isOver = true;
				terminated.push(worker);
			}
		};
	};
	const one = { pool: new StudyPool(start, size), done, terminated, started };
	offices.push(one);
	return one;
}

const risk: RiskStudy = {
	kind: 'risk',
	name: 'spread',
	title: 'Spread',
	quantity: 'margin',
	scenario: 'base',
	inputs: [
		{
			label: 'Sales',
			quantity: 'sales',
			mode: 'set',
			distribution: { kind: 'pert', min: 0.2, likely: 0.4, max: 0.5 }
		},
		{
			label: 'Resins',
			quantity: 'price',
			mode: 'scale',
			distribution: { kind: 'lognormal', median: 1, sd_log: 0.2 }
		},
		{
			label: 'Mass of PE',
			quantity: 'mass',
			members: ['PE'],
			mode: 'set',
			distribution: { kind: 'uniform', min: 0.05, max: 1.01 }
		}
	],
	correlations: [{ between: ['Sales', 'Resins'], rank: 0.6 }],
	draws: 1000,
	seed: 11
};

const swing: Study = {
	kind: 'sensitivity',
	name: 'swing',
	title: 'Swing',
	quantity: 'margin',
	scenario: 'base',
	all: { percent: 10 }
};

describe('the pool', () => {
	it.each<[string, Study]>([
		['a spread of draws', risk],
		['any other study', swing]
	])('has workers take the plan that is lent to them: %s', async (_, study) => {
		const { pool, done } = office(3);
		const workbook = metre();
		const plan = buildPlan(workbook);
		let lent = 0;
		const lend = (port: MessagePort) => {
			lent++;
			port.postMessage({ workbook, plan });
		};
		const found = await pool.run(workbook, study, { lend, chunk: 100 });
		expect(found).toEqual(runStudyHere(workbook, study));
		const begun = done.flatMap(({ message }) => ('source' in message ? message.source : []));
		expect(begun).toHaveLength(study === risk ? 3 : 1);
		expect(begun.every((source) => 'port' in source)).toBe(true);
		expect(lent).toBe(begun.length);
	});

	it('gives the same answer with any number of workers, and the one that is given in place', async () => {
		const here = runStudyHere(metre(), risk);
		expect(here).toMatchObject({ ok: true, value: { draws: 1000, kind: 'risk' } });
		for (const [workers, chunk] of [
			[1, 1000],
			[2, 170],
			[3, 64],
			[5, 333]
		] as const) {
			const { pool, done } = office(workers);
			expect(await pool.run(metre(), risk, { chunk })).toEqual(here);
			const drew = done.filter(({ message }) => message.kind === 'draw');
			expect(drew).toHaveLength(Math.ceil(1000 / chunk));
			// The lead is the first; whoever is free helps.
			expect(drew.some(({ worker }) => worker > 0)).toBe(workers > 1);
		}
	});

	it('says how far it is, and ends where it said', async () => {
		const { pool } = office(2);
		const seen: string[] = [];
		await pool.run(metre(), risk, {
			chunk: 250,
			onprogress: ({ phase, done, of }) => seen.push(`${phase} ${done}/${of}`)
		});
		expect(seen).toEqual([
			'preparing 0/0',
			'drawing 250/1000',
			'drawing 500/1000',
			'drawing 750/1000',
			'drawing 1000/1000',
			'finishing 1000/1000',
			'checking 0/0'
		]);
	});

	it('is cancelled in the middle, ends its workers, and starts afresh', async () => {
		const { pool, terminated, done, started } = office(2);
		const control = new AbortController();
		const answer = await pool.run(metre(), risk, {
			chunk: 100,
			signal: control.signal,
			onprogress: ({ done: drawn }) => drawn >= 200 && control.abort()
		});
		expect(answer).toMatchObject({ ok: false, problem: { code: 'cancelled' } });
		expect(terminated).toEqual([0, 1]);
		const drawn = done.filter(({ message }) => message.kind === 'draw').length;
		expect(drawn).toBeLessThan(10);
		expect(await pool.run(metre(), risk, { chunk: 100 })).toEqual(runStudyHere(metre(), risk));
		expect(started).toEqual([0, 1, 2, 3]);
		const late = new AbortController();
		late.abort();
		expect(await pool.run(metre(), risk, { signal: late.signal })).toMatchObject({ ok: false });
	});

	it('has two studies at work at once; to cancel one leaves the other alone', async () => {
		const { pool, done, terminated } = office(2);
		const other = { ...risk, seed: 12 };
		const control = new AbortController();
		const [one, two] = await Promise.all([
			pool.run(metre(), risk, {
				chunk: 100,
				signal: control.signal,
				onprogress: ({ done: drawn }) => drawn >= 300 && control.abort()
			}),
			pool.run(metre(), other, { chunk: 100 })
		]);
		expect(one).toMatchObject({ ok: false, problem: { code: 'cancelled' } });
		expect(two).toEqual(runStudyHere(metre(), other));
		expect(terminated).toEqual([]);
		// The two are led by different workers, and took turns.
		const order = done.filter(({ message }) => message.kind === 'draw');
		const runs = order.map(({ message }) => message.run);
		expect(runs.lastIndexOf(1)).toBeGreaterThan(runs.indexOf(2));
		const leads = done.filter(({ message }) => message.kind === 'open' && message.isLead);
		expect(new Set(leads.map(({ worker }) => worker)).size).toBe(2);
	});

	it('runs every other kind of study on one worker', async () => {
		const { pool, done } = office(3);
		expect(await pool.run(metre(), swing)).toEqual(runStudyHere(metre(), swing));
		expect(done.map(({ message }) => message.kind)).toEqual(['run']);
	});

	it('gives the answer before the second engine has looked at it, and then the same with its check', async () => {
		const { pool } = office(2);
		for (const study of [risk, swing]) {
			const early: StudyResult[] = [];
			const answer = await pool.run(metre(), study, {
				onearly: (result) => early.push(result)
			});
			if (!answer.ok) throw new Error(answer.problem.message);
			expect(answer.value.check!.compared).toBeGreaterThan(0);
			expect(early).toEqual([{ ...answer.value, check: null }]);
		}
	});

	it('answers another study while the second engine is at work on the first', async () => {
		const { pool } = office(1);
		const order: string[] = [];
		const first = pool.run(metre(), risk).then(() => order.push('first checked'));
		const other = { ...swing, name: 'other' };
		await pool.run(metre(), other, { onearly: () => order.push('second answered') });
		await first;
		expect(order.indexOf('second answered')).toBeLessThan(order.indexOf('first checked'));
	});

	it('hands on what keeps a study from being run', async () => {
		const { pool } = office(2);
		const answer = await pool.run(metre(), { ...risk, quantity: 'gone' });
		expect(answer).toMatchObject({ ok: false, problem: { code: 'no-such-quantity' } });
	});

	it('ends all studies with a message when a worker breaks down', async () => {
		const { pool, terminated } = office(2, (message) => message.kind === 'draw');
		const answer = await pool.run(metre(), risk, { chunk: 100 });
		expect(answer).toMatchObject({ ok: false, problem: { code: 'stopped' } });
		if (!answer.ok) expect(answer.problem.message).toContain('out of memory');
		expect(terminated).toHaveLength(2);
	});

	it('leaves one core to the page, and makes do with one', () => {
		expect([undefined, 1, 2, 4, 64].map(workersFor)).toEqual([1, 1, 1, 3, 8]);
	});
});
