import { describe, expect, it } from 'vitest';
import { UnitSystem } from '$lib/units/system';
import { blockText, cellsDown, filledBlock } from '$lib/ui/block';
import { fieldSpec } from '$lib/ui/field';
import { Paste, readBlock } from '$lib/ui/grid/paste-block';
import { buildRows } from '$lib/ui/rows';
import { base, cheap, layout } from './shop';

const { system } = UnitSystem.create([]);
const rows = buildRows({ layout, open: new Set(['mass']), results: [], messages: [], only: null });
const at = (label: string) =>
	rows.findIndex((row) => row.kind === 'quantity' && row.label === label);

function paste(text: string, start: number, scenarios = ['base', 'cheap']) {
	const block = readBlock(text);
	const paste = new Paste({
		layout,
		block,
		cells: cellsDown(rows, start, block.length),
		scenarios,
		base: 'base',
		specOf: (quantity) => fieldSpec(layout, quantity, system, 'en')
	});
	while (!paste.read(2));
	return paste.result;
}

describe('a copied block', () => {
	it('is tab-separated, with all digits and no grouping', () => {
		const cells = cellsDown(rows, at('Resin price'), 3);
		expect(blockText(layout, cells, [base, cheap], 'en')).toBe('2.02\t0.95\n0.06\t0.06\n0.1\t0.1');
		expect(blockText(layout, cells.slice(0, 1), [base], 'de')).toBe('2,02');
	});
});

describe('a pasted block', () => {
	it('fills unfolded members and folded ones in their order', () => {
		const { commands, taken } = paste('0.07\n0.11\n', at('A15'), ['base']);
		expect(taken).toBe(2);
		expect(commands).toEqual([
			{
				kind: 'set_inputs',
				scenario: 'base',
				entries: [
					{ quantity: 'mass', at: ['A15'], value: 0.07 },
					{ quantity: 'mass', at: ['B22'], value: 0.11 }
				]
			}
		]);
		const folded = paste('31\n29\n21', at('Line speed'), ['base']);
		expect(folded.commands[0]).toMatchObject({
			entries: [{ at: ['A15', 'L1'] }, { at: ['A15', 'L2'] }, { at: ['B22', 'L2'], value: 21 }]
		});
	});
	it('fills scenario columns side by side, units converted', () => {
		const { commands } = paste('2100 EUR/t\t1.8', at('Resin price'));
		expect(commands).toMatchObject([
			{ scenario: 'base', entries: [{ value: 2.1 }] },
			{ scenario: 'cheap', entries: [{ value: 1.8 }] }
		]);
	});
	it('takes what it can and names the first of what it cannot', () => {
		const result = paste('1,2,3\nx\n0.2\n5', at('Resin price'), ['base']);
		expect(result).toMatchObject({ all: 4, taken: 1, badCount: 3 });
		expect(result.bad[0]).toMatchObject({ line: 1, column: 1, text: '1,2,3' });
		expect(result.bad[2]?.message).toMatch(/Resin cost is a result here/);
	});
	it('refuses what has no row or column left', () => {
		const result = paste('no\t1\nL1\nyes\n4', at('Night shift'), ['base']);
		expect(result.bad.map((badCell) => badCell.message)).toEqual([
			'There is no further scenario column to take it.',
			'Price is low is a result here: it follows its formula.',
			'There is no further row to take it.'
		]);
	});
	it('reads a hundred thousand cells, each counted', () => {
		const result = paste(Array(100_000).fill('x').join('\n'), at('Resin price'), ['base']);
		expect(result).toMatchObject({ all: 100_000, taken: 0, badCount: 100_000 });
		expect(result.bad).toHaveLength(5);
	});
});

describe('what is pasted where more is marked', () => {
	it('fills it where it is one value, a line or a column', () => {
		expect(filledBlock([['5']], 3, 2)).toEqual([
			['5', '5'],
			['5', '5'],
			['5', '5']
		]);
		expect(filledBlock([['5', '6']], 2, 2)).toEqual([
			['5', '6'],
			['5', '6']
		]);
		expect(filledBlock([['5'], ['6']], 2, 3)).toEqual([
			['5', '5', '5'],
			['6', '6', '6']
		]);
	});
	it('stays as it is where it is a block of its own', () => {
		const block = [
			['1', '2'],
			['3', '4']
		];
		expect(filledBlock(block, 5, 5)).toEqual(block);
		expect(filledBlock([['5']], 1, 1)).toEqual([['5']]);
		expect(filledBlock([], 3, 3)).toEqual([]);
	});
});
