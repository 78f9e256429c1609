/** The normal distribution in formulas: its units, what is refused, and why there is no value. */
import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { cellIn } from './model-shop';
import { computed, planOf, problemOf, workbookOf, type Shop } from './plan-builder';

const shop = (formula: string, unit?: string): Shop => ({
	quantities: {
		wall: { unit: 'mm', value: 3.1 },
		mean: { unit: 'm', value: 0.003 },
		sd: { unit: 'mm', value: 0.05 },
		flat: { unit: 'mm', value: 0 },
		wanted: { unit: '%', value: 97.5 },
		all: { unit: '%', value: 100 },
		x: { formula, ...(unit === undefined ? {} : { unit }) }
	}
});
const why = (given: Shop) =>
	Model.open(workbookOf(given)).why('base', cellIn(Model.open(workbookOf(given)), 'x')).origin
		?.reason;
const refusal = (formula: string, unit?: string) => problemOf(planOf(shop(formula, unit)));

describe('NORMDIST', () => {
	it('is a share, whatever unit its three are in', () => {
		const share = 0.9772498680518208; // two deviations above the mean
		expect(computed(shop('NORMDIST(wall; mean; sd)'), 'x')).toBeCloseTo(share, 12);
		expect(computed(shop('NORMDIST(wall; mean; sd; TRUE())', '%'), 'x')).toBeCloseTo(
			100 * share,
			10
		);
	});

	it('is a density per unit of x', () => {
		const density = Math.exp(-2) / Math.sqrt(2 * Math.PI) / 0.05;
		expect(computed(shop('NORMDIST(wall; mean; sd; FALSE())', '1/mm'), 'x')).toBeCloseTo(
			density,
			10
		);
		expect(computed(shop('NORMDIST(wall; mean; sd; FALSE())', '1/m'), 'x')).toBeCloseTo(
			1000 * density,
			7
		);
		expect(refusal('NORMDIST(wall; mean; sd; FALSE())').code).toBe('unlike-units');
	});

	it('refuses three that are not alike, and a choice that is not written', () => {
		expect(refusal('NORMDIST(wall; mean; 2)').suggestion).toBe('2[mm]');
		expect(refusal('NORMDIST(wall; mean; sd; wall > mean)').message).toBe(
			'NORMDIST gives a share or a density, which differ in their unit, so wall > mean must be written: TRUE() for the share below, FALSE() for the density.'
		);
		expect(refusal('NORMDIST(wall; mean; sd; 1)').code).toBe('not-a-condition');
	});

	it('says which deviation is none', () => {
		expect(computed(shop('NORMDIST(wall; mean; flat)'), 'x')).toBe('bad-argument');
		expect(why(shop('NORMDIST(wall; mean; flat)'))).toBe(
			'x takes flat (0 mm) as a standard deviation; give one above 0.'
		);
	});
});

describe('NORMINV', () => {
	it('gives a value in the unit of the mean and the deviation', () => {
		const value = 3 + 0.05 * 1.959963984540054;
		expect(computed(shop('NORMINV(wanted; mean; sd)', 'mm'), 'x')).toBeCloseTo(value, 12);
		expect(computed(shop('NORMINV(0.975; 0; sd)', 'mm'), 'x')).toBeCloseTo(value - 3, 12);
		expect(computed(shop('NORMINV(97.5%; 0; 1)'), 'x')).toBeCloseTo(1.959963984540054, 12);
		expect(refusal('NORMINV(wall; mean; sd)', 'mm').code).toBe('has-unit');
		expect(refusal('NORMINV(wanted; mean; sd)').code).toBe('unlike-units');
	});

	it('says which share has no value', () => {
		expect(why(shop('NORMINV(all; mean; sd)', 'mm'))).toBe(
			'x asks below which value a share of all (100 %) lies; give a share above 0 and below 1.'
		);
		expect(why(shop('NORMINV(wanted; mean; flat)', 'mm'))).toBe(
			'x takes flat (0 mm) as a standard deviation; give one above 0.'
		);
	});
});
