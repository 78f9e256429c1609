/** Usual ranges suggested from what stands: a third of the least to three times the most. */
import { describe, expect, it } from 'vitest';
import { suggestedUsual, suggestions, withSuggestions } from '$lib/review/suggest';
import { isPermitted } from '$lib/workbook/range';
import { applyCommand } from '$lib/workbook/commands';
import type { Quantity } from '$lib/workbook/schema';
import { openShipped } from '../reference/shipped';
import { book, entered, perLine } from './book';

const suggested = (quantity: Quantity) => suggestedUsual(book([quantity]), quantity);

describe('a suggested usual range', () => {
	it('goes from a third of the least to three times the most, rounded outwards to two digits', () => {
		// 19 / 3 = 6.33, 26 × 3 = 78
		expect(suggested(perLine('pay', 20, 26, 19))).toEqual({ min: 6, max: 78 });
		// 1.95 / 3 = 0.65, 1.95 × 3 = 5.85
		expect(suggested(entered('price', 1.95))).toEqual({ min: 0.65, max: 5.9 });
	});

	it('takes in what scenarios enter', () => {
		const wage = entered('wage', 18.5);
		const change = { quantity: 'wage', value: 60.5 };
		const scenario = { id: 's', title: 'S', parent: 'base', changes: [change] };
		// 18.5 / 3 = 6.17, 60.5 × 3 = 181.5
		expect(suggestedUsual(book([wage], [scenario]), wage)).toEqual({ min: 6.1, max: 190 });
	});

	it('keeps within the permitted range, and says nothing of an end that lies there', () => {
		expect(suggested(entered('a', 20, { range: { min: 10, max: 50 } }))).toBeNull();
		expect(suggested(entered('a', 20.5, { range: { min: 0, max: 50 } }))).toEqual({ min: 6.8 });
	});

	it('has an end above for a share of a few per cent, and a lower one for one near the whole', () => {
		const range = { min: 0, max: 100 };
		// 0.04 instead of 4 %, and 40 instead of 4, are outside.
		expect(suggested(entered('scrap', 4.2, { unit: '%', range }))).toEqual({ min: 1.4, max: 13 });
		// 0.93 instead of 93 % is outside.
		expect(suggested(entered('use', 93, { unit: '%', range }))).toEqual({ min: 31 });
	});

	it('respects signs, zeros and whole numbers', () => {
		expect(suggested(entered('a', -4.2))).toEqual({ min: -13, max: -1.4 });
		expect(suggested(perLine('a', -2.5, 5.5))).toEqual({ min: -7.5, max: 17 });
		expect(suggested(perLine('a', 0, 5.5))).toEqual({ min: 0, max: 17 });
		expect(suggested(entered('a', 2))).toEqual({ min: 1, max: 6 });
		expect(suggested(entered('a', 0))).toBeNull();
	});

	it('is none for dates, years and what is not entered', () => {
		expect(suggested(entered('a', 46000, { unit: 'day', shown: 'date' }))).toBeNull();
		expect(suggested({ name: 'a', label: 'A', unit: 'h' })).toBeNull();
	});

	it('is accepted by one edit, after which none is left and every entry lies within', () => {
		const { workbook } = openShipped('shop');
		const accepted = applyCommand(workbook, withSuggestions(suggestions(workbook)));
		if (!accepted.ok) throw new Error(accepted.problem.message);
		expect(suggestions(accepted.workbook)).toEqual([]);
		const numbers = accepted.workbook.sheets
			.flatMap(({ quantities }) => quantities)
			.filter(({ usual, value }) => usual && typeof value === 'number');
		expect(numbers.length).toBeGreaterThan(8);
		for (const { value, usual } of numbers) expect(isPermitted(value as number, usual!)).toBe(true);
		const back = applyCommand(accepted.workbook, accepted.inverse);
		expect(back).toMatchObject({ ok: true, workbook });
	});
});
