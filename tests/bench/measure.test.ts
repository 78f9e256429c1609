import { describe, expect, it } from 'vitest';
import { exponent, median, quantile } from './measure';

describe('the middle of a series', () => {
	it('is the value in between, whatever the order', () => {
		expect(median([9, 1, 5])).toBe(5);
	});

	it('lies half way where two are in the middle', () => {
		expect(median([4, 1, 2, 9])).toBe(3);
	});
});

describe('a quantile', () => {
	it('lies straight between its neighbours', () => {
		// Place 0.95 × 10 = 9.5 among 0 … 10.
		expect(quantile([10, 9, 8, 7, 6, 5, 4, 3, 2, 1, 0], 0.95)).toBeCloseTo(9.5, 12);
	});
});

describe('the exponent of growth', () => {
	it('is 1 for what doubles with its cause, 2 for what becomes four times as much', () => {
		expect(exponent([1, 10, 100], [3, 30, 300])).toBeCloseTo(1, 12);
		expect(exponent([1, 2, 4], [5, 20, 80])).toBeCloseTo(2, 12);
	});

	it('is 0 for what stays', () => {
		expect(exponent([1, 10, 100], [7, 7, 7])).toBeCloseTo(0, 12);
	});
});
