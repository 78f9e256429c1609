/** Frozen copies in files: small, with every digit, and read in their older form too. */
import { deflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { freeze } from '$lib/engine/frozen';
import { loadWorkbook } from '$lib/workbook/load';
import { saveWorkbook } from '$lib/workbook/save';
import { VERSION, type Frozen, type Workbook } from '$lib/workbook/schema';
import { openShipped } from '../reference/shipped';

const copy: Frozen = {
	...{ id: 'standard', title: 'Standard', of: 'Base', date: '2027-11-30', by: 'Ada' },
	sets: [
		{ name: 'pipe', members: [{ id: 'A' }, { id: '__proto__' }, { id: 'C', label: 'Third' }] },
		{ name: 'month', members: [{ id: 'Jan' }, { id: 'Feb' }] }
	],
	quantities: [
		{ name: 'price', label: 'Price', unit: 'EUR/m', value: 0.1 + 0.2 },
		{
			...{ name: 'cost', label: 'Cost', unit: 'EUR', per: ['pipe', 'month'], formula: 'price * 2' },
			value: JSON.parse('{"A":{"Jan":1,"Feb":0.30000000000000004},"__proto__":{"Feb":7}}') as never,
			without: { C: { Jan: 'no-answer', Feb: 'no-answer' } }
		},
		{ name: 'gone', label: 'Gone', per: ['to: pipe'], formula: '1', value: { C: true } }
	]
};

const book: Workbook = {
	...{ format: 'metrewright', version: VERSION, title: 'Small' },
	sets: [
		{ name: 'pipe', label: 'Pipe', members: [{ id: 'C' }, { id: 'A' }, { id: '__proto__' }] },
		{ name: 'month', label: 'Month', members: [{ id: 'Jan' }, { id: 'Feb' }] }
	],
	sheets: [
		{
			title: 'One',
			quantities: [
				{ name: 'price', label: 'Price', unit: 'EUR/m', value: 3 },
				{
					...{ name: 'cost', label: 'Cost', unit: 'EUR/m', per: ['pipe', 'month'] },
					formula: 'price * 2'
				}
			]
		}
	],
	scenarios: [{ id: 'base', title: 'Base', parent: null, changes: [] }],
	frozen: [copy]
};

function opened(text: string): Workbook {
	const loaded = loadWorkbook(text, 'small.json');
	if (!loaded.ok) throw new Error(loaded.problem.line);
	return loaded.workbook;
}

const filed = (workbook: Workbook) =>
	(JSON.parse(saveWorkbook(workbook)) as { frozen: Record<string, unknown>[] }).frozen[0]!;

/** The small file with its copy's quantities put otherwise. */
const withQuantities = (...quantities: object[]) =>
	JSON.stringify({ ...book, frozen: [{ ...copy, quantities }] });

describe('a frozen copy in a file', () => {
	it('lists tables in the order of its own sets, and comes back with every digit', () => {
		const text = saveWorkbook(book);
		expect(opened(text).frozen).toEqual([copy]);
		expect(saveWorkbook(opened(text))).toBe(text);
		expect(filed(book)['quantities']).toEqual([
			{ name: 'price', unit: 'EUR/m', value: 0.30000000000000004 },
			{
				...{ name: 'cost', unit: 'EUR', per: ['pipe', 'month'] },
				values: [1, 0.30000000000000004, null, 7],
				reasons: [
					[4, null],
					[2, 'no-answer']
				]
			},
			{ name: 'gone', label: 'Gone', per: ['to: pipe'], formula: '1', values: [[2, null], true] }
		]);
	});

	it('writes the words of its day out once the quantity has others', () => {
		const [sheet] = book.sheets;
		const quantities = sheet!.quantities.map((one) =>
			one.name === 'cost' ? { ...one, formula: 'price * 3' } : { ...one, label: 'Price today' }
		);
		const edited = { ...book, sheets: [{ ...sheet!, quantities }] };
		expect(opened(saveWorkbook(edited)).frozen).toEqual([copy]);
		expect(filed(edited)['quantities']).toMatchObject([
			{ label: 'Price' },
			{ label: 'Cost', formula: 'price * 2' },
			{}
		]);
	});

	it('is read as earlier versions wrote it, in full', () => {
		for (const version of [14, 15, VERSION])
			expect(opened(JSON.stringify({ ...book, version })).frozen).toEqual([copy]);
	});

	it('keeps what fits in no list as a tree', () => {
		const odd = { name: 'cost', label: 'Odd', per: ['pipe'], value: { elsewhere: 1, A: 2 } };
		const held = { ...book, frozen: [{ ...copy, quantities: [odd] }] };
		expect(filed(held)['quantities']).toEqual([odd]);
		expect(opened(saveWorkbook(held)).frozen).toEqual(held.frozen);
	});

	it('says where a list does not fit, and what to do', () => {
		const line = (...quantities: object[]) => {
			const loaded = loadWorkbook(withQuantities(...quantities), 'small.json');
			return loaded.ok ? 'opens' : loaded.problem.line;
		};
		expect(line({ name: 'cost', per: ['pipe'], values: [1, [3, 2]] })).toBe(
			'"small.json", frozen copy Standard, quantity cost, values (frozen[0].quantities[0].values): lists 4 values, and its sets have room for 3. Open the file as it was saved.'
		);
		expect(line({ name: 'lost', value: 3 })).toContain('has no label');
		expect(line({ name: 'price', value: 3, values: [1] })).toContain('stands beside "value"');
		expect(line({ name: 'cost', per: ['pipe'], values: [[1, 2, 3]] })).toContain('values');
		expect(line({ name: 'cost', per: ['pipe'], values: [[2_000_000_000, 1]] })).toContain('values');
	});

	it('fills no memory by a few letters', () => {
		const members = Array.from({ length: 2000 }, (_, i) => ({ id: `m${i}` }));
		const quantities = Array.from({ length: 2 }, (_, i) => ({
			...{ name: `q${i}`, label: 'Q', per: ['pipe', 'to: pipe'] },
			values: [[3_000_000, 1]]
		}));
		const one = { ...copy, sets: [{ name: 'pipe', members }], quantities: quantities.slice(1) };
		const text = (copies: object[]) => JSON.stringify({ ...book, frozen: copies });
		const loaded = loadWorkbook(text([{ ...one, quantities }]), 'small.json');
		expect(!loaded.ok && loaded.problem.message).toContain('more than 4000000 values');
	});
});

it('takes less than 150 kB packed for all of the shipped plant', () => {
	const model = openShipped('marram');
	const { frozen: before, ...workbook } = model.workbook;
	const head = { id: 'all_of_it', title: 'All of it', of: 'Base', date: '2027-11-30' };
	const all = freeze(model.layout, model.results('base'), head)!;
	const packed = (one: Workbook) => deflateSync(saveWorkbook(one), { level: 6 }).length;
	expect(packed({ ...workbook, frozen: [all] }) - packed(workbook)).toBeLessThan(150_000);
	const held = opened(saveWorkbook({ ...workbook, frozen: [...(before ?? []), all] }));
	expect(held.frozen?.at(-1)).toEqual(all);
});
