/**
 * Sampling against what is known of it: Latin hypercube strata and variance, the rank correlation of a normal copula,
 * correlated draws that keep their strata, and correlation matrices that cannot be.
 */
import { describe, expect, it } from 'vitest';
import { keyOf, Permutation, uniformAt } from '$lib/studies/random/jumping-random';
import {
	choleskyOf,
	eigen,
	identity,
	isPossible,
	nearestPossible
} from '$lib/studies/random/matrix';
import { correlationOf, momentsOf } from '$lib/studies/random/moments';
import { orderOf, ranksOf } from '$lib/studies/ordering';
import { quantileOf } from '$lib/studies/random/distributions';
import { correlatedGroups, rankOfScore, scoreOfRank } from '$lib/studies/random/rank-correlation';
import { layOutGroups, partOf, Sampling } from '$lib/studies/random/sampling';
import published from './published/risk.json';

const expectedOf = (id: string) =>
	published.cases.find((case_) => case_.id === id)!.expected as Readonly<Record<string, unknown>>;
const uniform = quantileOf({ kind: 'uniform', min: 0, max: 1 });
const normal = quantileOf({ kind: 'normal', mean: 0, sd: 1 });

describe('Latin hypercube', () => {
	it('latin-hypercube-mean-bound: one point in each stratum, the mean within half of one', () => {
		const expected = expectedOf('latin-hypercube-mean-bound');
		for (let seed = 0; seed < 20; seed++) {
			const [x] = new Sampling([uniform], 100, seed).values(0, 100);
			const strata = new Set([...x!].map((value) => Math.floor(100 * value)));
			expect(strata.size / 100).toBe(expected['points_per_stratum']);
			expect(Math.abs(momentsOf(x!).mean - 0.5)).toBeLessThanOrEqual(
				expected['abs_error_of_mean_max'] as number
			);
		}
	});

	it('has far less variance than plain sampling on a linear model', () => {
		const [draws, runs, weights] = [200, 200, [3, -2, 1]];
		const linear = (xs: readonly Float64Array[]) =>
			momentsOf(xs[0]!.map((_, i) => weights.reduce((sum, w, k) => sum + w * xs[k]![i]!, 0))).mean;
		const latin: number[] = [];
		const plain: number[] = [];
		for (let seed = 0; seed < runs; seed++) {
			latin.push(
				linear(
					new Sampling(
						weights.map(() => uniform),
						draws,
						seed
					).values(0, draws)
				)
			);
			plain.push(
				linear(
					weights.map((_, k) =>
						Float64Array.from({ length: draws }, (_, i) => uniformAt(keyOf(seed, k, 9), i))
					)
				)
			);
		}
		// Plain: Σ w² / 12 / n. Latin: each stratum's own variance, 1 / n² of that.
		const exact = weights.reduce((sum, w) => sum + w * w, 0) / 12 / draws;
		const spread = 4 * Math.sqrt(2 / runs);
		expect(Math.abs(momentsOf(plain).sd ** 2 / exact - 1)).toBeLessThan(spread);
		expect(Math.abs((momentsOf(latin).sd ** 2 * draws ** 2) / exact - 1)).toBeLessThan(spread);
	});

	it('orders the strata of each input by a permutation, whatever their number, and all differently', () => {
		for (const count of [1, 2, 3, 7, 64, 1000, 4097]) {
			const permutation = new Permutation(keyOf(1, 2, 3), count);
			const all = new Set(Array.from({ length: count }, (_, i) => permutation.at(i)));
			expect(all.size).toBe(count);
			expect(Math.max(...all)).toBe(count - 1);
		}
		const xs = new Sampling([uniform, uniform, uniform], 20_000, 5).values(0, 20_000);
		for (const [i, j] of [
			[0, 1],
			[0, 2],
			[1, 2]
		] as const)
			expect(Math.abs(correlationOf(xs[i]!, xs[j]!))).toBeLessThan(4 / Math.sqrt(20_000));
		// A draw's neighbour tells nothing of it either.
		expect(Math.abs(correlationOf(xs[0]!.slice(1), xs[0]!.slice(0, -1)))).toBeLessThan(0.03);
	});

	it('puts every place anywhere: each of ten strata a tenth of the time', () => {
		const counts = new Float64Array(100);
		for (let seed = 0; seed < 5000; seed++) {
			const permutation = new Permutation(keyOf(seed, 0, 1), 10);
			for (let place = 0; place < 10; place++) counts[10 * place + permutation.at(place)]!++;
		}
		const chiSquare = counts.reduce((sum, count) => sum + (count - 500) ** 2 / 500, 0);
		// 81 degrees of freedom: four deviations above the mean.
		expect(chiSquare).toBeLessThan(81 + 4 * Math.sqrt(2 * 81));
	});

	it('gives any part of the draws alone as in the whole', () => {
		const groups = correlatedGroups(['a', 'b'], [{ between: ['a', 'b'], rank: 0.5 }]);
		if (!groups.ok) throw new Error(groups.problem.message);
		const laidOut = layOutGroups(groups.value.groups, 3, 500, 3);
		const all = new Sampling([uniform, normal, uniform], 500, 3, laidOut).values(0, 500);
		const part = partOf(laidOut, 120, 77);
		const some = new Sampling([uniform, normal, uniform], 500, 3, part, 120).values(120, 77);
		some.forEach((one, i) => expect(one).toEqual(all[i]!.slice(120, 197)));
	});
});

describe('correlated draws', () => {
	it('the rank correlation of a normal copula is 6/π · asin(ρ/2), there and back', () => {
		for (const score of [-1, -0.7, 0, 0.3, 0.5, 0.9, 1]) {
			const rank = rankOfScore(score);
			expect(rank).toBeCloseTo((6 / Math.PI) * Math.asin(score / 2), 14);
			expect(scoreOfRank(rank)).toBeCloseTo(score, 14);
			const groups = correlatedGroups(['a', 'b'], [{ between: ['a', 'b'], rank }]);
			if (!groups.ok) throw new Error(groups.problem.message);
			const laidOut = layOutGroups(groups.value.groups, 2, 20_000, 1);
			const [x, y] = new Sampling([normal, normal], 20_000, 1, laidOut).values(0, 20_000);
			expect(correlationOf(ranksOf(x!), ranksOf(y!))).toBeCloseTo(rank, 2);
			expect(correlationOf(x!, y!)).toBeCloseTo(score, 2);
		}
	});

	it('correlated-sum: the deviation of a sum of correlated normals', () => {
		const expected = expectedOf('correlated-sum')['sd_of_sum'] as readonly number[];
		[0, 0.5, 1, -1].forEach((score, i) => {
			const rank = rankOfScore(score);
			const groups = correlatedGroups(['a', 'b'], [{ between: ['a', 'b'], rank }]);
			if (!groups.ok) throw new Error(groups.problem.message);
			const laidOut = layOutGroups(groups.value.groups, 2, 20_000, 8);
			const three = quantileOf({ kind: 'normal', mean: 0, sd: 3 });
			const four = quantileOf({ kind: 'normal', mean: 0, sd: 4 });
			const [x, y] = new Sampling([three, four], 20_000, 8, laidOut).values(0, 20_000);
			const { sd } = momentsOf(x!.map((value, draw) => value + y![draw]!));
			expect(Math.abs(sd - expected[i]!)).toBeLessThan(0.01);
		});
	});

	it('meets every wanted pair of three, and each stratum still once', () => {
		const wanted = [
			[0, 1, 0.8],
			[1, 2, -0.5],
			[0, 2, -0.2]
		] as const;
		const groups = correlatedGroups(
			['a', 'b', 'c', 'd'],
			wanted.map(([i, j, rank]) => ({ between: ['abc'[i]!, 'abc'[j]!], rank }))
		);
		if (!groups.ok) throw new Error(groups.problem.message);
		expect(groups.value).toMatchObject({ notices: [], groups: [{ inputs: [0, 1, 2] }] });
		const laidOut = layOutGroups(groups.value.groups, 4, 10_000, 2);
		const sampling = new Sampling([uniform, normal, uniform, uniform], 10_000, 2, laidOut);
		const xs = sampling.values(0, 10_000);
		for (const [i, j, rank] of wanted)
			expect(correlationOf(ranksOf(xs[i]!), ranksOf(xs[j]!))).toBeCloseTo(rank, 2);
		expect(Math.abs(correlationOf(xs[0]!, xs[3]!))).toBeLessThan(0.04);
		expect(new Set([...xs[2]!].map((value) => Math.floor(10_000 * value))).size).toBe(10_000);
	});

	it('a matrix that cannot be gives way to the nearest that can, and nothing else does', () => {
		const matrix = identity(3);
		for (const [i, j, value] of [
			[0, 1, 1],
			[1, 2, 1],
			[0, 2, 0]
		] as const)
			matrix.at[3 * i + j] = matrix.at[3 * j + i] = value;
		expect(isPossible(matrix)).toBe(false);
		const repaired = nearestPossible(matrix);
		// Higham (IMA Journal of Numerical Analysis 22, 2002, 329), his first example: 0.7607 and 0.1573.
		expect(repaired.at[1]).toBeCloseTo(0.7607, 4);
		expect(repaired.at[2]).toBeCloseTo(0.1573, 4);
		expect(isPossible(repaired)).toBe(true);
		expect(Math.min(...eigen(repaired).values)).toBeGreaterThan(0);
		const root = choleskyOf(repaired).at;
		for (let i = 0; i < 3; i++)
			for (let j = 0; j < 3; j++) {
				let sum = 0;
				for (let k = 0; k < 3; k++) sum += root[3 * i + k]! * root[3 * j + k]!;
				expect(sum).toBeCloseTo(repaired.at[3 * i + j]!, 12);
			}
		expect(isPossible(identity(4))).toBe(true);
	});
});

describe('putting in order', () => {
	it('is that of comparing, negative numbers, zeros and equal ones included', () => {
		const values = Float64Array.from({ length: 3000 }, (_, i) =>
			i % 7 === 0 ? (i % 14) - 7 : (uniformAt(3, i) - 0.5) * 10 ** ((i % 9) - 4)
		);
		const order = orderOf(values);
		const expected = Uint32Array.from(values.keys()).sort(
			(a, b) => values[a]! - values[b]! || a - b
		);
		expect(order).toEqual(expected);
		expect([...ranksOf(Float64Array.of(3, 1, 3, -2))]).toEqual([3.5, 2, 3.5, 1]);
	});
});
