/** Reckoning in a field: what is worked out, what it is of, and what is left alone because it has two readings. */
import { describe, expect, it } from 'vitest';
import { readEntry, type FieldSpec } from '$lib/ui/entry';

const price: FieldSpec = {
	type: 'number',
	date: false,
	unit: 'EUR/kg',
	range: { above: 0, max: 100 },
	members: [],
	locale: 'en',
	convert: (_, unit) => ({ ok: false, message: `"${unit}" is not a price per mass.` }),
	stands: 2.02
};
const share: FieldSpec = { ...price, unit: '%', convert: (value) => ({ ok: true, value }) };
const read = (text: string, spec = price) => {
	const entry = readEntry(text, spec);
	return entry.ok ? entry.value : entry.message;
};

describe('reckoning in a field', () => {
	it.each([
		['+9%', 2.2018],
		['-9 %', 1.8382],
		['−50%', 1.01],
		['+2.5%', 2.0705],
		['*1.09', 2.2018],
		['/ 2', 1.01],
		['× 1000 / 100', 20.2]
	])('of what stands there, %s is %d', (text, value) => {
		expect(read(text)).toBe(value);
	});

	it.each([
		['2.02*1.09', 2.2018],
		['2.02 + 0.05', 2.07],
		['(1.5 + 0.5) * 3 - 1', 5],
		['2 * -3 + 10', 4],
		['7 / 4', 1.75],
		['0.1 * 3', 0.3]
	])('by itself, %s is %d', (text, value) => {
		expect(read(text)).toBe(value);
		expect(readEntry(text, { ...price, stands: null })).toMatchObject({ value, isReckoned: true });
	});

	it('reads the marks of the reader', () => {
		expect(read('2,02*1,09', { ...price, locale: 'de' })).toBe(2.2018);
		expect(read('+2,5%', { ...price, locale: 'de' })).toBe(2.0705);
	});

	it.each([
		['3-4', /"-4"/],
		['2 *', /ends where a number is missing/],
		['2 * (3', /bracket that is not closed/],
		['2 / 0', /divided by 0/],
		['1.2.3 * 2', /two points/],
		['2 * 3) + 1', /goes on after its end, at "\)"/],
		['60 * 2', /120 EUR\/kg is outside what is permitted/]
	])('refuses %s and says why', (text, why) => {
		expect(read(text)).toMatch(why);
	});

	it('says that nothing stands there', () => {
		expect(read('+9%', { ...price, stands: null })).toMatch(/^Nothing stands here/);
		expect(read('*2', { ...price, stands: null })).toMatch(/^Nothing stands here/);
	});

	it('asks which is meant where the field holds a share, and takes a value below zero as one', () => {
		expect(read('+9%', share)).toMatch(/Write 9 % for the value, \* 1\.09 for 9 % more/);
		expect(read('9 %', share)).toBe(9);
		expect(read('* 1.5', { ...share, stands: 4 })).toBe(6);
		expect(read('-9%', { ...share, range: null })).toBe(-9);
	});

	it('leaves it alone where only values are read, and in dates', () => {
		const { stands: _stands, ...values } = price;
		expect(read('2*3', values)).toMatch(/kg|not a/);
		expect(read('2026-05-06', { ...price, date: true, range: null })).toBe(46148);
	});
});
