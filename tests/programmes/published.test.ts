/** Linear programmes as textbooks print them, with their optimum and prices. */
import { describe, expect, it } from 'vitest';
import { Solver } from '$lib/programmes/highs';
import type { LinearProgramme } from '$lib/programmes/linear';
import { solve, worthOfMore, type Solved } from '$lib/programmes/solve';
import { tieWeights } from '$lib/programmes/ties';

const solver = await Solver.load();

/** "At most" rows over choices of 0 or more. */
function atMost(
	cost: number[],
	rows: number[][],
	most: number[],
	maximise = true
): LinearProgramme {
	return {
		maximise,
		offset: 0,
		cost: Float64Array.from(cost),
		lower: new Float64Array(cost.length),
		upper: new Float64Array(cost.length).fill(Infinity),
		whole: new Uint8Array(cost.length),
		starts: Int32Array.from({ length: rows.length + 1 }, (_, row) => row * cost.length),
		columns: Int32Array.from(rows.flatMap((row) => row.map((_, column) => column))),
		values: Float64Array.from(rows.flat()),
		rowLower: new Float64Array(rows.length).fill(-Infinity),
		rowUpper: Float64Array.from(most)
	};
}

function solved(programme: LinearProgramme): Solved {
	const priced = [...programme.rowLower.keys()];
	const answer = solve(solver, programme, {
		priced,
		ties: {
			near: new Float64Array(programme.cost.length),
			weight: tieWeights(new Uint8Array(programme.cost.length))
		}
	});
	if (answer.status !== 'optimal') throw new Error(answer.status);
	expect(answer.certificate.holds).toBe(true);
	return answer;
}

const close = (found: ArrayLike<number>, wanted: number[]) =>
	wanted.forEach((value, i) => expect(found[i]).toBeCloseTo(value, 6));
const prices = ({ prices }: Solved) => prices.map(({ more }) => more?.price ?? NaN);

// Hillier and Lieberman, Introduction to Operations Research: Wyndor Glass; Z = 36 at (2, 6).
const WYNDOR = atMost(
	[3, 5],
	[
		[1, 0],
		[0, 2],
		[3, 2]
	],
	[4, 12, 18]
);

describe('a published linear programme', () => {
	it('Wyndor: 36 at (2, 6), prices 0, 1.5 and 1', () => {
		const answer = solved(WYNDOR);
		expect(answer.objective).toBeCloseTo(36, 9);
		close(answer.chosen, [2, 6]);
		close(prices(answer), [0, 1.5, 1]);
		// Hillier and Lieberman: the price of plant 2 holds for 6 to 18 hours, that of plant 3 for 12 to 24.
		expect(answer.prices[1]!.more!.until).toBeCloseTo(6, 6);
		expect(answer.prices[1]!.less!.until).toBeCloseTo(6, 6);
		expect(answer.prices[2]!.more!.until).toBeCloseTo(6, 6);
		expect(answer.prices[2]!.less!.until).toBeCloseTo(6, 6);
	});

	it('Giapetto: 180 at (20, 60), prices 1, 1 and 0', () => {
		// Winston, Operations Research (from memory; recomputed elsewhere).
		const answer = solved(
			atMost(
				[3, 2],
				[
					[2, 1],
					[1, 1],
					[1, 0]
				],
				[100, 80, 40]
			)
		);
		expect(answer.objective).toBeCloseTo(180, 9);
		close(answer.chosen, [20, 60]);
		close(prices(answer), [1, 1, 0]);
	});

	it('Reddy Mikks: 21 at (3, 1.5), prices 0.75, 0.5, 0 and 0', () => {
		// Taha, Operations Research (from memory; recomputed elsewhere).
		const rows = [
			[6, 4],
			[1, 2],
			[-1, 1],
			[0, 1]
		];
		const answer = solved(atMost([5, 4], rows, [24, 6, 1, 2]));
		expect(answer.objective).toBeCloseTo(21, 9);
		close(answer.chosen, [3, 1.5]);
		close(prices(answer), [0.75, 0.5, 0, 0]);
	});

	it('Beale: -1/20, where a careless simplex goes round in circles', () => {
		// From memory; recomputed elsewhere.
		const rows = [
			[0.25, -60, -0.04, 9],
			[0.5, -90, -0.02, 3],
			[0, 0, 1, 0]
		];
		const answer = solved(atMost([-0.75, 150, -0.02, 6], rows, [0, 0, 1], false));
		expect(answer.objective).toBeCloseTo(-0.05, 9);
	});

	it("Dantzig's transport: 153.675 thousand, and 0.225, 0.153 and 0.126 for one more case asked", () => {
		// Dantzig, Linear Programming and Extensions (1963), chapter 3 (from memory; recomputed elsewhere): 2 plants, 3 markets,
		// 90 per case and thousand miles, here in thousands. Columns by plant, then market.
		const miles = [2.5, 1.7, 1.8, 2.5, 1.8, 1.4];
		const supply = [
			[1, 1, 1, 0, 0, 0],
			[0, 0, 0, 1, 1, 1]
		];
		const demand = [
			[1, 0, 0, 1, 0, 0],
			[0, 1, 0, 0, 1, 0],
			[0, 0, 1, 0, 0, 1]
		];
		const programme = atMost(
			miles.map((mile) => (mile * 90) / 1000),
			[...supply, ...demand],
			[350, 600, Infinity, Infinity, Infinity],
			false
		);
		programme.rowLower.set([325, 300, 275], 2);
		const answer = solved(programme);
		expect(answer.objective).toBeCloseTo(153.675, 9);
		// Less room is one case more to be brought.
		close(
			answer.prices.slice(2).map(({ less }) => less!.price),
			[0.225, 0.153, 0.126]
		);
	});
});

describe('several best plans', () => {
	// Along 2 x + 2 y = 8 every point is best.
	const programme = atMost([2, 2], [[1, 1]], [4]);
	const near = (plan: number[]) => ({
		near: Float64Array.from(plan),
		weight: tieWeights(new Uint8Array(2))
	});

	it('the first member is taken first', () => {
		const answer = solve(solver, programme, { ties: near([0, 0]) });
		close((answer as Solved).chosen, [4, 0]);
	});

	it('the plan nearest to the one to stay near to is taken', () => {
		const answer = solve(solver, programme, { ties: near([1, 3]) });
		close((answer as Solved).chosen, [1, 3]);
	});

	it('what is named later is kept least', () => {
		const ties = { near: new Float64Array(2), weight: tieWeights([1, 0]) };
		close((solve(solver, programme, { ties }) as Solved).chosen, [0, 4]);
	});

	it('the plan is the same whatever basis the solver starts from', () => {
		const ties = near([0, 0]);
		const other = solve(solver, { ...programme, cost: Float64Array.of(1, 2) }, { ties }) as Solved;
		const answer = solve(solver, programme, { ties, bases: other.bases }) as Solved;
		close(answer.chosen, [4, 0]);
	});
});

describe('no best plan', () => {
	it('names the rows that cannot hold together, and by how much', () => {
		// x ≤ 10, x + y ≥ 60 and y ≤ 9: 41 are missing.
		const programme = atMost(
			[1, 1],
			[
				[1, 0],
				[1, 1],
				[0, 1]
			],
			[10, Infinity, 9]
		);
		programme.rowLower[1] = 60;
		const answer = solve(solver, programme);
		expect(answer.status).toBe('infeasible');
		if (answer.status !== 'infeasible') return;
		const total = answer.violations.reduce((sum, { by }) => sum + Math.abs(by), 0);
		expect(total).toBeCloseTo(41, 6);
	});

	it('names the choices that grow without end', () => {
		const answer = solve(
			solver,
			atMost(
				[1, 1, 1],
				[
					[1, 0, 1],
					[1, -1, 0]
				],
				[4, 2]
			)
		);
		expect(answer).toEqual({ status: 'unbounded', growing: [1] });
	});
});

describe('many more units', () => {
	it('are worth less and less, starting at the shadow price', () => {
		const [none, one, six, twelve] = worthOfMore(solver, WYNDOR, 2, [0, 1, 6, 12]);
		expect(one! - none!).toBeCloseTo(1, 9);
		expect(six! - none!).toBeCloseTo(6, 9);
		// Beyond 24 hours another plant is full.
		expect(twelve! - none!).toBeCloseTo(6, 9);
	});
});
