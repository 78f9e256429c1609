import { describe, expect, it } from 'vitest';
import { cellAt, layOut, membersOf, placeOf } from '$lib/engine/layout';
import { VERSION, type Quantity, type SetDefinition, type Workbook } from '$lib/workbook/schema';

function workbook(
	sets: SetDefinition[],
	quantities: Quantity[],
	relations: Workbook['relations'] = []
): Workbook {
	return {
		format: 'metrewright',
		version: VERSION,
		title: 'Plant',
		sets,
		relations,
		sheets: [{ title: 'Sheet', quantities }],
		scenarios: [{ id: 'base', title: 'Base', parent: null, changes: [] }]
	};
}

const set = (name: string, ...ids: string[]): SetDefinition => ({
	name,
	label: name,
	members: ids.map((id) => ({ id }))
});
const product = set('product', 'P1', 'P2', 'P3');
const line = set('line', 'L1', 'L2');

describe('layout', () => {
	it('numbers the cells quantity after quantity, the last axis fastest', () => {
		const layout = layOut(
			workbook(
				[product, line],
				[
					{ name: 'price', label: '', per: ['product'] },
					{ name: 'rate', label: '' },
					{ name: 'speed', label: '', per: ['product', 'line'] }
				]
			)
		);
		expect(layout.cells).toBe(3 + 1 + 6);
		expect(layout.byName.get('rate')?.base).toBe(3);
		expect(membersOf(layout, 4 + 3)).toEqual(['P2', 'L2']);
		expect(placeOf(layout, 3)).toEqual({ quantity: 'rate', members: [], cell: 3 });
		expect(layout.quantities[layout.quantityOfCell[9] ?? -1]?.quantity.name).toBe('speed');
	});

	it('leaves out pairs that the relation does not allow', () => {
		const layout = layOut(
			workbook(
				[product, line],
				[{ name: 'speed', label: '', per: ['product', 'line'], in: ['runs'] }],
				[
					{
						name: 'runs',
						sets: ['line', 'product'],
						pairs: [
							['L1', 'P3'],
							['L2', 'P1']
						]
					}
				]
			)
		);
		const speed = layout.byName.get('speed');
		expect(layout.cells).toBe(2);
		expect(membersOf(layout, 0)).toEqual(['P1', 'L2']);
		expect(membersOf(layout, 1)).toEqual(['P3', 'L1']);
		expect(speed && cellAt(speed, [2, 0])).toBe(1);
		expect(speed && cellAt(speed, [2, 1])).toBe(-1);
		expect(speed && cellAt(speed, [3, 0])).toBe(-1);
	});

	it('keeps named axes apart where a set is used twice', () => {
		const layout = layOut(
			workbook([product], [{ name: 'setup', label: '', per: ['from: product', 'to: product'] }])
		);
		expect(layout.quantities[0]?.axes).toEqual([
			{ name: 'from', set: 'product' },
			{ name: 'to', set: 'product' }
		]);
		expect(membersOf(layout, 5)).toEqual(['P2', 'P3']);
	});

	it('gives a quantity over an empty set no cells', () => {
		const layout = layOut(
			workbook([set('option')], [{ name: 'outlay', label: '', per: ['option'] }])
		);
		expect(layout.cells).toBe(0);
		expect(layout.problems).toEqual([]);
	});

	it('takes a set with 10,000 members, and refuses 10,000 × 10,000 naming the quantity', () => {
		const many = set('part', ...Array.from({ length: 10_000 }, (_, at) => `part ${at}`));
		const layout = layOut(
			workbook(
				[many],
				[
					{ name: 'mass', label: '', per: ['part'] },
					{ name: 'fit', label: '', per: ['part', 'other: part'] },
					{ name: 'cost', label: '', per: ['part'] }
				]
			)
		);
		expect(layout.cells).toBe(20_000);
		expect(layout.problems).toMatchObject([{ quantity: 'fit', code: 'too-many-cells' }]);
		expect(layout.problems[0]?.message).toContain(
			'fit would have 100,000,000 values (10000 of part × 10000 of other)'
		);
	});

	it('says which set or relation is missing', () => {
		const layout = layOut(
			workbook(
				[product],
				[
					{ name: 'load', label: '', per: ['machine'] },
					{ name: 'speed', label: '', per: ['product'], in: ['runs'] }
				],
				[{ name: 'runs', sets: ['product', 'line'], pairs: [] }]
			)
		);
		expect(layout.problems.map((problem) => problem.code)).toEqual(['unknown-set', 'bad-relation']);
	});
});
