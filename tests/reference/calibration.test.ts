/**
 * Fits against NIST's Statistical Reference Datasets (https://www.itl.nist.gov/div898/strd/; a work of the US Government):
 * Norris for the line, NoInt1 for the proportion, Michelso and NumAcc4 for mean and standard deviation; quantiles against
 * the library jstat. Slope, intercept and data of Norris and the data of Michelso are as in other tests and references of
 * this project; the certified standard errors of Norris and all of NoInt1 are from memory, and were recomputed.
 */
import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { fitted } from '$lib/calibration/fit';
import { chiSquaredBelow, studentAbove } from '$lib/calibration/quantiles';

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

const MICHELSO = [
	299.85, 299.74, 299.9, 300.07, 299.93, 299.85, 299.95, 299.98, 299.98, 299.88, 300.0, 299.98,
	299.93, 299.65, 299.76, 299.81, 300.0, 300.0, 299.96, 299.96, 299.96, 299.94, 299.96, 299.94,
	299.88, 299.8, 299.85, 299.88, 299.9, 299.84, 299.83, 299.79, 299.81, 299.88, 299.88, 299.83,
	299.8, 299.79, 299.76, 299.8, 299.88, 299.88, 299.88, 299.86, 299.72, 299.72, 299.62, 299.86,
	299.97, 299.95, 299.88, 299.91, 299.85, 299.87, 299.84, 299.84, 299.85, 299.84, 299.84, 299.84,
	299.89, 299.81, 299.81, 299.82, 299.8, 299.77, 299.76, 299.74, 299.75, 299.76, 299.91, 299.92,
	299.89, 299.86, 299.88, 299.72, 299.84, 299.85, 299.85, 299.78, 299.89, 299.84, 299.78, 299.81,
	299.76, 299.81, 299.79, 299.81, 299.82, 299.85, 299.87, 299.87, 299.81, 299.74, 299.81, 299.94,
	299.95, 299.8, 299.81, 299.87
];

const pairs = (x: readonly number[], y: readonly number[]) =>
	x.map((one, i) => ({ x: one, y: y[i]! }));
function fit(...[form, points]: Parameters<typeof fitted>) {
	const read = fitted(form, points);
	if (!read.ok) throw new Error(read.message);
	return read.fit;
}
/** How many digits agree, as NIST counts them. */
const digits = (found: number, certified: number) =>
	found === certified ? 16 : -Math.log10(Math.abs(found / certified - 1));

describe('NIST StRD', () => {
	it('Norris: intercept, slope, their standard errors, the spread and the share explained', () => {
		const { figures, spread, explained, points } = fit('line', pairs(X, Y));
		const [intercept, slope] = figures;
		expect(points).toBe(36);
		expect(digits(intercept!.value, -0.262323073774029)).toBeGreaterThan(11);
		expect(digits(slope!.value, 1.00211681802045)).toBeGreaterThan(13);
		expect(digits(intercept!.error!, 0.232818234301152)).toBeGreaterThan(12);
		expect(digits(slope!.error!, 0.429796848199937e-3)).toBeGreaterThan(12);
		expect(digits(spread!, 0.884796396144373)).toBeGreaterThan(12);
		expect(digits(explained!, 0.999993745883712)).toBeGreaterThan(13);
	});

	it('NoInt1: the slope of a proportion, its standard error and the spread', () => {
		const x = Array.from({ length: 11 }, (_, i) => 60 + i);
		const { figures, spread } = fit(
			'proportion',
			pairs(
				x,
				x.map((one) => one + 70)
			)
		);
		expect(digits(figures[0]!.value, 2.07438016528926)).toBeGreaterThan(13);
		expect(digits(figures[0]!.error!, 0.0165289256198347)).toBeGreaterThan(12);
		expect(digits(spread!, 3.56753034006338)).toBeGreaterThan(12);
	});

	it('Michelso: mean and standard deviation', () => {
		const { figures } = fit(
			'deviation',
			MICHELSO.map((y) => ({ x: NaN, y }))
		);
		expect(digits(figures[1]!.value, 299.8524)).toBeGreaterThan(14);
		expect(digits(figures[0]!.value, 0.0790105478190518)).toBeGreaterThan(12);
	});

	it('NumAcc4: a spread of 0.1 about ten million', () => {
		const ys = [10000000.2, ...Array.from({ length: 500 }, () => [10000000.1, 10000000.3]).flat()];
		const { figures } = fit(
			'deviation',
			ys.map((y) => ({ x: NaN, y }))
		);
		expect(digits(figures[1]!.value, 10000000.2)).toBeGreaterThan(13);
		expect(digits(figures[0]!.value, 0.1)).toBeGreaterThan(7);
	});
});

describe('quantiles', () => {
	it('of Student and of chi-squared are those of the library jstat', () => {
		for (const freedom of [1, 2, 5, 10, 34, 200, 4999])
			for (const probability of [0.025, 0.005, 1e-5]) {
				const t = jStat.studentt.inv(1 - probability, freedom);
				expect(Math.abs(studentAbove(probability, freedom) / t - 1)).toBeLessThan(1e-6);
			}
		for (const freedom of [1, 2, 10, 99, 4999])
			for (const probability of [0.025, 0.975]) {
				const x = jStat.chisquare.inv(probability, freedom);
				expect(Math.abs(chiSquaredBelow(probability, freedom) / x - 1)).toBeLessThan(1e-6);
			}
	});

	it('are those of printed tables: t of 10 is 2.228, chi-squared of 10 is 3.247 and 20.483', () => {
		// NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2 and 1.3.6.7.4; from memory.
		expect(studentAbove(0.025, 10)).toBeCloseTo(2.228, 3);
		expect(chiSquaredBelow(0.025, 10)).toBeCloseTo(3.247, 3);
		expect(chiSquaredBelow(0.975, 10)).toBeCloseTo(20.483, 3);
	});
});
