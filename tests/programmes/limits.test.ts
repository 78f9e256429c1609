/** Programmes that are made to take for ever: each ends with one clear line, and nothing is lost. */
import { beforeAll, describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { derive, MOST_DECISIONS } from '$lib/programmes/derive';
import { Solver } from '$lib/programmes/highs';
import type { LinearProgramme } from '$lib/programmes/linear';
import { planAll } from '$lib/programmes/plan-all';
import { MOST_COLUMNS, MOST_ENTRIES, sizeProblem } from '$lib/programmes/solve';
import { VERSION, type Workbook } from '$lib/workbook/schema';
import { smallPlant } from './small-plant';

let solver: Solver;
beforeAll(async () => {
	solver = await Solver.load();
});

/** As many decisions as two sets of this size have pairs. */
function wide(size: number): Workbook {
	const members = Array.from({ length: size }, (_, i) => ({ id: `m${i}` }));
	const quantity = (name: string, rest: object) => ({ name, label: name, ...rest });
	return {
		format: 'metrewright',
		version: VERSION,
		title: 'Wide',
		sets: ['one', 'other'].map((name) => ({ name, label: name, members })),
		sheets: [
			{
				title: 'All',
				quantities: [
					quantity('x', { per: ['one', 'other'], range: { min: 0 } }),
					quantity('worth', { formula: 'SUM(x over one × other)' }),
					quantity('holds', { type: 'yes_no', formula: 'worth <= 5' })
				]
			}
		],
		scenarios: [{ id: 'base', title: 'Base', parent: null, changes: [] }],
		programmes: [
			{
				name: 'wide',
				title: 'Far too much',
				maximise: 'worth',
				decisions: ['x'],
				constraints: ['holds']
			}
		]
	} as Workbook;
}

describe('a programme beyond what can be solved', () => {
	it('is refused by how many values it would decide', () => {
		const model = Model.open(wide(500));
		const derivation = derive(model, model.workbook.programmes![0]!, 'base');
		expect(derivation.ok ? [] : derivation.problems).toEqual([
			`Far too much would decide 250000 values and more, and at most ${MOST_DECISIONS} can be decided. Decide less, or take members out.`
		]);
	});

	it('is refused by the size of its rows', () => {
		const rows = (columns: number, entries: number): LinearProgramme => ({
			maximise: true,
			offset: 0,
			cost: new Float64Array(columns),
			lower: new Float64Array(columns),
			upper: new Float64Array(columns),
			whole: new Uint8Array(columns),
			starts: Int32Array.of(0, entries),
			columns: new Int32Array(entries),
			values: new Float64Array(entries),
			rowLower: new Float64Array(1),
			rowUpper: new Float64Array(1)
		});
		expect(sizeProblem(rows(10, 10))).toBeNull();
		expect(sizeProblem(rows(MOST_COLUMNS + 1, 1))).toMatch(/it has 200001 decisions, and at most/);
		expect(sizeProblem(rows(1, MOST_ENTRIES + 1))).toMatch(/1 requirements with 4000001 coeff/);
	});
});

describe('a programme whose time is up', () => {
	it('is left while it is derived', () => {
		const model = Model.open(smallPlant());
		const derivation = derive(model, model.workbook.programmes![0]!, 'base', () => true);
		expect(derivation).toMatchObject({ ok: false, isLate: true });
		expect(derivation.ok ? '' : derivation.problems[0]).toMatch(
			/^Who makes what is too large to be derived in the time there is\./
		);
	});

	it('keeps the plan that was found last', () => {
		const model = Model.open(smallPlant());
		for (const { proven } of planAll(solver, model)) expect(proven).toBe(true);
		const before = model.workbook.plans;
		model.apply({
			kind: 'set_inputs',
			scenario: 'base',
			entries: [{ quantity: 'margin', at: ['A'], value: 4 }]
		});
		const late = [...planAll(solver, model, undefined, { staleOnly: true, isLate: () => true })];
		expect(late.map(({ status, plan }) => [status, plan])).toEqual([
			['time-limit', null],
			['time-limit', null]
		]);
		expect(model.workbook.plans).toEqual(before);
	});

	it('is left by the solver, which says how long it had', () => {
		const model = Model.open(smallPlant());
		const [one] = [...planAll(solver, model, undefined, { seconds: 0 })];
		expect(one!.status).toBe('time-limit');
		expect(one!.problems.join()).toMatch(/found no plan in 0 s\. Decide less, or give it longer/);
		expect(model.workbook.plans).toBeUndefined();
	});
});
