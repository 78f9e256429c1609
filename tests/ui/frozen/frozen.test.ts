import { describe, expect, it } from 'vitest';
import { freeze } from '$lib/engine/frozen';
import { layOut } from '$lib/engine/layout';
import { OK } from '$lib/engine/state';
import { Paste } from '$lib/ui/grid/paste-block';
import { fieldSpec } from '$lib/ui/field';
import { viewCell } from '$lib/ui/cells';
import { frozenColumns, viewAgainst, viewOfCopy } from '$lib/ui/frozen-columns';
import { frozenTable, goneSince } from '$lib/ui/frozen/frozen';
import { fingerprintOf } from '$lib/ui/scenarios/words';
import { withWorkbook } from '$lib/engine/structure';
import { dayText } from '$lib/workbook/date-text';
import { UnitSystem } from '$lib/units/system';
import { applyCommand } from '$lib/workbook/commands';
import type { Workbook } from '$lib/workbook/schema';
import { base, layout, shop } from '../shop';

const copy = freeze(layout, base, {
	...{ id: 'budget', title: 'Budget 2028', of: 'Base', date: '2027-11-30', by: 'A. Example' }
})!;
const book: Workbook = { ...shop, frozen: [copy] };

describe('a frozen copy on the page', () => {
	it('says its day and what it was made of', () => {
		expect(fingerprintOf(book, 'budget')).toBe('frozen 2027-11-30, of Base');
		expect(fingerprintOf(book, 'base')).toBe('as entered');
	});

	it('is a column that stays the same object while values are edited', () => {
		const [column] = frozenColumns(layOut(book));
		expect(column).toMatchObject({ scenario: 'budget', values: base.values });
		const laid = layOut(book);
		const [first] = frozenColumns(laid);
		const edited = applyCommand(book, {
			...{ kind: 'set_inputs', scenario: 'base' },
			entries: [{ quantity: 'price', at: [], value: 3 }]
		});
		if (!edited.ok) throw new Error(edited.problem.message);
		expect(frozenColumns(withWorkbook(laid, edited.workbook))[0]).toBe(first);
	});

	it('names what it holds of quantities that are gone, or have another unit', () => {
		expect(goneSince(layOut(book), copy)).toEqual([]);
		const gone = applyCommand(book, { kind: 'remove_quantity', name: 'too_cheap', also: true });
		if (!gone.ok) throw new Error(gone.problem.message);
		const price = shop.sheets[0]!.quantities[0]!;
		const other = applyCommand(gone.workbook, {
			...{ kind: 'replace_quantity', name: 'price', also: true },
			quantity: { ...price, unit: 'EUR/m' }
		});
		if (!other.ok) throw new Error(other.problem.message);
		expect(goneSince(layOut(other.workbook), copy).map(({ name }) => name)).toEqual([
			...['price', 'too_cheap']
		]);
	});

	it('is taken along with every value under the names of its day', () => {
		const { columns, rows } = frozenTable(copy);
		expect(columns).toEqual(['name', 'quantity', 'for', 'unit', 'formula', 'value']);
		expect(rows).toHaveLength(base.states.filter((state) => state === OK).length);
		expect(rows).toContainEqual(['cost', 'Resin cost', 'B22', 'EUR/m', 'price * mass', 0.202]);
		expect(rows).toContainEqual(['night', 'Night shift', '', '', '', 'no']);
		expect(rows).toContainEqual(['main_line', 'Main line', '', '', '', 'L1']);
	});

	it('takes nothing that is pasted', () => {
		const laid = layOut(book);
		const price = laid.byName.get('price')!;
		const paste = new Paste({
			...{ layout: laid, block: [['1.8', '1.9']], cells: [{ quantity: price, cell: 0 }] },
			...{ scenarios: ['cheap', 'budget'], base: 'base' },
			specOf: (one) => fieldSpec(laid, one, UnitSystem.create([]).system, 'en')
		});
		expect(paste.read(10)).toBe(true);
		expect(paste.result).toMatchObject({ taken: 1, badCount: 1 });
		expect(paste.result.bad[0]!.message).toBe(
			'Budget 2028 is a frozen copy, which no edit changes. Enter asks what it holds.'
		);
	});

	it('tells a scenario that is compared with it against it, and in full what is as in the base', () => {
		const laid = layOut(book);
		const quantity = laid.byName.get('price')!;
		const cell = quantity.base;
		const now = { ...base, values: base.values.with(cell, 2.5) };
		const [held] = frozenColumns(laid);
		const of = { layout: laid, quantity, locale: 'en' };
		const told = viewAgainst(
			viewCell({ ...of, base: now }, { ...now, scenario: 'cheap' }, cell),
			viewCell({ ...of, base: held! }, now, cell)
		);
		// The copy holds 2.02: 0.48 more in the scenario, which has what stands in the base.
		expect(told).toMatchObject({ text: '2.5', same: null, relative: '+23.8 %' });
		expect(told.difference).toEqual({ whole: '+0', fraction: '.48' });
	});

	it('has beside it how much more or less the scenario in hand has', () => {
		const laid = layOut(book);
		const [held] = frozenColumns(laid);
		const view = (name: string, value: number) => {
			const quantity = laid.byName.get(name)!;
			const hand = { ...base, values: base.values.with(quantity.base, value) };
			const context = { layout: laid, quantity, locale: 'en', base: held! };
			const own = viewCell(context, held!, quantity.base);
			return viewOfCopy(own, viewCell(context, hand, quantity.base), 'Dear resin');
		};
		// Less in the scenario is a minus in the column of the copy.
		const less = view('price', 1.5);
		expect([less.text, less.difference?.whole, less.relative]).toEqual(['2.02', '−0', '−25.7 %']);
		expect(less.full).toBe('2.02 EUR/kg, Dear resin: 1.5 EUR/kg');
		expect(view('night', 1).instead).toBe('now yes');
		expect(view('price', 2.02)).toMatchObject({
			difference: null,
			instead: '',
			full: '2.02 EUR/kg'
		});
	});

	it('has a day as the calendar has it', () => {
		expect(dayText(new Date(2028, 1, 29, 23, 59))).toBe('2028-02-29');
	});
});
