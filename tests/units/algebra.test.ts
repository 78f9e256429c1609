import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	ONE,
	coherent,
	divide,
	multiply,
	power,
	root,
	sameDimension,
	withinLimits
} from '$lib/units/algebra';
import { factor } from '$lib/units/convert';
import { dimensionText } from '$lib/units/print';
import type { Unit } from '$lib/units/unit';
import { anyUnit, anyUnitText, unit } from './generated';

/** Equal in everything but the text that a person wrote. */
function expectSame(a: Unit, b: Unit) {
	expect({ ...a, text: '' }).toEqual({ ...b, text: '' });
}

describe('unit arithmetic', () => {
	it('EUR/kg times kg/m is EUR/m', () => {
		expect(multiply(unit('EUR/kg'), unit('kg/m'))).toEqual(unit('EUR/m'));
	});

	it('EUR/coil over m/coil is EUR/m', () => {
		expect(divide(unit('EUR/coil'), unit('m/coil'))).toEqual(unit('EUR/m'));
	});

	it('keeps hours and years apart: h/year times year is h', () => {
		expect(multiply(unit('h/year'), unit('year'))).toEqual(unit('h'));
	});

	it('the square of m/s is m²/s²', () => {
		expect(power(unit('m/s'), 2)).toEqual(unit('m²/s²'));
	});

	it('names what it made, money first and time last', () => {
		expect(divide(divide(unit('EUR'), unit('h')), unit('person')).text).toBe('EUR/(person*h)');
		expect(divide(ONE, unit('h')).text).toBe('1/h');
		expect(divide(unit('h'), unit('h')).text).toBe('1');
		expect(multiply(unit('year'), unit('m*t')).text).toBe('t*m*year');
		expect(power(unit('m'), 4).text).toBe('m^4');
	});

	it('a unit made by hand goes through as one symbol', () => {
		const speed: Unit = { text: 'm/min', dimension: unit('m/min').dimension, scale: 1 / 60 };
		const length = multiply(speed, unit('min'));
		expect(length.text).toBe('(m/min)*min');
		expect(sameDimension(length, unit('m'))).toBe(true);
		expect(factor(length, unit('m'))).toBeCloseTo(1, 15);
	});
});

describe('a root', () => {
	it('of mm² is mm', () => {
		expect(root(unit('mm²'), 2)).toEqual(unit('mm'));
	});

	it('of m*mm has no symbol of its own, but the same in base units has: m', () => {
		expect(root(unit('m*mm'), 2)).toBeNull();
		expect(root(coherent(unit('m*mm')), 2)).toEqual(unit('m'));
	});

	it('of kg does not exist', () => {
		expect(root(coherent(unit('kg')), 2)).toBeNull();
	});

	it('undoes the power', () => {
		fc.assert(
			fc.property(anyUnit, fc.constantFrom(2, 3), (any, degree) => {
				expectSame(root(power(any, degree), degree) ?? ONE, any);
			})
		);
	});
});

describe('a unit in base units', () => {
	it('has scale 1 and the same dimension', () => {
		fc.assert(
			fc.property(anyUnit, (any) => {
				expect(coherent(any).scale).toBe(1);
				expect(sameDimension(coherent(any), any)).toBe(true);
				expect(factor(any, coherent(any))).toBe(any.scale);
			})
		);
	});
});

describe('limits', () => {
	it('hold for every unit that was read', () => {
		fc.assert(
			fc.property(anyUnit, (any) => {
				expect(withinLimits(any)).toBe(true);
			})
		);
	});

	it('refuse the tenth power of a metre, of a per cent, and a millionth power, without taking long', () => {
		expect(withinLimits(power(unit('m'), 10))).toBe(false);
		expect(withinLimits(power(unit('%'), 10))).toBe(false);
		expect(withinLimits(power(unit('MWh'), 1e6))).toBe(false);
		expect(withinLimits(power(unit('m'), 9))).toBe(true);
	});
});

describe('laws of unit arithmetic', () => {
	it('order does not matter', () => {
		fc.assert(
			fc.property(anyUnit, anyUnit, (a, b) => {
				expect(multiply(a, b)).toEqual(multiply(b, a));
			})
		);
	});

	it('grouping does not matter', () => {
		fc.assert(
			fc.property(anyUnit, anyUnit, anyUnit, (a, b, c) => {
				expect(multiply(multiply(a, b), c)).toEqual(multiply(a, multiply(b, c)));
			})
		);
	});

	it('one changes nothing', () => {
		fc.assert(
			fc.property(anyUnit, (any) => {
				expectSame(multiply(any, ONE), any);
			})
		);
	});

	it('divided by itself any unit is one', () => {
		fc.assert(
			fc.property(anyUnit, (any) => {
				expect(divide(any, any)).toEqual(ONE);
			})
		);
	});

	it('to divide undoes to multiply', () => {
		fc.assert(
			fc.property(anyUnit, anyUnit, (a, b) => {
				expectSame(divide(multiply(a, b), b), a);
			})
		);
	});

	it('powers add up', () => {
		const exponent = fc.integer({ min: -3, max: 3 });
		fc.assert(
			fc.property(anyUnit, exponent, exponent, (any, i, j) => {
				expect(multiply(power(any, i), power(any, j))).toEqual(power(any, i + j));
			})
		);
	});

	it('the scale of a product is the product of the scales', () => {
		fc.assert(
			fc.property(anyUnit, anyUnit, (a, b) => {
				const ratio = multiply(a, b).scale / (a.scale * b.scale);
				expect(ratio).toBeCloseTo(1, 12);
			})
		);
	});
});

describe('the printed text', () => {
	it('reads back as the same unit', () => {
		fc.assert(
			fc.property(anyUnitText, (text) => {
				const made = multiply(unit(text), ONE);
				expect(unit(made.text)).toEqual(made);
			})
		);
	});

	it('of a dimension reads back as that dimension', () => {
		fc.assert(
			fc.property(anyUnit, (any) => {
				expect(unit(dimensionText(any.dimension)).dimension).toEqual(any.dimension);
			})
		);
	});

	it.each([
		['EUR/t', 'EUR/kg'],
		['m/min', 'm/s'],
		['kEUR/(person*year)', 'EUR/(person*year)'],
		['kWh', 'kg*m²/s²'],
		['1/h', '1/s'],
		['%', '1'],
		['coil/shift', 'coil/shift']
	])('of the dimension of %s is %s', (text, dimension) => {
		expect(dimensionText(unit(text).dimension)).toBe(dimension);
	});
});
