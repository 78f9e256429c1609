/** Frozen copies: made of a column, read in formulas and as a column, followed under new names and units. */
import { describe, expect, it } from 'vitest';
import { freeze, frozenColumn } from '$lib/engine/frozen';
import { cellAt } from '$lib/engine/layout';
import { Model } from '$lib/engine/model';
import { Verifier } from '$lib/engine/second/verifier';
import { ABSENT, OK } from '$lib/engine/state';
import type { Command } from '$lib/workbook/commands';
import { loadWorkbook } from '$lib/workbook/load';
import { saveWorkbook } from '$lib/workbook/save';
import { VERSION, type Quantity, type Workbook } from '$lib/workbook/schema';

const quantities: Quantity[] = [
	{
		...{ name: 'price', label: 'Price', unit: 'EUR/kg', per: ['resin'] },
		value: { A: 1.5, B: 2, C: 4 }
	},
	{ name: 'mass', label: 'Mass', unit: 'kg', per: ['resin'], value: { A: 10, B: 20, C: 1 } },
	{ name: 'there', label: 'There', type: 'yes_no', per: ['resin'], value: { A: true, B: true } },
	{
		...{ name: 'best', label: 'Best', type: { member_of: 'resin' } },
		value: 'B'
	},
	{
		...{ name: 'cost', label: 'Cost', unit: 'EUR', per: ['resin'] },
		formula: 'price * mass',
		where: 'IFERROR(there; FALSE())'
	},
	{ name: 'total', label: 'Total', unit: 'EUR', formula: 'SUM(cost over resin)' }
];

const book: Workbook = {
	format: 'metrewright',
	version: VERSION,
	title: 'Frozen',
	sets: [{ name: 'resin', label: 'Resin', members: [{ id: 'A' }, { id: 'B' }, { id: 'C' }] }],
	sheets: [{ title: 'One', quantities }],
	scenarios: [
		{ id: 'base', title: 'Base', parent: null, changes: [] },
		{
			...{ id: 'dear', title: 'Dear', parent: 'base' },
			changes: [{ quantity: 'price', value: { A: 3 } }]
		}
	]
};

const HEAD = { id: 'standard_2028', title: 'Standard 2028', of: 'Base', date: '2027-11-30' };

/** The model with a copy of its base. */
function frozen(scenario = 'base'): Model {
	const model = Model.open(book);
	const copy = freeze(model.layout, model.results(scenario), HEAD)!;
	apply(model, { kind: 'add_frozen', frozen: copy });
	return model;
}

function apply(model: Model, ...commands: Command[]): void {
	const applied = model.apply({ kind: 'several', commands });
	if (!applied.ok) throw new Error(applied.problem.message);
}

const add = (model: Model, quantity: Omit<Quantity, 'label'>) =>
	apply(model, {
		...{ kind: 'add_quantity', sheet: 0, index: 99 },
		quantity: { label: quantity.name, ...quantity }
	});

function valueOf(model: Model, name: string, member?: string, scenario = 'base') {
	const place = model.layout.byName.get(name)!;
	const set = model.layout.ordinals.get('resin')!;
	const cell = cellAt(place, member === undefined ? [] : [set.get(member)!]);
	const { values, states } = model.results(scenario);
	return states[cell] === OK ? values[cell] : -states[cell]!;
}

const price = (value: number): Command => ({
	...{ kind: 'set_inputs', scenario: 'base' },
	entries: [{ quantity: 'price', at: ['A'], value }]
});

describe('a frozen copy', () => {
	it('holds what has a value, with unit, sets and formula', () => {
		const copy = frozen().workbook.frozen![0]!;
		expect(copy.quantities.map(({ name }) => name)).toEqual([
			...['price', 'mass', 'there', 'best', 'cost', 'total']
		]);
		expect(copy.quantities[4]).toEqual({
			...{ name: 'cost', label: 'Cost', unit: 'EUR', per: ['resin'], formula: 'price * mass' },
			value: { A: 15, B: 40 }
		});
		expect(copy.quantities[3]).toMatchObject({ member_of: 'resin', value: 'B' });
		expect(copy.quantities[2]).toMatchObject({ value: { A: true, B: true } });
		expect(copy.sets).toEqual([
			{ name: 'resin', members: [{ id: 'A' }, { id: 'B' }, { id: 'C' }] }
		]);
	});

	it('is no structural edit, and stands still while the base moves', () => {
		const model = Model.open(book);
		const copy = freeze(model.layout, model.results('base'), HEAD)!;
		const made = model.apply({ kind: 'add_frozen', frozen: copy });
		expect(made.ok && made.structural).toBe(false);
		apply(model, price(9));
		const column = frozenColumn(model.layout, model.workbook.frozen![0]!);
		const total = model.layout.byName.get('total')!.base;
		expect(column.values[total]).toBe(55);
		expect(valueOf(model, 'total')).toBe(130);
	});

	it('is read by formulas: alone, gathered, in every scenario, whatever is entered since', () => {
		const model = frozen();
		add(model, { name: 'moved', unit: 'EUR', formula: 'total - total[standard_2028]' });
		add(model, {
			...{ name: 'by_resin', unit: 'EUR', per: ['resin'] },
			formula: 'cost - cost[standard_2028]'
		});
		add(model, { name: 'gathered', unit: 'EUR', formula: 'SUM(cost[standard_2028] over resin)' });
		add(model, { name: 'one', unit: 'EUR', formula: 'cost[standard_2028; B]' });
		add(model, { name: 'chosen', unit: 'EUR', formula: 'cost[best; standard_2028]' });
		expect(valueOf(model, 'moved')).toBe(0);
		apply(model, price(2.5));
		expect(valueOf(model, 'moved')).toBe(10);
		expect(valueOf(model, 'moved', undefined, 'dear')).toBe(15);
		expect(valueOf(model, 'by_resin', 'A')).toBe(10);
		expect(valueOf(model, 'gathered')).toBe(55);
		expect(valueOf(model, 'one')).toBe(40);
		expect(valueOf(model, 'chosen')).toBe(40);
	});

	it('gives the same in the second engine', () => {
		const model = frozen();
		add(model, { name: 'moved', unit: 'EUR', formula: 'total - total[standard_2028]' });
		add(model, {
			...{ name: 'by_resin', unit: 'EUR', per: ['resin'] },
			formula: 'price[standard_2028] * mass'
		});
		apply(model, price(7));
		const verifier = Verifier.open(model.workbook, model.plan);
		for (const _step of verifier.build());
		const found = verifier.compare(['base', 'dear'].map((id) => model.results(id)));
		verifier.destroy();
		expect(found.disagreements).toEqual([]);
		expect(found.agreeing).toBe(found.compared);
		expect(found.compared).toBe(2 * model.layout.cells);
	});

	it('follows new names of quantities and members, and another unit', () => {
		const model = frozen();
		add(model, { name: 'then', unit: 'EUR/t', per: ['resin'], formula: 'price[standard_2028]' });
		const { layout, workbook } = model;
		expect(layout).toBeDefined();
		const old = workbook.sheets[0]!.quantities[0]!;
		apply(
			model,
			{ kind: 'replace_member', set: 'resin', id: 'A', member: { id: 'PE-A' } },
			{
				...{ kind: 'replace_quantity', name: 'price', also: true },
				quantity: {
					...{ ...old, name: 'resin_price', unit: 'EUR/t' },
					value: { 'PE-A': 1, B: 1, C: 1 }
				}
			}
		);
		expect(valueOf(model, 'then', 'PE-A')).toBe(1500);
		const held = model.workbook.frozen![0]!.quantities[0]!;
		expect(held).toMatchObject({ name: 'resin_price', unit: 'EUR/kg', value: { 'PE-A': 1.5 } });
	});

	it('has no value for what came later, and says no to what means another thing today', () => {
		const model = frozen();
		apply(model, { kind: 'add_member', set: 'resin', index: 3, member: { id: 'D' } });
		add(model, { name: 'then', unit: 'EUR/kg', per: ['resin'], formula: 'price[standard_2028]' });
		expect(valueOf(model, 'then', 'A')).toBe(1.5);
		expect(valueOf(model, 'then', 'D')).toBe(-ABSENT);
		const mass = model.workbook.sheets[0]!.quantities[1]!;
		apply(model, {
			...{ kind: 'replace_quantity', name: 'mass' },
			quantity: { ...mass, unit: 'm' }
		});
		const column = frozenColumn(model.layout, model.workbook.frozen![0]!);
		expect(column.states[model.layout.byName.get('mass')!.base]).toBe(ABSENT);
	});

	it('keeps what is gone: a removed member and quantity stay in it', () => {
		const model = frozen();
		apply(
			model,
			{ kind: 'remove_member', set: 'resin', id: 'B', also: true },
			{ kind: 'remove_quantity', name: 'best', also: true }
		);
		const copy = model.workbook.frozen![0]!;
		expect(copy.quantities.find(({ name }) => name === 'cost')!.value).toEqual({ A: 15, B: 40 });
		expect(copy.quantities.some(({ name }) => name === 'best')).toBe(true);
		const again = loadWorkbook(saveWorkbook(model.workbook), 'again');
		expect(again.ok && again.workbook.frozen).toEqual(model.workbook.frozen);
	});

	it('tells kinds of nothing and errors apart, as the column did', () => {
		const model = Model.open(book);
		add(model, { name: 'empty', unit: 'kg', per: ['resin'] });
		add(model, { name: 'failing', unit: 'kg', formula: 'mass[A] / 0' });
		add(model, { name: 'uses', unit: 'kg', per: ['resin'], formula: 'empty + mass' });
		const before = model.results('base');
		const copy = freeze(model.layout, before, HEAD)!;
		expect(copy.quantities.find(({ name }) => name === 'empty')).toMatchObject({
			without: { A: 'not-entered', B: 'not-entered', C: 'not-entered' }
		});
		expect(frozenColumn(model.layout, copy).states).toEqual(before.states);
		expect(frozenColumn(model.layout, copy).values).toEqual(before.values);
		apply(
			model,
			{ kind: 'add_frozen', frozen: copy },
			{ kind: 'replace_member', set: 'resin', id: 'A', member: { id: 'PE-A' } }
		);
		const again = frozenColumn(model.layout, model.workbook.frozen![0]!);
		expect(again.states).toEqual(before.states);
	});

	it('takes no word for nothing as a member, and no set for another whose name ends alike', () => {
		const set = { name: 'in', label: 'In', members: [{ id: 'not-entered' }, { id: 'x' }] };
		const choice: Quantity = { name: 'pick', label: 'Pick', type: { member_of: 'in' } };
		const model = Model.open({
			...{ ...book, sets: [...book.sets, set], scenarios: [book.scenarios[0]!] },
			sheets: [...book.sheets, { title: 'Two', quantities: [choice] }]
		});
		const copy = freeze(model.layout, model.results('base'), HEAD)!;
		expect(copy.sets?.map(({ name }) => name)).toEqual(['resin', 'in']);
		const short = { name: 'sin', label: 'Sin', members: [{ id: 'z' }] };
		const beside = Model.open({ ...book, sets: [...book.sets, short] });
		const plain = freeze(beside.layout, beside.results('base'), HEAD)!;
		expect(plain.sets?.map(({ name }) => name)).toEqual(['resin']);
		apply(
			model,
			{ kind: 'add_frozen', frozen: copy },
			{ kind: 'replace_member', set: 'in', id: 'not-entered', member: { id: 'y' } }
		);
		const held = model.workbook.frozen![0]!.quantities.find(({ name }) => name === 'pick');
		expect(held).toMatchObject({ without: 'not-entered' });
	});

	it('is not removed from under a formula unasked', () => {
		const model = frozen();
		add(model, { name: 'moved', unit: 'EUR', formula: 'total - total[standard_2028]' });
		const refused = model.apply({ kind: 'remove_frozen', id: 'standard_2028' });
		expect(!refused.ok && refused.problem.code).toBe('in-use');
		expect(!refused.ok && refused.problem.message).toContain('moved');
		const gone = model.apply({ kind: 'remove_frozen', id: 'standard_2028', also: true });
		expect(gone.ok && gone.structural).toBe(true);
		expect(model.problems.map(({ quantity }) => quantity)).toEqual(['moved']);
		if (gone.ok) model.apply(gone.inverse);
		expect(model.problems).toEqual([]);
		expect(valueOf(model, 'moved')).toBe(0);
	});

	it('refuses a name that means something already, and two copies in one reading', () => {
		const model = frozen();
		const copy = model.workbook.frozen![0]!;
		for (const id of ['total', 'resin', 'standard_2028']) {
			const taken = model.apply({ kind: 'add_frozen', frozen: { ...copy, id } });
			expect(taken.ok).toBe(false);
		}
		add(model, { name: 'both', unit: 'EUR', formula: 'total[base; standard_2028]' });
		expect(model.problems[0]!.message).toBe(
			'A value is taken from one scenario or frozen copy: write one of the two.'
		);
	});
});
