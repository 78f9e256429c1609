import { describe, expect, it } from 'vitest';
import { layOut } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { ABSENT, OK } from '$lib/engine/state';
import { firstOfEach, planTable, requirementHolds } from '$lib/ui/programmes/plan-table';
import { VERSION, type Workbook } from '$lib/workbook/schema';

const workbook: Workbook = {
	format: 'metrewright',
	version: VERSION,
	title: 'Two months',
	sets: [
		{ name: 'product', label: 'Product', members: [{ id: 'A15' }, { id: 'B22' }] },
		{ name: 'line', label: 'Line', members: [{ id: 'L1' }, { id: 'L2' }] },
		{
			name: 'month',
			label: 'Month',
			cyclic: true,
			members: [{ id: 'jan', label: 'January' }, { id: 'feb' }]
		},
		{ name: 'year', label: 'Year', members: [{ id: 'y1' }, { id: 'y2' }] }
	],
	relations: [
		{
			name: 'runs',
			sets: ['product', 'line'],
			pairs: [
				['A15', 'L1'],
				['A15', 'L2'],
				['B22', 'L2']
			]
		}
	],
	sheets: [
		{
			title: 'Plan',
			quantities: [
				{
					name: 'made',
					label: 'Made',
					unit: 'm',
					per: ['product', 'line', 'month', 'year'],
					in: ['runs'],
					value: { A15: { L1: { jan: { y2: 500 } } } }
				},
				{ name: 'fits', label: 'Hours hold', type: 'yes_no', per: ['month'], formula: 'TRUE()' }
			]
		}
	],
	scenarios: [{ id: 'base', title: 'Base', parent: null, changes: [] }]
};
const layout = layOut(workbook);

/** Twelve cells of `made` (three pairs × two months × two years), then two of `fits`. */
function results(made: readonly number[], fits: readonly number[] = [1, 1]): Results {
	const values = Float64Array.from([...made, ...fits]);
	const states = Uint8Array.from(values, (value) => (Number.isNaN(value) ? ABSENT : OK));
	return { scenario: 'base', values, states };
}
const asked = (made: readonly number[], all = false) =>
	planTable({
		...{ workbook, layout, results: results(made), scenario: 'base', quantity: 'made' },
		...{ each: { year: 'y2' }, across: 'month', all }
	})!;
const year2 = (...made: readonly number[]) => made.flatMap((metres) => [7, metres]);

describe('the table of a plan', () => {
	it('has months across, existing pairs down, and one year alone', () => {
		const table = asked(year2(500, 1, 2, 3, 4, 5));
		expect(table.columns).toEqual([
			{ id: 'jan', short: 'jan', label: 'January' },
			{ id: 'feb', short: 'feb', label: 'feb' }
		]);
		expect(table.rows.map(({ label, cells }) => [label, cells.map((cell) => cell?.value)])).toEqual(
			[
				['A15, L1', [500, 1]],
				['A15, L2', [2, 3]],
				['B22, L2', [4, 5]]
			]
		);
	});

	it('marks what somebody entered as held', () => {
		const [first] = asked(year2(500, 1, 2, 3, 4, 5)).rows;
		expect(first!.cells.map((cell) => cell?.isPinned)).toEqual([true, false]);
	});

	it('leaves out rows without a plan and counts them; on request they are there', () => {
		const made = year2(0, 0, 0, 0, 4, 5);
		expect(asked(made).rows.map(({ label }) => label)).toEqual(['A15, L1', 'B22, L2']);
		expect(asked(made).empty).toBe(1);
		expect(asked(made, true).rows).toHaveLength(3);
	});

	it('has no cell for what is absent in the scenario', () => {
		const table = asked(year2(500, 1, NaN, NaN, 4, 5), true);
		expect(table.rows.map(({ label }) => label)).toEqual(['A15, L1', 'B22, L2']);
	});

	it('begins with the first member of each set that is solved apart', () => {
		expect(firstOfEach(workbook.sets, ['year'])).toEqual({ year: 'y1' });
	});
});

describe('a requirement', () => {
	it('is counted cell by cell', () => {
		const some = results(year2(0, 0, 0, 0, 0, 0), [1, 0]);
		expect(requirementHolds(layout, some, 'fits')).toEqual({ holds: 1, of: 2 });
	});
});
