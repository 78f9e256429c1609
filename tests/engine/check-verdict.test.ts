import { describe, expect, it } from 'vitest';
import { checkVerdict, isCaution } from '$lib/engine/check-verdict';
import { openShipped } from '../reference/shipped';
import { plant } from '../workbook/plant';
import { ABSENT, DIVIDES_BY_ZERO, NOT_ENTERED, OK } from '$lib/engine/state';

const check = { message: 'The parts do not add up.' };

describe('a check', () => {
	it.each([
		[0, 'holds'],
		[0.001, 'fails'],
		[-1, 'fails']
	])('of a number holds where it is zero: %d %s', (value, verdict) => {
		expect(checkVerdict({ check }, value, OK)).toBe(verdict);
		expect(checkVerdict({ check, type: 'number' }, value, OK)).toBe(verdict);
	});

	it('of a number holds within its tolerance, on either side', () => {
		const within = { check: { ...check, tolerance: 0.01 } };
		expect([0.01, -0.01, 0.011].map((value) => checkVerdict(within, value, OK))).toEqual([
			...['holds', 'holds', 'fails']
		]);
	});

	it('of a yes/no holds where it is yes', () => {
		const yes = { check, type: 'yes_no' as const };
		expect([0, 1].map((value) => checkVerdict(yes, value, OK))).toEqual(['fails', 'holds']);
	});

	it('cannot hold without a value, and is not asked of what is absent', () => {
		expect(checkVerdict({ check }, 0, DIVIDES_BY_ZERO)).toBe('fails');
		expect(checkVerdict({ check }, 0, NOT_ENTERED)).toBe('fails');
		expect(checkVerdict({ check }, 0, ABSENT)).toBe('not-asked');
		expect(checkVerdict({}, 1, OK)).toBe('not-asked');
	});
});

describe('a caution', () => {
	const caution = { message: 'The line is at its limit.' };
	const told = { name: 'at_limit', caution };
	const here = { workbook: plant, scenario: 'base' };
	it('is given where its yes/no is yes', () => {
		expect(isCaution(told, 1, OK, here)).toBe(true);
		expect(isCaution(told, 0, OK, here)).toBe(false);
		expect(isCaution(told, 1, ABSENT, here)).toBe(false);
		expect(isCaution({ name: 'at_limit' }, 1, OK, here)).toBe(false);
	});

	it('about a quote is given where quotes stand alone', () => {
		const { workbook } = openShipped('marram');
		const below = { name: 'quote_below_floor', caution };
		expect(isCaution(below, 1, OK, { workbook, scenario: 'base' })).toBe(true);
		expect(isCaution(below, 1, OK, { workbook, scenario: 'new_line' })).toBe(false);
	});
});
