/** The risk study on models whose answer is known in closed form, its errors, and its figures in two scenarios. */
import { describe, expect, it } from 'vitest';
import { prepareRisk, type RiskStudy } from '$lib/studies/risk';
import type { RiskResult } from '$lib/studies/risk-result';
import type { RunOptions } from '$lib/studies/kinds';
import { runStudyHere } from '$lib/studies/run';
import type { Workbook } from '$lib/workbook/schema';
import { book, metre } from './small-book';

const study = (more: Partial<RiskStudy>): RiskStudy => ({
	kind: 'risk',
	name: 'spread',
	title: 'Spread',
	quantity: 'margin',
	scenario: 'base',
	inputs: [],
	draws: 10_000,
	seed: 7,
	...more
});

function run(workbook: Workbook, one: RiskStudy, options?: RunOptions): RiskResult {
	const result = runStudyHere(workbook, one, options);
	if (!result.ok) throw new Error(result.problem.message);
	if (result.value.kind !== 'risk') throw new Error('It is another study.');
	return result.value;
}

const sales = {
	label: 'Sales',
	quantity: 'sales',
	mode: 'set' as const,
	distribution: { kind: 'uniform' as const, min: 0, max: 1 }
};
const pe = {
	label: 'PE',
	quantity: 'price',
	members: ['PE'],
	mode: 'set' as const,
	distribution: { kind: 'triangular' as const, min: 1, likely: 1.5, max: 2 }
};

describe('a risk study', () => {
	it('finds mean, deviation, shares and chance of a sum in closed form', () => {
		// margin = sales − 0.1 × PE − 0.1: mean 0.5 − 0.15 − 0.1, variance 1/12 + 0.01/24.
		const result = run(metre(), study({ inputs: [sales, pe], target: { at_least: 0.25 } }));
		const variance = 1 / 12 + 0.01 / 24;
		expect(result.mean).toBeCloseTo(0.25, 4);
		// The two inputs of a finite sample go together a little: some 2e-4 of the deviation.
		expect(Math.abs(result.sd - Math.sqrt(variance))).toBeLessThan(8e-4);
		expect(result.percentiles['50']).toBeCloseTo(0.25, 3);
		expect(result.target!.chance).toBeCloseTo(0.5, 2);
		expect(result.drivers[0]).toMatchObject({ label: 'Sales', input: 0 });
		expect(result.drivers[0]!.share).toBeCloseTo(1 / 12 / variance, 2);
		expect(result.drivers[0]!.rank).toBeGreaterThan(0.99);
		expect(result.drivers[1]!.rank).toBeLessThan(0);
		expect(result.errors).toBe(0);
		expect(result.base).toBeCloseTo(0.15, 12);
		expect(result.check!.compared).toBeGreaterThan(0);
		const total = result.histogram.counts.reduce((sum, count) => sum + count, 0);
		expect(total + result.histogram.below + result.histogram.above).toBe(10_000);
	});

	it('shows how it settles: the last look is the whole, and its error shrinks with the root of draws', () => {
		const { convergence, mean, percentiles } = run(metre(), study({ inputs: [sales] }));
		const last = convergence.at(-1)!;
		expect(last.draws).toBe(10_000);
		expect(last.mean).toBeCloseTo(mean, 12);
		expect(last.percentiles['95']).toBe(percentiles['95']);
		const quarter = convergence.at(-3)!;
		expect(quarter.draws).toBe(2500);
		expect(quarter.meanError / last.meanError).toBeCloseTo(2, 1);
		// The median of a uniform variable from n draws is off by about 1 / (2 √n).
		expect(last.percentileErrors['50']).toBeCloseTo(0.005, 3);
	});

	it('comes out the same from the same seed, and otherwise from another', () => {
		const riskResult = run(metre(), study({ inputs: [sales, pe], draws: 500 }));
		expect(run(metre(), study({ inputs: [sales, pe], draws: 500 }))).toEqual(riskResult);
		const other = run(metre(), study({ inputs: [sales, pe], draws: 500 }), { seed: 8 });
		expect(other.mean).not.toBe(riskResult.mean);
		expect(other.seed).toBe(8);
	});

	it('counts the draws without a value, says where they arose, and leaves them out of no chance', () => {
		const flows = book(
			[
				{ name: 'outlay', unit: 'EUR', value: -100 },
				{ name: 'gain', unit: 'EUR', value: 30 },
				{
					name: 'flow',
					unit: 'EUR',
					per: ['year'],
					formula: 'IF(ORD(year) = 1; outlay; gain)'
				},
				{ name: 'rate', unit: '%', formula: 'IRR(flow over year)' }
			],
			{
				sets: [
					{
						name: 'year',
						label: 'Year',
						members: ['y0', 'y1', 'y2', 'y3', 'y4'].map((id) => ({ id }))
					}
				]
			}
		);
		const result = run(
			flows,
			study({
				quantity: 'rate',
				draws: 1000,
				target: { at_least: 0 },
				inputs: [
					{
						label: 'Gain',
						quantity: 'gain',
						mode: 'set',
						distribution: {
							kind: 'discrete',
							values: [
								{ value: 30, weight: 97 },
								{ value: -1, weight: 3 }
							]
						}
					}
				]
			})
		);
		// Each stratum is met once, so exactly 3 % fail.
		expect(result.errors).toBe(30);
		expect(result.faults).toEqual([
			{ code: 'no-answer', count: 30, first: result.origins[0]!.draw }
		]);
		expect(result.lookedAt).toBe(30);
		expect(result.origins).toHaveLength(1);
		expect(result.origins[0]).toMatchObject({ place: { quantity: 'rate' }, count: 30 });
		expect(result.origins[0]!.reason).toContain('never change sign');
		expect(result.target!.chance).toBe(0.97);
		expect(result.sd).toBeCloseTo(0, 12);
	});

	it('compares two scenarios on the same draws', () => {
		const dearer = {
			id: 'dearer',
			title: 'Dearer resin',
			parent: 'base',
			changes: [{ quantity: 'price', value: { PE: 3 } }]
		};
		const result = run(
			metre([dearer]),
			study({ inputs: [sales, pe], compare: 'dearer', draws: 2000 })
		);
		const { summary, difference, greater } = result.compare!;
		// Sales move both alike; the price of PE is the other's own there, and stays.
		expect(difference.mean).toBeCloseTo(-0.15, 4);
		expect(difference.sd).toBeCloseTo(Math.sqrt(0.01 / 24), 4);
		expect(summary.mean).toBeCloseTo(result.mean - 0.15, 4);
		expect(greater).toBe(0);
		expect(result.notices).toHaveLength(1);
		expect(result.notices[0]).toContain('PE has a value of its own in dearer');
	});

	it.each([
		[
			'bad-distribution',
			{ inputs: [{ ...pe, distribution: { ...pe.distribution, min: 3 } }] },
			'PE: its least value (3) is above its greatest (2)'
		],
		['bad-count', { draws: 0 }, 'whole number from 1'],
		['no-such-quantity', { quantity: 'gone' }, 'deleted or renamed'],
		['no-such-member', { quantity: 'price' }, 'has 2 values'],
		[
			'bad-correlation',
			{ inputs: [sales, pe], correlations: [{ between: ['Sales', 'PP'], rank: 0.5 }] },
			'names PP'
		],
		[
			'bad-correlation',
			{ inputs: [sales, sales], correlations: [{ between: ['Sales', 'Sales'], rank: 0.5 }] },
			'Two inputs of the study are called Sales'
		],
		[
			'bad-correlation',
			{ inputs: [sales, pe], correlations: [{ between: ['PE', 'PE'], rank: 0.5 }] },
			'with itself'
		]
	] as const)('refuses what cannot be (%s)', (code, more, words) => {
		const prepared = prepareRisk(metre(), study(more as Partial<RiskStudy>));
		if (prepared.ok) throw new Error('It was let through.');
		expect(prepared.problem.code).toBe(code);
		expect(prepared.problem.message).toContain(words);
	});

	it('repairs correlations that cannot all hold, and says so', () => {
		const three = ['A', 'B', 'C'].map((label) => ({ ...sales, label }));
		const result = run(
			metre(),
			study({
				inputs: three,
				draws: 100,
				correlations: [
					{ between: ['A', 'B'], rank: 0.9 },
					{ between: ['B', 'C'], rank: 0.9 },
					{ between: ['A', 'C'], rank: -0.9 }
				]
			})
		);
		expect(result.notices).toHaveLength(1);
		expect(result.notices[0]).toContain('cannot all hold at once');
		expect(result.together).toBeNull();
	});
});
