/** Figures that rest on plans which do not answer the workbook, on the plant that is planned by hand, and in files. */
import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { ACROSS, HERE, restingOf } from '$lib/engine/resting';
import { StaleCells, type StalePlan } from '$lib/engine/stale';
import { proposeMapping } from '$lib/exchange/table/propose';
import { sheetTable } from '$lib/exchange/csv/sheet';
import { sheetsOf } from '$lib/exchange/ooxml/file';
import { staleIn } from '$lib/ui/pictures/stale';
import type { Picture, Scenario } from '$lib/workbook/schema';
import { smallPlant } from '../programmes/small-plant';

const gain = {
	...{ name: 'gain', label: 'Gain', unit: 'EUR' },
	formula: 'contribution - contribution[reference]'
};
const yearly = { name: 'yearly', label: 'Yearly', unit: 'EUR', formula: 'gain * 2' };
const third: Scenario = {
	...{ id: 'third', title: 'Third', parent: 'base', against: 'more_hours', changes: [] }
};
const model = Model.open(
	smallPlant((book) => ({
		...book,
		scenarios: [...book.scenarios, third],
		sheets: [...book.sheets, { title: 'Case', quantities: [gain, yearly] }]
	}))
);
const { workbook, plan, layout } = model;
const resting = restingOf(workbook, plan);
const cellsOf = (name: string) => {
	const { base, count } = layout.byName.get(name)!;
	return [...resting.get('allocation')!.subarray(base, base + count)];
};
const stale = (...plans: readonly [scenario: string, because: StalePlan['because']][]) =>
	new StaleCells(
		workbook,
		resting,
		plans.map(([scenario, because]) => ({ programme: 'allocation', scenario, because }))
	);
const why = (marks: StaleCells, scenario: string, name: string) => {
	const { base, count } = layout.byName.get(name)!;
	return marks.of(scenario, base, base + count);
};

describe('what rests on a plan', () => {
	it('is what it fills and what is computed from that, cell by cell, and no input', () => {
		expect(new Set(cellsOf('made'))).toEqual(new Set([HERE]));
		expect(new Set(cellsOf('hour_value'))).toEqual(new Set([HERE]));
		expect(cellsOf('contribution')).toEqual([HERE]);
		for (const name of ['hours', 'demand', 'speed', 'holding'])
			expect(new Set(cellsOf(name))).toEqual(new Set([0]));
	});

	it('is told apart where another scenario is read, and in all that follows from there', () => {
		expect(cellsOf('gain')).toEqual([HERE | ACROSS]);
		expect(cellsOf('yearly')).toEqual([HERE | ACROSS]);
	});

	it('is nothing where no programme is solved', () => {
		const off = workbook.programmes!.map((one) => ({ ...one, off: true }));
		expect(restingOf({ ...workbook, programmes: off }, plan).size).toBe(0);
	});
});

describe('a figure is out of date', () => {
	it('where the plan of its scenario is, and nowhere else', () => {
		const marks = stale(['more_hours', 'refused']);
		expect(why(marks, 'more_hours', 'contribution')).toBe('refused');
		expect(why(marks, 'more_hours', 'demand')).toBeNull();
		expect(why(marks, 'base', 'contribution')).toBeNull();
		expect(why(marks, 'base', 'gain')).toBeNull();
		expect(marks.inScenario('more_hours')).toBe('refused');
		expect(marks.inScenario('base')).toBeNull();
	});

	it('where what it is measured against is', () => {
		const marks = stale(['more_hours', 'kept']);
		expect(why(marks, 'third', 'yearly')).toBe('kept');
		expect(why(marks, 'third', 'contribution')).toBeNull();
		// The base may be read from anywhere.
		expect(why(stale(['base', 'planning']), 'third', 'gain')).toBe('planning');
	});
});

describe('in what is taken along', () => {
	const results = workbook.scenarios.map(({ id }) => model.results(id));
	const marks = stale(['more_hours', 'refused']);

	it('a table says so of each value, and is read back without taking that for a value', () => {
		const table = sheetTable(layout, results, null, marks);
		expect(table.columns.at(-1)).toBe('out of date');
		const said = (name: string) => table.rows.find(([first]) => first === name)!.at(-1);
		expect(said('contribution')).toBe('more_hours: no plan answers the workbook as it is now');
		expect(said('demand')).toBe('');
		const grid = {
			headLine: 1,
			parter: ',',
			head: [...table.columns],
			rows: table.rows.map((row, i) => ({
				line: i + 2,
				cells: row.map((one) => String(one ?? ''))
			}))
		};
		expect(proposeMapping(grid, workbook).columns.at(-1)?.meaning).toEqual({ is: 'nothing' });
		expect(sheetTable(layout, results, null).columns.at(-1)).toBe('third');
	});

	it('a file with formulas says so at its heads and beside each figure', () => {
		const sheets = sheetsOf(workbook, plan, results, marks);
		const textsOf = (name: string) =>
			[...sheets.find((sheet) => sheet.name === name)!.cells.values()]
				.map(({ value }) => value)
				.filter((value) => typeof value === 'string' && /out of date/i.test(value));
		// Of the scenario, and of the one that is measured against it.
		expect(textsOf('Overview')).toHaveLength(2);
		expect(textsOf('Base')).toEqual([]);
		const own = textsOf('More hours');
		expect(own[0]).toMatch(/^Figures in italics are out of date: no plan answers/);
		expect(own.slice(1)).toContain('Out of date: no plan answers the workbook as it is now.');
		const fresh = sheetsOf(workbook, plan, results);
		expect(
			fresh.some(({ cells }) => [...cells.values()].some(({ look }) => look === 'stale'))
		).toBe(false);
	});

	it('a picture says so where it draws such a figure in a scenario that it shows', () => {
		const picture = { kind: 'bridge', title: 'Bridge', quantity: 'contribution' };
		const open = { layout, base: 'base', selectedScenario: 'base' };
		expect(staleIn(marks, picture as unknown as Picture, open)).toBe('refused');
		const one = { ...picture, kind: 'build_up' } as unknown as Picture;
		expect(staleIn(marks, one, open)).toBeNull();
		expect(staleIn(marks, one, { ...open, selectedScenario: 'more_hours' })).toBe('refused');
		const other = { ...picture, quantity: 'demand' } as unknown as Picture;
		expect(staleIn(marks, other, open)).toBeNull();
	});
});
