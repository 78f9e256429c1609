/** Plans beside what people write: they follow from it, so two people's are never asked about, and none is sent alone. */
import { describe, expect, it } from 'vitest';
import {
	doCommand,
	historyOf,
	redo,
	undo,
	type History,
	type StepResult
} from '$lib/workbook/history';
import { mergeWorkbooks } from '$lib/workbook/merge';
import { plannedValues, withoutFollowingPlans } from '$lib/workbook/plans';
import type { ProgrammePlan } from '$lib/workbook/programme-schema';
import type { Workbook } from '$lib/workbook/schema';
import { after, plant } from './plant';

const [base, weekend] = plant.scenarios.map(({ id }) => id) as [string, string];
const plan = (scenario: string, digest: string, kept?: string): ProgrammePlan => ({
	programme: 'mix',
	scenario,
	digest,
	objective: 1,
	...(kept !== undefined && { kept }),
	values: [{ quantity: 'top_speed', value: { PX15B: { L1: 20 } } }]
});
const planned = (...plans: ProgrammePlan[]): Workbook => ({
	...plant,
	programmes: [
		{
			name: 'mix',
			title: 'Who makes what',
			each: ['product'],
			maximise: 'first_line_speed',
			decisions: ['top_speed'],
			constraints: []
		}
	],
	...(plans.length > 0 && { plans })
});
const was = planned(plan(base, 'a'), plan(weekend, 'b'));
const merge = (mine: Workbook, theirs: Workbook) => mergeWorkbooks({ base: was, mine, theirs });

describe('plans of two people', () => {
	it('are no conflict, whatever both planned, and lose nobody what they entered', () => {
		const enter = (workbook: Workbook, quantity: string, value: number, at: string[] = []) =>
			after(workbook, { kind: 'set_inputs', scenario: base, entries: [{ quantity, at, value }] });
		const mine = enter(planned(plan(base, 'mine'), plan(weekend, 'b')), 'resin_price', 2.1);
		const theirs = enter(planned(plan(base, 'theirs'), plan(weekend, 'c')), 'lot_size', 30000);
		const { workbook, conflicts } = merge(mine, theirs);
		expect(conflicts).toEqual([]);
		expect(workbook.plans!.map(({ digest }) => digest)).toEqual(['mine', 'c']);
		expect({ ...workbook, plans: [] }).toEqual({
			...enter(enter(was, 'resin_price', 2.1), 'lot_size', 30000),
			plans: []
		});
	});

	it('come with a plan that one of them keeps as it stands, or lets follow again', () => {
		const kept = planned(plan(base, 'theirs', '2026-11-02'), plan(weekend, 'b'));
		const anew = planned(plan(base, 'mine'), plan(weekend, 'b'));
		for (const { workbook } of [merge(anew, kept), merge(kept, anew)])
			expect(workbook.plans![0]).toEqual(plan(base, 'theirs', '2026-11-02'));
		const back = mergeWorkbooks({ base: kept, mine: kept, theirs: anew });
		expect(back.workbook.plans![0]).toEqual(plan(base, 'mine'));
	});

	it('go with what the other took away', () => {
		const { programmes: _programmes, plans: _plans, ...without } = was;
		const anew = planned(plan(base, 'mine'), plan(weekend, 'new'));
		for (const merged of [merge(without, anew), merge(anew, without)]) {
			expect(merged.conflicts).toEqual([]);
			expect(merged.workbook).toEqual(without);
		}
	});
});

describe('keeping a plan and letting it follow again', () => {
	const kept = plan(base, 'a', '2026-11-02');
	const anew = (history: History, digest: string): History => ({
		...history,
		workbook: after(history.workbook, { kind: 'set_plans', plans: [plan(base, digest)] })
	});
	const step = (taken: StepResult | null): History => {
		if (!taken?.ok) throw new Error('It fits.');
		return taken.history;
	};

	it('are taken back and done again, whatever was planned anew in between', () => {
		const follows = anew(
			step(doCommand(historyOf(planned(kept)), { kind: 'set_plans', plans: [plan(base, 'a')] })),
			'b'
		);
		const back = step(undo(follows));
		expect(back.workbook.plans).toEqual([kept]);
		expect(step(redo(back)).workbook.plans).toEqual([plan(base, 'a')]);

		const keeps = step(doCommand(historyOf(was), { kind: 'set_plans', plans: [kept] }));
		expect(step(undo(keeps)).workbook).toEqual(was);
	});
});

describe('what people wrote', () => {
	it('is the workbook without plans that follow; one that is kept is somebody\u2019s', () => {
		expect(withoutFollowingPlans(was)).toEqual(planned());
		const kept = plan(base, 'a', '2026-11-02');
		expect(withoutFollowingPlans(planned(kept, plan(weekend, 'b')))).toEqual(planned(kept));
		expect(withoutFollowingPlans(plant)).toBe(plant);
	});

	it('leaves cells open that the plan fills: with its value, with 0 where it has none, with nothing where there is no plan', () => {
		const at = plannedValues(planned(plan(base, 'a')));
		expect(at(base, 'top_speed', ['PX15B', 'L1'])).toBe(20);
		expect(at(base, 'top_speed', ['PX20', 'L1'])).toBe(0);
		expect(at(weekend, 'top_speed', ['PX15B', 'L1'])).toBe(20);
		expect(at(base, 'lot_size', [])).toBeNull();
		expect(plannedValues(planned())(base, 'top_speed', ['PX15B', 'L1'])).toBeNull();
	});
});
