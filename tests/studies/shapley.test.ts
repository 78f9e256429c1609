/**
 * Shapley values against worked examples. Airport games: "Shapley values: airport problem"
 * (math.techqa.club/shapley-values-airport-problem-2541276), "Airport problem" after Littlechild and Owen
 * 1973 (hellenicaworld.com/Science/Mathematics/en/AirportProblem.html), and "Calculate the Shapley value of
 * the airport game" (math.techqa.club/calculate-the-shapley-value-of-the-airport-game-4152535). The glove
 * game is from memory; cost attributions are the mean over all orders, worked by hand beside each.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exactShares, sampledShares, shares, type Subset } from '$lib/studies/shapley';

const each = (worth: (subset: Subset) => number) => (subsets: readonly Subset[]) =>
	subsets.map(worth);
/** A runway costs what the largest of the aircraft that use it needs. */
const airport = (costs: readonly number[]) =>
	each((subset) => costs.reduce((most, cost, i) => Math.max(most, subset[i]! * cost), 0));
const sum = (parts: readonly number[]) => parts.reduce((a, b) => a + b, 0);

describe('the shares of an airport game', () => {
	it.each([
		[
			[100, 160, 200],
			[33.33333333, 63.33333333, 103.33333333]
		],
		[
			[8, 11, 13, 18],
			[2, 3, 4, 9]
		],
		[
			[40, 50, 60, 70, 80, 90],
			[6.66666667, 8.66666667, 11.16666667, 14.5, 19.5, 29.5]
		]
	])('of runways %j are %j', (costs, published) => {
		const { parts, subsets } = exactShares(costs.length, airport(costs));
		parts.forEach((part, i) => expect(part).toBeCloseTo(published[i]!, 7));
		expect(sum(parts)).toBeCloseTo(Math.max(...costs), 9);
		expect(subsets).toBe(2 ** costs.length);
	});
});

it('a left glove is worth 2/3 where two right ones compete for it', () => {
	const pair = each(([left, one, other]) => (left && (one || other) ? 1 : 0));
	const { parts } = exactShares(3, pair);
	[2 / 3, 1 / 6, 1 / 6].forEach((share, i) => expect(parts[i]).toBeCloseTo(share, 12));
});

describe('the difference of a cost, split among', () => {
	it('two factors: the middle of the two orders', () => {
		// Price 10 to 12, quantity 100 to 90: 2 × (100 + 90) / 2 = 190, −10 × (10 + 12) / 2 = −110.
		const revenue = each(([price, metres]) => (price ? 12 : 10) * (metres ? 90 : 100));
		expect(exactShares(2, revenue).parts).toEqual([190, -110]);
	});

	it('mass, resin price and scrap: six orders', () => {
		const cost = each(
			([mass, price, scrap]) =>
				((mass ? 0.084 : 0.09) * (price ? 1.9 : 1.6)) / (1 - (scrap ? 0.03 : 0.05))
		);
		const { parts } = exactShares(3, cost);
		[-0.01093543, 0.02719371, -0.00330114].forEach((share, i) =>
			expect(parts[i]).toBeCloseTo(share, 7)
		);
		expect(sum(parts)).toBeCloseTo(0.16453608 - 0.15157895, 7);
	});

	it('price, volume and mix of two products', () => {
		// Metres 100 to 120 in all; share of the first 60 % to 50/120; prices 5 to 5.5 and 8 to 7.8.
		const revenue = each(([price, volume, mix]) => {
			const metres = volume ? 120 : 100;
			const share = mix ? 50 / 120 : 0.6;
			const [first, second] = price ? [5.5, 7.8] : [5, 8];
			return metres * (share * first + (1 - share) * second);
		});
		const { parts } = exactShares(3, revenue);
		// Volume at old prices and mix is 124, mix then 66, price last 11 (volume first, price last): 201 in all.
		expect(sum(parts)).toBeCloseTo(201, 9);
		const [none, volume, volumeMix, all] = revenue([
			Uint8Array.of(0, 0, 0),
			Uint8Array.of(0, 1, 0),
			Uint8Array.of(0, 1, 1),
			Uint8Array.of(1, 1, 1)
		]);
		expect(volume! - none!).toBeCloseTo(124, 9);
		expect(volumeMix! - volume!).toBeCloseTo(66, 9);
		expect(all! - volumeMix!).toBeCloseTo(11, 9);
		// Over all six orders: price by the mean of its four gains, weighted 1/3, 1/6, 1/6, 1/3.
		const gains = [
			[0, 0],
			[1, 0],
			[0, 1],
			[1, 1]
		].map(([v, m]) => {
			const [after, before] = revenue([Uint8Array.of(1, v!, m!), Uint8Array.of(0, v!, m!)]);
			return after! - before!;
		});
		const [g00, g10, g01, g11] = gains as [number, number, number, number];
		expect(parts[0]).toBeCloseTo(g00 / 3 + g10 / 6 + g01 / 6 + g11 / 3, 9);
	});
});

describe('parts', () => {
	it('add up to the difference, exact or sampled', () => {
		fc.assert(
			fc.property(
				fc.integer({ min: 1, max: 7 }),
				fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), {
					minLength: 128,
					maxLength: 128
				}),
				(changes, worths) => {
					const worth = each((subset) => worths[parseInt(subset.join(''), 2)]!);
					const whole =
						worth([new Uint8Array(changes).fill(1)])[0]! - worth([new Uint8Array(changes)])[0]!;
					for (const parts of [
						exactShares(changes, worth).parts,
						sampledShares(changes, worth, 20, 3).parts
					])
						expect(Math.abs(sum(parts) - whole)).toBeLessThan(1e-8 * 1e6);
				}
			)
		);
	});

	it('are the changes themselves where none touches another', () => {
		const { parts, standardErrors } = sampledShares(
			15,
			each((subset) => subset.reduce((total, made, i) => total + made * (i + 1), 0)),
			10,
			1
		);
		parts.forEach((part, i) => expect(part).toBeCloseTo(i + 1, 9));
		standardErrors?.forEach((error) => expect(error).toBeCloseTo(0, 9));
	});

	it('are near the exact ones when sampled, within four standard errors, and the same for the same seed', () => {
		const costs = [40, 50, 60, 70, 80, 90];
		const exact = exactShares(6, airport(costs)).parts;
		const sampled = sampledShares(6, airport(costs), 4000, 41);
		sampled.parts.forEach((part, i) =>
			expect(Math.abs(part - exact[i]!)).toBeLessThan(4 * sampled.standardErrors![i]! + 1e-9)
		);
		expect(sampledShares(6, airport(costs), 4000, 41)).toEqual(sampled);
		expect(sampledShares(6, airport(costs), 4000, 42).parts).not.toEqual(sampled.parts);
	});

	it('are exact up to twelve changes and sampled above', () => {
		const plain = each((subset) => subset[0]!);
		expect(shares(12, plain).standardErrors).toBeNull();
		expect(shares(13, plain).standardErrors).toHaveLength(13);
	});

	it('say how many subsets have no answer, and which first', () => {
		const worth = each(([first, second]) => (first && !second ? NaN : 1));
		expect(exactShares(2, worth)).toMatchObject({
			without: 1,
			firstWithout: Uint8Array.of(1, 0)
		});
	});
});
