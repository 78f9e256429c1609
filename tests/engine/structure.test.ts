import { describe, expect, it } from 'vitest';
import { layOut } from '$lib/engine/layout';
import { hasSameStructure, layoutAfter, withWorkbook } from '$lib/engine/structure';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { scenario, shop } from './model-shop';

const plant = shop([scenario('faster', 'base', { speed: { L1: 20 } })]);

const withQuantity = (name: string, change: Partial<Quantity>): Workbook => ({
	...plant,
	sheets: plant.sheets.map((sheet) => ({
		...sheet,
		quantities: sheet.quantities.map((quantity) =>
			quantity.name === name ? { ...quantity, ...change } : quantity
		)
	}))
});
const withSet = (change: object): Workbook => ({
	...plant,
	sets: plant.sets.map((set, i) => (i === 0 ? { ...set, ...change } : set))
});

describe('the structure of a workbook', () => {
	it.each([
		['words of a quantity', withQuantity('speed', { label: 'Pace', note: 'Of the haul-off.' })],
		['an entered value', withQuantity('speed', { value: { L1: 99 } })],
		['a caution', withQuantity('speed', { caution: { message: 'Fast.' } })],
		['the title of a sheet', { ...plant, sheets: plant.sheets.map((s) => ({ ...s, title: 'X' })) }],
		['a scenario more', { ...plant, scenarios: [...plant.scenarios, scenario('new', 'base', {})] }],
		['the title', { ...plant, title: 'Another' }],
		['a label of a set', withSet({ label: 'Machine' })],
		['a copy of it all', structuredClone(plant)]
	])('stays with %s', (_, after) => {
		expect(hasSameStructure(plant, after)).toBe(true);
	});

	it.each([
		['a formula', withQuantity('metres', { formula: 'speed * hours * 2' })],
		['a unit', withQuantity('price', { unit: 'EUR/km' })],
		['a range', withQuantity('price', { range: { min: 3 } })],
		['a member', withSet({ members: [...plant.sets[0]!.members, { id: 'L9' }] })],
		['a number of a member', withSet({ members: [{ id: 'L1', number: 4 }] })],
		['a cyclic set', withSet({ cyclic: true })],
		['a unit of its own', { ...plant, units: [{ symbol: 'coil' }] }]
	])('changes with %s', (_, after) => {
		expect(hasSameStructure(plant, after)).toBe(false);
	});

	it('changes with the value of a fixed input, which formulas have folded in', () => {
		const fixed = withQuantity('speed', { fixed: true });
		const other = (value: number): Workbook => ({
			...fixed,
			sheets: fixed.sheets.map((sheet) => ({
				...sheet,
				quantities: sheet.quantities.map((one) => (one.fixed ? { ...one, value } : one))
			}))
		});
		expect(hasSameStructure(other(1), other(1))).toBe(true);
		expect(hasSameStructure(other(1), other(2))).toBe(false);
	});

	it('is laid out once; the new words and sheets are shown all the same', () => {
		const before = layOut(plant);
		const after = withQuantity('speed', { label: 'Pace' });
		const moved = { ...after, sheets: [{ title: 'Before', quantities: [] }, ...after.sheets] };
		expect(withWorkbook(before, moved)).toEqual(layOut(moved));
		expect(layoutAfter(before, moved).ordinals).toBe(before.ordinals);
		expect(layoutAfter(before, withSet({ members: [{ id: 'L9' }] })).ordinals).not.toBe(
			before.ordinals
		);
	});
});
