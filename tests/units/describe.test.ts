import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { divide, multiply, sameDimension, withinLimits } from '$lib/units/algebra';
import { describeRatio, naturalText } from '$lib/units/describe';
import { anyUnit, unit } from './generated';

describe('what a unit is missing', () => {
	it.each([
		['EUR/kg', 'EUR/m', 'kg/m'],
		['h', 'h/year', '1/year'],
		['kWh', 'kW', '1/h'],
		['kW', 'kWh', 'h'],
		['EUR/h', 'EUR/m', 'h/m'],
		['L', 'kg', 'kg/L'],
		['EUR', 'kEUR/year', '1/year'],
		['1', 'm', 'm'],
		['m', '1', '1/m'],
		['EUR', 'USD', 'USD/EUR'],
		['h', 'year', 'year/h'],
		['MJ/kg', 'EUR/kg', 'EUR/MJ'],
		['%', 'm', 'm'],
		['bar', 'N', 'm²'],
		['t', 'kg', '1'],
		['EUR/coil', 'EUR/m', 'coil/m']
	])('from %s to %s is %s', (from, to, missing) => {
		expect(describeRatio(unit(from), unit(to))).toBe(missing);
	});

	it('is always a unit that makes one into the other', () => {
		fc.assert(
			fc.property(anyUnit, anyUnit, (a, b) => {
				fc.pre(withinLimits(divide(b, a)));
				const missing = unit(describeRatio(a, b));
				expect(sameDimension(multiply(a, missing), b)).toBe(true);
			})
		);
	});
});

describe('a unit that arithmetic made', () => {
	it.each([
		['mm²*kg/m³', 'kg/m'],
		['kW*h', 'kWh'],
		['kW/kWh', '1/h'],
		['bar*L', 'kWh'],
		['EUR/kg', 'EUR/kg'],
		['m*h/min', 'm'],
		['%*EUR', 'EUR'],
		['%', '1']
	])('%s is called %s', (text, name) => {
		expect(naturalText(unit(text))).toBe(name);
	});

	it('keeps its dimension when it is called by a simpler name', () => {
		fc.assert(
			fc.property(anyUnit, (any) => {
				expect(sameDimension(unit(naturalText(any)), any)).toBe(true);
			})
		);
	});
});
