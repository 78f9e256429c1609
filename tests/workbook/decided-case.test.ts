/** A scenario that is decided is followed: its promise reads the copy of that day, whatever becomes of the base. */
import { describe, expect, it } from 'vitest';
import { freeze } from '$lib/engine/frozen';
import { Model } from '$lib/engine/model';
import { applyCommand, type Command } from '$lib/workbook/commands';
import { findProblems } from '$lib/workbook/consistency';
import { followCase } from '$lib/workbook/decided-case';
import { findQuantity, findSet, pictureOf } from '$lib/workbook/lookup';
import { loadWorkbook } from '$lib/workbook/load';
import { saveWorkbook } from '$lib/workbook/save';
import { VERSION, type Quantity, type Workbook } from '$lib/workbook/schema';

const perCase = (name: string, formula: string, more: Partial<Quantity> = {}): Quantity => ({
	...{ name, label: name, unit: 'EUR', per: ['decided'], formula },
	...more
});
const book: Workbook = {
	...{ format: 'metrewright', version: VERSION, title: 'Cases' },
	sets: [
		{ name: 'decided', label: 'Case', members: [] },
		{
			...{ name: 'month', label: 'Month', time: 'month' },
			members: [{ id: '2028-03' }, { id: '2028-04' }]
		},
		{ name: 'why', label: 'Cause', members: [{ id: 'all' }] }
	],
	sheets: [
		{
			title: 'One',
			quantities: [
				{ name: 'price', label: 'Price', unit: 'EUR', value: 10 },
				{ name: 'worth', label: 'Worth', unit: 'EUR', formula: '3 * price' },
				{
					...{ name: 'promised', label: 'Promised', unit: 'EUR', per: ['decided'] },
					formula: { by: 'decided', cases: { '*': '0[EUR]' } }
				},
				{
					...{ name: 'decided_in', label: 'Decided in', type: { member_of: 'month' } },
					per: ['decided']
				},
				{ name: 'came', label: 'Came', unit: 'EUR', per: ['decided', 'month'] },
				perCase('so_far', 'SUM(IFERROR(came; 0[EUR]) over month)'),
				perCase('rest', 'promised - so_far'),
				perCase('likely', 'promised'),
				perCase('back', 'promised', { unit: 'EUR' }),
				perCase('moved', 'likely - promised', { per: ['why', 'decided'] }),
				{
					...{ name: 'last', label: 'Last', type: { member_of: 'month' }, per: ['decided'] },
					formula: 'LAST(month where IFERROR(came > 0[EUR]; FALSE()))'
				}
			]
		}
	],
	scenarios: [
		{ id: 'base', title: 'Base', parent: null, changes: [] },
		{
			...{ id: 'dear', title: 'Dear "line"', parent: 'base' },
			changes: [{ quantity: 'price', value: 12 }]
		}
	],
	pictures: [
		{
			...{ kind: 'audit', title: 'Cases', case: 'decided', month: 'month' },
			...{ decided: 'decided_in', last: 'last', from: 'promised', steps: 'moved', to: 'likely' },
			...{ to_date: 'so_far', rest: 'rest', payback_promised: 'back', payback: 'back' },
			takes: [{ promise: 'promised', reads: 'worth' }]
		}
	]
};

function decided(date: string, title = 'Dear "line", as decided') {
	const model = Model.open(book);
	const frozen = freeze(model.layout, model.results('dear'), {
		...{ id: 'dear_as_decided', title, of: 'Dear', date }
	})!;
	const commands: Command[] = [
		{ kind: 'add_frozen', frozen },
		...followCase(book, pictureOf(book, 'audit')!, { title, copy: frozen.id, date }),
		{ kind: 'promote_scenario', id: 'dear' }
	];
	const done = applyCommand(book, { kind: 'several', commands });
	if (!done.ok) throw new Error(done.problem.message);
	return done;
}
const promised = (workbook: Workbook) => {
	const model = Model.open(workbook);
	expect(model.problems).toEqual([]);
	return model.results('base').values[model.layout.byName.get('promised')!.base];
};

describe('a decided scenario', () => {
	it('is a case whose promise stands in the copy of that day', () => {
		const { workbook } = decided('2028-03-14');
		const [member] = findSet(workbook, 'decided')!.members;
		expect(member).toEqual({ id: 'Dear line , as decided', label: 'Dear "line", as decided' });
		expect(findQuantity(workbook, 'promised')!.formula).toEqual({
			by: 'decided',
			cases: { [member!.id]: 'worth[dear_as_decided]', '*': '0[EUR]' }
		});
		expect(findQuantity(workbook, 'decided_in')!.value).toEqual({ [member!.id]: '2028-03' });
		expect(promised(workbook)).toBe(36);
		const moved = applyCommand(workbook, {
			...{ kind: 'set_inputs', scenario: 'base' },
			entries: [{ quantity: 'price', at: [], value: 99 }]
		});
		expect(moved.ok && promised(moved.workbook)).toBe(36);
		const again = loadWorkbook(saveWorkbook(workbook), 'cases.json');
		expect(again.ok && promised(again.workbook)).toBe(36);
	});

	it('is taken back whole', () => {
		const { workbook, inverse } = decided('2028-03-14');
		const back = applyCommand(workbook, inverse);
		expect(back.ok && back.workbook).toEqual(book);
	});

	it('is asked for its month where the months do not hold the day, and never bears a name that is taken', () => {
		const { workbook } = decided('2031-01-02', 'dear_as_decided');
		expect(findQuantity(workbook, 'decided_in')!.value).toBeUndefined();
		expect(findSet(workbook, 'decided')!.members.map(({ id }) => id)).toEqual([
			'dear_as_decided 2'
		]);
	});
});

describe('the picture of decided cases', () => {
	const picture = pictureOf(book, 'audit')!;
	const problems = (change: object) =>
		findProblems({ ...book, pictures: [{ ...picture, ...change }] }).map(({ message }) => message);

	it('asks for figures per case, and for rules by case', () => {
		expect(problems({})).toEqual([]);
		expect(problems({ to: 'came' })).toEqual(['came is not per decided alone']);
		expect(problems({ steps: 'likely' })).toEqual(['likely is not per decided and one other set']);
		expect(problems({ takes: [{ promise: 'rest', reads: 'worth' }] })).toEqual([
			'rest has no rule for each decided'
		]);
		expect(problems({ from: 'nowhere' })[0]).toContain('nowhere');
	});
});
