/** A plain number beside something in per cent, per mille or parts per million is asked about, with both readings. */
import { describe, expect, it } from 'vitest';
import { computed, planOf, problemOf, type Shop } from './plan-builder';

const shop = (formula: string, more: { unit?: string; type?: 'yes_no' } = { unit: '%' }): Shop => ({
	sets: { line: ['L1', 'L2'] },
	quantities: {
		p: { unit: '%', value: 7 },
		trace: { unit: 'ppm', value: 40 },
		share: { per: ['line'], unit: '%', value: { L1: 5, L2: 9 } },
		margin: { unit: 'EUR', value: 30 },
		revenue: { unit: 'EUR', value: 300 },
		result: { formula, ...more }
	}
});

describe('a plain number beside a share', () => {
	it.each([
		['p > 5', { type: 'yes_no' as const }, '5', '5%'],
		['5 < p', { type: 'yes_no' as const }, '5', '5%'],
		['100 - p', { unit: '%' }, '100', '100%'],
		['MAX(p; 5)', { unit: '%' }, '5', '5%'],
		['MAX(share over line; 5)', { unit: '%' }, '5', '5%'],
		['IF(p > 5%; p; 5)', { unit: '%' }, '5', '5%'],
		['trace > 50', { type: 'yes_no' as const }, '50', '50[ppm]'],
		['93.07 * margin / revenue', { unit: '%' }, '93.07', '93.07%']
	])('%s', (formula, more, at, suggestion) => {
		const problem = problemOf(planOf(shop(formula, more)));
		expect(problem.code).toBe('percent-or-number');
		expect(formula.slice(problem.span.start, problem.span.end)).toBe(at);
		expect(problem.suggestion).toBe(suggestion);
		expect(problem.message).toContain(suggestion);
	});

	it('says both readings', () => {
		expect(problemOf(planOf(shop('p > 5', { type: 'yes_no' }))).message).toBe(
			'p is in %, and 5 without a unit is 500%: write 5% if that is meant, or 500% for the plain 5.'
		);
	});

	it.each([
		['1 - p', 0.93],
		['2 * p', 0.14],
		['p + 0.05', 0.12],
		['MAX(p; 0)', 0.07],
		['MAX(p; 5%)', 0.07],
		['margin / revenue', 0.1]
	])('%s is plain enough', (formula, value) => {
		expect(computed(shop(formula, {}), 'result')).toBeCloseTo(value, 12);
	});

	it('is not rounded to whole numbers without a word', () => {
		const problem = problemOf(planOf(shop('ROUND(p)')));
		expect(problem.code).toBe('round-has-unit');
		expect(problem.suggestion).toBe('CEILING(p; 1[%])');
		expect(computed(shop('ROUND(p; 1)', {}), 'result')).toBe(0.1);
	});
});
