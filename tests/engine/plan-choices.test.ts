/** Language rules 7, 11 and 12: choices, neighbours and their ends, other scenarios. */
import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import {
	at,
	computed,
	computedIn,
	formula,
	planOf,
	problemOf,
	workbookOf,
	type Shop
} from './plan-builder';

const plant = (text: string, more: Partial<Shop['quantities'][string]> = {}): Shop => ({
	sets: {
		product: ['A', 'B'],
		layer: ['inner', 'outer'],
		material: ['PE', 'tie', 'EVOH'],
		month: ['jan', 'feb', 'mar'],
		hour: { members: [{ id: 'h0' }, { id: 'h1' }, { id: 'h2' }], cyclic: true },
		line: ['L1', 'L2']
	},
	relations: {
		sold: { sets: ['material', 'line'], pairs: [['PE', 'L1']] },
		open: {
			sets: ['line', 'month'],
			pairs: [
				['L1', 'jan'],
				['L1', 'mar'],
				['L2', 'feb']
			]
		}
	},
	quantities: {
		material_of: {
			per: ['product', 'layer'],
			type: { member_of: 'material' },
			value: { A: { inner: 'PE', outer: 'EVOH' }, B: { inner: 'tie' } }
		},
		group_of: {
			per: ['product'],
			type: { member_of: 'line' },
			fixed: true,
			value: { A: 'L2', B: 'L1' }
		},
		price: { per: ['material'], value: { PE: 1, tie: 3, EVOH: 8 } },
		scrap: { per: ['material', 'line'], in: ['sold'], value: { PE: { L1: 5 } } },
		rate: { per: ['line'], value: { L1: 10, L2: 20 } },
		demand: { per: ['month'], value: { jan: 1, feb: 2, mar: 3 } },
		heat: { per: ['hour'], value: { h0: 1, h1: 2, h2: 3 } },
		shift: { per: ['line', 'month'], in: ['open'], value: { L1: { jan: 1, mar: 3 } } },
		opening: { value: 100 },
		result: { formula: text, ...more }
	}
});

describe('a choice that rests on no input', () => {
	const dated = (moved: string): Shop => ({
		sets: {
			month: ['jan', 'feb', 'mar'],
			period: {
				members: [
					{ id: 'p1', number: 13 },
					{ id: 'p2', number: 14 }
				]
			}
		},
		quantities: {
			demand: { per: ['month'], value: { jan: 1, feb: 2, mar: 3 } },
			// The later quantity comes first: what is known is known wherever it stands.
			result: { per: ['period'], formula: 'demand[month_of] + 1' },
			month_of: {
				per: ['period'],
				type: { member_of: 'month' },
				formula: `MEMBER(month; MOD(NUMBER(period); 12) + ${moved})`
			},
			shift: { value: 0 }
		}
	});

	it('is known when the plan is made: its cell reads the one that it means, and no other', () => {
		const plan = planOf(dated('0'));
		expect(formula(plan, 'result', 'p2')).toBe('Add(demand[feb], 1)');
		expect(computed(dated('0'), 'result', 'p2')).toBe(3);
	});

	it('is one of all where an input may move it', () => {
		expect(formula(planOf(dated('shift')), 'result', 'p2')).toContain('demand[mar]');
		expect(computed(dated('shift'), 'result', 'p2')).toBe(3);
	});
});

describe('choices', () => {
	const perLayer = { per: ['product', 'layer'] };

	it('depend on every option', () => {
		expect(formula(planOf(plant('price[material_of]', perLayer)), 'result', 'A', 'outer')).toBe(
			'Pick(material_of[A;outer]: price[PE], price[tie], price[EVOH])'
		);
		expect(computed(plant('price[material_of]', perLayer), 'result', 'A', 'outer')).toBe(8);
	});

	it('nobody made are an empty input', () => {
		expect(computed(plant('price[material_of]', perLayer), 'result', 'B', 'outer')).toBe(
			'uses-empty'
		);
	});

	it('that are fixed are followed when the plan is made', () => {
		const plan = planOf(plant('rate[group_of]', { per: ['product'] }));
		expect(formula(plan, 'result', 'A')).toBe('rate[L2]');
	});

	it('that hit no pair are an error, moving or fixed', () => {
		const moving = plant('scrap[material_of; L1]', perLayer);
		expect(formula(planOf(moving), 'result', 'A', 'outer')).toBe(
			'Pick(material_of[A;outer]: scrap[PE;L1], -, -)'
		);
		expect(computed(moving, 'result', 'A', 'outer')).toBe('hits-nothing');
		const fixed = plant('scrap[material_of; L1]', perLayer);
		fixed.quantities.material_of!.fixed = true;
		expect(computed(fixed, 'result', 'A', 'outer')).toBe('hits-nothing');
		expect(computed(fixed, 'result', 'A', 'inner')).toBe(5);
	});

	it('may be two in one reference', () => {
		const shop = plant('scrap[material_of; best]', perLayer);
		shop.quantities.best = { type: { member_of: 'line' }, formula: 'ARGMIN(rate over line)' };
		expect(planOf(shop).problems).toEqual([]);
		expect(computed(shop, 'result', 'A', 'inner')).toBe(5);
		expect(computed(shop, 'result', 'A', 'outer')).toBe('hits-nothing');
	});

	it('group by a fixed condition: only the members of the group are gathered', () => {
		const shop = plant('SUM(x over product where group_of = line)', { per: ['line'] });
		shop.quantities.x = { per: ['product'], value: { A: 1, B: 2 } };
		expect(formula(planOf(shop), 'result', 'L1')).toBe('Sum(x[B])');
	});

	it('are members: a number is none', () => {
		const text = 'price[opening]';
		const problem = problemOf(planOf(plant(text)));
		expect(problem.code).toBe('not-a-member');
		expect(at(text, problem)).toBe('opening');
	});

	it('choose from a set that the quantity is per', () => {
		const problem = problemOf(planOf(plant('demand[group_of]', { per: ['product'] })));
		expect(problem.message).toContain('group_of is a member of line, but demand is per month');
	});

	it('NUMBER of a choice is picked by it', () => {
		const shop = plant('ORD(material_of)', perLayer);
		expect(computed(shop, 'result', 'A', 'outer')).toBe(3);
	});
});

describe('neighbours', () => {
	const perMonth = { per: ['month'] };

	it('are the member before or after, and off the end is nothing', () => {
		const plan = planOf(plant('demand[month - 1]', perMonth));
		expect(formula(plan, 'result', 'feb')).toBe('demand[jan]');
		expect(computed(plant('demand[month - 1]', perMonth), 'result', 'jan')).toBe('off-end');
		expect(computed(plant('demand[month + 2] * 2', perMonth), 'result', 'feb')).toBe('off-end');
		expect(computed(plant('demand[month + 2] * 2', perMonth), 'result', 'jan')).toBe(6);
	});

	it('give way to else off the end', () => {
		const shop = plant('result[month - 1 else opening] - demand', perMonth);
		expect(formula(planOf(shop), 'result', 'jan')).toBe('Subtract(opening, demand[jan])');
		expect(computed(shop, 'result', 'mar')).toBe(94); // 100 − 1 − 2 − 3
	});

	it('else catches nothing but the end', () => {
		const shop = plant('demand[month - 1 else opening]', perMonth);
		shop.quantities.demand!.value = { feb: 2 };
		expect(computed(shop, 'result', 'feb')).toBe('not-entered');
		const text = 'demand[jan else 5]';
		const problem = problemOf(planOf(plant(text)));
		expect(problem.code).toBe('else-without-neighbour');
		expect(at(text, problem)).toBe('5');
	});

	it('wrap around in a cyclic set', () => {
		const plan = planOf(plant('heat[hour - 1] + heat[hour + 4]', { per: ['hour'] }));
		expect(formula(plan, 'result', 'h0')).toBe('Add(heat[h2], heat[h1])');
	});

	it('are the next for which the pair exists', () => {
		const plan = planOf(plant('shift[month - 1]', { per: ['line', 'month'], in: ['open'] }));
		expect(formula(plan, 'result', 'L1', 'mar')).toBe('shift[L1;jan]');
		expect(
			computed(plant('shift[month - 1]', { per: ['line', 'month'] }), 'result', 'L2', 'feb')
		).toBe('off-end');
	});

	it('need an axis to step along', () => {
		const problem = problemOf(planOf(plant('demand[month - 1]')));
		expect(problem.code).toBe('not-an-axis');
		expect(problem.message).toContain('there is no current month to step from');
		expect(problemOf(planOf(plant('demand[opening - 1]', perMonth))).message).toContain(
			'opening is no set'
		);
	});

	it('of a gathered member are found from it', () => {
		const shop = plant('MAX(demand - demand[month - 1] over month where month > jan)');
		expect(computed(shop, 'result')).toBe(1);
	});

	it('a test of the first member takes the end out of the plan', () => {
		const shop = plant('IF(month = jan; opening; result[month - 1]) + demand', perMonth);
		const plan = planOf(shop);
		expect(plan.problems).toEqual([]);
		expect(formula(plan, 'result', 'jan')).toBe('Add(opening, demand[jan])');
		expect(formula(plan, 'result', 'feb')).toBe('Add(result[jan], demand[feb])');
	});
});

describe('other scenarios', () => {
	const three = (text: string, more: object = {}) => {
		const workbook = workbookOf(plant(text, more));
		const change = (value: number) => [{ quantity: 'opening', value }];
		return {
			...workbook,
			scenarios: [
				{ id: 'base', title: 'Base', parent: null, changes: [] },
				{ id: 'high', title: 'High', parent: 'base', changes: change(150) },
				{ id: 'higher', title: 'Higher', parent: 'high', against: 'high', changes: change(180) }
			]
		};
	};

	it('x[reference] reads the scenario measured against, x[base] the base', () => {
		const model = Model.open(three('opening - opening[reference]'));
		expect(computedIn(model, 'higher', 'result')).toBe(30); // 180 − 150
		expect(computedIn(model, 'high', 'result')).toBe(50);
		expect(computedIn(model, 'base', 'result')).toBe(0);
		const base = Model.open(three('opening - opening[base]'));
		expect(computedIn(base, 'higher', 'result')).toBe(80);
	});

	it('combine with members and choices', () => {
		const plan = planOf(
			plant('demand[reference; feb] + rate[group_of; base]', { per: ['product'] })
		);
		expect(formula(plan, 'result', 'A')).toBe('Add(demand[feb]@reference, rate[L2]@base)');
		expect(plan.readsOtherScenario.length).toBe(2);
	});

	it('a quantity that reads itself there is a loop, because the base is its own reference', () => {
		const problem = problemOf(planOf(plant('result[base] * 1.1')));
		expect(problem.code).toBe('circular');
		expect(problem.message).toContain('result ← result');
	});
});
