/** What the columns of tables mean, kept in the workbook by name: edits, new names, files, and two people at once. */
import { describe, expect, it } from 'vitest';
import { applyCommand, type Command } from '$lib/workbook/commands';
import { compareWorkbooks } from '$lib/workbook/compare';
import { changeWords } from '$lib/workbook/compare/change-words';
import { findProblems } from '$lib/workbook/consistency';
import { loadWorkbook } from '$lib/workbook/load';
import { mergeWorkbooks } from '$lib/workbook/merge';
import { saveWorkbook } from '$lib/workbook/save';
import type { KeptTable, Workbook } from '$lib/workbook/schema';
import { after, plant, refusal } from './plant';

const items: KeptTable = {
	title: 'Items',
	columns: [
		{ heading: 'Item', is: 'member', of: 'product' },
		{ heading: '', is: 'nothing' },
		{
			heading: 'kg/m on L1',
			is: 'value',
			scenario: 'base',
			quantity: 'mass_per_metre',
			member: { of: 'line', id: 'L1' },
			unit: 'g/m',
			decimal: ',',
			day_first: true
		}
	]
};
const put = (table: KeptTable, title?: string): Command => ({
	kind: 'put_table',
	table,
	...(title !== undefined && { title })
});
const called = (title: string) => ({ ...items, title });
const titles = ({ tables = [] }: Workbook) => tables.map(({ title }) => title);
const keeping = after(plant, put(items));

describe('matches kept in a workbook', () => {
	it('are added last, replaced in their place, renamed, removed, and each is taken back', () => {
		const steps: [Command, string[] | undefined][] = [
			[put(items), ['Items']],
			[put(called('Machines')), ['Items', 'Machines']],
			[put(called('Price list'), 'Items'), ['Price list', 'Machines']],
			[{ kind: 'remove_table', title: 'Machines' }, ['Price list']],
			[{ kind: 'remove_table', title: 'Price list' }, []]
		];
		let here: Workbook = plant;
		for (const [command, expected] of steps) {
			const done = applyCommand(here, command);
			if (!done.ok) throw new Error(done.problem.message);
			expect(titles(done.workbook)).toEqual(expected);
			const back = applyCommand(done.workbook, done.inverse);
			expect(back.ok && back.workbook).toEqual(here);
			here = done.workbook;
		}
		// The list goes with its last table.
		expect(here).toEqual(plant);
	});

	it('have each a name of their own', () => {
		expect(refusal(keeping, put(items))).toMatchObject({ code: 'duplicate-table' });
		const two = after(keeping, put(called('Machines')));
		expect(refusal(two, put(called('Items'), 'Machines'))).toMatchObject({
			message: 'There is already a table kept as "Items". Choose another name.'
		});
		expect(findProblems({ ...plant, tables: [items, items] })).toMatchObject([
			{ code: 'duplicate-table', path: 'tables[1].title' }
		]);
		expect(refusal(plant, { kind: 'remove_table', title: 'Items' })).toMatchObject({
			code: 'unknown-table'
		});
		expect(refusal(plant, put(called('')))).toMatchObject({ code: 'wrong-shape' });
	});

	it('name columns that the table has', () => {
		const pairs = { relation: 'runs', first: 0, second: 3 };
		expect(refusal(plant, put({ ...items, pairs }))).toMatchObject({ code: 'no-column' });
		expect(findProblems({ ...plant, tables: [{ ...items, pairs }] })).toMatchObject([
			{ code: 'no-column', path: 'tables[0].pairs' }
		]);
		const kept = after(plant, put({ ...items, pairs: { ...pairs, second: 2 } }));
		const loaded = loadWorkbook(saveWorkbook(kept), 'f.json');
		expect(loaded.ok && loaded.workbook.tables).toEqual(kept.tables);
	});

	it('follow new names of quantities, scenarios and members', () => {
		const mass = plant.sheets
			.flatMap(({ quantities }) => quantities)
			.find(({ name }) => name === 'mass_per_metre')!;
		const { changes: _changes, ...base } = plant.scenarios[0]!;
		const line = plant.sets.find(({ name }) => name === 'line')!.members[0]!;
		const renamed = (
			[
				{
					kind: 'replace_quantity',
					name: mass.name,
					quantity: { ...mass, name: 'metre_mass' }
				},
				{ kind: 'replace_scenario', id: 'base', scenario: { ...base, id: 'now' } },
				{ kind: 'replace_member', set: 'line', id: 'L1', member: { ...line, id: 'E1' } }
			] as const
		).reduce<Workbook>(after, after(plant, put({ ...items, quantity: 'mass_per_metre' })));
		expect(renamed.tables![0]).toEqual({
			...items,
			quantity: 'metre_mass',
			columns: [
				...items.columns.slice(0, 2),
				{
					...items.columns[2],
					quantity: 'metre_mass',
					scenario: 'now',
					member: { of: 'line', id: 'E1' }
				}
			]
		});
	});

	it('outlive what their columns mean, for whoever uses them is told', () => {
		const without = after(keeping, {
			kind: 'remove_quantity',
			name: 'mass_per_metre',
			also: true
		});
		expect(without.tables).toEqual([items]);
		expect(loadWorkbook(saveWorkbook(without), 'f.json').ok).toBe(true);
	});

	it('are written in one order of fields, and read back as they were', () => {
		const mixed = Object.fromEntries(Object.entries(items.columns[2]!).reverse());
		const text = saveWorkbook({
			...plant,
			tables: [{ ...items, columns: [...items.columns.slice(0, 2), mixed as never] }]
		});
		expect(text).toBe(saveWorkbook(keeping));
		const loaded = loadWorkbook(text, 'f.json');
		expect(loaded.ok && loaded.workbook.tables).toEqual([items]);
	});

	it('are said in a change list', () => {
		const told = (before: Workbook, now: Workbook) =>
			compareWorkbooks(before, now).lines.map((change) => changeWords(change));
		expect(told(plant, keeping)).toEqual(['add matches of the table Items']);
		const changed = after(keeping, put({ ...items, columns: items.columns.slice(0, 1) }, 'Items'));
		expect(told(keeping, changed)).toEqual(['matches of the table Items: changed']);
	});
});

describe('two people who keep matches at once', () => {
	const merge = (mine: Workbook, theirs: Workbook) => mergeWorkbooks({ base: plant, mine, theirs });

	it('have both, under two names', () => {
		const { workbook, conflicts } = merge(keeping, after(plant, put(called('Machines'))));
		expect(conflicts).toEqual([]);
		expect(titles(workbook).sort()).toEqual(['Items', 'Machines']);
	});

	it('are asked where they keep different matches under one name', () => {
		const theirs = after(plant, put({ ...items, columns: items.columns.slice(0, 1) }));
		const { conflicts } = merge(keeping, theirs);
		expect(conflicts.map(({ path }) => path.slice(0, 2))).toEqual([['tables', 'Items']]);
	});
});
