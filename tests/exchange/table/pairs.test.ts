/** Pairs of a relation out of a table: two columns or marks under headings, what is new, what would go, what is unknown. */
import { describe, expect, it } from 'vitest';
import { readCsv } from '$lib/exchange/csv/rows';
import { NO_CHOICES, unknownKey, type MemberChoices } from '$lib/exchange/table/new-members';
import { proposePairs, type PairMapping } from '$lib/exchange/table/pair-mapping';
import { lookOverPairs, pairCommands, type PairLook } from '$lib/exchange/table/pairs';
import { applyCommand } from '$lib/workbook/commands';
import { findProblems } from '$lib/workbook/consistency';
import { findRelation } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import { plant } from '../../workbook/plant';

/** PX15B runs on L1 and L2, PX20 on L1; top speeds are entered for some of them. */
const runs = findRelation(plant, 'runs')!;

function gridOf(text: string) {
	const read = readCsv(text, 'f.csv');
	if (!read.ok) throw new Error(read.message);
	return read.grid;
}
const proposed = (text: string) => proposePairs(gridOf(text), runs, plant);

function look(
	text: string,
	choices: MemberChoices = NO_CHOICES,
	mapping: PairMapping = proposed(text),
	workbook: Workbook = plant
): PairLook {
	const looked = lookOverPairs(gridOf(text), mapping, choices, workbook);
	if (!looked.ok) throw new Error(looked.message);
	return looked.look;
}
const told = ({ fresh, gone, same }: PairLook) => ({
	fresh: fresh.map(({ pair, line }) => [...pair, line]),
	gone: gone.map(({ pair, line }) => [...pair, line]),
	same
});

describe('which column names which', () => {
	it.each([
		['two columns by heading', 'Line;Product\nL1;PX20\n', [1, 0], null],
		['two columns by what stands in them', 'where;what\nL1;PX20\nL2;PX15B\n', [1, 0], null],
		['two columns and one of marks', 'Product;Line;made\nPX20;L1;x\nPX20;L2;-\n', [0, 1], 2],
		['members of the second set in the headings', 'Product;L1;L2\nPX20;x;\n', [0, 'heads'], null],
		['members of the first set in the headings', ';PX20;PX15B\nL1;1;0\n', ['heads', 0], null],
		['nothing that is known', 'a;b\n1;2\n', [null, null], null]
	])('is found for %s', (_what, text, of, mark) => {
		expect(proposed(text)).toEqual({ relation: 'runs', of, mark });
	});

	it('has to be said before anything is looked over', () => {
		const text = 'a;b\n1;2\n';
		expect(lookOverPairs(gridOf(text), proposed(text), NO_CHOICES, plant).ok).toBe(false);
		const twice: PairMapping = { relation: 'runs', of: [0, 0], mark: null };
		expect(lookOverPairs(gridOf(text), twice, NO_CHOICES, plant).ok).toBe(false);
	});
});

describe('pairs in two columns', () => {
	it('are new, the same, or not named though their product is', () => {
		const text = 'Product;Line\nPX20;L2\nPX20;L1\nPX20;L2\n';
		expect(told(look(text))).toEqual({ fresh: [['PX20', 'L2', 2]], gone: [], same: 1 });
		expect(look(text).untouched).toBe(2);
		expect(told(look('Product;Line\nPX15B;L1\n')).gone).toEqual([['PX15B', 'L2', null]]);
	});

	it('go where a column of marks says so, and what is entered for them is counted', () => {
		const text = 'Product;Line;runs there\nPX15B;L1;no\nPX15B;L2;yes\nPX20;L2;no\nPX20;L1;1\n';
		const { gone, same, fresh } = look(text);
		expect([fresh, same]).toEqual([[], 3]);
		// A top speed in the base, and one in the scenario Dearer resin.
		expect(gone).toEqual([{ pair: ['PX15B', 'L1'], line: 2, entered: 2 }]);
	});

	it('that contradict each other are refused with both lines', () => {
		const { problems } = look('Product;Line;m\nPX20;L1;x\nPX20;L1;-\n');
		expect(problems).toEqual([
			{ line: 3, column: null, message: 'PX20 and L1 go together by line 2. Keep one of the two.' }
		]);
	});
});

describe('a cross table', () => {
	it('says of each cell that two go together, or that they do not', () => {
		const text = 'Product;L1;L2;Remark\nPX15B;x;-;fast\nPX20;0;1;\n';
		expect(told(look(text))).toEqual({
			fresh: [['PX20', 'L2', 3]],
			gone: [
				['PX15B', 'L2', 2],
				['PX20', 'L1', 3]
			],
			same: 1
		});
		expect(look(text).leftOut).toEqual(['Remark']);
	});

	it('refuses a cell that is no mark, with its line and column', () => {
		const { problems, refused, gone } = look('Product;L1;L2\nPX15B;x;maybe\n;x;x\n');
		expect(refused).toBe(2);
		// Nothing is done to a pair of which the file says nothing that can be read.
		expect(gone).toEqual([]);
		expect(problems.map(({ line, column, message }) => [line, column, message])).toEqual([
			[2, '"L2"', expect.stringContaining('"maybe" is no mark. Write x, 1 or yes')],
			[3, null, 'The row names no product. Write it, or leave the row out.']
		]);
	});

	it('names members that the workbook has not, in rows and in headings of marks', () => {
		const { unknown } = look('Product;L1;L3;Remark\nPX32;x;x;new\nPX20;x;;\n');
		expect(unknown.map(({ set, text, line }) => [set, text, line])).toEqual([
			['line', 'L3', 1],
			['product', 'PX32', 2]
		]);
	});
});

describe('what is accepted', () => {
	it('is entered as one edit, with new members first, and one undo takes it back', () => {
		const text = 'Product;L1;L2\nPX15B;x;-\nPX32;x;\n';
		const unknown = new Map([[unknownKey('product', 'PX32'), { as: 'new', like: null } as const]]);
		const looked = look(text, { unknown, removed: new Set() });
		expect(looked.unknown.map((one) => one.text)).toEqual(['PX32']);
		const commands = pairCommands(looked, looked.gone, 'runs');
		const done = applyCommand(plant, { kind: 'several', commands });
		if (!done.ok) throw new Error(done.problem.message);
		expect(findRelation(done.workbook, 'runs')!.pairs).toEqual([
			['PX15B', 'L1'],
			['PX20', 'L1'],
			['PX32', 'L1']
		]);
		expect(findProblems(done.workbook)).toEqual([]);
		const back = applyCommand(done.workbook, done.inverse);
		expect(back.ok && back.workbook).toEqual(plant);
	});
});
