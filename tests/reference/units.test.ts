/**
 * Units against sources outside the project.
 *
 * The SI brochure: BIPM, The International System of Units, 9th edition 2019, quoted from memory: table 4 (coherent
 * derived units with names), table 7 (prefixes), table 8 (non-SI units accepted for use), and section 2.3.1.
 * Pound and inch: international yard and pound agreement of 1959, from memory.
 * mathjs: the unit module of the general-purpose mathematics library, for every symbol that both know.
 */
import { unit as mathUnit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { factor } from '$lib/units/convert';
import { UnitSystem } from '$lib/units/system';

const { system } = UnitSystem.create([
	{ symbol: 'lb', equals: '0.45359237 kg' },
	{ symbol: 'inch', equals: '25.4 mm' }
]);

function unit(text: string) {
	const result = system.parse(text);
	if (!result.ok) throw new Error(`${text}: ${result.problem.message}`);
	return result.unit;
}

describe('the SI brochure, table 8, from memory', () => {
	it.each([
		['min', 's', 60],
		['h', 'min', 60],
		['h', 's', 3600],
		['L', 'dm³', 1],
		['L', 'cm³', 1000],
		['L', 'm³', 1e-3],
		['t', 'kg', 1000]
	])('1 %s = %s × %d', (from, to, times) => {
		expect(factor(unit(from), unit(to))).toBe(times);
	});
});

describe('the SI brochure, table 4 and text, from memory', () => {
	it.each([
		['N', 'kg*m/s^2'],
		['Pa', 'kg/(m*s^2)'],
		['Pa', 'N/m²'],
		['J', 'kg*m²/s²'],
		['J', 'N*m'],
		['W', 'kg*m²/s³'],
		['W', 'J/s'],
		['Hz', '1/s']
	])('%s is %s', (named, spelled) => {
		expect(factor(unit(named), unit(spelled))).toBe(1);
	});

	it('1 bar = 100 kPa, 1 kWh = 3.6 MJ', () => {
		expect(factor(unit('bar'), unit('kPa'))).toBe(100);
		expect(factor(unit('kWh'), unit('MJ'))).toBe(3.6);
	});
});

describe('the SI brochure, table 7, from memory', () => {
	it.each([
		['Mm', 'm', 1e6],
		['km', 'm', 1e3],
		['dm', 'm', 1e-1],
		['cm', 'm', 1e-2],
		['mm', 'm', 1e-3],
		['µm', 'm', 1e-6],
		['GJ', 'J', 1e9],
		['mg', 'g', 1e-3]
	])('1 %s = %s × %d', (from, to, times) => {
		expect(factor(unit(from), unit(to))).toBe(times);
	});

	it('a prefix belongs to the symbol before the exponent: 1 cm³ is (10⁻² m)³', () => {
		expect(factor(unit('cm³'), unit('m³'))).toBe(1e-6);
	});
});

it('units of the yard and pound agreement of 1959 come out exactly when a workbook defines them, from memory', () => {
	expect(factor(unit('lb'), unit('g'))).toBe(453.59237);
	expect(factor(unit('inch'), unit('cm'))).toBe(2.54);
});

/** Our symbol, and what mathjs calls the same. */
const SHARED: readonly (readonly [string, string])[] = [
	...['m', 'mm', 'cm', 'dm', 'km', 'Mm', 'kg', 'g', 'mg', 's', 'min', 'h', 'ms', 'K'].map(same),
	...['N', 'bar', 'Pa', 'kPa', 'MPa', 'W', 'kW', 'MW', 'J', 'kJ', 'MJ', 'GJ'].map(same),
	...['Wh', 'kWh', 'MWh', 'Hz', 'L', 'mL'].map(same),
	['µm', 'um'],
	['t', 'tonne']
];

describe('mathjs', () => {
	it('knows every symbol of ours that measures length, mass, time, temperature and what follows from them', () => {
		const ours = system.symbols.filter(({ symbol }) => {
			const bases = Object.keys(unit(symbol).dimension);
			return bases.length > 0 && bases.every((base) => ['m', 'kg', 's', 'K'].includes(base));
		});
		const own = ['lb', 'inch'];
		expect(
			ours
				.map(({ symbol }) => symbol)
				.filter((symbol) => !own.includes(symbol))
				.sort()
		).toEqual(SHARED.map(([symbol]) => symbol).sort());
	});

	it.each(SHARED)('agrees on the size of %s', (symbol, theirs) => {
		for (const [other, otherTheirs] of SHARED) {
			const one = mathUnit(1, theirs);
			const alike = one.equalBase(mathUnit(1, otherTheirs));
			const [from, to] = [unit(symbol), unit(other)];
			if (alike) expectNear(factor(from, to), one.toNumber(otherTheirs));
			else expect(() => factor(from, to), `${symbol} to ${other}`).toThrow();
		}
	});

	it.each([
		['kg/m³', 'g/cm³', 'kg/m^3', 'g/cm^3'],
		['m/min', 'km/h', 'm/min', 'km/h'],
		['kWh/kg', 'MJ/t', 'kWh/kg', 'MJ/tonne'],
		['L/min', 'm³/h', 'L/min', 'm^3/h'],
		['N/mm²', 'bar', 'N/mm^2', 'bar'],
		['kJ/(kg*K)', 'Wh/(kg*K)', 'kJ/(kg K)', 'Wh/(kg K)'],
		['g/m', 'kg/km', 'g/m', 'kg/km'],
		['mm²', 'm²', 'mm^2', 'm^2']
	])('agrees on the factor from %s to %s', (from, to, theirFrom, theirTo) => {
		expectNear(factor(unit(from), unit(to)), mathUnit(1, theirFrom).toNumber(theirTo));
	});
});

function same(symbol: string): readonly [string, string] {
	return [symbol, symbol];
}

/** mathjs multiplies doubles, so a few last bits may differ. */
function expectNear(ours: number, theirs: number) {
	expect(Math.abs(ours / theirs - 1)).toBeLessThan(1e-14);
}
