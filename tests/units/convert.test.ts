import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sameDimension } from '$lib/units/algebra';
import { UnitMismatchError, convert, factor } from '$lib/units/convert';
import type { Unit } from '$lib/units/unit';
import { anyUnit, unit } from './generated';

describe('a factor', () => {
	it.each([
		['m/min', 'm/h', 60],
		['h', 'min', 60],
		['min', 's', 60],
		['kWh', 'MJ', 3.6],
		['kW*h', 'kWh', 1],
		['MWh', 'GJ', 3.6],
		['EUR/t', 'EUR/kg', 0.001],
		['g/cm³', 'kg/m³', 1000],
		['kg/m³', 'g/cm³', 0.001],
		['mm', 'm', 0.001],
		['mm²', 'm²', 1e-6],
		['mm³', 'm³', 1e-9],
		['µm', 'mm', 0.001],
		['%', '1', 0.01],
		['1', '%', 100],
		['1', 'ppm', 1e6],
		['kEUR', 'EUR', 1000],
		['MEUR/year', 'kEUR/year', 1000],
		['bar', 'MPa', 0.1],
		['N/mm²', 'MPa', 1],
		['W', 'J/h', 3600],
		['L', 'm³', 0.001],
		['Hz', '1/min', 60],
		['g/m', 'kg/km', 1],
		['h/year', 's/year', 3600]
	])('from %s to %s is exactly %d', (from, to, times) => {
		expect(factor(unit(from), unit(to))).toBe(times);
	});

	it.each([
		['h', 'year'],
		['day', 'h'],
		['week', 'day'],
		['shift', 'h'],
		['EUR', 'USD'],
		['kEUR', 'kCHF'],
		['kg', 'm'],
		['coil', 'pallet'],
		['coil', '1'],
		['kWh', 'kW'],
		['EUR/kg', 'EUR/m']
	])('from %s to %s does not exist', (from, to) => {
		expect(sameDimension(unit(from), unit(to))).toBe(false);
		expect(() => factor(unit(from), unit(to))).toThrow(UnitMismatchError);
		expect(() => convert(1, unit(from), unit(to))).toThrow(
			`Cannot convert ${from} to ${to}: they do not measure the same thing.`
		);
	});

	it('is also exact for a unit that was made by hand, without its symbols', () => {
		const hour: Unit = { text: 'hour', dimension: unit('h').dimension, scale: 3600 };
		expect(factor(hour, unit('min'))).toBe(60);
		const minutes = 1 / 60; // a double near a sixtieth
		const perMinute: Unit = { text: 'x', dimension: unit('1/s').dimension, scale: minutes };
		expect(factor(perMinute, unit('1/h'))).toBeCloseTo(60, 12);
	});
});

describe('a converted value', () => {
	it.each([
		[1.9, 'h', 'min', 114],
		[114, 'min', 'h', 1.9],
		[23, 'min', 'h', 23 / 60], // 23 × (1/60) ends in another digit
		[0.9, 'g', 'kg', 0.0009],
		[1950, 'EUR/t', 'EUR/kg', 1.95],
		[1.95, 'EUR/kg', 'EUR/t', 1950],
		[23, 'm/min', 'm/h', 1380],
		[6.5, '%', '1', 0.065],
		[0.3, 'mm', 'm', 0.0003],
		[-12, 'K', 'K', -12],
		[0, 't', 'kg', 0]
	])('%d %s in %s', (value, from, to, converted) => {
		expect(convert(value, unit(from), unit(to))).toBe(converted);
	});

	it('survives where value times numerator is beyond a double', () => {
		expect(convert(1e308, unit('Wh'), unit('MJ')) / 3.6e305).toBeCloseTo(1, 14); // × 9 ÷ 2500
	});

	it('comes back as it went, to the last two bits', () => {
		const values = fc.double({ min: 1e-9, max: 1e12, noNaN: true });
		fc.assert(
			fc.property(values, alike, (value, [from, to]) => {
				const back = convert(convert(value, from, to), to, from);
				expect(Math.abs(back - value)).toBeLessThanOrEqual(value * 2 ** -51);
			})
		);
	});
});

const groups = [
	['m', 'mm', 'cm', 'dm', 'km', 'Mm', 'µm'],
	['kg', 'g', 'mg', 't'],
	['s', 'min', 'h', 'ms'],
	['J', 'Wh', 'kWh', 'MWh', 'MJ', 'W*s', 'kW*h', 'N*m'],
	['Pa', 'kPa', 'MPa', 'bar', 'N/mm²'],
	['m³', 'L', 'mL', 'mm³'],
	['EUR', 'kEUR', 'MEUR'],
	['1', '%', '‰', 'ppm', 'mm/m'],
	['EUR/kg', 'EUR/t', 'kEUR/t', 'EUR/g'],
	['m/min', 'm/h', 'km/h', 'mm/s']
];
/** Two units of one dimension. */
const alike = fc
	.constantFrom(...groups)
	.chain((group) => fc.tuple(fc.constantFrom(...group), fc.constantFrom(...group)))
	.map(([from, to]) => [unit(from), unit(to)] as const);

describe('factors', () => {
	it('there and back are one', () => {
		fc.assert(
			fc.property(alike, ([from, to]) => {
				expect(factor(from, to) * factor(to, from)).toBeCloseTo(1, 14);
			})
		);
	});

	it('over a third unit are the direct factor', () => {
		fc.assert(
			fc.property(
				fc.constantFrom(...groups).chain((group) => {
					const arbitrary = fc.constantFrom(...group).map(unit);
					return fc.tuple(arbitrary, arbitrary, arbitrary);
				}),
				([a, b, c]) => {
					const ratio = (factor(a, b) * factor(b, c)) / factor(a, c);
					expect(ratio).toBeCloseTo(1, 14);
				}
			)
		);
	});

	it('from a unit to itself are exactly one', () => {
		fc.assert(
			fc.property(anyUnit, (any) => {
				expect(factor(any, any)).toBe(1);
			})
		);
	});
});
