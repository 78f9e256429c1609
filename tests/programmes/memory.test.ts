/** What planning remembers makes it quicker and nothing else. */
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { Model } from '$lib/engine/model';
import { Solver } from '$lib/programmes/highs';
import { Memory } from '$lib/programmes/memory';
import { isCurrent, planAll } from '$lib/programmes/plan-all';
import type { Workbook } from '$lib/workbook/schema';
import { smallPlant, withQuantity } from './small-plant';

let solver: Solver;
beforeAll(async () => {
	solver = await Solver.load();
});

const margin = (value: number) => ({
	kind: 'set_inputs' as const,
	scenario: 'base',
	entries: [{ quantity: 'margin', at: ['A'], value }]
});

/** How often the solver was asked while these plans were made. */
function runs(work: () => void): number {
	const asked = vi.spyOn(solver, 'solve');
	work();
	const count = asked.mock.calls.length;
	asked.mockRestore();
	return count;
}

function planned(model: Model, memory: Memory): void {
	for (const one of planAll(solver, model, undefined, { memory, staleOnly: true }))
		expect(one.proven).toBe(true);
}

describe('planning', () => {
	it('solves nothing where nothing that a plan rests on has changed', () => {
		const model = Model.open(smallPlant());
		const memory = new Memory();
		planned(model, memory);
		expect(runs(() => planned(model, memory))).toBe(0);
		const scenario = model.workbook.scenarios[1]!.id;
		model.apply({
			kind: 'set_inputs',
			scenario,
			entries: [{ quantity: 'hours', at: ['L2', 'jan'], value: 40 }]
		});
		// One scenario alone: its best plan, and the one among equals.
		expect(runs(() => planned(model, memory))).toBe(2);
	});

	it('solves nothing again that it has solved before an edit was taken back', () => {
		const model = Model.open(smallPlant());
		const memory = new Memory();
		planned(model, memory);
		const before = model.workbook.plans;
		model.apply(margin(1));
		expect(runs(() => planned(model, memory))).toBeGreaterThan(0);
		expect(model.workbook.plans).not.toEqual(before);
		model.apply(margin(3));
		expect(runs(() => planned(model, memory))).toBe(0);
		expect(model.workbook.plans).toEqual(before);
	});

	it('solves members that are alike in every number once', () => {
		const months = { jan: 100, feb: 100 };
		const alike = smallPlant((book) => ({
			...withQuantity('contribution', {
				per: ['month'],
				formula: 'SUM(sold * margin over product)'
			})(
				withQuantity('stock_holds', { formula: 'stock <= SUM(made over line) - sold' })(
					withQuantity('demand', { value: { A: months, B: months } })(book)
				)
			),
			scenarios: book.scenarios.slice(0, 1),
			programmes: [{ ...book.programmes![0]!, each: ['month'] }]
		}));
		expect(runs(() => planned(Model.open(alike), new Memory()))).toBe(2);
	});

	it('ends in the same plan from wherever it starts', () => {
		const plansOf = (book: Workbook, memory: Memory, edits: readonly number[]) => {
			const model = Model.open(book);
			for (const value of edits) {
				model.apply(margin(value));
				planned(model, memory);
			}
			return model.workbook.plans!.map(({ values }) => values);
		};
		const straight = plansOf(smallPlant(), new Memory(), [2.5]);
		expect(plansOf(smallPlant(), new Memory(), [1, 7, 1.95, 2.5])).toEqual(straight);
	});

	it('hands plans over together, parents first, also where it is broken off', () => {
		const model = Model.open(smallPlant());
		for (const one of planAll(solver, model)) {
			expect(one.scenario).toBe('base');
			break;
		}
		const [programme] = model.workbook.programmes!;
		expect(isCurrent(model, programme!, 'base')).toBe(true);
		expect(model.workbook.plans!.map(({ scenario }) => scenario)).toEqual(['base']);
	});

	it('waits for the plan of a scenario that another reads', () => {
		const book = withQuantity('contribution', {
			formula:
				'SUM(sold * margin over product × month) - SUM(stock * holding over product × month) + 0.1[EUR/m] * sold[base; A; feb]'
		})(smallPlant());
		const model = Model.open(book);
		expect(model.problems).toEqual([]);
		const found = [...planAll(solver, model)];
		expect(found.map(({ problems }) => problems)).toEqual([[], []]);
		// 7,270 and 7,460 as without, and 0.1 for each of the 700 m of A that the base sells in February.
		expect(found[0]!.objective).toBeCloseTo(7340, 4);
		expect(found[1]!.objective).toBeCloseTo(7530, 4);
	});
});
