import { describe, expect, it } from 'vitest';
import { readEntry, type Entry, type FieldSpec } from '$lib/ui/entry';
import { becoming } from '$lib/ui/entry-words';
import { plainSpec } from '$lib/ui/field';
import { inWords } from '$lib/ui/number-in-words';

/** A resin price as the shipped plant has it: 1.92 EUR/kg, others from 1.31 to 6.8. */
const english: FieldSpec = {
	...{ type: 'number', date: false, unit: 'EUR/kg', range: { above: 0 }, members: [] },
	...{ locale: 'en-GB', stands: 1.92, siblings: () => [1.31, 1.951, 6.8] },
	convert: (value, unit) =>
		unit === 'EUR/t'
			? { ok: true, value: value / 1000 }
			: { ok: false, message: `"${unit}" is no price.` }
};
const german: FieldSpec = { ...english, locale: 'de-DE' };
const said = (entry: Entry) => (entry.ok ? entry.value : entry.message);

describe('a mark with three digits behind it', () => {
	it('is asked about where what stands there says that the other reading is meant', () => {
		expect(said(readEntry('1.955', german))).toBe(
			'"1.955" has two readings: 1.955 EUR/kg (one thousand nine hundred fifty-five), or 1,955 EUR/kg (one point nine five five). 1,92 EUR/kg stands there. Write 1955 or 1,9550.'
		);
		expect(said(readEntry('1,955', english))).toBe(
			'"1,955" has two readings: 1,955 EUR/kg (one thousand nine hundred fifty-five), or 1.955 EUR/kg (one point nine five five). 1.92 EUR/kg stands there. Write 1955 or 1.9550.'
		);
	});

	it('is taken as it was asked to be written', () => {
		expect(said(readEntry('1955', german))).toBe(1955);
		expect(said(readEntry('1,9550', german))).toBe(1.955);
		expect(said(readEntry('1.9550', english))).toBe(1.955);
	});

	it('is asked about by the usual range, the permitted range and the other members too', () => {
		const empty = { ...german, stands: null, siblings: () => [] };
		expect(said(readEntry('1.955', { ...empty, usual: { min: 1, max: 5 } }))).toMatch(
			/Usual is 1 to 5 EUR\/kg/
		);
		expect(said(readEntry('1.955', { ...empty, range: { above: 0, max: 100 } }))).toMatch(
			/Permitted is above 0, at most 100 EUR\/kg/
		);
		expect(said(readEntry('1.955', { ...german, stands: null }))).toMatch(
			/The others are 1,31 to 6,8 EUR\/kg/
		);
		expect(said(readEntry('−1.955', { ...empty, range: { min: -10, max: 100 } }))).toMatch(
			/minus one thousand .* Write −1955 or −1,9550/
		);
	});

	it('is taken where nothing speaks against it, and said in words with the other reading', () => {
		const length = { ...german, unit: 'm', stands: 2400 };
		expect(readEntry('1.955', length)).toMatchObject({ ok: true, value: 1955 });
		expect(becoming('1.955', length)).toBe(
			'= 1.955 m, one thousand nine hundred fifty-five, not 1,955'
		);
		// What is usual speaks louder than what stands there.
		const usual = { ...german, stands: 1, usual: { min: 1000, max: 3000 } };
		expect(said(readEntry('1.955', usual))).toBe(1955);
	});

	it('is what the reader’s own mark says, unless only the other can be meant', () => {
		expect(said(readEntry('1,955', german))).toBe(1.955);
		expect(said(readEntry('1.955', english))).toBe(1.955);
		expect(becoming('1.955', english)).toBe('= 1.955 EUR/kg');
		expect(said(readEntry('1.955', { ...english, stands: 40 }))).toBe(1.955);
		expect(said(readEntry('1.955', { ...english, stands: 1900 }))).toMatch(
			/1\.955 EUR\/kg \(one point nine five five\), or 1,955 EUR\/kg/
		);
	});

	it('has its unit converted before it is judged', () => {
		expect(readEntry('1.955 EUR/t', german)).toMatchObject({ ok: true, value: 1.955 });
		expect(becoming('1.955 EUR/t', german)).toMatch(/^= 1,955 EUR\/kg, one thousand nine/);
	});

	it('is refused where something is worked out with it', () => {
		expect(said(readEntry('1,955*1.02', english))).toMatch(/"1,955\*1.02" holds a number with two/);
		expect(said(readEntry('1.955*1.02', english))).toBeCloseTo(1.9941, 10);
	});

	it('has one reading with a second mark, or where no mark is left out', () => {
		expect(said(readEntry('1.955,0', german))).toBe(1955);
		expect(said(readEntry('1.95', german))).toBe(1.95);
		expect(said(readEntry('0.955', german))).toBe(0.955);
	});
});

describe('a setting that is no value of a quantity', () => {
	const spec = plainSpec({ locale: 'en-GB', unit: 'EUR/h', stands: 24.8, otherUnit: () => 'No.' });
	it('reads and works out as every field does', () => {
		expect(said(readEntry('24.8*1.0225', spec))).toBeCloseTo(25.358, 10);
		expect(said(readEntry('+2.25 %', spec))).toBeCloseTo(25.358, 10);
		expect(said(readEntry('*1.03', spec))).toBeCloseTo(25.544, 10);
		expect(said(readEntry('25 EUR', spec))).toBe(25);
		expect(said(readEntry('25 kg', spec))).toBe('No.');
		expect(said(readEntry('24,800', spec))).toMatch(/two readings/);
	});
});

describe('numbers in words', () => {
	// Unicode CLDR, English rules "spellout-cardinal": hyphens below a hundred, no "and".
	it.each([
		['0', 'zero'],
		['14', 'fourteen'],
		['21', 'twenty-one'],
		['100', 'one hundred'],
		['1955', 'one thousand nine hundred fifty-five'],
		['12000', 'twelve thousand'],
		['340007', 'three hundred forty thousand seven'],
		['-1.950', 'minus one point nine five zero']
	])('%s is %s', (digits, words) => {
		expect(inWords(digits)).toBe(words);
	});
});
