/** Language rules 15 and 16: dimensions are proven, and a factor stands only where scales meet. */
import { describe, expect, it } from 'vitest';
import { at, computed, formula, planOf, problemOf, type Shop } from './plan-builder';

const shopOf = (
	text: string,
	unit = '1',
	more: Partial<Shop['quantities'][string]> = {}
): Shop => ({
	sets: {
		line: ['L1', 'L2'],
		month: { members: [{ id: 'jan' }, { id: 'feb' }], spans: '1 year' },
		hour: {
			members: [
				{ id: 'h6', number: 6 },
				{ id: 'h7', number: 7 }
			],
			number_unit: 'h'
		}
	},
	units: [{ symbol: 'pallet' }, { symbol: 'coil' }],
	quantities: {
		wall: { unit: 'mm', value: 2 },
		radius: { unit: 'm', value: 3 },
		k_factor: { value: 2 },
		scrap: { unit: '%', value: 4 },
		price: { unit: 'EUR/kg', value: 1.5 },
		scheduled: { per: ['month'], unit: 'h', value: { jan: 500, feb: 450 } },
		crosslinked: { type: 'yes_no', value: true },
		load: { unit: 'pallet', value: 2.4 },
		area: { unit: 'mm^2', value: 9 },
		result: { unit, formula: text, ...more }
	}
});
const problemIn = (text: string, unit = '1', more = {}) =>
	problemOf(planOf(shopOf(text, unit, more)));

describe('scales', () => {
	it('stand apart from the value: no factor where none is needed', () => {
		expect(formula(planOf(shopOf('wall * 2', 'mm')), 'result')).toBe('Multiply(wall, 2)');
		expect(formula(planOf(shopOf('wall * k_factor / wall')), 'result')).toBe(
			'Divide(Multiply(wall, k_factor), wall)'
		);
	});

	it('meet in a sum, where the second is brought into the unit of the first', () => {
		expect(formula(planOf(shopOf('wall + radius', 'mm')), 'result')).toBe(
			'Add(wall, Multiply(radius, 1000))'
		);
	});

	it('meet at the result', () => {
		expect(formula(planOf(shopOf('wall * k_factor', 'm')), 'result')).toBe(
			'Multiply(Multiply(wall, k_factor), 0.001)'
		);
	});

	it('are folded into written numbers', () => {
		expect(formula(planOf(shopOf('wall + 1[m]', 'mm')), 'result')).toBe('Add(wall, 1000)');
		expect(computed(shopOf('114[min]', 'h'), 'result')).toBe(1.9);
	});

	it('meet in a comparison', () => {
		const plan = planOf(shopOf('wall < radius', undefined, { type: 'yes_no', unit: undefined }));
		expect(formula(plan, 'result')).toBe('Less(wall, Multiply(radius, 1000))');
	});

	it('of a percentage are a hundredth', () => {
		expect(computed(shopOf('1 - scrap'), 'result')).toBe(0.96);
		expect(computed(shopOf('scrap + 1%', '%'), 'result')).toBe(5);
		expect(computed(shopOf('k_factor * 5%'), 'result')).toBe(0.1);
		expect(computed(shopOf('k_factor% * 100'), 'result')).toBe(2);
	});
});

describe('dimensions', () => {
	it('of the result are spelled out with those of the quantity, and what is missing', () => {
		const text = 'price * k_factor';
		const problem = problemIn(text, 'EUR/m');
		expect(problem.code).toBe('unlike-units');
		expect(problem.message).toBe(
			'The formula gives EUR/kg, but result is in EUR/m: multiply by a kg/m?'
		);
		expect(at(text, problem)).toBe(text);
	});

	it('do not let hours become hours a year', () => {
		const problem = problemIn('SUM(scheduled)', 'h/year');
		expect(problem.message).toBe(
			'The formula gives h, but result is in h/year: divide by 1[year]?'
		);
		expect(computed(shopOf('SUM(scheduled over month) / SPAN(month)', 'h/year'), 'result')).toBe(
			950
		);
	});

	it('must agree in a sum', () => {
		const text = 'wall + price';
		const problem = problemIn(text, 'mm');
		expect(problem.message).toContain('wall is in mm, but price is in EUR/kg');
		expect(at(text, problem)).toBe('price');
	});

	it('a written number has none unless it says so', () => {
		const text = 'radius + 5';
		const problem = problemIn(text, 'm');
		expect(problem.message).toBe('radius is in m, 5 has no unit: 5[m]?');
		expect(problem.suggestion).toBe('5[m]');
		expect(at(text, problem)).toBe('5');
		expect(problemIn('5', 'm').suggestion).toBe('5[m]');
	});

	it('a written 0 has any', () => {
		expect(planOf(shopOf('MAX(0; wall)', 'mm')).problems).toEqual([]);
		expect(planOf(shopOf('0', 'EUR/kg')).problems).toEqual([]);
		expect(planOf(shopOf('IF(wall > 0; wall; 0)', 'mm')).problems).toEqual([]);
	});

	it('of a bare number in per cent are asked for', () => {
		const problem = problemIn('5', '%');
		expect(problem.code).toBe('percent-or-number');
		expect(problem.message).toContain('5 without a unit is 500 %');
		expect(problem.suggestion).toBe('5%');
		expect(problemIn('IF(wall > 1[mm]; 5; 3)', '%').code).toBe('percent-or-number');
		expect(planOf(shopOf('wall / radius', '%')).problems).toEqual([]);
		expect(computed(shopOf('wall / radius', '%'), 'result')).toBeCloseTo(0.0666666666667, 12);
	});

	it('need a written exponent', () => {
		const text = 'wall^k_factor';
		const problem = problemIn(text, 'mm^2');
		expect(problem.code).toBe('exponent-not-written');
		expect(at(text, problem)).toBe('k_factor');
		expect(computed(shopOf('wall^2', 'mm^2'), 'result')).toBe(4);
		expect(computed(shopOf('k_factor^k_factor'), 'result')).toBe(4);
		expect(computed(shopOf('wall^-1 * wall'), 'result')).toBe(1);
	});

	it('are none in an exponent', () => {
		const text = '2^wall';
		const problem = problemIn(text);
		expect(problem.message).toContain('wall is in mm, and an exponent has no unit');
	});

	it('have a root where they are a square', () => {
		expect(computed(shopOf('SQRT(area)', 'mm'), 'result')).toBe(3);
		expect(computed(shopOf('SQRT(wall * radius)', 'm'), 'result')).toBeCloseTo(
			Math.sqrt(0.006),
			12
		);
		expect(problemIn('SQRT(wall)', 'mm').code).toBe('no-root');
	});

	it('are refused by ROUND, which names the function that says to what', () => {
		const problem = problemIn('ROUND(load; 0)', 'pallet');
		expect(problem.code).toBe('round-has-unit');
		expect(problem.message).toContain('CEILING(load; 1[pallet])');
		expect(problem.suggestion).toBe('CEILING(load; 1[pallet])');
		expect(computed(shopOf('CEILING(load; 1[pallet])', 'pallet'), 'result')).toBe(3);
		expect(computed(shopOf('ROUND(k_factor * 1.3; 0)'), 'result')).toBe(3);
	});

	it('of a step are those of what is rounded', () => {
		expect(computed(shopOf('CEILING(radius; 700[mm])', 'm'), 'result')).toBe(3.5);
		expect(problemIn('CEILING(load; 1[coil])', 'pallet').code).toBe('unlike-units');
		expect(problemIn('CEILING(load)', 'pallet').code).toBe('step-missing');
	});

	it('are none in LN and EXP', () => {
		expect(problemIn('LN(wall)').code).toBe('has-unit');
		expect(computed(shopOf('EXP(LN(wall / 1[mm]))'), 'result')).toBeCloseTo(2, 12);
	});

	it('of branches agree', () => {
		expect(problemIn('IF(wall > 1[mm]; wall; price)', 'mm').code).toBe('unlike-units');
		expect(computed(shopOf('IF(wall > 9[mm]; wall; radius)', 'mm'), 'result')).toBe(3000);
		expect(problemIn('IFERROR(wall; 5)', 'mm').code).toBe('unit-missing');
	});

	it('beyond what a unit can be are refused', () => {
		expect(problemIn('radius^9 * radius', 'm').code).toBe('unit-too-large');
		expect(problemIn('radius^99', 'm').code).toBe('unit-too-large');
	});

	it('a unit that nobody knows is pointed at inside its brackets', () => {
		const text = 'wall + 3[hours]';
		const problem = problemIn(text, 'mm');
		expect(problem.code).toBe('unknown-unit');
		expect(at(text, problem)).toBe('hours');
	});

	it('a quantity whose own unit is not known spoils only what reads it', () => {
		const shop = shopOf('wall * 2', 'mm');
		shop.quantities.odd = { unit: 'furlongs', value: 1 };
		shop.quantities.user = { formula: 'odd * 2' };
		const problems = planOf(shop).problems;
		expect(problems.map((problem) => [problem.quantity, problem.code])).toEqual([
			['odd', 'bad-unit'],
			['user', 'broken-quantity']
		]);
		expect(computed(shop, 'result')).toBe(4);
		expect(computed(shop, 'user')).toBe('bad-formula');
	});

	it('warn of an equality between converted numbers', () => {
		const yesNo = { type: 'yes_no' as const, unit: undefined };
		const plan = planOf(shopOf('wall = radius', undefined, yesNo));
		expect(plan.problems).toEqual([]);
		expect(plan.warnings?.map((warning) => warning.code)).toEqual(['equal-after-conversion']);
		expect(planOf(shopOf('wall = 2[mm]', undefined, yesNo)).warnings).toEqual([]);
	});
});

describe('yes and no', () => {
	it('count as 1 and 0 in arithmetic', () => {
		expect(computed(shopOf('wall * crosslinked', 'mm'), 'result')).toBe(2);
		expect(computed(shopOf('1 + crosslinked'), 'result')).toBe(2);
	});

	it('are not given by a number', () => {
		const problem = problemIn('wall', undefined, { type: 'yes_no', unit: undefined });
		expect(problem.code).toBe('wrong-type');
		expect(problem.message).toContain('wall > 0');
		expect(problemIn('IF(k_factor; 1; 2)').code).toBe('not-a-condition');
		expect(problemIn('AND(crosslinked; k_factor) * 1').code).toBe('not-a-condition');
	});

	it('are written TRUE() and FALSE()', () => {
		expect(computed(shopOf('IF(TRUE(); 1; 2)'), 'result')).toBe(1);
		expect(computed(shopOf('NOT(TRUE()) + FALSE()'), 'result')).toBe(0);
	});
});

describe('numbers of members', () => {
	it('ORD gives the place, NUMBER the number with its unit', () => {
		const per = { per: ['hour'] };
		expect(computed(shopOf('ORD(hour)', '1', per), 'result', 'h7')).toBe(2);
		expect(computed(shopOf('NUMBER(hour)', 'min', per), 'result', 'h7')).toBe(420);
		expect(problemIn('NUMBER(line)', '1', { per: ['line'] }).code).toBe('no-numbers');
		expect(problemIn('ORD(wall)').code).toBe('not-a-member');
	});

	it('SPAN takes a set that has one', () => {
		expect(problemIn('SPAN(line)').code).toBe('no-span');
		expect(problemIn('SPAN(wall)').code).toBe('not-a-set');
		expect(computed(shopOf('SPAN(month)', 'year'), 'result')).toBe(1);
	});
});
