import { describe, expect, it } from 'vitest';
import { MOST_ROWS, readCsv } from '$lib/exchange/csv/rows';
import { MEMBER_MARK, sheetTable } from '$lib/exchange/csv/sheet';
import { csvOf } from '$lib/exchange/csv/write';
import type { Grid } from '$lib/exchange/table/grid';
import { importTable } from '$lib/exchange/table/import-table';
import type { Mapping } from '$lib/exchange/table/mapping';
import { proposeMapping } from '$lib/exchange/table/propose';
import { commandsOf } from '$lib/exchange/table/settle';
import { inputAt } from '$lib/workbook/scenario';
import { openShipped, read as valueOf } from '../reference/shipped';

const model = openShipped('marram');
const { workbook, layout } = model;
function gridOf(text: string): Grid {
	const result = readCsv(text, 'f.csv');
	if (!result.ok) throw new Error(result.message);
	return result.grid;
}

function brought(text: string, change: (mapping: Mapping) => Mapping = (mapping) => mapping) {
	const grid = gridOf(text);
	return importTable(grid, change(proposeMapping(grid, workbook)), layout);
}

describe('reading a text of separated values', () => {
	it.each([
		[',', 'a,b\r\n1,"x, y"\r\n'],
		[';', 'a;b\n1;x, y\n'],
		['\t', 'a\tb\n1\tx, y']
	])('finds what parts them: %j', (parter, text) => {
		expect(gridOf(`\uFEFF${text}`)).toEqual({
			head: ['a', 'b'],
			headLine: 1,
			rows: [{ line: 2, cells: ['1', 'x, y'] }],
			parter
		});
	});

	it('counts lines of the file, empty ones and those inside quotes too', () => {
		const { rows } = gridOf('a,b\n\n"two\nlines",1\n\nz,2\n');
		expect(rows.map(({ line }) => line)).toEqual([3, 6]);
	});

	it.each([
		['', 'holds no rows below'],
		['a,b\n', 'holds no rows below'],
		['a,"b\n1,2', 'a quotation mark that is not closed'],
		['a\0b', 'is not a text file'],
		[`a\n${'1\n'.repeat(MOST_ROWS + 1)}`, 'more than 200000 rows']
	])('refuses %.12j by name', (text, words) => {
		const result = readCsv(text, 'log.csv');
		expect(!result.ok && result.message).toMatch(new RegExp(`^"log.csv" .*${words}`));
	});
});

describe('a sheet taken along', () => {
	const results = workbook.scenarios.map(({ id }) => model.results(id));

	it('comes back without a change, whichever sheet it was', () => {
		workbook.sheets.forEach((_, sheet) => {
			const { changes, problems, same } = brought(csvOf(sheetTable(layout, results, sheet)));
			expect(problems).toEqual([]);
			expect(changes).toEqual([]);
			const inputs = layout.quantities.filter(
				(quantity) =>
					quantity.sheet === sheet && !quantity.quantity.formula && !quantity.quantity.fixed
			);
			if (inputs.length > 0) expect(same).toBeGreaterThan(0);
		});
	});

	it('keeps a label that would run as a formula from doing so', () => {
		const hostile = {
			...layout,
			quantities: layout.quantities.map((quantity) => ({
				...quantity,
				quantity: { ...quantity.quantity, label: '=HYPERLINK("x")' }
			}))
		};
		const text = csvOf(sheetTable(hostile, results, 0));
		expect(text).toContain(`"'=HYPERLINK(""x"")"`);
		expect(text).not.toMatch(/(^|,)"?=/m);
	});
});

describe('bringing values in', () => {
	it('a long table, by name, with members in columns and units of its own', () => {
		const { changes, problems } = brought(
			'quantity,product,unit,value\noutside_diameter,PX15B,cm,1.6\noutside_diameter,PB10B,mm,12.5\n'
		);
		expect(problems).toEqual([]);
		expect(changes.map(({ at, after }) => [at, after])).toEqual([
			[['PX15B'], 16],
			[['PB10B'], 12.5]
		]);
		expect(changes[0]!.before).toBe(valueOf(model, 'outside_diameter', 'PX15B'));
	});

	it('a wide table, one quantity for the whole file and a column for each member', () => {
		const { changes, problems } = brought('gauging,PX15B,PB10B\ntoday,0.06,0.07\n', (mapping) => ({
			...mapping,
			quantity: 'eccentricity'
		}));
		expect(problems.map(({ message }) => message)).toEqual([]);
		expect(changes.map(({ quantity, at, after }) => [quantity.name, at, after])).toEqual([
			['eccentricity', ['PX15B', 'today'], 0.06],
			['eccentricity', ['PB10B', 'today'], 0.07]
		]);
	});

	it('a decision: the value that the plan gives is no change, another one holds the cell', () => {
		const [base, other] = workbook.scenarios;
		const at = ['PX15B', 'L1', 'Mar', 'today'];
		const column = (scenario: string) => valueOf(model, 'made', ...at, { scenario });
		const row = (one: number, two: number) =>
			`name,for,${base!.id},${other!.id}\nmade,"${at.join(MEMBER_MARK)}",${one},${two}\n`;
		const planned = brought(row(column(base!.id), column(other!.id)));
		expect(planned.problems).toEqual([]);
		expect([planned.changes, planned.same]).toEqual([[], 2]);
		const held = brought(row(column(base!.id) + 1, column(other!.id)));
		// The other scenario would take the base's pin: its own plan's value is entered to stay as it is.
		expect(
			held.changes.map(({ scenario, before, after, stays }) => [scenario, before, after, stays])
		).toEqual([
			[base!.id, column(base!.id), column(base!.id) + 1, false],
			[other!.id, column(other!.id), column(other!.id), true]
		]);
	});

	it('into another scenario, by the name of its column, as one edit', () => {
		const other = workbook.scenarios[1]!;
		const { changes } = brought(`name,for,${other.id},base\nmttr,L1,3.25,2.75\n`);
		expect(commandsOf(changes)).toEqual([
			{
				kind: 'set_inputs',
				scenario: other.id,
				entries: [{ quantity: 'mttr', at: ['L1'], value: 3.25 }]
			},
			{
				kind: 'set_inputs',
				scenario: 'base',
				entries: [{ quantity: 'mttr', at: ['L1'], value: 2.75 }]
			}
		]);
	});

	it('gives a scenario no entry of its own for what it takes from its parent, and one where it shall stay apart', () => {
		const child = workbook.scenarios.find(({ parent }) => parent === 'base')!;
		const stands = Number(inputAt(workbook, 'base', 'mttr', ['L1']).value);
		expect(inputAt(workbook, child.id, 'mttr', ['L1'])).toEqual({ value: stands, from: 'base' });
		const both = (base: number, own: number) =>
			brought(`name,for,base,${child.id}\nmttr,L1,${base},${own}\n`);
		const together = both(stands + 1, stands + 1);
		expect(together.changes.map(({ scenario }) => scenario)).toEqual(['base']);
		expect(together.same).toBe(1);
		const apart = both(stands + 1, stands);
		expect(apart.changes.map(({ scenario, after, stays }) => [scenario, after, stays])).toEqual([
			['base', stands + 1, false],
			[child.id, stands, true]
		]);
	});

	it('says of each row that it cannot take what is wrong with it, and takes the rest', () => {
		const { changes, problems, results } = brought(
			[
				'name,for,base',
				'mtrr,L1,2',
				'mttr,L99,2',
				'mttr,,2',
				'mttr,L1,two',
				'mttr,L1,2.5',
				'mttr,L1,2.6',
				'mttr,L2,2 kg',
				'line_speed,PX15B; L2,30',
				'mttr,L3,2.9'
			].join('\n')
		);
		expect(problems).toEqual([
			{ line: 2, column: null, message: 'There is no quantity "mtrr". Did you mean mttr?' },
			{ line: 3, column: null, message: expect.stringMatching(/^There is no line "L99"\./) },
			{ line: 4, column: null, message: 'Time to repair is per line: no column gives the line.' },
			{
				line: 5,
				column: null,
				message: expect.stringMatching(/^Time to repair: "two" is not a number\./)
			},
			{
				line: 7,
				column: null,
				message: 'Time to repair of L1 is given on line 6 already. Keep one of the two.'
			},
			{
				line: 8,
				column: null,
				message: expect.stringMatching(/^Time to repair: kg cannot become h/)
			}
		]);
		expect(results).toBe(1);
		expect(changes.map(({ line, after }) => [line, after])).toEqual([
			[6, 2.5],
			[10, 2.9]
		]);
	});

	it('refuses to let a scenario change what is fixed', () => {
		const one = layout.quantities.find(
			({ quantity, axes }) =>
				quantity.fixed && axes.length === 1 && typeof quantity.type === 'object'
		)!;
		const { name, type } = one.quantity;
		const member = layout.sets.get(one.axes[0]!.set)!.members[0]!.id;
		const now = inputAt(workbook, 'base', name, [member]).value;
		const choices = layout.sets.get((type as { member_of: string }).member_of)!.members;
		const other = choices.find(({ id }) => id !== now)!.id;
		const { problems } = brought(
			`name,for,${workbook.scenarios[1]!.id}\n${name},${member},${other}\n`
		);
		expect(problems[0]?.message).toContain('is fixed with the structure');
	});
});
