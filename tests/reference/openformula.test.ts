/**
 * Scalar functions and aggregates against `@formulajs/formulajs`, an independent implementation of the
 * OpenFormula functions (https://github.com/formulajs/formulajs), on random values.
 */
import * as formulajs from '@formulajs/formulajs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { median, placeAmong, sampleDeviation } from '$lib/engine/interpreter/statistics';
import { compute } from '$lib/engine/scalar';
import { Op } from '$lib/engine/operations';
import { answer, type Entry } from '../engine/interpreter-hand';

const anyNumber = fc.double({ min: -1e6, max: 1e6, noNaN: true });
const notZero = anyNumber.filter((x) => Math.abs(x) > 1e-3);
const list = fc.array(anyNumber, { minLength: 2, maxLength: 30 });

/** Equal to nine significant figures of the larger, as the two engines of the workbook must be. */
function expectAlike(ours: Entry, theirs: unknown) {
	expect(typeof theirs).toBe('number');
	const [x, y] = [ours as number, theirs as number];
	expect(Math.abs(x - y)).toBeLessThanOrEqual(1e-9 * Math.max(1e-9, Math.abs(x), Math.abs(y)));
}

describe('functions of one number', () => {
	it.each([
		['ABS', Op.Abs, formulajs.ABS, anyNumber],
		['SQRT', Op.Sqrt, formulajs.SQRT, fc.double({ min: 0, max: 1e9, noNaN: true })],
		['EXP', Op.Exp, formulajs.EXP, fc.double({ min: -100, max: 100, noNaN: true })],
		['LN', Op.Ln, formulajs.LN, fc.double({ min: 1e-9, max: 1e9, noNaN: true })]
	])('%s', (_name, op, theirs: (x: number) => unknown, numbers) => {
		fc.assert(fc.property(numbers, (x) => expectAlike(compute(op, x, 0), theirs(x))));
	});
});

describe('functions of two numbers', () => {
	const digits = fc.integer({ min: -3, max: 6 });
	// The package gives ROUND(9e-7; 6) = 0, so numbers that are written with an exponent are held to the definition.
	const written = anyNumber.filter((x) => !String(x).includes('e'));
	it.each([
		['ROUND', Op.Round, formulajs.ROUND, written, digits],
		['ROUNDUP', Op.RoundUp, formulajs.ROUNDUP, written, digits],
		['ROUNDDOWN', Op.RoundDown, formulajs.ROUNDDOWN, written, digits]
	])('%s', (_name, op, theirs: (x: number, y: number) => unknown, xs, ys) => {
		fc.assert(
			fc.property(xs, ys, (x, y) => {
				// On the very edge between two steps the last bit decides, and the two scale differently.
				const edge = (Math.abs(x) * 10 ** y * 2) % 1;
				fc.pre(Math.min(edge, 1 - edge) > 1e-5);
				expectAlike(compute(op, x, y), theirs(x, y));
			})
		);
	});

	it('ROUND of numbers below a millionth goes to the nearest step, half away from zero', () => {
		expect(compute(Op.Round, 9e-7, 6)).toBe(1e-6);
		expect(compute(Op.Round, -5.000005e-7, 6)).toBe(-1e-6);
		expect(compute(Op.Round, 4.9e-7, 6)).toBe(0);
		expect(compute(Op.RoundUp, 1e-9, 6)).toBe(1e-6);
		expect(compute(Op.RoundDown, 9e-7, 6)).toBe(0);
	});

	it('MOD, of numbers above zero', () => {
		fc.assert(
			fc.property(fc.nat({ max: 1e6 }), fc.integer({ min: 1, max: 99 }), (x, y) =>
				expectAlike(compute(Op.Mod, x, y), formulajs.MOD(x, y))
			)
		);
	});

	// The package gives MOD(-6; 3) = 3 and MOD(7; -3) = -1, so negative numbers are held to the definition.
	it("MOD of negative numbers is x - y × INT(x / y), OpenFormula's definition", () => {
		const whole = fc.integer({ min: -1e6, max: 1e6 });
		fc.assert(
			fc.property(whole, fc.integer({ min: -99, max: 99 }), (x, y) => {
				fc.pre(y !== 0);
				expectAlike(compute(Op.Mod, x, y), x - y * Math.floor(x / y));
			})
		);
	});

	it('CEILING and FLOOR of numbers above zero', () => {
		const above = fc.integer({ min: 1, max: 100000 });
		fc.assert(
			fc.property(above, fc.integer({ min: 1, max: 60 }), (x, step) => {
				expectAlike(compute(Op.Ceiling, x, step), formulajs.CEILING(x, step));
				expectAlike(compute(Op.Floor, x, step), formulajs.FLOOR(x, step));
			})
		);
	});

	it('POWER', () => {
		fc.assert(
			fc.property(
				fc.double({ min: 1e-3, max: 1e3, noNaN: true }),
				fc.double({ min: -20, max: 20, noNaN: true }),
				(x, y) => expectAlike(compute(Op.Power, x, y), formulajs.POWER(x, y))
			)
		);
	});

	it('division, by anything but zero', () => {
		fc.assert(
			fc.property(anyNumber, notZero, (x, y) => expectAlike(compute(Op.Divide, x, y), x / y))
		);
	});
});

describe('aggregates', () => {
	it.each([
		['SUM', Op.Sum, formulajs.SUM],
		['MIN', Op.Min, formulajs.MIN],
		['MAX', Op.Max, formulajs.MAX],
		['AVERAGE', Op.Average, formulajs.AVERAGE],
		['COUNT', Op.Count, formulajs.COUNT],
		['MEDIAN', Op.Median, formulajs.MEDIAN],
		['STDEV', Op.Stdev, formulajs.STDEV.S]
	])('%s', (_name, op, theirs: (...all: number[]) => unknown) => {
		fc.assert(
			fc.property(list, (values) => {
				const size = Math.max(...values.map(Math.abs));
				const ours = answer(values, (plan, all) =>
					plan.aggregate(
						op,
						all.map((value) => [value])
					)
				);
				const other = theirs(...values) as number;
				expect(Math.abs((ours as number) - other)).toBeLessThanOrEqual(1e-9 * Math.max(1, size));
			})
		);
	});

	it('PRODUCT', () => {
		const factors = fc.array(fc.double({ min: 0.1, max: 10, noNaN: true }), {
			minLength: 1,
			maxLength: 20
		});
		fc.assert(
			fc.property(factors, (values) => {
				const ours = answer(values, (plan, all) =>
					plan.aggregate(
						Op.Product,
						all.map((value) => [value])
					)
				);
				expectAlike(ours, formulajs.PRODUCT(...values));
			})
		);
	});

	it('RANK, largest first', () => {
		const ties = fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 1, maxLength: 12 });
		fc.assert(
			fc.property(ties, fc.nat(), (values, at) => {
				const x = values[at % values.length]!;
				expect(placeAmong(x, values, values.length)).toBe(formulajs.RANK.EQ(x, values));
			})
		);
	});

	it('MEDIAN and STDEV of the first few of a longer list', () => {
		expect(median(Float64Array.of(3, 1, 2, 99, 99), 3)).toBe(2);
		expect(sampleDeviation([1, 3, 99], 2)).toBeCloseTo(Math.SQRT2, 12);
		expect(sampleDeviation([2, 2, 2, 2, 2, 2], 6)).toBe(0);
	});
});

describe('the errors where the other implementation reports one too', () => {
	it.each([
		['SQRT(-1)', () => compute(Op.Sqrt, -1, 0), () => formulajs.SQRT(-1)],
		['MOD(1; 0)', () => compute(Op.Mod, 1, 0), () => formulajs.MOD(1, 0)]
	])('%s', (_name, ours, theirs) => {
		expect(Number.isFinite(ours())).toBe(false);
		expect(theirs()).toBeInstanceOf(Error);
	});
});
