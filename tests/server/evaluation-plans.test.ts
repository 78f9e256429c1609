/** What an evaluation says of a workbook whose values rest on a plan. */
import { beforeAll, describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { Solver } from '$lib/programmes/highs';
import { planAll } from '$lib/programmes/plan-all';
import { answerOf, type Ask } from '$lib/server/evaluation/answer';
import { saveWorkbook } from '$lib/workbook/save';
import type { Workbook } from '$lib/workbook/schema';
import { smallPlant, withQuantity } from '../programmes/small-plant';

let planned: Workbook;
beforeAll(async () => {
	const model = Model.open(smallPlant());
	for (const { proven } of planAll(await Solver.load(), model)) expect(proven).toBe(true);
	planned = model.workbook;
});

let count = 0;
async function evaluated(workbook: Workbook, more: Partial<Ask> = {}) {
	const answered = await answerOf({
		key: `plans ${count++}`,
		text: saveWorkbook(workbook),
		quantities: ['contribution'],
		megabytes: 256,
		seconds: 60,
		...more
	});
	if (answered.kind !== 'done') throw new Error(answered.kind);
	return JSON.parse(answered.json);
}

/** A margin of 4 EUR/m on A instead of 3: its 1,300 m bring 1,300 EUR more, with the plan as it is. */
const dearer = () => withQuantity('margin', { value: { A: 4, B: 2 } })(planned);

describe('an evaluation', () => {
	it('makes the plans that are not there', async () => {
		const { scenarios } = await evaluated(smallPlant());
		expect(scenarios[0].quantities.contribution.value).toBeCloseTo(7270, 4);
		expect(scenarios[1].quantities.contribution.value).toBeCloseTo(7460, 4);
		expect(scenarios[0].plans).toEqual([{ programme: 'allocation', plan: 'current' }]);
	});

	it('makes the plans anew that answer what the workbook said before', async () => {
		// B brings more than A now, so that L1 makes what L2 cannot of B first: 1,800 m of B at 9 EUR, 1,200 of A at 3.
		const book = withQuantity('margin', { value: { A: 3, B: 9 } })(planned);
		const { scenarios } = await evaluated(book, { scenarios: ['base'] });
		expect(scenarios).toHaveLength(1);
		expect(scenarios[0].plans).toEqual([{ programme: 'allocation', plan: 'current' }]);
		// 300 m wait for February, whichever they are.
		expect(scenarios[0].quantities.contribution.value).toBeCloseTo(
			9 * 1800 + 3 * 1200 - 0.1 * 300,
			3
		);
	});

	it('says which plan is stale where there is no time to make it anew', async () => {
		const { scenarios } = await evaluated(dearer(), { seconds: 0 });
		const [state] = scenarios[0].plans;
		expect(state).toMatchObject({ programme: 'allocation', plan: 'stale' });
		expect(state.reason).toMatch(/Who makes what .*in the time there is/);
		expect(scenarios[0].quantities.contribution.value).toBeCloseTo(8570, 4);
	});

	it('says so where there is none, and why', async () => {
		const pinned = withQuantity('made', { value: { A: { L1: { jan: 2000 } } } })(smallPlant());
		const { scenarios } = await evaluated(pinned);
		expect(scenarios[0].plans[0]).toMatchObject({ plan: 'none' });
		expect(scenarios[0].plans[0].reason).toContain('hours_hold, L1, jan, by 100 h');
	});

	it('leaves a plan that is kept as it stands', async () => {
		const book: Workbook = {
			...dearer(),
			plans: planned.plans!.map((plan) => ({ ...plan, kept: '2026-03-01' }))
		};
		const { scenarios } = await evaluated(book);
		expect(scenarios[0].plans).toEqual([{ programme: 'allocation', plan: 'kept' }]);
	});

	it('says nothing of plans where a workbook has no programme', async () => {
		const { programmes: _, ...book } = smallPlant();
		const { scenarios } = await evaluated(book as Workbook);
		expect(scenarios[0]).not.toHaveProperty('plans');
	});

	it('tells an outsider that values are stale, and not by which plan', async () => {
		const open = (workbook: Workbook) => withQuantity('contribution', { open: true })(workbook);
		const current = await evaluated(open(planned), { openOnly: true });
		expect(current).not.toHaveProperty('stale');
		const stale = await evaluated(open(dearer()), { openOnly: true, seconds: 0 });
		expect(stale.stale).toBe(true);
		expect(JSON.stringify(stale)).not.toContain('allocation');
	});
});
