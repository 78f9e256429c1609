import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fractionOf, toNumber, toPower, toSmall } from '$lib/units/fraction';

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
		['0.5', 1, 2],
		['1000', 1000, 1],
		['0.45359237', 45359237, 100000000],
		['1e3', 1000, 1],
		['2.5e-1', 1, 4]
	])('%s is %d over %d', (decimal, numerator, denominator) => {
		expect(fractionOf(decimal)).toEqual({ numerator, denominator });
	});

	it.each(['0', '0.0', '-1', '', '1,5', '1e16', '9007199254740993', '1e-16', '1e999', 'Infinity'])(
		'%j is none that can be held exactly',
		(decimal) => {
			expect(fractionOf(decimal)).toBeNull();
		}
	);
});

describe('a power of a fraction', () => {
	it('with a negative exponent is turned over', () => {
		const two = { numerator: 2, denominator: 3 };
		expect(toSmall(toPower(two, -2))).toEqual({ numerator: 9, denominator: 4 });
		expect(toSmall(toPower(two, 0))).toEqual({ numerator: 1, denominator: 1 });
	});
});
