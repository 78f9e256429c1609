/** What `check` says of the plans that a workbook holds. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { checkCommand } from '../../src/cli/check';
import { Model } from '$lib/engine/model';
import { Solver } from '$lib/programmes/highs';
import { planAll } from '$lib/programmes/plan-all';
import { saveWorkbook } from '$lib/workbook/save';
import type { Workbook } from '$lib/workbook/schema';
import { smallPlant, withQuantity } from '../programmes/small-plant';

const folder = mkdtempSync(join(tmpdir(), 'metrewright-'));
afterAll(() => rmSync(folder, { recursive: true }));

let solver: Solver;
beforeAll(async () => {
	solver = await Solver.load();
});

function planned(book: Workbook): Workbook {
	const model = Model.open(book);
	for (const one of planAll(solver, model)) expect(one.problems).toEqual([]);
	return model.workbook;
}

async function checked(book: Workbook, ...args: string[]) {
	const path = join(folder, 'plant.json');
	writeFileSync(path, saveWorkbook(book));
	const { out, code } = await checkCommand([path, ...args]);
	return { out, code: code ?? 0 };
}

const withPlan = (
	book: Workbook,
	scenario: string,
	change: (plan: NonNullable<Workbook['plans']>[number]) => object
): Workbook => ({
	...book,
	plans: book.plans!.map((plan) =>
		plan.scenario === scenario ? { ...plan, ...change(plan) } : plan
	)
});

describe('check', () => {
	it('proves the plan of every scenario the best', async () => {
		const { out, code } = await checked(planned(smallPlant()));
		expect(out).toContain('2 of 2 plans proven best');
		expect(code).toBe(0);
	});

	it('proves every member that is solved apart', async () => {
		const book = smallPlant((book) => ({
			...withQuantity('contribution', {
				per: ['month'],
				formula: 'SUM(sold * margin over product)'
			})(withQuantity('stock_holds', { formula: 'stock <= SUM(made over line) - sold' })(book)),
			programmes: [{ ...book.programmes![0]!, each: ['month'] }]
		}));
		expect((await checked(planned(book))).out).toContain('4 of 4 plans proven best');
	});

	it('says nothing of plans where a workbook has no programme', async () => {
		const { programmes: _, ...book } = smallPlant();
		const { out } = await checked(book as Workbook);
		expect(out).not.toContain('plans');
	});

	it('ends with 1 where there is no plan yet, and says what to do', async () => {
		const { out, code } = await checked(smallPlant());
		expect(out).toContain('0 of 2 plans proven best');
		expect(out).toContain('contribution, base: Who makes what has no plan yet: run solve.');
		expect(code).toBe(1);
	});

	it('ends with 1 where the plan answers what the formulas said before an edit', async () => {
		const dearer = withQuantity('margin', { value: { A: 4, B: 2 } })(planned(smallPlant()));
		const { out, code } = await checked(dearer);
		expect(out).toContain('contribution, base: The plan of Who makes what is stale: run solve.');
		expect(out).toContain('contribution, more_hours: The plan of Who makes what is stale');
		expect(code).toBe(1);
	});

	it('ends with 1 where a plan in force is not the best, by how much', async () => {
		// 10 m of B less sold in February bring 20 EUR less: the plan holds, and better ones are there.
		const less = withPlan(planned(smallPlant()), 'base', ({ values }) => ({
			values: values.map((one) =>
				one.quantity === 'sold'
					? { ...one, value: { A: { jan: 600, feb: 700 }, B: { jan: 600, feb: 1090 } } }
					: one
			)
		}));
		const { out, code } = await checked(less);
		expect(out).toMatch(/contribution, base: The plan is short of the best by (20|19\.9+\d*) EUR/);
		expect(out).toContain('1 of 2 plans proven best');
		expect(code).toBe(1);
	});

	it('ends with 1 where a plan breaks what is required', async () => {
		const more = withPlan(planned(smallPlant()), 'base', ({ values }) => ({
			values: values.map((one) =>
				one.quantity === 'sold'
					? { ...one, value: { A: { jan: 600, feb: 700 }, B: { jan: 600, feb: 1300 } } }
					: one
			)
		}));
		const { out, code } = await checked(more);
		expect(out).toContain('contribution, base: The plan breaks what is required.');
		expect(code).toBe(1);
	});

	it('lets a plan stand that is kept, and says what it costs', async () => {
		const book = withPlan(planned(smallPlant()), 'more_hours', () => ({ kept: '2026-03-01' }));
		// 100 m of B that waited for February could be sold in January now, and 0.1 EUR/m of keeping them be saved.
		const longer = withQuantity('demand', {
			value: { A: { jan: 600, feb: 700 }, B: { jan: 700, feb: 1200 } }
		})(book);
		const { out } = await checked(longer);
		expect(out).toContain('contribution, base: The plan of Who makes what is stale');
		expect(out).toMatch(
			/more_hours: the plan is kept as it stands since 2026-03-01; short of the best by 10 EUR/
		);
		expect(out).not.toContain('contribution, more_hours');
	});

	it('counts them as JSON', async () => {
		const { out } = await checked(planned(smallPlant()), '--json');
		expect(JSON.parse(out).plans).toEqual({ of: 2, best: 2, kept: [] });
	});
});
