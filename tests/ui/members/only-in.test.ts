import { describe, expect, it } from 'vitest';
import { layOut } from '$lib/engine/layout';
import { OK } from '$lib/engine/state';
import { applyCommand } from '$lib/workbook/commands';
import { inputAt } from '$lib/workbook/scenario';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { copyIn, isThere, presenceInput, standsIn } from '$lib/ui/members/only-in';
import { texts } from '$lib/ui/members/texts';
import { shop } from '../shop';

const installed = (formula?: Quantity['formula']): Quantity => ({
	...{ name: 'installed', label: 'Installed', type: 'yes_no', per: ['line'] },
	value: { L1: true, L2: true },
	...(formula !== undefined && { formula })
});
const plant = (formula?: Quantity['formula'], present = 'installed'): Workbook => ({
	...shop,
	sets: shop.sets.map((set) => (set.name === 'line' ? { ...set, present } : set)),
	sheets: [...shop.sheets, { title: 'There', quantities: [installed(formula)] }]
});
const lines = (workbook: Workbook) => workbook.sets.find(({ name }) => name === 'line')!;

describe('a copy that stands in a scenario alone', () => {
	it('is offered where an input says of the member whether it is there', () => {
		const asked = (workbook: Workbook, like = 'L1') =>
			presenceInput(workbook, lines(workbook), like);
		expect(asked(plant())).toBe('installed');
		expect(asked(shop)).toBeNull();
		expect(asked(plant('1 > 2'))).toBeNull();
		const byCase = plant({ by: 'line', cases: { L2: '1 > 2', '*': 'input' } });
		expect([asked(byCase), asked(byCase, 'L2')]).toEqual(['installed', null]);
	});

	const copied = (workbook: Workbook, stands: Parameters<typeof copyIn>[3], like = 'L2') => {
		const copy = { kind: 'add_member', set: 'line', index: 2, member: { id: 'L3' }, like } as const;
		const made = copyIn(workbook, copy, 'installed', stands);
		const done = applyCommand(workbook, { kind: 'several', commands: [...made.commands] });
		if (!done.ok) throw new Error(done.problem.message);
		const undone = applyCommand(done.workbook, done.inverse);
		expect(undone.ok && undone.workbook).toEqual(workbook);
		return { ...made, workbook: done.workbook };
	};
	const there = (workbook: Workbook) =>
		workbook.scenarios
			.filter(({ id }) => inputAt(workbook, id, 'installed', ['L3']).value === true)
			.map(({ id }) => id);

	it('is there in the new scenario, and nowhere else, in one step', () => {
		const made = copied(plant(), { in: 'new', title: 'A third line' });
		expect(made.scenario).toBe('a_third_line');
		expect(there(made.workbook)).toEqual(['a_third_line']);
	});

	/** L2 comes with a scenario, and another starts from that one. */
	const grown: Workbook = {
		...plant(),
		scenarios: [
			...plant().scenarios.slice(0, 1),
			{
				...{ id: 'second', title: 'Second line', parent: 'base' },
				changes: [{ quantity: 'installed', value: { L2: true } }]
			},
			{
				...{ id: 'both', title: 'Second line and crew', parent: 'second' },
				changes: [{ quantity: 'installed', value: { L2: true } }]
			},
			{ id: 'other', title: 'Other', parent: 'base', changes: [] }
		]
	};

	it('is there in a scenario and in those that start from it', () => {
		const stands = { in: 'one', scenario: 'second' } as const;
		expect(there(copied(grown, stands).workbook)).toEqual(['second', 'both']);
		expect(standsIn(grown, stands).map(({ title }) => title)).toEqual([
			'Second line',
			'Second line and crew'
		]);
	});

	it('in every scenario is where the first one is there, and nowhere else', () => {
		const workbook = plant();
		const layout = layOut(workbook);
		const cell = layout.byName.get('installed')!.base;
		const values = new Float64Array(layout.cells);
		values[cell] = 1;
		const results = { scenario: 'base', values, states: new Uint8Array(layout.cells).fill(OK) };
		const there = (like: string) => isThere(layout, results, lines(workbook), like);
		expect([there('L1'), there('L2')]).toEqual([true, false]);
		expect(isThere(layout, undefined, lines(workbook), 'L2')).toBe(true);
		expect(isThere(layout, results, lines(shop), 'L2')).toBe(true);
		const named = standsIn(grown, { in: 'all' }, (id) => id === 'second');
		expect(named.map(({ title }) => title)).toEqual(['Second line']);
	});

	it('adds no changes to scenarios in which it does not stand', () => {
		const made = copied(grown, { in: 'new', title: 'A third line' });
		expect(there(made.workbook)).toEqual(['a_third_line']);
		expect(made.workbook.scenarios.slice(1, 4)).toEqual(grown.scenarios.slice(1));
	});

	it('says which scenarios change before it is kept', () => {
		expect(texts.changes(['Base', 'Other'], 0, false)).toBe(
			'All 2 scenarios change: Base and Other.'
		);
		expect(texts.changes(['Second line'], 3, false)).toBe(
			'Second line changes; the other 3 stay as they are.'
		);
		expect(texts.changesNone('With L3', 'Base', 4)).toBe(
			'“With L3” is a new scenario that starts from Base and alone has it; the 4 that there are stay as they are.'
		);
	});
});
