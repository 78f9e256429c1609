import { describe, expect, it } from 'vitest';
import { layOut, quantityOf } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { OK } from '$lib/engine/state';
import type { Look, Room } from '$lib/programmes/inquiry/questions';
import { boardOf } from '$lib/ui/programmes/board';
import { rowShort, scarceOf, shortOf, unmetByCell } from '$lib/ui/programmes/holdbacks';
import { cellLabel, placeLabel } from '$lib/ui/programmes/labels';
import { acrossSet, planTable } from '$lib/ui/programmes/plan-table';
import type { Priced } from '$lib/programmes/planning';
import type { Workbook } from '$lib/workbook/schema';
import { heldBy } from '$lib/ui/programmes/held';
import { smallPlant, withQuantity } from '../programmes/small-plant';

const workbook: Workbook = smallPlant();
const layout = layOut(workbook);
const [programme] = workbook.programmes!;
const cell = (name: string, at: string): number => {
	const quantity = layout.byName.get(name)!;
	for (let one = quantity.base; one < quantity.base + quantity.count; one++)
		if (placeLabel(layout, one) === at) return one;
	throw new RangeError(`${name} of ${at}`);
};

/** The best plan of the small plant, as far as the tests read it. */
const PLAN: Readonly<Record<string, number>> = {
	'made A, L1, jan': 900,
	'made A, L1, feb': 400,
	'made B, L1, jan': 100,
	'made B, L1, feb': 600,
	'made B, L2, jan': 500,
	'made B, L2, feb': 500,
	'sold B, feb': 1100,
	'stock A, jan': 300
};
const values = new Float64Array(layout.cells);
for (const [key, value] of Object.entries(PLAN)) {
	const [name = '', ...at] = key.split(' ');
	values[cell(name, at.join(' '))] = value;
}
const results: Results = {
	scenario: 'base',
	values,
	states: new Uint8Array(layout.cells).fill(OK)
};
const view = { workbook, layout, results, scenario: 'base', each: {}, across: 'month', all: false };

const room = (
	at: string,
	used: number,
	there: number,
	shares: readonly [string, number][]
): Room => ({
	cell: cell('hours_hold', at),
	...{ way: 'most', used, there, unit: 'h' },
	shares: shares.map(([of, amount]) => ({ cell: cell('made', of), amount }))
});
const priced = (at: string, more: number): Priced => ({
	quantity: 'hour_value',
	cell: cell('hour_value', at),
	of: cell('hours_hold', at),
	...{ more, less: more, until: 10, untilLess: 10 }
});
const look: Look = {
	best: 7270,
	gap: null,
	rooms: [
		room('L1, jan', 100, 100, [
			['A, L1, jan', 90],
			['B, L1, jan', 10]
		]),
		room('L2, jan', 50, 100, [['B, L2, jan', 50]])
	],
	worth: [
		priced('L1, jan', 19),
		priced('L1, feb', 20),
		priced('L2, jan', 9.5),
		priced('L2, feb', 0)
	],
	unmet: [{ cell: cell('sold', 'B, feb'), value: 1100, most: 1200, money: 200 }],
	pins: { each: [], together: 0, more: 0 }
};

describe('what runs where', () => {
	const board = boardOf(view, programme!, look);

	it('puts decisions under the resource that they run on, and the others into tables of their own', () => {
		expect(board.resources.map(({ label, rows }) => [label, rows.map((row) => row.label)])).toEqual(
			[
				['L1', ['A', 'B']],
				['L2', ['B']]
			]
		);
		expect(board.tables.map(({ quantity }) => quantity.quantity.name)).toEqual(['sold', 'stock']);
	});

	it('cuts what there is into what is used of it, row by row', () => {
		const [full, half] = board.resources.map(({ loads }) => loads[0]);
		expect(full).toMatchObject({ share: 1, isFull: true });
		expect(full!.lengths).toEqual([
			{ row: 0, from: 0, to: 0.9 },
			{ row: 1, from: 0.9, to: 1 }
		]);
		expect(half).toMatchObject({ share: 0.5, isFull: false });
	});

	it('has its rows before the loads are known', () => {
		const early = boardOf(view, programme!, null);
		expect(early.resources[0]!.loads[0]).toMatchObject({ room: null, share: 0, lengths: [] });
		expect(early.resources[0]!.rows).toHaveLength(2);
	});

	it('has the members across that everything decided is per, and the scarce things too', () => {
		expect(acrossSet(layout, programme!)).toBe('month');
		expect(acrossSet(layout, { ...programme!, each: ['month'] })).toBe('');
	});

	it('writes no decimals that all figures lack', () => {
		expect(planTable({ ...view, quantity: 'made' })!.decimals).toBe(0);
	});
});

describe('what keeps a plan from being better', () => {
	it('is what is scarce, by all that one more is worth, with where it is worth most', () => {
		expect(scarceOf(layout, look, 'month', [])).toMatchObject([
			{ place: 'L1', worth: 20, at: 'feb', count: 2, of: 2 },
			{ place: 'L2', worth: 9.5, at: 'jan', count: 1, of: 2 }
		]);
	});

	it('leaves out what is worth next to nothing against the scarcest', () => {
		const faint = { ...look, worth: [priced('L1, jan', 100), priced('L2, jan', 0.5)] };
		expect(scarceOf(layout, faint, 'month', []).map(({ place }) => place)).toEqual(['L1']);
	});

	it('is what is left out, with the money that it would bring', () => {
		expect(shortOf(layout, look)).toMatchObject([
			{ quantity: 'sold', amount: 100, unit: 'm', money: 200, cell: cell('sold', 'B, feb') }
		]);
		const unmet = unmetByCell(look);
		const cells = [{ cell: cell('sold', 'B, jan') }, { cell: cell('sold', 'B, feb') }, null];
		expect(rowShort(cells, unmet)).toEqual({ amount: 100, money: 200 });
		expect(rowShort(cells.slice(0, 1), unmet)).toBeNull();
	});
});

describe('a cell in words', () => {
	it('is its quantity and members; those that go without saying are left out', () => {
		const one = cell('made', 'A, L1, jan');
		expect(quantityOf(layout, one)?.quantity.name).toBe('made');
		expect(cellLabel(layout, one)).toBe('made: A, L1, jan');
		expect(cellLabel(layout, one, ['month'])).toBe('made: A, L1');
		expect(cellLabel(layout, layout.byName.get('contribution')!.base)).toBe('contribution');
	});
});

describe('what is held where no plan fits', () => {
	it('is read from the entries, with no word of what it costs', () => {
		const book = smallPlant(withQuantity('made', { value: { A: { L1: { jan: 2000 } } } }));
		const held = heldBy({ ...view, workbook: book, layout: layOut(book) }, programme!);
		expect(held.each.map(({ cell: one, cost }) => [placeLabel(layout, one), cost])).toEqual([
			['A, L1, jan', null]
		]);
		expect(heldBy(view, programme!).each).toEqual([]);
	});
});
