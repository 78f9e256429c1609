/** A scenario is made the base: scenarios that keep their figures, and those that follow. */
import { describe, expect, it } from 'vitest';
import { freeze } from '$lib/engine/frozen';
import { Model } from '$lib/engine/model';
import { describeCommand } from '$lib/workbook/describe';
import { followedBy } from '$lib/workbook/deciding';
import { applyCommand, type Command } from '$lib/workbook/commands';
import { loadWorkbook } from '$lib/workbook/load';
import { saveWorkbook } from '$lib/workbook/save';
import type { Scenario, Workbook } from '$lib/workbook/schema';
import { metre } from '../studies/small-book';

const scenario = (id: string, changes: Scenario['changes'], more: Partial<Scenario> = {}) => ({
	...{ id, title: `Title of ${id}`, parent: 'base', changes },
	...more
});
/** Decided is dearer and lighter; the budget sells more; dear changes a price itself; on_it stands on what is decided. */
const book = metre([
	scenario('decided', [
		{ quantity: 'price', value: { PE: 2, PX: 2.5 } },
		{ quantity: 'mass', value: { PE: 0.08, PX: 0.05 } }
	]),
	scenario('budget', [{ quantity: 'sales', value: 0.5 }]),
	scenario('dear', [{ quantity: 'price', value: { PE: 3 }, note: 'an offer' }], {
		parent: 'budget'
	}),
	scenario('on_it', [{ quantity: 'sales', value: 0.6 }], { parent: 'decided' }),
	scenario('measured', [], { against: 'decided' })
]);

const copy = freeze(Model.open(book).layout, Model.open(book).results('base'), {
	...{ id: 'before', title: 'Before', of: 'As it stands', date: '2027-11-30' },
	decided: 'Title of decided'
})!;
function decide(command: Partial<Extract<Command, { kind: 'promote_scenario' }>> = {}): {
	readonly before: Workbook;
	readonly after: Workbook;
	readonly inverse: Command;
} {
	const done = applyCommand(book, {
		kind: 'several',
		commands: [
			{ kind: 'add_frozen', frozen: copy },
			{ kind: 'promote_scenario', id: 'decided', ...command }
		]
	});
	if (!done.ok) throw new Error(done.problem.message);
	return { before: book, after: done.workbook, inverse: done.inverse };
}
const figures = (workbook: Workbook, id: string) => {
	const { values, states } = Model.open(workbook).results(id);
	return [[...values], [...states]];
};
const gain = (workbook: Workbook, id: string) => {
	const model = Model.open(workbook);
	return model.results(id).values[model.layout.byName.get('gain')!.base]!;
};

describe('what the others rest on', () => {
	it('is counted cell by cell before it is decided: what is equal, or said by a scenario, does not move', () => {
		const found = followedBy(book, 'decided');
		expect(
			found.map(({ scenario, count, isMeasured }) => [scenario.id, count, isMeasured])
		).toEqual([
			// PE and PX dearer, PE lighter; PX weighs the same in both.
			['budget', 3, true],
			['dear', 2, true],
			['on_it', 0, true],
			['measured', 3, false]
		]);
		expect(Object.fromEntries(found[1]!.entries)).toEqual({
			price: [{ at: ['PX'], value: 2 }],
			mass: [{ at: ['PE'], value: 0.1 }]
		});
	});
});

describe('a scenario that is made the base', () => {
	it('restates those that follow it, and leaves those that stand on it', () => {
		const { after } = decide();
		expect(gain(book, 'budget')).toBeCloseTo(0.1, 12);
		expect(figures(after, 'on_it')[0]!.slice(0, 7)).toEqual(figures(book, 'on_it')[0]!.slice(0, 7));
		expect(figures(after, 'budget')).not.toEqual(figures(book, 'budget'));
	});

	it('leaves every figure of those that keep theirs, what they gain against the base of then included', () => {
		const { after, inverse } = decide({ hold: ['budget', 'dear', 'on_it'], against: 'before' });
		for (const id of ['budget', 'dear', 'on_it'])
			expect(figures(after, id), id).toEqual(figures(book, id));
		expect(after.scenarios.map(({ against }) => against)).toEqual([
			...[undefined, undefined, 'before', 'before', 'before', 'decided']
		]);
		const [, , budget, dear] = after.scenarios;
		expect(budget!.changes.at(-1)).toEqual({
			...{ quantity: 'mass', value: { PE: 0.1 } },
			note: 'As before Title of decided was made the base.'
		});
		expect(dear!.changes[0]).toEqual({
			...{ quantity: 'price', value: { PE: 3, PX: 2 }, note: 'an offer' }
		});
		const undone = applyCommand(after, inverse);
		expect(undone.ok && undone.workbook).toEqual(book);
	});

	it('keeps their values without a copy too, and then what they gain is against the new base', () => {
		const done = applyCommand(book, {
			...{ kind: 'promote_scenario', id: 'decided', hold: ['budget'] }
		});
		if (!done.ok) throw new Error(done.problem.message);
		const names = ['price', 'mass', 'cost', 'sales', 'margin'];
		const model = Model.open(done.workbook);
		const before = Model.open(book);
		for (const name of names) {
			const { base, count } = model.layout.byName.get(name)!;
			expect(model.results('budget').values.subarray(base, base + count)).toEqual(
				before.results('budget').values.subarray(base, base + count)
			);
		}
		// 0.25 − 0.285 EUR/m of cost, 0.1 EUR/m of sales.
		expect(gain(done.workbook, 'budget')).toBeCloseTo(0.135, 12);
	});

	it('says so in one line, and refuses what cannot keep its figures', () => {
		expect(
			describeCommand(book, { kind: 'promote_scenario', id: 'decided', hold: ['budget', 'dear'] })
		).toBe(
			'make Title of decided the As it stands, with Title of budget and Title of dear as before'
		);
		for (const id of ['base', 'decided', 'gone']) {
			const answer = applyCommand(book, { kind: 'promote_scenario', id: 'decided', hold: [id] });
			expect(!answer.ok && answer.problem.message).toBe(
				`"${id}" is no other scenario that could keep its figures. Choose one of the workbook's scenarios.`
			);
		}
	});

	it('is told by the copy of the base before it, in files as well', () => {
		const { after } = decide();
		const loaded = loadWorkbook(saveWorkbook(after), 'decided.json');
		expect(loaded.ok && loaded.workbook.frozen![0]!.decided).toBe('Title of decided');
	});
});
