/**
 * The straight line of least squares against the certified values of NIST's Statistical Reference Datasets,
 * set Norris (https://www.itl.nist.gov/div898/strd/lls/data/LINKS/DATA/Norris.dat; a work of the US Government),
 * and, with percentiles, against `@formulajs/formulajs` on random values.
 */
import * as formulajs from '@formulajs/formulajs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Op } from '$lib/engine/operations';
import { DIVIDES_BY_ZERO, NO_ANSWER } from '$lib/engine/state';
import { answer, missing, type HandPlan, type Term } from '../engine/interpreter-hand';
import { both } from '../engine/second-hand';
import { computed, type Shop } from '../engine/plan-builder';

const X = [
	0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777, 558.2, 0.4, 0.6, 775.5, 666.9,
	338, 447.5, 11.6, 556, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999, 779, 11.1,
	118.3, 229.2, 669.1, 448.9, 0.5
];
const Y = [
	0.1, 338.8, 118.1, 888, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8,
	339.3, 448.9, 10.8, 557.7, 228.3, 998, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888, 998.5, 778.9,
	10.2, 117.6, 228.9, 668.4, 449.2, 0.2
];
const SLOPE = 1.00211681802045;
const INTERCEPT = -0.262323073774029;

/** Operands: all y, then all x. */
const line = (op: number) => (plan: HandPlan, operands: number[]) => {
	const count = operands.length / 2;
	const terms = operands.slice(0, count).map((y, i): Term => [y, -1, operands[count + i]!]);
	return plan.aggregate(op, terms);
};

describe('NIST Norris', () => {
	it('slope and intercept to twelve figures, in both engines', () => {
		const slope = both([...Y, ...X], line(Op.Slope));
		const intercept = both([...Y, ...X], line(Op.Intercept));
		for (const found of [slope.first, slope.second])
			expect(Math.abs((found as number) / SLOPE - 1)).toBeLessThan(1e-12);
		for (const found of [intercept.first, intercept.second])
			expect(Math.abs((found as number) / INTERCEPT - 1)).toBeLessThan(1e-11);
	});

	it('far from zero the slope keeps nine figures: the year and the meter reading, not the difference', () => {
		const far = both([...Y.map((y) => y + 1e7), ...X.map((x) => x + 1e7)], line(Op.Slope));
		for (const found of [far.first, far.second])
			expect(Math.abs((found as number) / SLOPE - 1)).toBeLessThan(1e-9);
	});

	it('as a formula over a set, with its units', () => {
		const days = X.map((_, i) => `d${i}`);
		const values = (list: readonly number[]) =>
			Object.fromEntries(list.map((value, i) => [`d${i}`, value]));
		const shop = (unit: string, formula: string): Shop => ({
			sets: { day: days },
			quantities: {
				mass: { unit: 'kg', per: ['day'], value: values(X) },
				power: { unit: 'kWh', per: ['day'], value: values(Y) },
				x: { unit, formula }
			}
		});
		expect(computed(shop('kWh/kg', 'SLOPE(power; mass over day)'), 'x')).toBeCloseTo(SLOPE, 12);
		expect(computed(shop('MWh/t', 'SLOPE(power; mass)'), 'x')).toBeCloseTo(SLOPE, 12);
		expect(computed(shop('Wh', 'INTERCEPT(power; mass over day)'), 'x')).toBeCloseTo(
			INTERCEPT * 1000,
			8
		);
	});
});

describe('against another implementation', () => {
	const numbers = fc.array(fc.integer({ min: -1000, max: 1000 }), {
		minLength: 3,
		maxLength: 30
	});

	it('SLOPE and INTERCEPT', () => {
		fc.assert(
			fc.property(numbers, fc.infiniteStream(fc.integer({ min: -50, max: 50 })), (xs, noise) => {
				fc.pre(new Set(xs).size > 1);
				const ys = xs.map((x) => 3 * x + (noise.next().value as number));
				const ours = [Op.Slope, Op.Intercept].map((op) => answer([...ys, ...xs], line(op)));
				expect(ours[0]).toBeCloseTo(formulajs.SLOPE(ys, xs) as number, 9);
				expect(ours[1]).toBeCloseTo(formulajs.INTERCEPT(ys, xs) as number, 6);
			})
		);
	});

	it('PERCENTILE, in both engines', () => {
		const shares = fc.double({ min: 0, max: 1, noNaN: true });
		fc.assert(
			fc.property(numbers, shares, (values, share) => {
				const { first, second } = both([...values, share], (plan, operands) =>
					plan.aggregate(
						Op.Percentile,
						operands.slice(0, -1).map((node): Term => [node]),
						operands.at(-1)!
					)
				);
				const theirs = formulajs.PERCENTILE.INC(values, share) as number;
				expect(first).toBeCloseTo(theirs, 9);
				expect(second).toBeCloseTo(theirs, 9);
			}),
			{ numRuns: 30 }
		);
	});
});

describe('where there is no line', () => {
	it('fewer than two pairs have none, and equal x divide by zero, in both engines', () => {
		for (const op of [Op.Slope, Op.Intercept]) {
			const one = both([1, 2], line(op));
			expect([one.first, one.second]).toEqual([missing(NO_ANSWER), missing(NO_ANSWER)]);
			const same = both([1, 2, 3, 0.1, 0.1, 0.1], line(op));
			expect([same.first, same.second]).toEqual([
				missing(DIVIDES_BY_ZERO),
				missing(DIVIDES_BY_ZERO)
			]);
		}
	});
});
