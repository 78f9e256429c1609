/** Matches that were kept, on the next file: the same, with headings that are new or gone, and in a changed workbook. */
import { describe, expect, it } from 'vitest';
import { readCsv } from '$lib/exchange/csv/rows';
import { decimalSigns } from '$lib/exchange/table/decimals';
import { headingsCompared, keptOf, reuse } from '$lib/exchange/table/kept';
import type { Mapping } from '$lib/exchange/table/mapping';
import { proposeMapping } from '$lib/exchange/table/propose';
import { applyCommand } from '$lib/workbook/commands';
import type { KeptTable, Workbook } from '$lib/workbook/schema';
import { openShipped } from '../../reference/shipped';

const { workbook } = openShipped('shop');

const kept: KeptTable = {
	title: 'Items',
	columns: [
		{ heading: 'Item', is: 'member', of: 'product' },
		{ heading: 'Metres', is: 'value', scenario: 'base', quantity: 'coil_length', unit: 'm' },
		{ heading: 'Colour', is: 'nothing' }
	]
};

function readText(text: string) {
	const read = readCsv(text, 'f.csv');
	if (!read.ok) throw new Error(read.message);
	return read.grid;
}
function reused(text: string, table = kept, book: Workbook = workbook) {
	const grid = readText(text);
	return reuse(table, grid.head, decimalSigns(grid), proposeMapping(grid, book), book);
}
const meanings = ({ columns }: Mapping) => columns.map(({ meaning }) => meaning);

describe('matches that are kept', () => {
	it('give back the mapping that they were kept of', () => {
		const text = 'Item;Metres;Colour\nR16;62,5;red\nR20;50,5;blue\n';
		const { mapping } = reused(text);
		const again = keptOf('Again', readText(text).head, mapping)!;
		// What the file showed of its decimals is kept with the rest.
		expect(again.columns[1]).toEqual({ ...kept.columns[1], decimal: ',' });
		expect(reused(text, again).mapping).toEqual(mapping);
	});

	it('are none while a column waits for an answer', () => {
		const asked = { is: 'asked', between: [] } as const;
		const column = { meaning: asked, unit: '', decimal: null, dayFirst: null };
		expect(keptOf('Items', ['x'], { quantity: null, columns: [column] })).toBeNull();
	});
});

describe('the next file', () => {
	it('is matched whatever the order, the case and the spaces of its headings', () => {
		const { mapping, fresh, gone } = reused('COLOUR;metres ;  Item\nred;60;R16\n');
		expect(meanings(mapping)).toEqual([
			{ is: 'nothing' },
			{ is: 'value', scenario: 'base', quantity: 'coil_length', member: null },
			{ is: 'member', of: 'product' }
		]);
		expect([fresh, gone]).toEqual([[], []]);
	});

	it('says which headings are new, and which are gone', () => {
		expect(headingsCompared(['Item', 'Length', 'Colour'], kept)).toEqual({
			fresh: ['Length'],
			gone: ['Metres']
		});
	});

	it('takes a new column as it would be proposed, but asks where it would hold what a known one holds', () => {
		const { mapping, fresh } = reused('Item;Metres;Coil length\nR16;60;61\n');
		expect(fresh).toEqual(['Coil length']);
		expect(meanings(mapping)[2]).toEqual({ is: 'asked', between: ['coil_length'] });
	});

	it('matches columns of one heading in their order', () => {
		const twice: KeptTable = { ...kept, columns: [kept.columns[0]!, kept.columns[2]!] };
		const both = {
			...twice,
			columns: [...twice.columns, { ...kept.columns[1]!, heading: 'Colour' }]
		};
		const { mapping } = reused('Item;Colour;Colour\nR16;red;60\n', both);
		expect(meanings(mapping).map(({ is }) => is)).toEqual(['member', 'nothing', 'value']);
	});

	it('is read with the decimal sign that it shows itself, and says that it is another', () => {
		const point: KeptTable = {
			...kept,
			columns: [kept.columns[0]!, { ...kept.columns[1]!, decimal: '.' } as never]
		};
		const own = reused('Item;Metres\nR16;62,5\n', point);
		expect(own.mapping.columns[1]!.decimal).toBe(',');
		expect(own.otherwise).toEqual(['Metres']);
		// Where its own numbers leave it open, what was kept speaks before the rest of the file.
		const open = reused('Item;Metres;Colour\nR16;1,250;0,5\n', point);
		expect(open.mapping.columns[1]!.decimal).toBe('.');
		expect(open.otherwise).toEqual([]);
	});
});

describe('a workbook that has changed since', () => {
	const after = (...commands: Parameters<typeof applyCommand>[1][]) => {
		const made = applyCommand(workbook, { kind: 'several', commands });
		if (!made.ok) throw new Error(made.problem.message);
		return made.workbook;
	};

	it('asks about a column whose quantity is gone', () => {
		const book = after({ kind: 'remove_quantity', name: 'coil_length', also: true });
		const { mapping, lost } = reused('Item;Metres;Colour\nR16;60;red\n', kept, book);
		expect(lost).toEqual(['Metres']);
		expect(meanings(mapping)[1]).toEqual({ is: 'asked', between: [] });
	});

	it('asks about a column whose scenario is gone, and offers its quantity', () => {
		const table: KeptTable = {
			...kept,
			columns: [kept.columns[0]!, { ...kept.columns[1]!, scenario: 'gone' } as never]
		};
		const { mapping, lost } = reused('Item;Metres\nR16;60\n', table);
		expect(lost).toEqual(['Metres']);
		expect(meanings(mapping)[1]).toEqual({ is: 'asked', between: ['coil_length'] });
	});
});
