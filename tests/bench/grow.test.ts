import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { cellAt } from '$lib/engine/layout';
import { findProblems } from '$lib/workbook/consistency';
import { grow } from './grow';
import { grownPlant, openShipped } from './shipped';

const shipped = openShipped();

describe('a plant with three times the products', () => {
	const grown = grownPlant(3);

	it('has ids of its own for the copies, in the order of the originals', () => {
		const products = grown.sets.find((set) => set.name === 'product')!.members.map(({ id }) => id);
		expect(products).toHaveLength(30);
		expect(products.slice(0, 2)).toEqual(['PX10B', 'PX15P']);
		expect(products.slice(10, 12)).toEqual(['PX10B_2', 'PX15P_2']);
		expect(products.at(-1)).toBe('RT15B_3');
	});

	it('runs the copies on the lines of the originals', () => {
		const pairs = grown.relations!.find(({ name }) => name === 'runs')!.pairs;
		expect(pairs).toHaveLength(3 * 19);
		expect(pairs).toContainEqual(['PX15B_3', 'L8']);
	});

	it('is a consistent workbook', () => {
		expect(findProblems(grown)).toEqual([]);
	});

	it('makes as many metres in all as before, and each copy costs what the original costs', () => {
		const [before, after] = [Model.open(shipped), Model.open(grown)];
		expect(after.problems).toEqual([]);
		for (const scenario of ['base', 'new_line_and_rewinder']) {
			const value = (model: Model, quantity: string, ...at: number[]) =>
				model.results(scenario).values[cellAt(model.layout.byName.get(quantity)!, at)]!;
			const metres = value(before, 'total_good_metres');
			expect(value(after, 'total_good_metres') / metres).toBeCloseTo(1, 6);
			// Each copy of a pipe has copies of its items, and a third of their metres.
			expect(value(after, 'demand', 12) / value(before, 'demand', 2)).toBeCloseTo(1 / 3, 9);
			expect(value(after, 'coils_of_metre', 12)).toBeCloseTo(value(before, 'coils_of_metre', 2), 9);
			const cost = value(before, 'cost_per_metre', 2);
			for (const copy of [2, 12, 22])
				expect(value(after, 'cost_per_metre', copy) / cost).toBeCloseTo(1, 6);
		}
	});
});

describe('growing', () => {
	it('leaves a workbook as it was when it takes each member once', () => {
		expect(grow(shipped, 'product', 1)).toEqual(shipped);
	});

	it('copies the formula of a member along with it, and leaves the rest formula alone', () => {
		const grown = grow(shipped, 'line', 2);
		const installed = grown.sheets
			.flatMap(({ quantities }) => quantities)
			.find(({ name }) => name === 'line_installed')!;
		expect(Object.keys((installed.formula as { cases: object }).cases)).toEqual(
			expect.arrayContaining(['L8', 'L8_2', '*'])
		);
	});

	it('divides what is shared out, and nothing else', () => {
		const sheetOf = (times: number) =>
			new Map(
				grow(shipped, 'item', times, ['item_demand'])
					.sheets.flatMap(({ quantities }) => quantities)
					.map((one) => [one.name, one.value as Record<string, number>])
			);
		expect(sheetOf(4).get('item_demand')!['PX15B-100_4']).toBe(2_010_000 / 4);
		expect(sheetOf(4).get('length_of_item')!['PX15B-100_4']).toBe(100);
	});
});
