/** What a study may vary and ask for, what follows a draw, and what is said of a study that cannot be. */
import { describe, expect, it } from 'vitest';
import { openColumns, type Columns, type ColumnsRequest } from '$lib/studies/columns/columns';
import { faultOrigins, spreadOver } from '$lib/studies/fault-origins';
import { verifyFirstDraw } from '$lib/studies/first-draw';
import { OUT_OF_RANGE, USES_EMPTY } from '$lib/engine/state';
import { book, metre } from './small-book';

function open(request: ColumnsRequest): Columns {
	const opened = openColumns(request);
	if (!opened.ok) throw new Error(opened.problem.message);
	return opened.value;
}

const dearer = {
	id: 'dearer',
	title: 'Dearer resin',
	parent: 'base',
	changes: [{ quantity: 'price', value: { PE: 3 } }]
};

describe('columns', () => {
	it('set, scale and add to what stands there, one member or all of them', () => {
		const columns = open({
			workbook: metre(),
			scenario: 'base',
			vary: [
				{ quantity: 'price', members: ['PE'] },
				{ quantity: 'price', mode: 'scale' },
				{ quantity: 'sales', mode: 'add' }
			],
			ask: [{ quantity: 'margin' }]
		});
		const { values } = columns.run([
			[1.5, 2, 1.5],
			[1, 1, 1.1],
			[0, 0, 0.1]
		]);
		// 0.4 − (1.5 × 0.1 + 2 × 0.05) = 0.15; PE at 2: 0.1; both a tenth dearer and 0.1 on the price: 0.225.
		expect([...values[0]!].map((value) => Number(value.toFixed(12)))).toEqual([0.15, 0.1, 0.225]);
	});

	it('a draw reaches every scenario that takes the entry from the same place, and no other', () => {
		const workbook = metre([dearer]);
		const ask = [
			{ quantity: 'margin' },
			{ quantity: 'margin', scenario: 'base' },
			{ quantity: 'gain' }
		];
		const vary = [{ quantity: 'price', members: ['PX'] }];
		const inherited = open({ workbook, scenario: 'dearer', vary, ask });
		const at = (columns: Columns) =>
			columns.run([[4]]).values.map((value) => Number(value[0]!.toFixed(12)));
		// PX at 4 in both: −0.1 against 0.05, a gain of −0.15.
		expect(at(inherited)).toEqual([-0.1, 0.05, -0.15]);
		const alone = open({ workbook, scenario: 'dearer', vary, ask, alone: true });
		expect(at(alone)).toEqual([-0.1, 0.15, -0.25]);
		const own = open({
			workbook,
			scenario: 'dearer',
			vary: [{ quantity: 'price', members: ['PE'] }],
			ask
		});
		// The scenario's own entry is varied, the base keeps 1.5; the input says where.
		expect(at(own)).toEqual([-0.1, 0.15, -0.25]);
		expect(own.inputs[0]!.keptIn).toEqual(['base']);
		for (const columns of [inherited, alone, own])
			expect(verifyFirstDraw(columns, [[4]])).toMatchObject({ ok: true });
	});

	it('carry an error of a draw, count it by its kind and say where it arose', () => {
		const columns = open({
			workbook: metre(),
			scenario: 'base',
			vary: [{ quantity: 'mass', members: ['PE'] }],
			ask: [{ quantity: 'margin' }]
		});
		const draws = [Float64Array.of(0.1, 2, NaN, 0.2)];
		const { values, states } = columns.run(draws);
		expect([...states[0]!]).toEqual([0, OUT_OF_RANGE, USES_EMPTY, 0]);
		expect(values[0]![3]).toBeCloseTo(0, 12);
		const origins = faultOrigins(columns, 0, [Float64Array.of(2, NaN)], [1, 2]);
		expect(origins).toMatchObject([
			{ place: { quantity: 'mass', members: ['PE'] }, state: OUT_OF_RANGE, draw: 1, count: 1 },
			{ place: { quantity: 'mass', members: ['PE'] }, state: USES_EMPTY, draw: 2, count: 1 }
		]);
		expect(origins[0]!.reason).toContain('2 kg/m');
	});

	it('compute only what stands between the inputs and the results', () => {
		const workbook = metre();
		const vary = [{ quantity: 'sales' }];
		const all = open({ workbook, scenario: 'base', vary, ask: [{ quantity: 'margin' }] });
		const none = open({ workbook, scenario: 'base', vary, ask: [{ quantity: 'cost' }] });
		// margin = sales − cost is one step, the cost being the same in every column.
		expect(all.effort.steps).toBe(1);
		expect(none.effort.steps).toBe(0);
		expect(none.run([[1, 2]]).values[0]).toEqual(Float64Array.of(0.25, 0.25));
	});

	it('settle a choice that the study holds fixed, and keep one that it varies', () => {
		const workbook = book([
			{ name: 'a', value: 1 },
			{ name: 'b', value: 2 },
			{ name: 'use_a', type: 'yes_no', value: true },
			{ name: 'picked', formula: 'IF(use_a; a * a * a; b * b)' }
		]);
		const ask = [{ quantity: 'picked' }];
		const fixed = open({ workbook, scenario: 'base', vary: [{ quantity: 'a' }], ask });
		expect(fixed.effort.steps).toBe(2);
		const other = open({ workbook, scenario: 'base', vary: [{ quantity: 'b' }], ask });
		expect(other.effort.steps).toBe(0);
		const both = open({
			workbook,
			scenario: 'base',
			vary: [{ quantity: 'use_a' }, { quantity: 'b' }],
			ask
		});
		expect(
			both.run([
				[1, 0],
				[5, 5]
			]).values[0]
		).toEqual(Float64Array.of(1, 25));
	});

	it.each([
		['no-such-quantity', { ask: [{ quantity: 'gone' }] }, 'deleted or renamed'],
		['no-such-quantity', { vary: [{ quantity: 'gone' }] }, 'deleted or renamed'],
		[
			'no-such-member',
			{ vary: [{ quantity: 'price', members: ['PP'] }] },
			'no PP in the set resin'
		],
		['not-an-input', { vary: [{ quantity: 'cost' }] }, 'follows from a formula'],
		['no-such-scenario', { scenario: 'gone' }, 'deleted or renamed'],
		['nothing-asked', { ask: [] }, 'Choose at least one'],
		['no-value', { vary: [{ quantity: 'empty', mode: 'scale' as const }] }, 'has no value'],
		['fixed-input', { vary: [{ quantity: 'still' }] }, 'fixed']
	])('refuse what cannot be, in words (%s)', (code, request, words) => {
		const workbook = metre();
		const [sheet] = workbook.sheets;
		const added = [
			{ name: 'empty', label: 'Empty' },
			{ name: 'still', label: 'Still', value: 1, fixed: true }
		];
		const larger = {
			...workbook,
			sheets: [{ ...sheet!, quantities: [...sheet!.quantities, ...added] }]
		};
		const opened = openColumns({
			workbook: larger,
			scenario: 'base',
			vary: [],
			ask: [{ quantity: 'margin' }],
			...request
		});
		if (opened.ok) throw new Error('It was let through.');
		expect(opened.problem.code).toBe(code);
		expect(opened.problem.message).toContain(words);
	});
});

describe('the draws that are looked at', () => {
	it('are all of a few, and some of many, evenly spread, the first among them', () => {
		expect(spreadOver([3, 5, 8], 5)).toEqual([3, 5, 8]);
		expect(spreadOver([0, 1, 2, 3, 4, 5, 6, 7, 8, 9], 5)).toEqual([0, 2, 4, 6, 8]);
	});
});
