import { describe, expect, it } from 'vitest';
import {
	cut,
	decimalsFor,
	decimalsWritten,
	formatDifference,
	formatInFull,
	formatNumber,
	formatRelative,
	formatUnit
} from '$lib/ui/format';

describe('digits of a number', () => {
	it('gives four significant digits to the largest of a row', () => {
		expect(decimalsFor(1.65, 4)).toBe(3);
		expect(decimalsFor(0.2085, 4)).toBe(4);
		expect(decimalsFor(30.3, 3)).toBe(1);
		expect(decimalsFor(8650765, 4)).toBe(0);
	});
	it('keeps every digit before the decimal mark', () => {
		expect(formatNumber(8650765, decimalsFor(8650765, 4), 'en')).toBe('8,650,765');
	});
	it('keeps two digits of a value far below its row', () => {
		expect(formatNumber(0.00034, 1, 'en')).toBe('0.00034');
	});
	it('writes the decimals of an input as entered', () => {
		expect(decimalsWritten(0.055, 6)).toBe(3);
		expect(decimalsWritten(1500, 6)).toBe(0);
		expect(decimalsWritten(1 / 3, 6)).toBe(6);
		expect(decimalsWritten(1e-7, 9)).toBe(7);
	});
	it('shows all digits on demand', () => {
		expect(formatInFull(0.1 + 0.2, 'en')).toBe('0.30000000000000004');
		expect(formatInFull(1234.5, 'de')).toBe('1.234,5');
	});
	it('gives a power of ten to what would be a row of zeros', () => {
		expect(formatNumber(2.5e-11, 3, 'en')).toBe('2.500×10⁻¹¹');
		expect(formatNumber(-4e18, 0, 'en')).toBe('−4.000×10¹⁸');
	});
});

describe('what rounding left', () => {
	it('is none, without a sign; a short number may have been entered and stays', () => {
		expect(formatNumber(4.132123456789e-18, 2, 'en')).toBe('0.00');
		expect(formatDifference(4.132123456789e-18, 2, 'en')).toBe('0.00');
		expect(formatNumber(2.5e-11, 3, 'en')).toBe('2.500×10⁻¹¹');
	});
});

describe('signs and marks', () => {
	it('sets a true minus and a plus on differences', () => {
		expect(formatDifference(-0.052, 3, 'en')).toBe('−0.052');
		expect(formatDifference(0.4, 1, 'en')).toBe('+0.4');
	});
	it('never shows a negative zero', () => {
		expect(formatNumber(-0, 2, 'en')).toBe('0.00');
	});
	it('gives no percentage of zero', () => {
		expect(formatRelative(5, 0, 'en')).toBe('');
		expect(formatRelative(2.5, 3, 'en')).toBe('−16.7 %');
		expect(formatRelative(-5, -10, 'en')).toBe('+50.0 %');
	});
	it('cuts at the decimal mark of the locale', () => {
		expect(cut('1.234,50', 'de')).toEqual({ whole: '1.234', fraction: ',50' });
		expect(cut('1,234.50', 'en')).toEqual({ whole: '1,234', fraction: '.50' });
		expect(cut('8,256', 'en')).toEqual({ whole: '8,256', fraction: '' });
	});
	it('prints units as a table does', () => {
		expect(formatUnit('EUR/(person*h)')).toBe('EUR/(person·h)');
		expect(formatUnit('h/mm^2')).toBe('h/mm²');
		expect(formatUnit('1')).toBe('');
	});
});
