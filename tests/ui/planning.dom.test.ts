import { describe, expect, it, vi } from 'vitest';
import type { Engine, EngineEvents } from '$lib/browser/engine-client';
import type { PlanReport } from '$lib/browser/solver-messages';
import type { Answered } from '$lib/engine/shipped-values';
import type { Solving, SolvingEvents } from '$lib/browser/solving';
import { marking } from '$lib/ui/programmes/marking';
import { Session } from '$lib/ui/session.svelte';
import type { Command } from '$lib/workbook/commands';
import type { Workbook } from '$lib/workbook/schema';
import { shop } from './shop';

const planned: Workbook = {
	...shop,
	programmes: [
		{
			name: 'allocation',
			title: 'Who makes what',
			maximise: 'price',
			decisions: ['mass'],
			constraints: []
		}
	]
};

const report: PlanReport = { proven: 2, of: 2, unplanned: [], kept: [] };
const plansOf = (value: number): Command => ({
	kind: 'set_plans',
	plans: [
		{
			programme: 'allocation',
			scenario: 'base',
			digest: `d${value}`,
			objective: value,
			values: [{ quantity: 'mass', value: { A15: value } }]
		}
	]
});
const title = (text: string): Command => ({ kind: 'set_title', title: text });
const price = (value: number): Command => ({
	kind: 'set_inputs',
	scenario: 'base',
	entries: [{ quantity: 'price', at: [], value }]
});

/** An engine and a solver that answer only when told to, with what they were told. */
async function opened(
	workbook: Workbook,
	pause: () => Promise<unknown> = () => new Promise((resume) => setTimeout(resume)),
	came: Answered | null = null
) {
	const told: string[] = [];
	let events: EngineEvents | null = null;
	let answers: SolvingEvents | null = null;
	const engine: Engine = {
		open: () => {},
		apply: (command) => told.push(`engine ${command.kind}`),
		why: () => Promise.resolve(null),
		tryQuantity: () => Promise.resolve(null),
		lend: () => told.push('lend'),
		close: () => {}
	};
	const solving: Solving = {
		open: (lend) => lend({} as MessagePort),
		apply: (command) => told.push(`solver ${command.kind}`),
		plan: (revision) => told.push(`plan ${revision}`),
		ask: (question) => {
			told.push(`ask ${question.kind}`);
			return Promise.resolve({ ok: false, problems: ['asked'] });
		},
		close: () => {}
	};
	const session = new Session(
		(heard) => {
			events = heard;
			return engine;
		},
		'en',
		async () => ({
			start: (heard) => {
				told.push('fetched');
				answers = heard;
				return solving;
			},
			marking
		})
	);
	session.open(workbook, null, came);
	const settle = async () => {
		events!.onsettled(session.revision);
		await pause();
	};
	await settle();
	return { session, told, settle, answer: () => answers! };
}

describe('plans that follow', () => {
	it('cost a workbook without a programme nothing', async () => {
		const { session, told } = await opened(shop);
		expect(told).toEqual([]);
		expect(session.planning?.busy).toBe(false);
	});

	it('are asked for once all scenarios show the edit, by a solver that has the engine’s plan of cells', async () => {
		const { session, told, settle } = await opened(planned);
		expect(told).toEqual(['fetched', 'lend', 'plan 1']);
		expect(session.planning?.busy).toBe(true);
		session.apply(price(2.1));
		expect(told.slice(3)).toEqual(['engine set_inputs', 'solver set_inputs']);
		await settle();
		expect(told.at(-1)).toBe('plan 2');
	});

	it('stand as they are after an edit of words, which no plan can follow', async () => {
		const { session, told, settle, answer } = await opened(planned);
		answer().onplanned(null, report, 1);
		session.apply(title('Another'), { kind: 'set_about', about: 'A shop' });
		expect(session.planning?.busy).toBe(false);
		await settle();
		expect(told.filter((each) => each.startsWith('plan'))).toEqual(['plan 1']);
		expect(session.planning?.busy).toBe(false);
		// It halted those that were being made, which are asked for again.
		session.apply(price(2.1));
		await settle();
		session.apply(title('A third'));
		await settle();
		expect(told.filter((each) => each.startsWith('plan'))).toEqual(['plan 1', 'plan 3', 'plan 4']);
	});

	it('are looked at again once somebody keeps one, which is no reason to call figures out of date', async () => {
		const { session, told, settle, answer } = await opened(planned);
		answer().onplanned(null, report, 1);
		session.apply(plansOf(3));
		expect(session.planning?.busy).toBe(false);
		await settle();
		expect(told.at(-1)).toBe('plan 2');
	});

	it('are being made from the edit on, before the engine has shown it; not for somebody who only reads', async () => {
		const { session, answer } = await opened(planned);
		answer().onplanned(null, report, 1);
		expect(session.planning?.busy).toBe(false);
		session.apply(price(2.1));
		expect(session.planning?.busy).toBe(true);
		answer().onplanned(null, report, 1);
		const reader = await opened(planned);
		reader.answer().onplanned(null, report, 1);
		reader.session.readOnly = true;
		reader.session.takeIn({ ...planned, title: 'Theirs' });
		expect(reader.session.planning?.busy).toBe(false);
	});

	it('are asked about of a solver that follows the workbook, which is fetched for it where there is none', async () => {
		const { session, told } = await opened(shop);
		const where = { programme: 'allocation', scenario: 'base', members: [] };
		const reply = await session.planning!.ask({ kind: 'look', where });
		expect(reply).toEqual({ ok: false, problems: ['asked'] });
		expect(told).toEqual(['fetched', 'lend', 'ask look']);
		session.apply(price(2.1));
		await session.planning!.ask({ kind: 'look', where });
		expect(told.slice(3)).toEqual(['engine set_inputs', 'solver set_inputs', 'ask look']);
	});

	it('made anew since a step about plans do not keep it from being taken back', async () => {
		const { session, answer } = await opened(planned);
		answer().onplanned(plansOf(3), report, 1);
		session.apply(price(2.1));
		session.apply({ kind: 'set_plans', plans: [{ programme: 'allocation', scenario: 'base' }] });
		session.takePlans(plansOf(4));
		session.undo();
		session.undo();
		expect(session.undoable).toBeNull();
		expect(session.workbook?.title).toBe(planned.title);
	});

	it('go into the workbook without being a step of anyone’s, and are kept like any edit', async () => {
		const { session, told, answer, settle } = await opened(planned);
		const kept: string[] = [];
		session.onedit = (commands) => kept.push(...commands.map(({ kind }) => kind));
		answer().onplanned(plansOf(3), report, 1);
		expect(session.workbook?.plans).toHaveLength(1);
		expect([session.undoable, ...kept]).toEqual([null, 'set_plans']);
		expect(told).toContain('engine set_plans');
		await settle();
		answer().onplanned(null, report, session.revision);
		expect([session.planning?.busy, session.planning?.report]).toEqual([false, report]);
	});

	it('mark what rests on them once they take long, of these cells alone, and no longer when they are there', async () => {
		vi.useFakeTimers();
		try {
			const { session, answer } = await opened(planned, () => vi.advanceTimersByTimeAsync(1));
			const { base } = session.layout!.byName.get('mass')!;
			const marks = new Uint8Array(session.layout!.cells);
			marks[base] = 1;
			answer().onresting(new Map([['allocation', marks]]), session.revision);
			expect(session.stale).toBeNull();
			await vi.advanceTimersByTimeAsync(300);
			expect(session.stale?.of('base', base)).toBe('planning');
			expect(session.stale?.of('base', base + 1)).toBeNull();
			answer().onplanned(null, report, session.revision);
			expect(session.stale).toBeNull();
			const unplanned = [{ programme: 'allocation', scenario: 'base', message: 'None.' }];
			answer().onplanned(null, { ...report, unplanned }, session.revision);
			expect(session.stale?.of('base', base)).toBe('refused');
			// Cells have other numbers now: what is known of the old ones is forgotten, and comes too late.
			session.apply({ kind: 'remove_quantity', name: 'price', also: true });
			answer().onresting(new Map([['allocation', marks]]), 1);
			expect(session.planning!.resting.size).toBe(0);
		} finally {
			vi.useRealTimers();
		}
	});

	it('that came with the workbook and its values are not called out of date while they are looked at, but after an edit', async () => {
		vi.useFakeTimers();
		try {
			const pause = () => vi.advanceTimersByTimeAsync(1);
			const came = { problems: [], results: [], faults: [] };
			const { session, settle } = await opened(planned, pause, came);
			await vi.advanceTimersByTimeAsync(5000);
			expect([session.planning?.busy, session.planning?.isSlow]).toEqual([true, false]);
			session.apply(price(2.1));
			await settle();
			await vi.advanceTimersByTimeAsync(300);
			expect(session.planning?.isSlow).toBe(true);
		} finally {
			vi.useRealTimers();
		}
	});

	it('leave an earlier edit to be taken back, whatever was planned since', async () => {
		const { session, answer } = await opened(planned);
		session.apply({
			kind: 'add_scenario',
			scenario: { id: 'more', title: 'More', parent: 'base', changes: [] },
			index: 1
		});
		const plans = [plansOf(3), plansOf(4)].flatMap((command) =>
			command.kind === 'set_plans' ? command.plans : []
		);
		const second = { ...plans[1]!, scenario: 'more' };
		answer().onplanned({ kind: 'set_plans', plans: [plans[0]!, second] }, report, 2);
		expect(session.workbook?.plans).toHaveLength(2);
		session.undo();
		expect(session.workbook?.scenarios.some(({ id }) => id === 'more')).toBe(false);
		expect(session.workbook?.plans?.map(({ scenario }) => scenario)).toEqual(['base']);
	});

	it('are not those of a workbook that was open before', async () => {
		const { session, answer } = await opened(planned);
		session.open({ ...planned, title: 'Another' });
		answer().onplanned(plansOf(3), report, 1);
		expect(session.workbook?.plans).toBeUndefined();
	});

	it('stay as they are, with a sentence, when the solver stops; the next edit begins anew', async () => {
		const { session, told, answer, settle } = await opened(planned);
		answer().onfailed('Planning stopped.');
		expect(session.notice).toMatchObject({ tone: 'error', text: 'Planning stopped.' });
		session.apply(price(2.1));
		await settle();
		expect(told.slice(-3)).toEqual(['engine set_inputs', 'lend', 'plan 2']);
	});
});
