import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sameDimension } from '$lib/units/algebra';
import { convert, factor } from '$lib/units/convert';
import { UnitSystem } from '$lib/units/system';
import type { UnitDefinition } from '$lib/units/unit';

function systemWith(...definitions: UnitDefinition[]) {
	const { system, problems } = UnitSystem.create(definitions);
	const unit = (text: string) => {
		const result = system.parse(text);
		if (!result.ok) throw new Error(result.problem.message);
		return result.unit;
	};
	return { system, problems, unit };
}

describe('a unit that a workbook adds', () => {
	it('as a thing counted has a dimension of its own', () => {
		const { problems, unit } = systemWith({ symbol: 'reel', label: 'winding reel' });
		expect(problems).toEqual([]);
		expect({ ...unit('EUR/reel').dimension }).toEqual({ EUR: 1, reel: -1 });
		expect(sameDimension(unit('reel'), unit('coil'))).toBe(false);
	});

	it('as a currency never meets another', () => {
		const { unit } = systemWith({ symbol: 'HUF', label: 'forint' });
		expect(sameDimension(unit('HUF/kg'), unit('EUR/kg'))).toBe(false);
	});

	it.each([
		['12 coil', 'coil', 12],
		['12*coil', 'coil', 12],
		['coil', 'coil', 1],
		['0.45359237 kg', 'kg', 0.45359237],
		['1000 EUR', 'EUR', 1000],
		['1e3 EUR', 'EUR', 1000],
		['1/h', '1/h', 1],
		['1 1/h', '1/h', 1],
		['8 h/shift', 'h/shift', 8],
		['12', '1', 12],
		['25.4 mm', 'm', 0.0254]
	])('as a multiple equals %s', (equals, base, times) => {
		const { problems, unit } = systemWith({ symbol: 'own', equals });
		expect(problems).toEqual([]);
		expect(factor(unit('own'), unit(base))).toBe(times);
	});

	// The definitions of the horsepower (550 ft·lbf/s) and of the tonne of oil equivalent (IEA), both from memory.
	it.each([
		['745.69987158227022 W', 'W', Number('745.69987158227022')],
		['745.69987158227022 W', 'kW', Number('0.74569987158227022')],
		['41868000 GJ', 'GJ', 41868000],
		['0.3048006096012192024384048768097536195072 m', 'm', 1200 / 3937],
		['9007199254740993 mm', 'mm', 9007199254740992],
		['6.02214076e23 piece', 'piece', 6.02214076e23],
		['1e-30 kg', 'g', 1e-27]
	])('keeps every digit of %s', (equals, base, times) => {
		const { problems, unit } = systemWith(
			{ symbol: 'own', equals },
			{ symbol: 'two', equals: '2 own' }
		);
		expect(problems).toEqual([]);
		expect(factor(unit('own'), unit(base))).toBe(times);
		expect(factor(unit(base), unit('own'))).toBeCloseTo(1 / times, 12);
		expect(convert(3, unit('two'), unit('own'))).toBe(6);
		expect(factor(unit('own^2'), unit('two^2'))).toBe(1 / 4);
	});

	it('converts with a single rounding, as decimals have it', () => {
		const { unit } = systemWith({ symbol: 'hp', equals: '745.69987158227022 W' });
		for (const power of [0.1, 3, 7.5, 1234.5678, -2]) {
			const exact = new Decimal(power).times('745.69987158227022');
			expect(convert(power, unit('hp'), unit('W'))).toBe(exact.toNumber());
			expect(convert(exact.toNumber(), unit('W'), unit('hp'))).toBeCloseTo(power, 12);
		}
		expect(convert(0, unit('hp'), unit('W'))).toBe(0);
	});

	it('may use another that stands after it', () => {
		const { problems, unit } = systemWith(
			{ symbol: 'truck', equals: '24 stack' },
			{ symbol: 'stack', equals: '3 pallet' }
		);
		expect(problems).toEqual([]);
		expect(convert(2, unit('truck'), unit('pallet'))).toBe(144); // 2 × 24 × 3
	});

	it('is offered after the built-in ones, with its label, in the order of the workbook', () => {
		const { system } = systemWith(
			{ symbol: 'truck', label: 'truckload', equals: '24 stack' },
			{ symbol: 'stack', equals: '3 pallet' }
		);
		expect(system.symbols.slice(-2)).toEqual([
			{ symbol: 'truck', label: 'truckload' },
			{ symbol: 'stack', label: 'stack' }
		]);
		expect(system.symbols[0]).toEqual({ symbol: 'm', label: 'metre' });
	});

	it('may be called __proto__ or constructor', () => {
		const { problems, unit } = systemWith(
			{ symbol: '__proto__' },
			{ symbol: 'constructor', equals: '3 __proto__' }
		);
		expect(problems).toEqual([]);
		expect(Object.keys(unit('__proto__').dimension)).toEqual(['__proto__']);
		expect(sameDimension(unit('__proto__'), unit('1'))).toBe(false);
		expect(factor(unit('constructor'), unit('__proto__'))).toBe(3);
	});

	it('is the same however its accents are stored', () => {
		const { unit } = systemWith({ symbol: 'Stu\u0308ck' });
		for (const typed of ['St\u00fcck', 'Stu\u0308ck'])
			expect(Object.keys(unit(typed).dimension)).toEqual(['St\u00fcck']);
	});

	it('is known to its own workbook alone', () => {
		systemWith({ symbol: 'reel' });
		expect(systemWith().system.parse('reel').ok).toBe(false);
	});
});

describe('a definition with a fault', () => {
	it.each([
		['kg', 'duplicate-unit', 'The unit "kg" is built in and cannot be defined again.'],
		['€', 'duplicate-unit', 'The unit "€" is built in and cannot be defined again.'],
		['x y', 'bad-unit', '"x y" cannot be a unit\'s symbol.'],
		['2x', 'bad-unit', '"2x" cannot be a unit\'s symbol.'],
		['', 'bad-unit', '"" cannot be a unit\'s symbol.']
	])('%j is reported', (symbol, code, message) => {
		const { problems } = systemWith({ symbol });
		expect(problems).toHaveLength(1);
		expect(problems[0]).toMatchObject({ code, symbol });
		expect(problems[0]?.message).toContain(message);
	});

	it('that comes a second time is reported, and the first holds', () => {
		const { problems, unit } = systemWith(
			{ symbol: 'rack', equals: '12 coil' },
			{ symbol: 'rack', equals: '10 coil' }
		);
		expect(problems).toMatchObject([{ code: 'duplicate-unit', symbol: 'rack' }]);
		expect(factor(unit('rack'), unit('coil'))).toBe(12);
	});

	it.each([
		['12 coyl', 'unknown-unit', 'coyl', 'Write coil.'],
		['0 coil', 'bad-unit', '0 ', 'it must be above 0'],
		['-2 coil', 'bad-unit', '-2 ', 'it must be above 0'],
		[`${'1'.repeat(41)} m`, 'bad-unit', `${'1'.repeat(41)} `, 'at most 40 digits before'],
		['1,5 m', 'bad-unit', '1,5', 'Write a point: 1.5.'],
		['1e99 Mm^9', 'bad-unit', '1e99 Mm^9', 'too large or small'],
		['2 m^99', 'exponent-too-large', '99', 'The exponent 99 is too large']
	])('equals %j: reported with its place', (equals, code, place, message) => {
		const { system, problems } = systemWith({ symbol: 'own', equals });
		expect(problems).toMatchObject([{ code, symbol: 'own' }]);
		const [problem] = problems;
		expect(equals.slice(problem?.start, problem?.end)).toBe(place);
		expect(problem?.message).toContain(message);
		expect(system.parse('EUR/own')).toMatchObject({
			ok: false,
			problem: {
				code: 'unknown-unit',
				start: 4,
				end: 7,
				message:
					'The workbook\'s own unit "own" cannot be used: its definition has a fault. Mend it in the list of units.'
			}
		});
	});

	it('in a circle names the circle in order', () => {
		const { problems } = systemWith(
			{ symbol: 'a1', equals: '2 b1' },
			{ symbol: 'b1', equals: '3 c1' },
			{ symbol: 'c1', equals: '5 a1' }
		);
		expect(problems.map((problem) => problem.symbol)).toEqual(['c1', 'b1', 'a1']);
		expect(problems[0]?.message).toContain('defined in a circle: "a1" by "b1" by "c1" by "a1"');
	});

	it('by itself is a circle', () => {
		const { problems } = systemWith({ symbol: 'own', equals: '2 own' });
		expect(problems).toHaveLength(1);
		expect(problems[0]?.message).toContain('in a circle: "own" by "own"');
	});

	it('does not keep the others from being used', () => {
		const { unit } = systemWith({ symbol: 'own', equals: '?' }, { symbol: 'reel' });
		expect(unit('reel').scale).toBe(1);
	});

	it('never throws, whatever stands in it', () => {
		const word = fc.oneof(
			fc.constantFrom('a', 'b', 'c', '2 a', '3 b', '4 c^9', '9e15 a^9', '1e-15 b', '12'),
			fc.string({ unit: 'binary', maxLength: 20 })
		);
		const definition = fc.record(
			{ symbol: fc.oneof(fc.constantFrom('a', 'b', 'c'), word), equals: word },
			{ requiredKeys: ['symbol'] }
		);
		fc.assert(
			fc.property(fc.array(definition, { maxLength: 6 }), (definitions) => {
				const { system, problems } = UnitSystem.create(definitions);
				for (const { message, start, end } of problems) {
					expect(message).toMatch(/\.$/);
					expect(start).toBeLessThanOrEqual(end);
				}
				for (const { symbol } of system.symbols)
					expect(system.parse(symbol)).toMatchObject({ ok: true });
			})
		);
	});
});

describe('an amount', () => {
	const { system } = systemWith();

	it.each([
		['1 year', 1, 'year'],
		['0.5 h', 0.5, 'h'],
		['year', 1, 'year'],
		['52 week/year', 52, 'week/year'],
		['1/h', 1, '1/h'],
		['3', 3, '1']
	])('%s', (text, value, unit) => {
		expect(system.parseAmount(text)).toMatchObject({ ok: true, value, unit: { text: unit } });
	});

	it('points at the fault in the whole text', () => {
		expect(system.parseAmount('10 EUR/hours')).toMatchObject({
			ok: false,
			problem: { start: 7, end: 12, nearest: 'h' }
		});
	});
});
