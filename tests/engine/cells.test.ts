/** The plan as sheets of cells: what stands where, how it is written, and that no cell is too much for a cell program. */
import { describe, expect, it } from 'vitest';
import { Book } from '$lib/engine/cells/book';
import { addressOf, columnName, ROWS } from '$lib/engine/cells/grid';
import { numeral } from '$lib/engine/cells/piece';
import { buildPlan } from '$lib/engine/planner/plan';
import { Op } from '$lib/engine/operations';
import { sourcesOf } from '$lib/engine/second/sources';
import { VERSION, type Quantity, type Scenario, type Workbook } from '$lib/workbook/schema';
import { HandPlan, type Term } from './interpreter-hand';
import { baseOf, computed } from './second-hand';

const set = (name: string, count: number) => ({
	name,
	label: name,
	members: Array.from({ length: count }, (_, i) => ({ id: `${name}${i + 1}` }))
});

const workbook = (
	sets: Workbook['sets'],
	quantities: Quantity[],
	scenarios: Scenario[] = []
): Workbook => ({
	format: 'metrewright',
	version: VERSION,
	title: 'Plant',
	sets,
	sheets: [{ title: 'One', quantities }],
	scenarios: [{ id: 'main', title: 'Base', parent: null, changes: [] }, ...scenarios]
});

const textOf = (book: Workbook) => {
	const plan = buildPlan(book);
	const lowered = new Book(plan, sourcesOf(book, plan));
	return book.scenarios.map((_, i) => lowered.write(i).grid.columns);
};

const depthOf = (text: string) => {
	let depth = 0;
	let most = 0;
	for (const letter of text) {
		if (letter === '(') most = Math.max(most, ++depth);
		if (letter === ')') depth--;
	}
	return most;
};

describe('addresses', () => {
	it('go on with two letters after Z', () => {
		expect([0, 25, 26, 701, 702].map(columnName)).toEqual(['A', 'Z', 'AA', 'ZZ', 'AAA']);
		expect(addressOf(0)).toBe('A1');
		expect(addressOf(27 * ROWS + 4)).toBe('AB5');
	});

	it('numbers read back as themselves, with a small e', () => {
		expect(numeral(1e21).text).toBe('1e+21');
		expect(numeral(-1e-7).text).toBe('-1e-7');
		expect(numeral(0.1 + 0.2).text).toBe('0.30000000000000004');
		expect(numeral(-0).text).toBe('0');
	});
});

describe('a sheet', () => {
	const price: Quantity = {
		name: 'price',
		label: '',
		per: ['product'],
		value: { product1: 2, product2: 3, product3: 4 }
	};

	it('holds inputs as numbers, formulas with cell references, and sums as ranges', () => {
		const [base] = textOf(
			workbook(
				[set('product', 3)],
				[
					price,
					{ name: 'double', label: '', per: ['product'], formula: 'price * 2' },
					{ name: 'total', label: '', formula: 'SUM(double over product)' }
				]
			)
		);
		expect(base![0]).toEqual([2, 3, 4, '=A1*2', '=A2*2', '=A3*2', '=SUM(A4:A6)']);
	});

	it('of a scenario holds what its changes reach, and reads the rest in its parent', () => {
		const [, case1, case2] = textOf(
			workbook(
				[set('product', 2)],
				[
					{ ...price, value: { product1: 2, product2: 3 } },
					{ name: 'rate', label: '', value: 0.5 },
					{ name: 'cost', label: '', per: ['product'], formula: 'price * rate' },
					{ name: 'apart', label: '', formula: 'rate + 1' },
					{ name: 'rise', label: '', per: ['product'], formula: 'cost - cost[reference]' }
				],
				[
					{
						id: 'dear',
						title: '',
						parent: 'main',
						changes: [{ quantity: 'price', value: { product2: 9 } }]
					},
					{ id: 'same', title: '', parent: 'dear', against: 'dear', changes: [] }
				]
			)
		);
		expect(case1![0]).toEqual([9, '=A1*s0!A3', '=A2-s0!A5']);
		// Measured against another scenario than its parent, it holds what reads the reference.
		expect(case2![0]).toEqual(['=s0!A4-s0!A4', '=s1!A2-s1!A2']);
	});

	it('writes an empty input as an error that can be told, never as nothing', () => {
		const [base] = textOf(workbook([], [{ name: 'rate', label: '' }]));
		expect(base![0]).toEqual(['=#REF!']);
	});
});

describe('long formulas', () => {
	const scattered = (count: number) => {
		const plan = new HandPlan(2 * count + 1);
		const terms = Array.from({ length: count }, (_, i): Term => [plan.cell(2 * i)]);
		plan.root(2 * count, plan.aggregate(Op.Sum, terms));
		return plan.build();
	};
	const numbers = (count: number) => Array.from({ length: count }, (_, i) => i);

	it('gather up to sixteen terms in place, more in a column of their own', () => {
		const few = computed(scattered(16), numbers(32));
		expect(few.text[32]).toMatch(/^=SUM\(A1,A3,.*,A31\)$/);
		expect(few.found[32]).toBe(240);
		const many = computed(scattered(17), numbers(34));
		expect(many.text[34]).toBe('=SUM(B1:B17)');
		expect(many.text.slice(35, 37)).toEqual(['=A1', '=A3']);
		expect(many.found[34]).toBe(272);
	});

	it('give a shared part one cell, however many read it', () => {
		const plan = new HandPlan(4);
		const part = plan.aggregate(
			Op.Max,
			[0, 1].map((cell): Term => [
				plan.node(Op.Multiply, plan.cell(cell), plan.constant(1234567.891))
			])
		);
		for (const cell of [2, 3]) plan.root(cell, plan.node(Op.Power, part, part));
		const { text, found } = computed(plan.build(), [1e-6, 2e-6]);
		expect(text.slice(2)).toEqual(['=B1^B1', '=B1^B1', '=MAX(A1*1234567.891,A2*1234567.891)']);
		expect(found[3]).toBeCloseTo(2.469135782 ** 2.469135782, 9);
	});

	it('stay short and shallow by moving pieces into cells, 5,000 operations deep', () => {
		const plan = new HandPlan(2);
		let node = plan.cell(0);
		for (let i = 0; i < 5000; i++)
			node = plan.node(i % 2 ? Op.Subtract : Op.Add, node, plan.constant(i));
		plan.root(1, node);
		const { text, found } = computed(plan.build(), [7]);
		expect(found[1]).toBe(7 - 2500);
		for (const name of text) {
			expect(name.length).toBeLessThan(2000);
			expect(depthOf(name)).toBeLessThan(60);
		}
	});

	it('stay short where many long parts meet', () => {
		const plan = new HandPlan(2);
		const parts = Array.from({ length: 16 }, (_, i) => {
			let part = plan.cell(0);
			for (let k = 0; k < 20; k++)
				part = plan.node(Op.Add, part, plan.constant(0.1234567890123456 + i + k));
			return part;
		});
		plan.root(
			1,
			plan.aggregate(
				Op.Max,
				parts.map((part): Term => [part])
			)
		);
		const { text, found } = computed(plan.build(), [0]);
		expect(found[1]).toBeCloseTo(20 * (0.1234567890123456 + 15) + 190, 9);
		expect(Math.max(...text.map((name) => name.length))).toBeLessThan(2000);
	});

	it('go on in the next column after 30,000 cells', () => {
		const count = 31_000;
		const half = count / 2;
		const plan = new HandPlan(count + 1);
		const sums = [0, half].map((from) =>
			plan.aggregate(
				Op.Sum,
				Array.from({ length: half }, (_, i): Term => [plan.cell(from + i)])
			)
		);
		plan.root(count, plan.node(Op.Add, sums[0]!, sums[1]!));
		const built = plan.build();
		const entries = Array.from({ length: count }, () => 2);
		const { grid } = new Book(built, [baseOf(entries)]).write(0);
		expect(grid.columns.map((column) => column.length)).toEqual([ROWS, count + 1 - ROWS, 0]);
		expect(grid.columns[1]!.at(-1)).toBe('=SUM(A1:A15500)+SUM(A15501:A30000,B1:B1000)');
		expect(computed(built, entries).found[count]).toBe(2 * count);
	});
});
