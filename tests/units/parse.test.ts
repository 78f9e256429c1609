import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { UnitSystem } from '$lib/units/system';
import type { UnitProblem } from '$lib/units/unit';
import { anyUnitText, unit } from './generated';

const { system } = UnitSystem.create([]);

function problem(text: string): UnitProblem {
	const result = system.parse(text);
	if (result.ok) throw new Error(`${text} was taken as a unit.`);
	return result.problem;
}

/** The part of the text that the problem points at. */
const pointedAt = (text: string) => text.slice(problem(text).start, problem(text).end);

describe('a unit', () => {
	it.each([
		['EUR/kg', { EUR: 1, kg: -1 }, 1],
		['kWh/kg', { m: 2, s: -2 }, 3.6e6],
		['m/min', { m: 1, s: -1 }, 1 / 60],
		['h/week', { s: 1, week: -1 }, 3600],
		['EUR/(person*h)', { EUR: 1, person: -1, s: -1 }, 1 / 3600],
		['%', {}, 0.01],
		['‰', {}, 0.001],
		['ppm', {}, 1e-6],
		['kEUR/year', { EUR: 1, year: -1 }, 1000],
		['MEUR', { EUR: 1 }, 1e6],
		['1/h', { s: -1 }, 1 / 3600],
		['m²', { m: 2 }, 1],
		['mm^2', { m: 2 }, 1e-6],
		['m³', { m: 3 }, 1],
		['m^-1', { m: -1 }, 1],
		['m⁻¹', { m: -1 }, 1],
		['m^−1', { m: -1 }, 1],
		['(m/s)^2', { m: 2, s: -2 }, 1],
		['t*km', { kg: 1, m: 1 }, 1e6]
	])('%s has its dimension and scale', (text, dimension, scale) => {
		expect({ ...unit(text).dimension }).toEqual(dimension);
		expect(unit(text).scale).toBe(scale);
	});

	it.each(['', ' ', '1', '1/1', 'm/m'])('%j is the plain number one', (text) => {
		expect(Object.keys(unit(text).dimension)).toEqual([]);
		expect(unit(text).scale).toBe(1);
	});

	it('of a part that is beyond the limits alone, but not with what stands beside it', () => {
		expect(unit('kPa^6/(N^2*m)').scale).toBe(1e18);
	});

	it('inherits nothing: its dimension has no constructor', () => {
		expect('constructor' in unit('m').dimension).toBe(false);
		expect('constructor' in unit('').dimension).toBe(false);
	});

	it('is called "1" when nothing is written', () => {
		expect(unit('').text).toBe('1');
	});

	it('keeps the text as it was written, without the space around it', () => {
		expect(unit(' EUR / h/person ').text).toBe('EUR / h/person');
	});

	it('divides by everything after a slash: a/b/c is a/(b*c)', () => {
		expect(unit('EUR/person/h')).toEqual({ ...unit('EUR/(person*h)'), text: 'EUR/person/h' });
	});

	it.each(['kg·m', 'kg⋅m', 'kg×m', 'kg * m'])('%s is kg*m', (text) => {
		expect(unit(text)).toEqual({ ...unit('kg*m'), text });
	});

	it.each([
		['€/kg', 'EUR/kg'],
		['£', 'GBP'],
		['k€', 'kEUR'],
		['l', 'L'],
		['um', 'µm'],
		['μm', 'µm']
	])('%s is another spelling of %s', (alias, symbol) => {
		expect(unit(alias)).toEqual({ ...unit(symbol), text: alias });
	});
});

describe('a unit with two readings', () => {
	it.each([
		['EUR/kg*h', 'EUR/kg*h has two readings. Write EUR/(kg*h) or EUR*h/kg.'],
		[
			'EUR/h/person*m',
			'EUR/h/person*m has two readings. Write EUR/(h*person*m) or EUR*m/(h*person).'
		],
		['m*(EUR/kg*h)', 'EUR/kg*h has two readings. Write EUR/(kg*h) or EUR*h/kg.']
	])('%s is refused, and both are written out', (text, message) => {
		expect(problem(text)).toMatchObject({ code: 'bad-unit', message });
	});

	it('gives two forms that are units, and differ', () => {
		expect(unit('EUR/(kg*h)').dimension).not.toEqual(unit('EUR*h/kg').dimension);
	});

	it('points at the group in question', () => {
		expect(pointedAt('m*(EUR/kg*h)')).toBe('EUR/kg*h');
	});

	it('is refused for m^2^3 as well', () => {
		expect(problem('m^2^3').message).toContain('two readings');
	});
});

describe('what cannot be read as a unit', () => {
	it.each([
		['EUR kg', 'kg', 'Between EUR and kg stands no * or /. Write EUR*kg or EUR/kg.'],
		['EUR per kg', 'per', 'Write / for "per", as in EUR/kg.'],
		['m/', '', 'A symbol is missing after /. Add it, or leave out the /.'],
		['m*/s', '/', 'A symbol is missing after *. Add it, or leave out the *.'],
		['(m', '(', 'The bracket ( is never closed. Add ) where the group ends.'],
		['m)', ')', 'There is a ) without a ( before it. Leave it out, or add the (.'],
		['m-1', '-', 'The sign - joins no units. Write * for times and / for per.'],
		['m^', '^', 'A whole number is missing after ^. Write one, as in m^2, or leave out the ^.'],
		['m^x', '^', 'A whole number is missing after ^. Write one, as in m^2, or leave out the ^.'],
		['m^2.5', '2.5', 'The exponent 2.5 is not a whole number. Write a whole one, as in m^2.'],
		['1,5 m', '1,5', 'The number 1,5 has a comma. Write a point: 1.5.']
	])('%s: the place is %j, the message says what to do', (text, place, message) => {
		expect(problem(text)).toMatchObject({ code: 'bad-unit', message });
		expect(pointedAt(text)).toBe(place);
	});

	it('a number before the unit is answered with a unit of the workbook', () => {
		expect(problem('3 h').message).toContain('add a unit of its own to the workbook');
	});

	it('a strange sign is shown', () => {
		expect(problem('EUR?').message).toContain('The sign ? has no meaning in a unit.');
	});

	it('an empty pair of brackets lacks a symbol', () => {
		expect(problem('()').message).toContain('A symbol is missing');
	});
});

describe('limits of a unit', () => {
	it('refuses m^999999 with the exponent and the limit', () => {
		expect(problem('m^999999')).toMatchObject({
			code: 'exponent-too-large',
			message:
				"The exponent 999999 is too large: a unit's exponents go from -9 to 9. Write a smaller whole number."
		});
		expect(pointedAt('m^999999')).toBe('999999');
	});

	it.each(['m^10', 'm^-10', 'm²²', 'm^9*m', '(m^9)^9', '(%^9)^9', 'm^5*m^5/s', 'J^5'])(
		'refuses %s: an exponent is beyond 9 once multiplied out',
		(text) => {
			expect(problem(text).code).toBe('exponent-too-large');
		}
	);

	it('refuses a unit too large to compute with, though no exponent is', () => {
		// (t/mg)^9 is 1e81, (km/µm)^9 as well
		expect(problem('t^9*km^9/mg^9/µm^9').message).toContain('too large or small');
		expect(unit('t^9/mg^9').scale).toBe(1e81);
	});

	it.each(['m^9', 'm^-9', 'm^9/m^9', 'm^6*m^6/m^6'])('takes %s', (text) => {
		expect(system.parse(text).ok).toBe(true);
	});

	it('refuses a text of more than 80 characters, and takes one of 80', () => {
		expect(problem(' '.repeat(80) + 'm')).toMatchObject({ code: 'too-long', start: 0, end: 81 });
		expect(system.parse(' '.repeat(79) + 'm').ok).toBe(true);
	});

	it('answers a text of 100 KB at once', () => {
		expect(problem('m*'.repeat(50_000)).code).toBe('too-long');
	});

	it('refuses brackets more than 12 deep', () => {
		expect(system.parse('('.repeat(12) + 'm' + ')'.repeat(12)).ok).toBe(true);
		expect(problem('('.repeat(13) + 'm' + ')'.repeat(13)).message).toContain('12 deep');
	});
});

describe('any text at all', () => {
	const pieces = fc.constantFrom(
		...[
			'm',
			'EUR',
			'kg',
			'h',
			'*',
			'/',
			'^',
			'(',
			')',
			'1',
			'2',
			'²',
			'-',
			' ',
			'%',
			'€',
			'\u{1f600}'
		],
		...['__proto__', 'constructor', 'per', '9', '.', 'é', '\u0301', '\ud800']
	);
	const texts = fc.oneof(
		fc.string({ unit: 'binary', maxLength: 100 }),
		fc.array(pieces, { maxLength: 30 }).map((parts) => parts.join('')),
		anyUnitText
	);

	it('is a unit, or has a problem with a message and a place inside the text', () => {
		fc.assert(
			fc.property(texts, (text) => {
				const result = system.parse(text);
				if (result.ok) {
					expect(Number.isFinite(result.unit.scale) && result.unit.scale > 0).toBe(true);
					return;
				}
				const { start, end, message } = result.problem;
				expect(message).toMatch(/[.]$/);
				expect(start).toBeGreaterThanOrEqual(0);
				expect(end).toBeGreaterThanOrEqual(start);
				expect(end).toBeLessThanOrEqual(text.length);
			}),
			{ numRuns: 2000 }
		);
	});

	it('never gives a place inside half of a character', () => {
		expect(pointedAt('m\u{1f600}')).toBe('\u{1f600}');
	});
});
