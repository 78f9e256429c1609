/** Cells as values: units of the trade, signs of three nations, and the sentence for each that is none. */
import { describe, expect, it } from 'vitest';
import { readUnit } from '$lib/exchange/table/column-unit';
import { numberParts, readNumber } from '$lib/exchange/table/number-text';
import { UnitSystem } from '$lib/units/system';

const { system } = UnitSystem.create([]);
function inOwn(value: number, written: string, own: string) {
	const unit = readUnit(written, own, system);
	return unit.ok ? unit.toOwn(value) : unit.message;
}

describe('a unit beside a column', () => {
	it.each([
		[26.9, 'EUR/100 m', 'EUR/m', 0.269],
		[26.9, 'EUR per 100 m', 'EUR/m', 0.269],
		[26.9, '€/100m', 'EUR/m', 0.269],
		[26.9, 'EUR je 100 m', 'EUR/m', 0.269],
		[269, 'EUR/1.000 m', 'EUR/m', 0.269],
		[269, 'per 1000', 'EUR/m', 0.269],
		[269, '/ 1000 m', 'EUR/m', 0.269],
		[269, 'EUR/km', 'EUR/m', 0.269],
		[26.9, 'ct/m', 'EUR/m', 0.269],
		[26.9, 'cents per m', 'EUR/m', 0.269],
		[26.9, 'p/m', 'GBP/m', 0.269],
		[1.25, 'T€', 'EUR', 1250],
		[1.25, '1000 EUR', 'EUR', 1250],
		[87, 'kg/1000 m', 'kg/m', 0.087],
		[1.6, 'cm', 'mm', 16],
		[5, '', 'mm', 5],
		[12, '%', '1', 0.12],
		[240, 'EUR/100 h', 'EUR/(person*h)', expect.stringContaining('measure different things')],
		[1, 'EUR/100 kg', 'EUR/m', expect.stringContaining('measure different things')],
		[1, 'furlong', 'm', expect.stringContaining('furlong')]
	])('%d %s is in %s %s', (value, written, own, expected) => {
		expect(inOwn(value, written, own)).toEqual(expected);
	});

	it('gives cents of the currency that the quantity is in', () => {
		expect(inOwn(26.9, 'ct/m', 'CHF/m')).toBe(0.269);
		expect(inOwn(1, 'ct', 'kg')).toEqual(expect.stringContaining('ct'));
	});
});

describe('a number in a file', () => {
	it.each([
		['26,90', ',', 26.9],
		['1.234,5', ',', 1234.5],
		['1.234', ',', 1234],
		['1,234', '.', 1234],
		['1,234.5', '.', 1234.5],
		['1 234,5', ',', 1234.5],
		['1\u00a0234,5', ',', 1234.5],
		["1'234.5", '.', 1234.5],
		['-3,5', ',', -3.5],
		['3,5-', ',', -3.5],
		['−3.5', '.', -3.5],
		['+7', null, 7],
		[',5', ',', 0.5],
		['12.', '.', 12],
		['1.5e3', '.', 1500],
		['26.90', null, 26.9]
	] as const)('%s, decimals after %j, is %d', (text, sign, value) => {
		expect(readNumber(text, sign)).toEqual({ ok: true, value, unit: '' });
	});

	it('keeps its unit, before or behind', () => {
		expect(readNumber('€ 26,90', ',')).toEqual({ ok: true, value: 26.9, unit: '€' });
		expect(readNumber('1 234,5 kg/m', ',')).toEqual({ ok: true, value: 1234.5, unit: 'kg/m' });
	});

	it.each([
		['1,234', null, 'has two readings'],
		['1.25', ',', 'has a point before its decimals, and this column a comma'],
		['1.2.3', '.', 'part no thousands'],
		['1,23.4,5', '.', 'part no thousands'],
		['two', '.', 'is not a number'],
		['--1', '.', 'is not a number'],
		['=A1*2', '.', 'is a formula'],
		['1e999', '.', 'is larger than a number can be']
	] as const)('%s, decimals after %j, is refused', (text, sign, words) => {
		const read = readNumber(text, sign);
		expect(read.ok ? '' : read.message).toContain(words);
	});

	it('is told from a text that only holds digits', () => {
		expect(numberParts('PX15B')).toBeNull();
		expect(numberParts('12 34')).toBeNull();
	});
});
