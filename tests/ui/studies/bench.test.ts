import { describe, expect, it } from 'vitest';
import type { Engine } from '$lib/browser/engine-client';
import { askStudy } from '$lib/studies/ask-study';
import { refuse, type Answer } from '$lib/studies/problem';
import type { StudyResult } from '$lib/studies/run';
import { freshnessOf } from '$lib/studies/stood-on';
import type { Study } from '$lib/workbook/study-schema';
import { Session } from '$lib/ui/session.svelte';
import { Bench, type AskStudy } from '$lib/ui/studies/bench.svelte';
import { shop } from '../shop';

const quiet: Engine = {
	open: () => {},
	apply: () => {},
	why: () => Promise.resolve(null),
	tryQuantity: () => Promise.resolve(null),
	close: () => {}
};
const study: Study = {
	...{ name: 'why', title: 'Why', kind: 'bridge' },
	...{ quantity: 'cost', members: ['A15'], from: 'base', to: 'cheap' }
};

/** A session with the study, and a bench whose answers come when the test says so. */
function started() {
	const session = new Session(() => quiet, 'en');
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
	const bench = new Bench(session, ask);
	const kept = () => session.workbook!.studies![0]!;
	return { session, bench, waiting, kept, early: () => early() };
}

describe('a study at work', () => {
	it('is shown when it is answered, and kept in the workbook only if so asked', async () => {
		const { session, bench, waiting, kept } = started();
		const first = bench.run(study, false);
		expect(bench.running('why')).toMatchObject({ done: 0 });
		waiting.shift()!();
		await first;
		expect(bench.found('why')?.answer.ok).toBe(true);
		expect(bench.running('why')).toBeUndefined();
		expect(kept().ran).toBeUndefined();
		const second = bench.run(study, true);
		waiting.shift()!();
		await second;
		expect(kept().ran?.headline[0]?.label).toBe('Difference');
		expect(freshnessOf(session.workbook!, kept())).toBe('up-to-date');
		expect(session.undoable).toBe('run study Why');
	});

	it('keeps nothing when it is cancelled, and leaves the answer before it', async () => {
		const { bench, kept } = started();
		const run = bench.run(study, true);
		bench.cancel('why');
		await run;
		expect(bench.found('why')).toBeUndefined();
		expect(kept().ran).toBeUndefined();
	});

	it('shows the answer while the second engine looks at it, and leaves it unchecked when that is cancelled', async () => {
		const { bench, early, kept } = started();
		const run = bench.run(study, true);
		early();
		expect(bench.running('why')).toMatchObject({ isChecking: true });
		expect(bench.found('why')?.answer).toMatchObject({ ok: true, value: { check: null } });
		bench.cancel('why');
		await run;
		expect(bench.found('why')?.answer).toMatchObject({ ok: true, value: { check: null } });
		expect(kept().ran).toBeUndefined();
	});

	it('gives way to a later run of the same study', async () => {
		const { bench, waiting } = started();
		const first = bench.run(study, false);
		const second = bench.run(study, false);
		await first;
		expect(bench.running('why')).toBeDefined();
		waiting[1]!();
		await second;
		expect(bench.found('why')?.answer.ok).toBe(true);
	});

	it('keeps no run whose inputs were changed while it went on', async () => {
		const { session, bench, waiting, kept } = started();
		const run = bench.run(study, true);
		session.apply({
			kind: 'set_inputs',
			scenario: 'base',
			entries: [{ quantity: 'price', at: [], value: 9 }]
		});
		waiting.shift()!();
		await run;
		expect(bench.found('why')?.answer.ok).toBe(true);
		expect(kept().ran).toBeUndefined();
	});
});
