import { describe, expect, it } from 'vitest';
import { ABSENT, HITS_NOTHING } from '$lib/engine/state';
import { buildRows, keysDownTo, perWords, rowKey, type Row, type RowsInput } from '$lib/ui/rows';
import { base, cheap, layout, resultsOf } from './shop';

const rowsOf = (over: Partial<RowsInput> = {}) =>
	buildRows({ layout, open: new Set(), results: [base, cheap], messages: [], only: null, ...over });
const labels = (rows: readonly Row[]) =>
	rows.map((row) =>
		row.kind === 'sheet' ? `# ${row.title}` : row.kind === 'message' ? '!' : row.label
	);

describe('the rows of the grid', () => {
	it('read on, sheet after sheet, with every quantity folded', () => {
		expect(labels(rowsOf())).toEqual([
			'# Material',
			'Resin price',
			'Mass per metre',
			'Resin cost',
			'# Line',
			'Line speed',
			'Night shift',
			'Main line',
			'Price is low'
		]);
	});
	it('say how many members a folded row has', () => {
		const speed = layout.byName.get('speed')!;
		expect(perWords(layout, speed)).toBe('2 products by 2 lines');
	});
	it('unfold a quantity per product and line twice', () => {
		const once = rowsOf({ open: new Set(['speed']) });
		expect(labels(once)).toEqual(expect.arrayContaining(['A15', 'B22']));
		expect(labels(once)).not.toContain('L1');
		const twice = rowsOf({ open: new Set(['speed', rowKey('speed', ['A15'])]) });
		const members = twice.filter((row) => row.kind === 'quantity' && row.depth > 0);
		expect(labels(members)).toEqual(['A15', 'L1', 'L2', 'B22']);
	});
	it('have no row for a pair that does not exist', () => {
		const rows = rowsOf({ open: new Set(['speed', rowKey('speed', ['B22'])]) });
		const below = rows.filter((row) => row.kind === 'quantity' && row.depth === 2);
		expect(labels(below)).toEqual(['L2']);
	});
	it('hide a member that is absent in every scenario on screen', () => {
		const without = resultsOf('base', [2, 0.06, { state: ABSENT }, 0.1, 0.2, 30, 28, 20, 0, 0, 0]);
		const open = new Set(['mass']);
		expect(labels(rowsOf({ open, results: [without] }))).not.toContain('B22');
		expect(labels(rowsOf({ open, results: [without, cheap] }))).toContain('B22');
	});
	it('put a message below the row of its cell', () => {
		const message = {
			tone: 'error',
			scenario: 'cheap',
			quantity: 'mass',
			cell: layout.byName.get('mass')!.base,
			count: 1,
			text: 'No mass was entered.'
		} as const;
		expect(labels(rowsOf({ open: new Set(['mass']), messages: [message] })).slice(2, 6)).toEqual([
			'Mass per metre',
			'A15',
			'!',
			'B22'
		]);
		expect(labels(rowsOf({ messages: [message] })).slice(2, 4)).toEqual(['Mass per metre', '!']);
	});
	it('keep only some quantities, with their sheets, for a comparison', () => {
		expect(labels(rowsOf({ only: new Set(['night']) }))).toEqual(['# Line', 'Night shift']);
	});
	it('unfold ten thousand members in order', () => {
		const members = Array.from({ length: 10000 }, (_, i) => ({ id: `P${i}` }));
		const workbook = {
			...layout.workbook,
			sets: [{ ...layout.workbook.sets[0]!, members }, layout.workbook.sets[1]!]
		};
		const cells = 20000;
		const large = { ...layout, workbook };
		const mass = layout.byName.get('mass')!;
		const wide = {
			...mass,
			base: 0,
			count: 10000,
			sizes: [10000],
			members: Int32Array.from({ length: 10000 }, (_, i) => i)
		};
		const rows = buildRows({
			layout: { ...large, quantities: [wide], cells },
			open: new Set(['mass']),
			results: [],
			messages: [],
			only: null
		});
		expect(rows.length).toBe(10000 + 1 + 2);
		expect(rows.at(-2)).toMatchObject({ label: 'P9999', from: 9999, to: 10000 });
	});
	it('name the rows to unfold for a cell', () => {
		const speed = layout.byName.get('speed')!;
		expect(keysDownTo(layout, speed.base + 2)).toEqual(['speed', rowKey('speed', ['B22'])]);
		expect(keysDownTo(layout, 0)).toEqual([]);
	});
});

describe('errors in a folded row', () => {
	it('do not hide its members', () => {
		const bad = resultsOf('base', [2, { state: HITS_NOTHING }, 0.1, 0.1, 0.2, 30, 28, 20, 0, 0, 0]);
		expect(labels(rowsOf({ open: new Set(['mass']), results: [bad] }))).toContain('A15');
	});
});
