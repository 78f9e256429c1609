import { describe, expect, it } from 'vitest';
import { readEntry, type FieldSpec } from '$lib/ui/entry';
import { permittedText } from '$lib/ui/permitted';

const price: FieldSpec = {
	type: 'number',
	date: false,
	unit: 'EUR/kg',
	range: { above: 0, max: 100 },
	members: [],
	locale: 'en',
	convert: (value, unit) =>
		unit === 'EUR/t'
			? { ok: true, value: value / 1000 }
			: { ok: false, message: `"${unit}" is not a price per mass.` }
};
const german: FieldSpec = { ...price, locale: 'de', range: null };
const anything: FieldSpec = { ...price, range: null };

const valueOf = (text: string, spec: FieldSpec) => {
	const entry = readEntry(text, spec);
	return entry.ok ? entry.value : entry.message;
};

describe('a number typed into a field', () => {
	it.each([
		['1.95', 1.95],
		['1,95', 1.95],
		['1,950', 1950],
		['0,950', 0.95],
		['1,234,567', 1234567],
		['1,234.5', 1234.5],
		['1.234,5', 1234.5],
		['1 950', 1950],
		['1’234.5', 1234.5],
		['.5', 0.5],
		['5.', 5],
		['-3', -3],
		['−3', -3],
		['+3', 3],
		['1e-3', 0.001],
		['1e3', 1000]
	])('%s in an English page is %d', (text, value) => {
		expect(valueOf(text, anything)).toBe(value);
	});
	it.each([
		['1,95', 1.95],
		['1.95', 1.95],
		['1.950', 1950],
		['1.234,5', 1234.5],
		['1,950', 1.95],
		['1.234.567', 1234567]
	])('%s in a German page is %d', (text, value) => {
		expect(valueOf(text, german)).toBe(value);
	});
	it('is refused with two commas, in either locale', () => {
		expect(valueOf('1,2,3', anything)).toMatch(/"1,2,3" has two commas/);
		expect(valueOf('1,2,3', german)).toMatch(/"1,2,3" has two commas/);
		expect(valueOf('1.2.3', anything)).toMatch(/two points/);
	});
	it('is refused where the marks do not part thousands', () => {
		expect(valueOf('12,34.5', anything)).toMatch(/do not part thousands/);
	});
	it('is refused when it is no number, a formula or too large', () => {
		expect(valueOf('abc', anything)).toMatch(/"abc" is not a number/);
		expect(valueOf('=a+b', anything)).toMatch(/formula belongs to the whole quantity/);
		expect(valueOf('1e999', anything)).toMatch(/larger than a number can be/);
		expect(valueOf('NaN', anything)).toMatch(/not a number/);
	});
	it('quotes only the start of a long text', () => {
		expect(String(valueOf('x'.repeat(100000), anything)).length).toBeLessThan(140);
	});
	it.each(['1/2/2027', '31/12/27', '2027/2/1', '1.2.2027', '01-02-2027', '2027-02-01'])(
		'%s looks like a date, and is neither divided nor taken',
		(text) => {
			const said = valueOf(text, { ...anything, stands: 2 });
			expect(said).toContain(
				`"${text}" looks like a date, and this quantity is a number in EUR/kg.`
			);
			expect(String(valueOf(text, { ...anything, date: true, unit: 'day' }))).not.toMatch(/number/);
		}
	);
	it('is divided where there is room around the signs, or no day and month', () => {
		expect(valueOf('1/2/2027', { ...anything, stands: 2 })).toContain('1 / 2 / 2027');
		expect(valueOf('1 / 2 / 2027', { ...anything, stands: 2 })).toBeCloseTo(1 / 4054, 12);
		expect(valueOf('100/40/2', { ...anything, stands: 2 })).toBe(1.25);
		expect(valueOf('1.234.567', { ...german, stands: 2 })).toBe(1234567);
	});
	it('clears the field when nothing is left', () => {
		expect(readEntry('  ', price)).toEqual({ ok: true, value: null, from: null });
	});
});

describe('a unit behind the number', () => {
	it('is converted, and said', () => {
		expect(readEntry('1950 EUR/t', price)).toEqual({ ok: true, value: 1.95, from: 'EUR/t' });
	});
	it('may be the field’s own', () => {
		expect(readEntry('1.95 EUR/kg', price)).toEqual({ ok: true, value: 1.95, from: null });
	});
	it('is refused when it measures something else', () => {
		expect(valueOf('3 h', price)).toBe('"h" is not a price per mass.');
	});
});

describe('the permitted range', () => {
	it('refuses what lies outside and names what is permitted', () => {
		expect(valueOf('0', price)).toBe(
			'0 EUR/kg is outside what is permitted: above 0, at most 100 EUR/kg.'
		);
		expect(valueOf('100', price)).toBe(100);
	});
	it('is written as words', () => {
		expect(permittedText({ min: 0.5, max: 6 }, 'h', 'en')).toBe('0.5 to 6 h');
		expect(permittedText({ above: 0 }, '1', 'en')).toBe('above 0');
		expect(permittedText({}, 'h', 'en')).toBe('');
	});
});

describe('a yes or no, and a choice', () => {
	const pattern: FieldSpec = {
		...price,
		type: 'member',
		members: [
			{ id: '5x24', label: 'Three shifts, five days' },
			{ id: '7x24', label: 'Continuous' }
		]
	};
	it('takes words', () => {
		expect(valueOf('Yes', { ...price, type: 'yes_no' })).toBe(true);
		expect(valueOf('no', { ...price, type: 'yes_no' })).toBe(false);
		expect(valueOf('perhaps', { ...price, type: 'yes_no' })).toMatch(/neither yes nor no/);
	});
	it('takes a member by its id or its label', () => {
		expect(valueOf('7x24', pattern)).toBe('7x24');
		expect(valueOf('continuous', pattern)).toBe('7x24');
		expect(valueOf('6x24', pattern)).toMatch(/not one of the choices. Take 5x24, 7x24/);
	});
});
