/** One value in words, as every screen says it. */
import { describe, expect, it } from 'vitest';
import { asEntered, scalarWords } from '$lib/ui/scalar-words';
import type { Scalar } from '$lib/workbook/schema';
import { shop } from './shop';

const told = (value: Scalar, kind: object = {}) =>
	scalarWords(value, kind as never, {
		nothing: 'none',
		number: (entered) => `${asEntered(entered, 'de')} kg`,
		workbooks: [shop]
	});

describe('an entered value in words', () => {
	it('is yes or no, or says that nothing is entered', () => {
		expect([told(true), told(false), told(null)]).toEqual(['yes', 'no', 'none']);
	});
	it('is a number in the reader’s writing, without the last bits of a sum', () => {
		expect(told(1234.5)).toBe('1.234,5 kg');
		expect(told(0.1 + 0.2)).toBe('0,3 kg');
	});
	it('is a date where the quantity is one, without a unit', () => {
		expect(told(46388, { unit: 'day', shown: 'date' })).toBe('2027-01-01');
	});
	it('is a member by its label, where it has one', () => {
		const choice = { type: { member_of: 'product' } };
		expect(told('A15', choice)).toBe('Pipe of 15 mm');
		expect(told('B22', choice)).toBe('B22');
	});
});
