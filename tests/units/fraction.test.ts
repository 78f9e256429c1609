import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exactly, fractionOf, logTen, toNumber, toPower, toSmall } from '$lib/units/fraction';

describe('a fraction as a double', () => {
	it('is the nearest one, as the language itself divides, wherever both parts are exact', () => {
		const whole = fc.integer({ min: 1, max: Number.MAX_SAFE_INTEGER });
		fc.assert(
			fc.property(whole, whole, (a, b) => {
				const common = 10n ** 40n; // too large for a double, and cancels
				const fraction = { numerator: BigInt(a) * common, denominator: BigInt(b) * common };
				expect(toNumber(fraction)).toBe(a / b);
			})
		);
	});

	it('is right for parts beyond a double', () => {
		expect(toNumber({ numerator: 10n ** 400n, denominator: 3n * 10n ** 399n })).toBe(10 / 3);
		expect(toNumber({ numerator: 1n, denominator: 3n * 10n ** 100n })).toBe(1e-100 / 3);
		expect(toNumber({ numerator: 10n ** 120n, denominator: 1n })).toBe(1e120);
	});

	it('of a tie goes to even, and just above a tie goes up', () => {
		const tie = 2n ** 53n + 1n;
		expect(toNumber({ numerator: tie, denominator: 1n })).toBe(2 ** 53);
		const above = { numerator: tie * 10n ** 60n + 1n, denominator: 10n ** 60n };
		expect(toNumber(above)).toBe(2 ** 53 + 2);
	});
});

describe('a decimal as a fraction', () => {
	it.each([
		['0.5', 1n, 2n],
		['1000', 1000n, 1n],
		['0.45359237', 45359237n, 100000000n],
		['1e3', 1000n, 1n],
		['2.5e-1', 1n, 4n],
		['9007199254740993', 9007199254740993n, 1n],
		['745.69987158227022', 37284993579113511n, 50000000000000n],
		['1e-30', 1n, 10n ** 30n]
	])('%s is %d over %d', (decimal, numerator, denominator) => {
		expect(fractionOf(decimal)).toEqual({ numerator, denominator });
	});

	it.each(['0', '0.0', '-1', '', '1,5', '1e999', 'Infinity', '1'.repeat(41)])(
		'%j is none',
		(decimal) => {
			expect(fractionOf(decimal)).toBeNull();
		}
	);
});

describe('a power of a fraction', () => {
	it('with a negative exponent is turned over', () => {
		const two = { numerator: 2n, denominator: 3n };
		expect(toSmall(toPower(two, -2))).toEqual({ numerator: 9, denominator: 4 });
		expect(toSmall(toPower(two, 0))).toEqual({ numerator: 1, denominator: 1 });
	});
});

describe('a double as a fraction', () => {
	it('is the same double again', () => {
		fc.assert(
			fc.property(fc.double({ min: 5e-324, noNaN: true, noDefaultInfinity: true }), (value) => {
				expect(toNumber(exactly(value))).toBe(value);
			})
		);
		expect(exactly(0.75)).toEqual({ numerator: 3n, denominator: 4n });
	});
});

it('a whole number has as many digits as its logarithm says, beyond a double too', () => {
	expect(logTen(1000n)).toBeCloseTo(3, 14);
	expect(logTen(10n ** 400n)).toBeCloseTo(400, 12);
	expect(logTen(2n ** 2000n)).toBeCloseTo(2000 * Math.log10(2), 10);
});
