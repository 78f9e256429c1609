/** The line through pairs and percentiles in formulas: what is gathered, what is printed, what is refused. */
import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { printedKey } from '$lib/engine/plan';
import { cellIn } from './model-shop';
import { computed, planOf, problemOf, workbookOf, type Shop } from './plan-builder';

const shop = (formula: string, unit?: string): Shop => ({
	sets: { month: ['jan', 'feb', 'mar'], line: ['L1', 'L2'] },
	relations: {
		runs: {
			sets: ['month', 'line'],
			pairs: [
				['jan', 'L1'],
				['feb', 'L1'],
				['mar', 'L1'],
				['jan', 'L2']
			]
		}
	},
	quantities: {
		energy: { unit: 'kWh', per: ['month'], value: { jan: 30, feb: 50, mar: 90 } },
		mass: { unit: 'kg', per: ['month'], value: { jan: 1, feb: 2, mar: 4 } },
		by_line: {
			unit: 'kWh',
			per: ['month', 'line'],
			in: ['runs'],
			value: { jan: { L1: 7, L2: 70 }, feb: { L1: 9 }, mar: { L1: 13 } }
		},
		share: { value: 1.5 },
		x: { formula, ...(unit === undefined ? {} : { unit }) }
	}
});
const why = (given: Shop) => {
	const model = Model.open(workbookOf(given));
	return model.why('base', cellIn(model, 'x')).origin?.reason;
};

describe('SLOPE and INTERCEPT', () => {
	it('gather what the second argument gathers, and write it out when kept', () => {
		const plan = planOf(shop('SLOPE(energy; mass)', 'kWh/kg'));
		const index = plan.layout.byName.get('x')!.index;
		expect(plan.printed.get(printedKey(index, null))).toBe('SLOPE(energy; mass over month)');
		expect(computed(shop('SLOPE(energy; mass over month)', 'kWh/kg'), 'x')).toBeCloseTo(20, 12);
		expect(computed(shop('INTERCEPT(energy; mass over month)', 'kWh'), 'x')).toBeCloseTo(10, 12);
	});

	it('keep to a condition, and to the pairs that exist', () => {
		const two = 'SLOPE(energy; mass over month where month <> jan)';
		expect(computed(shop(two, 'kWh/kg'), 'x')).toBe(20);
		expect(computed(shop('SLOPE(by_line[L1]; mass over month)', 'kWh/kg'), 'x')).toBe(2);
		expect(computed(shop('SLOPE(by_line[L2]; mass over month)', 'kWh/kg'), 'x')).toBe('no-answer');
	});

	it('say why there is no line', () => {
		expect(why(shop('SLOPE(energy; 0 * mass over month)', 'kWh/kg'))).toContain(
			'the spread of x, which is the same in all pairs, comes to 0'
		);
		expect(why(shop('SLOPE(by_line[L2]; mass over month)', 'kWh/kg'))).toContain(
			'a straight line needs at least two pairs'
		);
	});

	it('refuse a unit that is not y over x, and a condition that moves', () => {
		expect(problemOf(planOf(shop('SLOPE(energy; mass over month)', 'kWh'))).code).toBe(
			'unlike-units'
		);
		const moving = 'SLOPE(energy; mass over month where mass > 1[kg])';
		expect(problemOf(planOf(shop(moving, 'kWh/kg'))).code).toBe('moving-where');
	});
});

describe('PERCENTILE', () => {
	it('lies on a straight line between two values', () => {
		expect(computed(shop('PERCENTILE(energy over month; 0.25)', 'kWh'), 'x')).toBe(40);
		expect(computed(shop('PERCENTILE(energy over month; 100%)', 'kWh'), 'x')).toBe(90);
	});

	it('a share beyond 0 to 1 is refused in words', () => {
		const given = shop('PERCENTILE(energy over month; share)', 'kWh');
		expect(computed(given, 'x')).toBe('bad-argument');
		expect(why(given)).toBe('x takes a percentile at 1.5; give a share from 0 to 1.');
	});
});
