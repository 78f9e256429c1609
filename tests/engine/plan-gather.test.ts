/** Language rules 1, 2, 6 and 17: what an aggregate gathers, in which order, and what is refused. */
import { describe, expect, it } from 'vitest';
import { at, computed, formula, planOf, problemOf, type Shop } from './plan-builder';

const plant = (text: string, more: Partial<Shop['quantities'][string]> = {}): Shop => ({
	sets: {
		product: ['A', 'B'],
		layer: ['inner', 'tie', 'outer'],
		line: ['L1', 'L2'],
		month: { members: [{ id: 'jan' }, { id: 'feb' }, { id: 'mar' }], spans: '1 year' },
		year: {
			members: [0, 1, 2, 3].map((number) => ({ id: `y${number}`, number })),
			number_unit: 'year'
		}
	},
	relations: {
		has_layer: {
			sets: ['product', 'layer'],
			pairs: [
				['A', 'inner'],
				['A', 'tie'],
				['A', 'outer'],
				['B', 'inner']
			]
		}
	},
	quantities: {
		mass: {
			per: ['product', 'layer'],
			in: ['has_layer'],
			value: { A: { inner: 6, tie: 1, outer: 3 }, B: { inner: 4 } }
		},
		plan: { per: ['product', 'line', 'year'] },
		load: { per: ['line'], value: { L1: 5, L2: 5 } },
		stock: { per: ['month'], value: { jan: 4, feb: -1, mar: -2 } },
		cash: { per: ['year'], unit: 'EUR', value: { y0: -200, y1: 80, y2: 80, y3: 80 } },
		good: { per: ['line'], type: 'yes_no', value: { L1: true, L2: false } },
		limit: { type: 'number', value: 0 },
		result: { formula: text, ...more }
	}
});

describe('gathering', () => {
	it('runs over the set that is named, also one that the result has', () => {
		const shop = plant('mass / SUM(mass over layer)', {
			per: ['product', 'layer'],
			in: ['has_layer']
		});
		expect(computed(shop, 'result', 'A', 'inner')).toBe(0.6); // 6 ÷ (6 + 1 + 3)
		expect(computed(shop, 'result', 'B', 'inner')).toBe(1);
	});

	it('without over takes every set that the result lacks, and the printer writes them out', () => {
		const plan = planOf(plant('SUM(plan)', { per: ['product'] }));
		expect(plan.printed.get('7')).toBe('SUM(plan over line × year)');
	});

	it('goes argument by argument', () => {
		const plan = planOf(plant('MAX(0; load; stock)'));
		expect(plan.printed.get('7')).toBe('MAX(0; load over line; stock over month)');
		expect(computed(plant('MAX(0; load; stock)'), 'result')).toBe(5);
	});

	it('is done by the innermost aggregate', () => {
		const plan = planOf(plant('SUM(MAX(plan over line))', { per: ['product'] }));
		expect(plan.printed.get('7')).toBe('SUM(MAX(plan over line) over year)');
		expect(planOf(plant('SUM(MAX(plan))', { per: ['product'] })).problems[0]?.code).toBe(
			'gathers-nothing'
		);
	});

	it('names the gathered member, so that the set keeps its outer meaning', () => {
		const shop = plant('SUM(mass[l] over l in layer where l > layer)', {
			per: ['product', 'layer'],
			in: ['has_layer']
		});
		expect(planOf(shop).problems).toEqual([]);
		expect(computed(shop, 'result', 'A', 'inner')).toBe(4); // tie 1 + outer 3
		expect(computed(shop, 'result', 'A', 'outer')).toBe(0);
	});

	it('takes only pairs that exist in every reference at the gathered member', () => {
		const shop = plant('SUM(mass * load over layer)', { per: ['product', 'line'] });
		expect(formula(planOf(shop), 'result', 'B', 'L1')).toBe(
			'Sum(Multiply(mass[B;inner], load[L1]))'
		);
	});

	it('refuses an aggregate that gathers nothing, and says what to write', () => {
		const text = 'mass / SUM(mass)';
		const problem = problemOf(
			planOf(plant(text, { per: ['product', 'layer'], in: ['has_layer'] }))
		);
		expect(problem.message).toBe(
			'SUM gathers nothing: everything is taken at the same product and layer. Write SUM(mass over layer).'
		);
		expect(problem.suggestion).toBe('SUM(mass over layer)');
		expect(at(text, problem)).toBe('SUM(mass)');
	});

	it('refuses to gather over a set on which nothing depends', () => {
		const text = 'SUM(load over line × month)';
		const problem = problemOf(planOf(plant(text)));
		expect(problem.message).toContain(
			'Nothing in load depends on month, so gathering over it would only take the same 3 times'
		);
		expect(at(text, problem)).toBe('month');
	});

	it('refuses what neither the result nor over provides', () => {
		const problem = problemOf(planOf(plant('SUM(plan over line)', { per: ['product'] })));
		expect(problem.message).toContain('plan is per year, but result is per product');
	});

	it('refuses over something that is no set', () => {
		const text = 'SUM(load over machine)';
		const problems = planOf(plant(text)).problems;
		expect(problems[0]?.code).toBe('unknown-set');
		expect(at(text, problems[0]!)).toBe('machine');
	});

	it('refuses where without gathering', () => {
		const problem = planOf(plant('MAX(limit where limit > 0; 1)')).problems[0];
		expect(problem?.code).toBe('where-without-gathering');
	});
});

describe('the filter', () => {
	it('keeps terms, and an error in one that is left out does not count', () => {
		expect(computed(plant('SUM(1 / (stock + 1) over month where stock > 0)'), 'result')).toBe(0.2);
	});

	it('that is fixed leaves terms out of the plan', () => {
		const plan = planOf(plant('SUM(stock over month where month > jan)'));
		expect(formula(plan, 'result')).toBe('Sum(stock[feb], stock[mar])');
	});

	it('that moves stays with its term', () => {
		const plan = planOf(plant('SUM(load over line where load > limit)'));
		expect(formula(plan, 'result')).toBe(
			'Sum(load[L1] if Greater(load[L1], limit), load[L2] if Greater(load[L2], limit))'
		);
	});

	it.each([
		['SUM', 0],
		['COUNT', 0],
		['PRODUCT', 1],
		['MAX', 'no-answer'],
		['AVERAGE', 'no-answer']
	])('that leaves nothing makes %s %s', (name, result) => {
		expect(computed(plant(`${name}(load over line where ORD(line) > 9)`), 'result')).toBe(result);
		expect(computed(plant(`${name}(load over line where load > 99)`), 'result')).toBe(result);
	});

	it('that leaves nothing gives way to the else of the aggregate, and to nothing else', () => {
		const moving = 'SUM(load over line where load > limit else 7)';
		expect(computed(plant(moving), 'result')).toBe(10);
		const none = plant(moving);
		none.quantities.limit!.value = 99;
		expect(computed(none, 'result')).toBe(7);
		expect(computed(plant('MAX(load over line where ORD(line) > 9 else 7)'), 'result')).toBe(7);
	});

	it('must say yes or no', () => {
		const text = 'SUM(stock over month where stock)';
		const problem = problemOf(planOf(plant(text)));
		expect(problem.message).toBe(
			'stock is a number, and a condition stands here: compare it, as in stock > 0.'
		);
	});
});

describe('aggregates', () => {
	it('of conditions count the yeses, of numbers what has a value', () => {
		expect(computed(plant('COUNT(stock < 0 over month)'), 'result')).toBe(2);
		expect(computed(plant('COUNT(stock over month)'), 'result')).toBe(3);
		expect(computed(plant('SUM(good over line)'), 'result')).toBe(1);
	});

	it('ANY and ALL give yes or no', () => {
		const yesNo = { type: 'yes_no' as const };
		expect(computed(plant('ANY(stock < 0 over month)', yesNo), 'result')).toBe(1);
		expect(computed(plant('ALL(stock < 0 over month)', yesNo), 'result')).toBe(0);
		expect(problemOf(planOf(plant('ANY(stock over month)', yesNo))).code).toBe('not-a-condition');
	});

	it('ARGMIN gives a member, of equals the first', () => {
		const member = { type: { member_of: 'line' } };
		expect(computed(plant('ARGMAX(load over line)', member), 'result')).toBe(0);
		const problem = problemOf(planOf(plant('ARGMAX(load over line)')));
		expect(problem.code).toBe('member-as-number');
	});

	it('ARGMIN takes one set at a time', () => {
		const problem = problemOf(planOf(plant('ARGMIN(plan)', { type: { member_of: 'line' } })));
		expect(problem.code).toBe('one-axis');
	});

	it('FIRST finds a member by a condition, and none where none meets it', () => {
		const member = { type: { member_of: 'month' } };
		expect(computed(plant('FIRST(month where stock < 0)', member), 'result')).toBe(1);
		expect(computed(plant('LAST(month where stock < 0)', member), 'result')).toBe(2);
		expect(computed(plant('FIRST(month where stock < -9)', member), 'result')).toBe('no-answer');
		expect(planOf(plant('FIRST(month where stock < 0)', member)).printed.get('7')).toBe(
			'FIRST(month over month where stock < 0)'
		);
	});

	it('PRODUCT of numbers with a unit has none', () => {
		const problem = problemOf(planOf(plant('PRODUCT(cash over year)', { unit: 'EUR' })));
		expect(problem.code).toBe('has-unit');
	});

	it('RANK places a value among others of its unit', () => {
		expect(computed(plant('RANK(4; stock over month)'), 'result')).toBe(1);
		const problem = problemOf(planOf(plant('RANK(4; cash over year)')));
		expect(problem.code).toBe('unit-missing');
	});

	it('PAYBACK gives the number of the year, between two of them', () => {
		// −200 + 80 + 80 = −40 after two years; half of the third year's 80 pays it.
		expect(computed(plant('PAYBACK(cash over year)', { unit: 'year' }), 'result')).toBe(2.5);
		const problem = problemOf(planOf(plant('PAYBACK(stock over month)', { unit: 'year' })));
		expect(problem.message).toContain('PAYBACK needs the numbers of the members of month');
	});

	it('NPV refuses a first term of today, unless a fixed condition drops it', () => {
		const euro = { unit: 'EUR' };
		const text = 'NPV(0.1; cash over year)';
		const problem = problemOf(planOf(plant(text, euro)));
		expect(problem.message).toBe(
			'NPV discounts its first term by one period, but y0 has number 0, which is today: write cash[y0] + NPV(rate; cash over year where year > y0).'
		);
		const right = plant('cash[y0] + NPV(0; cash over year where year > y0)', euro);
		expect(planOf(right).problems).toEqual([]);
		expect(computed(right, 'result')).toBe(40); // −200 + 3 × 80
	});

	it('NPV takes a rate per year, where the set counts years', () => {
		const shop = plant('NPV(rate; cash over year where year > y0)', { unit: 'EUR' });
		shop.quantities.rate = { unit: '%/year', value: 100 };
		expect(computed(shop, 'result')).toBe(70); // 80/2 + 80/4 + 80/8
	});

	it.each([
		'NPV(0.1; cash over year where cash > 0 - cash)',
		'STDEV(cash over year where cash > 0)'
	])('refuses a condition that moves: %s', (text) => {
		const problem = problemOf(planOf(plant(text, { unit: 'EUR' })));
		expect(problem.code).toBe('moving-where');
	});

	it('write out two sets with the multiplication sign', () => {
		expect(planOf(plant('SUM(plan over line * year)', { per: ['product'] })).printed.get('7')).toBe(
			'SUM(plan over line × year)'
		);
	});

	it('of an empty set are what they are of nothing', () => {
		const shop = plant('SUM(x over option) + COUNT(x over option)');
		shop.sets!.option = [];
		shop.quantities.x = { per: ['option'] };
		expect(computed(shop, 'result')).toBe(0);
	});
});
