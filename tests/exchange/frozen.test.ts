/** Frozen copies in files: plain values beside the live sheets, and columns that nothing is entered from. */
import { describe, expect, it } from 'vitest';
import { freeze, frozenColumn } from '$lib/engine/frozen';
import { OK } from '$lib/engine/state';
import { withWorkbook } from '$lib/engine/structure';
import { readCsv } from '$lib/exchange/csv/rows';
import { sheetTable } from '$lib/exchange/csv/sheet';
import { csvOf } from '$lib/exchange/csv/write';
import { sheetsOf } from '$lib/exchange/ooxml/file';
import { writeFile } from '$lib/exchange/ooxml/write';
import { importTable } from '$lib/exchange/table/import-table';
import { proposeMapping } from '$lib/exchange/table/propose';
import { openShipped } from '../reference/shipped';
import { readFile } from './recalculate';

const model = openShipped('shop');
const base = model.results('base');
const copy = freeze(model.layout, base, {
	...{ id: 'budget_2028', title: 'Budget 2028', note: 'As approved.', of: 'Base' },
	...{ date: '2027-11-30', by: 'A. Example', revision: 7 }
})!;
const workbook = { ...model.workbook, frozen: [copy] };
const layout = withWorkbook(model.layout, workbook);
const results = workbook.scenarios.map(({ id }) => model.results(id));

describe('a frozen copy in files', () => {
	it('has a sheet of its own with every value, and no formula that recalculates', async () => {
		const bytes = await writeFile(sheetsOf(workbook, model.plan, results), workbook.title);
		const { sheets } = await readFile(bytes);
		expect([...sheets.keys()].slice(-2)).toEqual(['Budget 2028', 'Notes']);
		const cells = sheetsOf(workbook, model.plan, results).at(-2)!.cells;
		expect([...cells.values()].some(({ formula }) => formula !== undefined)).toBe(false);
		expect(cells.get('1,0')!.value).toBe(
			'Frozen 2027-11-30, of Base, by A. Example, revision 7. As approved.'
		);
		const values = [...cells].filter(([at]) => /^\d+,3$/.test(at) && at !== '2,3');
		expect(values).toHaveLength(base.states.filter((state) => state === OK).length);
		const ebit = [...cells].find(
			([, { value }]) => value === layout.byName.get('ebit')!.quantity.label
		);
		const row = ebit![0].split(',')[0];
		expect(cells.get(`${row},3`)!.value).toBe(base.values[layout.byName.get('ebit')!.base]);
	});

	it('is a column of the table of values, and changes nothing when that comes in again', () => {
		const columns = [...results, frozenColumn(layout, copy)];
		const text = csvOf(sheetTable(layout, columns, null));
		const read = readCsv(text, 'f.csv');
		if (!read.ok) throw new Error(read.message);
		expect(read.grid.head.at(-1)).toBe('budget_2028');
		const mapping = proposeMapping(read.grid, workbook);
		expect(mapping.columns.at(-1)!.meaning).toEqual({ is: 'nothing' });
		const { changes, problems } = importTable(read.grid, mapping, layout);
		expect([changes, problems]).toEqual([[], []]);
	});
});
