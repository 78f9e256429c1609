/**
 * What the studies compute against outside figures: distributions and sums in closed form, variance shares, and means and
 * deviations (each with its source in published/risk.json), the jstat and simple-statistics packages, and roots.
 */
import { jStat } from 'jstat';
import * as simple from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { betaQuantile, quickBetaQuantile } from '$lib/studies/random/beta-quantile';
import { lognormalOf, pertShape, quantileOf } from '$lib/studies/random/distributions';
import { shareOf } from '$lib/studies/drivers';
import { correlationOf, momentsOf } from '$lib/studies/random/moments';
import { percentileOf, ranksOf } from '$lib/studies/ordering';
import { nearestToZero, rootBetween } from '$lib/studies/root-finder';
import { Sampling } from '$lib/studies/random/sampling';
import { normalQuantile } from '$lib/engine/normal';
import { betaBelow, logGamma } from '$lib/studies/random/special-functions';
import type { Distribution } from '$lib/workbook/study-shapes';
import published from './published/risk.json';

interface Case {
	readonly id: string;
	readonly topic: string;
	readonly inputs: Readonly<Record<string, unknown>>;
	readonly expected: Readonly<Record<string, number>>;
	readonly tolerances: Readonly<Record<string, number | string>>;
	readonly standing: string;
	readonly source: string;
}
const cases = published.cases as readonly unknown[] as readonly Case[];
const about = (topic: string) => cases.filter((case_) => case_.topic === topic);
const named = (id: string) => cases.find((case_) => case_.id === id)!;
const near = (found: number, expected: number, tolerance: number) =>
	expect(Math.abs(found - expected), `${found} for ${expected}`).toBeLessThanOrEqual(tolerance);

/** As good as integrals: the middle of each of many strata. */
function momentsOfDistribution(one: Distribution, strata = 200_000) {
	const { at } = quantileOf(one);
	const values = Float64Array.from({ length: strata }, (_, i) => at((i + 0.5) / strata));
	const { mean, sd } = momentsOf(values);
	return { mean, variance: sd ** 2 };
}

/** Latin hypercube draws of independent inputs. */
const drawn = (draws: number, seed: number, ...distributions: Distribution[]) =>
	new Sampling(distributions.map(quantileOf), draws, seed).values(0, draws);

describe('distributions', () => {
	it.each(about('Distributions').filter(({ id }) => id.startsWith('triangular')))(
		'$id',
		({ inputs, expected }) => {
			const one = {
				kind: 'triangular',
				min: inputs['min'] as number,
				likely: inputs['mode'] as number,
				max: inputs['max'] as number
			} as const;
			const { mean, variance } = momentsOfDistribution(one);
			near(mean, expected['mean']!, 1e-8);
			near(variance, expected['variance']!, 1e-5 * expected['variance']!);
			for (const [key, share] of [
				['p05', 0.05],
				['p50', 0.5],
				['p95', 0.95]
			] as const)
				near(quantileOf(one).at(share), expected[key]!, 1e-8);
		}
	);

	it('pert-10-12-20: the beta shape with weight 4, not the classic approximation', () => {
		const { expected } = named('pert-10-12-20');
		const [alpha, beta] = pertShape(10, 12, 20);
		near(alpha, expected['alpha']!, 1e-12);
		near(beta, expected['beta']!, 1e-12);
		const { mean, variance } = momentsOfDistribution({
			kind: 'pert',
			min: 10,
			likely: 12,
			max: 20
		});
		near(mean, expected['mean']!, 1e-6);
		near(variance, expected['variance_beta_exact']!, 1e-4);
	});

	it('lognormal-median-1', () => {
		const { expected } = named('lognormal-median-1');
		const one = { kind: 'lognormal', median: 1, sd_log: 0.25 } as const;
		const { at } = quantileOf(one);
		near(at(0.05), expected['p05']!, 1e-8);
		near(at(0.5), expected['p50']!, 1e-12);
		near(at(0.95), expected['p95']!, 1e-8);
		const { mean, variance } = momentsOfDistribution(one);
		near(mean, expected['mean']!, 1e-5);
		near(variance, expected['variance']!, 1e-4);
		const back = lognormalOf(expected['mean']!, Math.sqrt(expected['variance']!));
		near(back.median, 1, 1e-7);
		near(back.sd_log, 0.25, 1e-7);
	});

	it('pert-hillier-project: a normal project misses 47 weeks as often as published', () => {
		const { inputs, expected } = named('pert-hillier-project');
		const [mean, variance] = [inputs['critical_path_mean'], inputs['critical_path_variance']];
		const { at } = quantileOf({
			kind: 'normal',
			mean: mean as number,
			sd: Math.sqrt(variance as number)
		});
		near(at(expected['probability']!), 47, 1e-4);
	});

	it('the normal and the beta quantile are those of jstat', () => {
		for (let p = 0.0005; p < 1; p += 0.0137) {
			near(normalQuantile(p), jStat.normal.inv(p, 0, 1), 1e-8);
			for (const [a, b] of [
				[1.8, 4.2],
				[1, 5],
				[5, 1],
				[3, 3]
			] as const) {
				near(betaBelow(p, a, b), jStat.beta.cdf(p, a, b), 1e-8);
				near(betaQuantile(a, b)(p), jStat.beta.inv(p, a, b), 1e-7);
				near(quickBetaQuantile(a, b)(p), betaQuantile(a, b)(p), 3e-9);
			}
		}
		// Where one parameter is whole, the function is a polynomial.
		for (let x = 0.01; x < 1; x += 0.0371) {
			near(betaBelow(x, 1, 5), 1 - (1 - x) ** 5, 1e-14);
			near(betaBelow(x, 5, 1), x ** 5, 1e-14);
			near(betaBelow(x, 3, 3), x ** 3 * (10 - 15 * x + 6 * x * x), 1e-14);
		}
		for (const x of [0.1, 0.5, 1, 2.5, 7, 40]) near(logGamma(x), jStat.gammaln(x), 1e-9);
	});

	it('the triangular quantile is that of jstat; a stepped one gives each value its share', () => {
		const quantile = quantileOf({ kind: 'triangular', min: 1, likely: 3, max: 4 });
		for (let p = 0.01; p < 1; p += 0.07)
			near(quantile.at(p), jStat.triangular.inv(p, 1, 4, 3), 1e-9);
		const steps = quantileOf({
			kind: 'discrete',
			values: [
				{ value: 5, weight: 1 },
				{ value: 2, weight: 3 }
			]
		});
		expect([0.01, 0.74, 0.76, 0.99].map((p) => steps.at(p))).toEqual([2, 2, 5, 5]);
		expect([0.01, 0.99].map((p) => steps.tie(p))).toEqual([0.375, 0.875]);
		const data = quantileOf({ kind: 'data', values: [3, 1, 2, 2] });
		expect([0.1, 0.3, 0.6, 0.9].map((p) => data.at(p))).toEqual([1, 2, 2, 3]);
	});
});

describe('sums of drawn inputs', () => {
	const DRAWS = 40_000;
	const shareBelow = (values: Float64Array, limit: number) =>
		values.reduce((count, value) => count + (value <= limit ? 1 : 0), 0) / values.length;

	it.each([
		[
			'sum-two-uniform',
			{ kind: 'uniform', min: 0, max: 1 },
			[
				[0.5, 'cdf_at_0p5'],
				[1.5, 'cdf_at_1p5']
			]
		],
		[
			'sum-two-symmetric-triangular',
			{ kind: 'triangular', min: 0, likely: 0.5, max: 1 },
			[
				[0.5, 'cdf_at_0p5'],
				[1, 'cdf_at_1p0']
			]
		]
	] as const)('%s', (id, one, limits) => {
		const { expected } = named(id);
		const [x, y] = drawn(DRAWS, 3, one, one);
		const sum = x!.map((value, i) => value + y![i]!);
		const { mean, sd } = momentsOf(sum);
		near(mean, expected['mean']!, 1e-6);
		// Four standard errors of a variance of this many draws.
		near(sd ** 2, expected['variance']!, 4 * expected['variance']! * Math.sqrt(2 / DRAWS));
		for (const [limit, key] of limits)
			near(shareBelow(sum, limit), expected[key]!, 4 * Math.sqrt(0.25 / DRAWS));
	});

	it('product-two-lognormal', () => {
		const { expected } = named('product-two-lognormal');
		const [x, y] = drawn(
			DRAWS,
			5,
			{ kind: 'lognormal', median: 2, sd_log: 0.1 },
			{ kind: 'lognormal', median: 3, sd_log: 0.2 }
		);
		const product = x!.map((value, i) => value * y![i]!);
		const { sd } = momentsOf(product.map(Math.log));
		near(sd, expected['sigma_log']!, 4 * expected['sigma_log']! * Math.sqrt(1 / (2 * DRAWS)));
		const sorted = product.slice().sort();
		near(percentileOf(sorted, 0.5), expected['median']!, 0.02);
		near(percentileOf(sorted, 0.95), expected['p95']!, 0.07);
	});
});

describe('variance shares', () => {
	it('ishigami: first-order indices from the draws that are there', () => {
		const { inputs, expected } = named('ishigami');
		const [a, b] = [inputs['a'] as number, inputs['b'] as number];
		const draws = 200_000;
		const one = { kind: 'uniform', min: -Math.PI, max: Math.PI } as const;
		const xs = drawn(draws, 9, one, one, one);
		const y = xs[0]!.map(
			(x1, i) => Math.sin(x1) + a * Math.sin(xs[1]![i]!) ** 2 + b * xs[2]![i]! ** 4 * Math.sin(x1)
		);
		const { mean, sd } = momentsOf(y);
		near(mean, expected['mean']!, 0.02);
		near(sd ** 2, expected['variance']!, 0.1);
		const first = expected['first_order'] as unknown as readonly number[];
		xs.forEach((x, i) => near(shareOf(y, ranksOf(x)), first[i]!, 0.008));
		// A rank correlation would have missed the second input, whose share is the greatest.
		near(correlationOf(ranksOf(xs[1]!), ranksOf(y)), 0, 0.01);
	});
});

describe('means and deviations', () => {
	const dataOf = ({ id, inputs }: Case): number[] => {
		if (Array.isArray(inputs['data'])) return inputs['data'] as number[];
		// The rule of the two long series: a first value, then 500 times the same pair.
		const start = id === 'nist-numacc3' ? 1_000_000 : 10_000_000;
		const pair = id === 'nist-numacc3' ? [1000000.1, 1000000.3] : [10000000.1, 10000000.3];
		return [start + 0.2, ...Array.from({ length: 1000 }, (_, i) => pair[i % 2]!)];
	};

	it.each(about('NIST StRD univariate'))('$id', (one) => {
		const data = dataOf(one);
		const { mean, sd } = momentsOf(data);
		const { mean: certified, standard_deviation_n_minus_1: deviation } = one.expected;
		near(mean, certified!, 1e-15 * Math.abs(certified!));
		// The long series lose digits as they are written down: 0.1 of 10,000,000 is known to 2e-9.
		const lost = one.id.startsWith('nist-numacc') ? 2e-8 : 1e-13;
		near(sd, deviation!, lost * deviation! + 1e-14);
		near(sd, simple.sampleStandardDeviation(data), 1e-9 * sd);
	});

	it('rank correlation is that of simple-statistics and jstat', () => {
		const [x, y] = drawn(
			400,
			21,
			{ kind: 'normal', mean: 0, sd: 1 },
			{ kind: 'uniform', min: 0, max: 3 }
		);
		const tied = x!.map((value, i) => Math.round(2 * value + y![i]!));
		const found = correlationOf(ranksOf(x!), ranksOf(tied));
		near(found, jStat.spearmancoeff([...x!], [...tied]), 1e-12);
		const sum = x!.map((value, i) => value + y![i]!);
		const untied = correlationOf(ranksOf(x!), ranksOf(sum));
		near(untied, simple.sampleRankCorrelation([...x!], [...sum]), 1e-12);
	});

	it('percentiles lie between neighbours in proportion, as jstat has them', () => {
		const [x] = drawn(37, 4, { kind: 'normal', mean: 5, sd: 2 });
		const sorted = x!.slice().sort();
		for (const share of [0.01, 0.05, 0.33, 0.5, 0.9, 0.99])
			near(percentileOf(sorted, share), jStat.quantiles([...x!], [share], 1, 1)[0]!, 1e-12);
	});
});

describe('roots', () => {
	it.each([
		// Wallis's equation, by which Newton showed his method (1669).
		['x³ − 2x − 5', (x: number) => x ** 3 - 2 * x - 5, 2, 3, 2.0945514815423265],
		// The number to which repeated cosines lead; from memory.
		['cos x − x', (x: number) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
		['eˣ − 2', (x: number) => Math.exp(x) - 2, -5, 20, Math.LN2],
		['x⁹', (x: number) => x ** 9, -1, 1.3, 0]
	] as const)('%s', (_, f, from, to, expected) => {
		const root = rootBetween(f, from, to)!;
		near(root.x, expected, expected === 0 ? 1e-2 : 4e-16 * (1 + Math.abs(expected)));
		near(root.rest, 0, 1e-14);
	});

	it('the rate at which a published project is worth nothing is its published rate of return', () => {
		// numpy-financial, irr([-100, 39, 59, 55, 20]): 0.28095.
		const flows = [-100, 39, 59, 55, 20];
		const worth = (rate: number) => flows.reduce((sum, flow, t) => sum + flow / (1 + rate) ** t, 0);
		near(rootBetween(worth, 0, 1)!.x, 0.28095, 1e-5);
	});

	it('a jump over zero is closed in on, and known by what is left', () => {
		const root = rootBetween((x) => (x < 0.3 ? -1 : 2), 0, 1)!;
		near(root.x, 0.3, 1e-15);
		expect(Math.abs(root.rest)).toBeGreaterThan(0.5);
		expect(rootBetween((x) => (x > 0.4 && x < 0.6 ? NaN : x - 0.5), 0, 1)).toBeNull();
	});

	it('a root is near enough where so much is asked for, and takes fewer steps', () => {
		const steps = (within: number) => {
			let count = 0;
			const root = rootBetween((x) => (count++, x < 0.3 ? -1 : 2), 0, 1, -1, 2, within)!;
			near(root.x, 0.3, Math.max(within, 1e-15));
			return count;
		};
		expect(steps(1e-6)).toBeLessThan(steps(0) / 2);
	});

	it('what does not come down to zero is given up early, and what does is found', () => {
		let count = 0;
		const search = (f: (x: number) => number) => {
			count = 0;
			return nearestToZero((x) => (count++, f(x)), 0, 1, Math.min(Math.abs(f(0)), Math.abs(f(1))));
		};
		expect(search((x) => 0.95 + 0.05 * Math.abs(x - 0.4))).toBeNull();
		expect(count).toBeLessThan(20);
		for (const touch of [(x: number) => (x - 0.37) ** 2, (x: number) => Math.abs(x - 0.37)])
			near(search(touch)!.x, 0.37, 1e-6);
		near(search((x) => Math.sqrt(Math.abs(x - 0.37)))!.rest, 0, 1e-6);
	});
});
