/**
 * Files as others write them. The two spreadsheet files hold the same table and were written by openpyxl and by
 * XlsxWriter, general-purpose libraries of another language: a title sheet, dates, a formula with and without a kept
 * value, a number kept as text, a merged cell, a hidden sheet.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { lookOver } from '$lib/exchange/table/look';
import { NO_CHOICES } from '$lib/exchange/table/new-members';
import { proposeMapping } from '$lib/exchange/table/propose';
import { readTables } from '$lib/exchange/table/read-file';
import { at, type FileCell } from '$lib/exchange/ooxml/cell';
import { writeFile } from '$lib/exchange/ooxml/write';
import { openShipped } from '../../reference/shipped';

const { workbook, layout } = openShipped('marram');
const bytesOf = (by: string) =>
	new Uint8Array(readFileSync(new URL(`files/items-by-${by}.xlsx`, import.meta.url)));

async function sheetsOf(bytes: Uint8Array) {
	const read = await readTables(bytes, 'items.xlsx');
	if (!read.ok) throw new Error(read.message);
	return read.sheets;
}

describe.each(['openpyxl', 'xlsxwriter'])('a spreadsheet file of %s', (by) => {
	it('gives its sheets, those in view first, each with its cells as stored', async () => {
		const sheets = await sheetsOf(bytesOf(by));
		const names = sheets.map(({ name }) => name);
		expect(names).toEqual(by === 'openpyxl' ? ['Notes', 'Items', 'Old'] : ['Items', 'Notes']);
		const notes = sheets.find(({ name }) => name === 'Notes')!;
		expect(notes.grid).toMatchObject({ ok: false });
		const { grid, remarks } = sheets.find(({ name }) => name === 'Items')!;
		const kept = by === 'xlsxwriter' ? 95.1 : '';
		expect(grid).toEqual({
			ok: true,
			grid: {
				head: ['Product', 'List price (EUR/100 m)', 'Outside diameter', 'Since', 'Run'],
				headLine: 1,
				rows: [
					{ line: 2, cells: ['PX15B', 52.4, 15, '2027-05-06', 'yes'] },
					{ line: 3, cells: ['PX22B', kept, 22.5, '2027-05-07', 'no'] },
					{ line: 4, cells: ['PB10B', '40,5', 10, '', ''] },
					{ line: 5, cells: ['PB10B', 41, '', '', ''] }
				],
				parter: null
			}
		});
		expect(remarks).toEqual([
			by === 'xlsxwriter'
				? 'One cell holds a formula: the values that the file keeps of them are taken.'
				: expect.stringMatching(/^One formula has no value in the file \(B3\)\. Open the file/),
			'One merged cell is read as holding its value in each row and column.'
		]);
	});

	it('comes in like any table: numbers as they are kept, those kept as text by the column', async () => {
		const { grid } = (await sheetsOf(bytesOf(by))).find(({ name }) => name === 'Items')!;
		if (!grid.ok) throw new Error(grid.message);
		const looked = lookOver(grid.grid, proposeMapping(grid.grid, workbook), NO_CHOICES, layout);
		if (!looked.ok) throw new Error(looked.message);
		const { changes, problems, leftOut } = looked.look;
		expect(changes.map(({ quantity, at, after }) => [quantity.name, at[0], after])).toEqual([
			['list_price', 'PX15B', 0.524],
			...(by === 'xlsxwriter' ? [['list_price', 'PX22B', 0.951]] : []),
			['outside_diameter', 'PX22B', 22.5],
			['list_price', 'PB10B', 0.405]
		]);
		expect(problems.map(({ line, message }) => [line, message])).toEqual([
			[5, 'List price of PB10B is given on line 4 already. Keep one of the two.']
		]);
		expect(leftOut).toEqual(['Since', 'Run']);
	});
});

describe('a file of tables', () => {
	it('that this program wrote opens too, its title above the head', async () => {
		const cells = new Map<string, FileCell>([
			[at(0, 0), { value: 'Prices', look: 'title' }],
			[at(2, 0), { value: 'Product', look: 'head' }],
			[at(2, 1), { value: 'List price', look: 'head' }],
			[at(3, 0), { value: 'PX15B', look: 'label' }],
			[at(3, 1), { value: 0.5, look: 'input' }]
		]);
		const bytes = await writeFile([{ name: 'Base', cells, widths: [], frozenRows: 0 }], 'x');
		const [sheet] = await sheetsOf(bytes);
		expect(sheet!.grid).toMatchObject({
			ok: true,
			grid: { head: ['Product', 'List price'], headLine: 3 }
		});
	});

	it.each([
		['PK\u0003\u0004 and no more', 'is no spreadsheet file of OOXML'],
		['\u00d0\u00cf\u0011\u00e0 old', 'is locked by a password, or a spreadsheet file of an older']
	])('%j is refused', async (text, words) => {
		const bytes = Uint8Array.from([...text].map((letter) => letter.charCodeAt(0)));
		const read = await readTables(bytes, 'old.xls');
		expect(read.ok ? '' : read.message).toContain(`"old.xls" ${words}`);
	});

	it('of text says in which letters it was read', async () => {
		const bytes = Uint8Array.from([...'größe;a\n1;2\n'].map((letter) => letter.charCodeAt(0)));
		const [sheet] = await sheetsOf(bytes);
		expect(sheet!.remarks).toEqual(['Its letters are read as Windows-1252.']);
	});
});
