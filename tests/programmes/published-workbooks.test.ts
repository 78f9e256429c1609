/** Published linear programmes written as workbooks: derived from formulas, solved, and their prices filled in. */
import { beforeAll, describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { Solver } from '$lib/programmes/highs';
import { planAll } from '$lib/programmes/plan-all';
import { choiceBook, type Printed } from './choice-book';

let solver: Solver;
beforeAll(async () => {
	solver = await Solver.load();
});

function planned(printed: Printed) {
	const model = Model.open(choiceBook(printed));
	expect(model.problems).toEqual([]);
	const [found] = [...planAll(solver, model)];
	const list = (name: string) => {
		const { base, count } = model.layout.byName.get(name)!;
		return [...model.column('base').values.slice(base, base + count)].map((value) =>
			Number(value.toFixed(6))
		);
	};
	return { found: found!, list };
}

function expectPlan(printed: Printed, total: number, x: number[] | null, worth: number[]) {
	const { found, list } = planned(printed);
	expect(found.proven).toBe(true);
	expect(found.objective).toBeCloseTo(total, 6);
	expect(list('total')[0]).toBeCloseTo(total, 6);
	if (x) expect(list('x')).toEqual(x);
	expect(list('worth').map((value) => value + 0)).toEqual(worth);
}

describe('a published programme as a workbook', () => {
	it('Wyndor: 36 at (2, 6), prices 0, 1.5 and 1', () => {
		// Hillier and Lieberman, Introduction to Operations Research.
		const takes = [
			[1, 0],
			[0, 2],
			[3, 2]
		];
		const printed = { maximise: true, gain: [3, 5], takes, limit: [4, 12, 18] };
		expectPlan(printed, 36, [2, 6], [0, 1.5, 1]);
	});

	it('Giapetto: 180 at (20, 60), prices 1, 1 and 0', () => {
		// Winston, Operations Research (from memory).
		const takes = [
			[2, 1],
			[1, 1],
			[1, 0]
		];
		const printed = { maximise: true, gain: [3, 2], takes, limit: [100, 80, 40] };
		expectPlan(printed, 180, [20, 60], [1, 1, 0]);
	});

	it('Reddy Mikks: 21 at (3, 1.5), prices 0.75, 0.5, 0 and 0', () => {
		// Taha, Operations Research (from memory).
		const takes = [
			[6, 4],
			[1, 2],
			[-1, 1],
			[0, 1]
		];
		const printed = { maximise: true, gain: [5, 4], takes, limit: [24, 6, 1, 2] };
		expectPlan(printed, 21, [3, 1.5], [0.75, 0.5, 0, 0]);
	});

	it('several best plans: the first choice is taken, and one more of the limit brings 2', () => {
		// By hand: along x + y = 4 every point brings 8.
		const printed = { maximise: true, gain: [2, 2], takes: [[1, 1]], limit: [4] };
		expectPlan(printed, 8, [4, 0], [2]);
	});

	it('Beale: -1/20, where a careless simplex goes round in circles', () => {
		// From memory. One more of the third limit saves 1/20; more of the first two, which are 0, nothing.
		const takes = [
			[0.25, -60, -0.04, 9],
			[0.5, -90, -0.02, 3],
			[0, 0, 1, 0]
		];
		const gain = [-0.75, 150, -0.02, 6];
		const { found } = planned({ maximise: false, gain, takes, limit: [0, 0, 1] });
		expect(found.proven).toBe(true);
		expect(found.objective).toBeCloseTo(-0.05, 8);
	});

	it("Dantzig's transport: 153.675, and what one more case asked of each market costs", () => {
		// Dantzig, Linear Programming and Extensions (1963), chapter 3 (from memory): 90 per case and thousand miles, in thousands.
		const gain = [2.5, 1.7, 1.8, 2.5, 1.8, 1.4].map((miles) => (miles * 90) / 1000);
		const takes = [
			[1, 1, 1, 0, 0, 0],
			[0, 0, 0, 1, 1, 1],
			[1, 0, 0, 1, 0, 0],
			[0, 1, 0, 0, 1, 0],
			[0, 0, 1, 0, 0, 1]
		];
		const { found, list } = planned({
			...{ maximise: false, gain, takes, limit: [350, 600, 325, 300, 275] },
			compared: ['<=', '<=', '>=', '>=', '>=']
		});
		expect(found.proven).toBe(true);
		expect(list('total')[0]).toBeCloseTo(153.675, 6);
		// More room is a case less to be brought, and what is told of less is what one more costs.
		expect(found.prices.map(({ less }) => Number(less?.toFixed(6)))).toEqual([0.225, 0.153, 0.126]);
	});

	it('requirements that cannot hold together are named with what they lack', () => {
		// By hand: x is at most 10, y at most 9, and 60 of both are asked: 41 lack.
		const takes = [
			[1, 0],
			[1, 1],
			[0, 1]
		];
		const { found } = planned({
			...{ maximise: true, gain: [1, 1], takes, limit: [10, 60, 9] },
			compared: ['<=', '>=', '<=']
		});
		expect(found.status).toBe('infeasible');
		expect(found.problems.join()).toMatch(/(at_most|at_least), l\d, by 41/);
	});
});
