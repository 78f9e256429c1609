import { describe, expect, it } from 'vitest';
import { askStudy } from '$lib/studies/ask-study';
import { refuse, type Answer } from '$lib/studies/problem';
import type { StudyResult } from '$lib/studies/kinds';
import { freshnessOf } from '$lib/studies/fingerprint';
import type { Study } from '$lib/workbook/study-schema';
import { Session } from '$lib/ui/session.svelte';
import { pacesOf } from '$lib/ui/studies/paces.svelte';
import { StudyRunner, type AskStudy } from '$lib/ui/studies/study-runner.svelte';
import { shop } from '../shop';
import { quietEngine } from '../still';

const study: Study = {
	...{ name: 'why', title: 'Why', kind: 'bridge' },
	...{ quantity: 'cost', members: ['A15'], from: 'base', to: 'cheap' }
};

/** The same study of a programme that is planned anew: 64 points, half a second each on a clock that the test moves. */
function timed() {
	const session = new Session(() => quietEngine, 'en');
	session.open({ ...shop, studies: [study] });
	let now = 0;
	let asked = 0;
	let signal: AbortSignal | undefined;
	let tell: (done: number) => void = () => {};
	let answer = () => {};
	const ask: AskStudy = (one, workbook, request) =>
		new Promise<Answer<StudyResult>>((resolve) => {
			asked++;
			signal = request.signal;
			signal?.addEventListener('abort', () => resolve(refuse('cancelled', 'Cancelled.')));
			tell = (done) => {
				now += 500;
				request.onprogress?.({ phase: 'drawing', done, of: 64 });
			};
			answer = () => resolve(askStudy(workbook, one));
		});
	const runner = new StudyRunner(session, ask);
	const paces = pacesOf(runner, () => now);
	const measure = () => paces.measure(study, session.workbook!);
	const go = (from: number, to: number) => {
		for (let done = from; done <= to; done++) tell(done);
	};
	return {
		...{ runner, paces, measure, go, answer: () => answer() },
		...{ asked: () => asked, stopped: () => signal?.aborted }
	};
}

/** A session with the study, and a bench whose answers come when the test says so. */
function started() {
	const session = new Session(() => quietEngine, 'en');
	session.open({ ...shop, studies: [study] });
	const waiting: (() => void)[] = [];
	let early = () => {};
	const ask: AskStudy = (one, workbook, { signal, onprogress, onearly }) =>
		new Promise<Answer<StudyResult>>((resolve) => {
			signal?.addEventListener('abort', () => resolve(refuse('cancelled', 'Cancelled.')));
			early = () => {
				const answered = askStudy(workbook, one);
				if (!answered.ok) throw new Error(answered.problem.message);
				onprogress?.({ phase: 'checking', done: 0, of: 0 });
				onearly?.({ ...answered.value, check: null });
			};
			waiting.push(() => resolve(askStudy(workbook, one)));
		});
	const runner = new StudyRunner(session, ask);
	const kept = () => session.workbook!.studies![0]!;
	return { session, runner, waiting, kept, early: () => early() };
}

describe('how long a study takes', () => {
	it('is measured on its first points, which are stopped then, and found again for the same settings alone', async () => {
		const { runner, paces, measure, go, stopped } = timed();
		const measured = measure();
		expect(paces.isMeasuring('why')).toBe(true);
		expect(runner.running('why')).toBeUndefined();
		go(1, 3);
		expect(paces.pace(study)).toBeUndefined();
		go(4, 4);
		await measured;
		expect(stopped()).toBe(true);
		expect(paces.isMeasuring('why')).toBe(false);
		expect(paces.pace(study)).toMatchObject({ perPoint: 500, points: 64 });
		expect(runner.found('why')).toBeUndefined();
		expect(paces.pace({ ...study, title: 'Another title' })).toBeDefined();
		expect(paces.pace({ ...study, plans: 'keep' })).toBeUndefined();
	});

	it('is said while it runs, and corrected by every point', async () => {
		const { runner, paces, go, answer } = timed();
		const asked = runner.run(study, false);
		go(1, 3);
		expect(paces.pace(study)).toBeUndefined();
		go(4, 4);
		expect(paces.pace(study)).toMatchObject({ perPoint: 500 });
		expect(runner.running('why')).toMatchObject({ done: 4, of: 64 });
		go(5, 8);
		expect(runner.running('why')).toMatchObject({ done: 8, of: 64 });
		answer();
		await asked;
		expect(runner.found('why')?.answer.ok).toBe(true);
	});

	it('gives way to a run', async () => {
		const { runner, paces, measure, asked, answer } = timed();
		const measured = measure();
		const run = runner.run(study, false);
		await measured;
		expect(paces.isMeasuring('why')).toBe(false);
		// One that runs tells it by itself.
		await measure();
		expect(asked()).toBe(2);
		answer();
		await run;
		expect(runner.found('why')?.answer.ok).toBe(true);
	});
});

describe('answers with plans that follow and with plans as they stand', () => {
	it('are both kept', async () => {
		const { runner, answer } = timed();
		for (const plans of ['follow', 'keep'] as const) {
			const run = runner.run({ ...study, plans }, false);
			answer();
			await run;
		}
		expect(runner.found('why')?.study.plans).toBe('keep');
		expect(runner.withOtherPlans('why')?.study.plans).toBe('follow');
	});
});

describe('a study at work', () => {
	it('is shown when it is answered, and kept in the workbook only if so asked', async () => {
		const { session, runner, waiting, kept } = started();
		const first = runner.run(study, false);
		expect(runner.running('why')).toMatchObject({ done: 0 });
		waiting.shift()!();
		await first;
		expect(runner.found('why')?.answer.ok).toBe(true);
		expect(runner.running('why')).toBeUndefined();
		expect(kept().ran).toBeUndefined();
		const second = runner.run(study, true);
		waiting.shift()!();
		await second;
		expect(kept().ran?.headline[0]?.label).toBe('Difference');
		expect(freshnessOf(session.workbook!, kept())).toBe('up-to-date');
		expect(session.undoable).toBe('run study Why');
	});

	it('keeps nothing when it is cancelled, and leaves the answer before it', async () => {
		const { runner, kept } = started();
		const run = runner.run(study, true);
		runner.cancel('why');
		await run;
		expect(runner.found('why')).toBeUndefined();
		expect(kept().ran).toBeUndefined();
	});

	it('shows the answer while the second engine looks at it, and leaves it unchecked when that is cancelled', async () => {
		const { runner, early, kept } = started();
		const run = runner.run(study, true);
		early();
		expect(runner.running('why')).toMatchObject({ isChecking: true });
		expect(runner.found('why')?.answer).toMatchObject({ ok: true, value: { check: null } });
		runner.cancel('why');
		await run;
		expect(runner.found('why')?.answer).toMatchObject({ ok: true, value: { check: null } });
		expect(kept().ran).toBeUndefined();
	});

	it('gives way to a later run of the same study', async () => {
		const { runner, waiting } = started();
		const first = runner.run(study, false);
		const second = runner.run(study, false);
		await first;
		expect(runner.running('why')).toBeDefined();
		waiting[1]!();
		await second;
		expect(runner.found('why')?.answer.ok).toBe(true);
	});

	it('keeps no run whose inputs were changed while it went on', async () => {
		const { session, runner, waiting, kept } = started();
		const run = runner.run(study, true);
		session.apply({
			kind: 'set_inputs',
			scenario: 'base',
			entries: [{ quantity: 'price', at: [], value: 9 }]
		});
		waiting.shift()!();
		await run;
		expect(runner.found('why')?.answer.ok).toBe(true);
		expect(kept().ran).toBeUndefined();
	});
});
