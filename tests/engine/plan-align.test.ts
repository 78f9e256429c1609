/** Language rules 1, 3, 9 and 10: what a name stands for, and at which member it is taken. */
import { describe, expect, it } from 'vitest';
import { at, computed, formula, planOf, problemOf, type Shop } from './plan-builder';

const plant = (text: string, more: Partial<Shop['quantities'][string]> = {}): Shop => ({
	sets: {
		product: ['A', 'B'],
		line: { members: [{ id: 'L1' }, { id: 'L2' }], plural: 'lines' },
		stage: { members: [{ id: 'extrude' }, { id: 'rewind' }], plural: 'stages' },
		pattern: ['5x24', '7x24']
	},
	relations: {
		runs: {
			sets: ['product', 'line'],
			pairs: [
				['A', 'L1'],
				['A', 'L2'],
				['B', 'L2']
			]
		}
	},
	quantities: {
		price: { per: ['product'], unit: 'EUR/m' },
		cost: { per: ['product', 'line'], in: ['runs'], unit: 'EUR/m' },
		crews: { per: ['stage'] },
		hours: { per: ['pattern'], unit: 'h' },
		result: { unit: 'EUR/m', formula: text, ...more }
	}
});
const perPair = { per: ['product', 'line'], in: ['runs'] };

describe('alignment', () => {
	it('takes a quantity per product at the product in hand', () => {
		const plan = planOf(plant('price - cost', perPair));
		expect(plan.problems).toEqual([]);
		expect(formula(plan, 'result', 'B', 'L2')).toBe('Subtract(price[B], cost[B;L2])');
	});

	it('aligns whatever the order of the sets', () => {
		const plan = planOf(plant('cost', { ...perPair, per: ['line', 'product'] }));
		expect(formula(plan, 'result', 'L2', 'A')).toBe('cost[A;L2]');
	});

	it('says what does not align, naming both quantities and the set', () => {
		const text = 'price - cost';
		const problem = problemOf(planOf(plant(text, { per: ['product'] })));
		expect(problem.code).toBe('not-aligned');
		expect(problem.message).toBe(
			'cost is per line, but result is per product: choose one, as in cost[L1], or gather, as in SUM(cost over line).'
		);
		expect(at(text, problem)).toBe('cost');
	});

	it('chooses a fixed member, whatever its set is called', () => {
		const plan = planOf(plant('cost[L2]', { per: ['product'] }));
		expect(formula(plan, 'result', 'B')).toBe('cost[B;L2]');
	});

	it('takes two fixed members in any order', () => {
		expect(formula(planOf(plant('cost[L2; B]')), 'result')).toBe('cost[B;L2]');
	});

	it('takes a member in quotes where the name would not read as one', () => {
		const shop = plant("hours['5x24']", { unit: 'h' });
		expect(formula(planOf(shop), 'result')).toBe('hours[5x24]');
	});

	it('takes a name in brackets first as a member of the sets of the quantity', () => {
		const shop = plant('crews[line]', { unit: '1' });
		shop.sets!.stage = ['extrude', 'line'];
		expect(formula(planOf(shop), 'result')).toBe('crews[line]');
	});

	it('tells a set from a member of a set', () => {
		const text = 'crews[line]';
		const problem = problemOf(planOf(plant(text, { unit: '1', per: ['line'] })));
		expect(problem.message).toBe('line is a set here; the stages are extrude, rewind.');
		expect(at(text, problem)).toBe('line');
	});

	it('refuses a written pair that does not exist', () => {
		const text = 'cost[B; L1] + 0';
		const problem = problemOf(planOf(plant(text)));
		expect(problem.code).toBe('no-such-pair');
		expect(problem.message).toContain(
			'cost has no value for B and L1: they are no pair of the relation runs'
		);
		expect(at(text, problem)).toBe('cost[B; L1]');
	});

	it('does not let a pair that does not exist pass through arithmetic', () => {
		const shop = plant('cost[L1] * 2', { per: ['product'] });
		shop.quantities.cost!.value = { A: { L1: 3, L2: 4 }, B: { L2: 5 } };
		expect(computed(shop, 'result', 'A')).toBe(6); // 3 × 2
		expect(computed(shop, 'result', 'B')).toBe('hits-nothing');
	});

	it('shows a reference to a pair that does not exist as absent', () => {
		const shop = plant('cost[L1]', { per: ['product'] });
		shop.quantities.cost!.value = { A: { L1: 3 } };
		expect(computed(shop, 'result', 'B')).toBe('absent');
	});

	it('refuses an index for a set that the quantity is not per', () => {
		const text = 'price[L1]';
		const problem = problemOf(planOf(plant(text, { per: ['product'] })));
		expect(problem.message).toContain('There is no L1 to choose from price');
		expect(at(text, problem)).toBe('L1');
	});

	it('refuses the same set chosen twice', () => {
		const problem = problemOf(planOf(plant('price[A; B]')));
		expect(problem.code).toMatch(/not-per|unknown-member/);
	});

	it('suggests the nearest member and the nearest name', () => {
		const member = problemOf(planOf(plant('crews[extrud]', { unit: '1' })));
		expect(member.suggestion).toBe('extrude');
		expect(member.message).toContain('extrude?');
		const text = 'prise * 2';
		const name = problemOf(planOf(plant(text, { per: ['product'] })));
		expect(name.message).toBe('There is no prise: price?');
		expect(name.suggestion).toBe('price');
		expect(at(text, name)).toBe('prise');
	});

	it('knows no quantity by the names that every object has', () => {
		for (const name of ['constructor', 'toString', 'hasOwnProperty'])
			expect(problemOf(planOf(plant(`${name} * 2`))).code).toBe('unknown-name');
		const shop = plant('constructor * 2');
		Object.assign(shop.quantities, { constructor: { unit: 'EUR/m', value: 3 } });
		expect(computed(shop, 'result')).toBe(6);
	});
});

describe('members as values', () => {
	const routes = (text: string, more: object = {}): Shop => ({
		sets: { route: ['inline', 'offline'], product: ['A', 'B'], twin: ['inline', 'other'] },
		quantities: {
			route_of: { per: ['product'], type: { member_of: 'route' } },
			twin_of: { type: { member_of: 'twin' } },
			result: { per: ['product'], type: 'yes_no', formula: text, ...more }
		}
	});

	it('are looked for first in the set that is expected', () => {
		const plan = planOf(routes('route_of = inline'));
		expect(plan.problems).toEqual([]);
		expect(formula(plan, 'result', 'A')).toBe('Equal(route_of[A], 0)');
		expect(formula(planOf(routes('offline = route_of')), 'result', 'A')).toBe(
			'Equal(1, route_of[A])'
		);
	});

	it('need their set where two sets have one of that name', () => {
		const shop = routes('inline', { type: { member_of: 'route' } });
		expect(planOf(shop).problems).toEqual([]);
		const text = 'ORD(inline) > 1';
		const problem = problemOf(planOf(routes(text)));
		expect(problem.message).toBe(
			'inline is a member of route and of twin: write route.inline or twin.inline.'
		);
		expect(planOf(routes('ORD(twin.inline) > 1')).problems).toEqual([]);
	});

	it('compare within one set only', () => {
		const problem = problemOf(planOf(routes('route_of = twin_of')));
		expect(problem.message).toBe(
			'route_of is a member of route, but twin_of is a member of twin: only members of one set can be compared.'
		);
	});

	it('are no numbers', () => {
		const text = 'route_of + 1 > 0';
		const problem = problemOf(planOf(routes(text)));
		expect(problem.code).toBe('member-as-number');
		expect(at(text, problem)).toBe('route_of');
	});

	it('of an axis in hand are written with the name of the set', () => {
		const plan = planOf(routes('product = B'));
		expect(formula(plan, 'result', 'A')).toBe('0');
		expect(formula(plan, 'result', 'B')).toBe('1');
	});

	it('are missing where the quantity is not per the set', () => {
		const problem = problemOf(planOf(routes('twin = twin_of')));
		expect(problem.message).toContain('twin is a set, and result is per product');
	});
});

describe('a set used twice', () => {
	const matrix = (text: string, more: object = {}): Shop => ({
		sets: { product: ['A', 'B'] },
		quantities: {
			setup: {
				per: ['from: product', 'to: product'],
				unit: 'h',
				value: { A: { A: 0, B: 2 }, B: { A: 3, B: 0 } }
			},
			weight: { per: ['product'], value: { A: 10, B: 20 } },
			after: { per: ['product'], type: { member_of: 'product' }, value: { A: 'B', B: 'A' } },
			result: { unit: 'h', formula: text, ...more }
		}
	});

	it('does not read the diagonal', () => {
		const problem = problemOf(planOf(matrix('setup', { per: ['product'] })));
		expect(problem.message).toContain('setup is per from, but result is per product');
	});

	it('gathers both axes by name and writes them out', () => {
		const plan = planOf(matrix('MAX(setup)'));
		expect(plan.printed.get('3')).toBe('MAX(setup over from × to)');
		expect(computed(matrix('MAX(setup)'), 'result')).toBe(3);
		expect(planOf(matrix('MAX(setup over from × to)')).problems).toEqual([]);
	});

	it('takes both places in order', () => {
		expect(formula(planOf(matrix('setup[A; B]')), 'result')).toBe('setup[A;B]');
		const perProduct = { per: ['product'] };
		expect(formula(planOf(matrix('setup[after; product]', perProduct)), 'result', 'A')).toContain(
			'Pick(after[A]'
		);
	});

	it('asks which axis is meant where one place could be either', () => {
		const problem = problemOf(planOf(matrix('setup[A]')));
		expect(problem.code).toBe('which-axis');
		expect(problem.message).toContain('setup[from.A]');
	});

	it('takes an axis by its own name', () => {
		const per = { per: ['to: product'] };
		expect(formula(planOf(matrix('setup[from.B]', per)), 'result', 'A')).toBe('setup[B;A]');
		expect(formula(planOf(matrix('setup[B]', per)), 'result', 'A')).toBe('setup[B;A]');
	});

	it('does not align a named axis with the set it runs over', () => {
		const messages = planOf(matrix('weight * setup', { per: ['from: product'] })).problems.map(
			(problem) => problem.message
		);
		expect(messages[0]).toContain('choose one, as in weight[from]');
		expect(messages[1]).toContain('setup is per to, but result is per from');
		expect(messages[1]).toContain('choose one, as in setup[to.A]');
	});

	it('reads another quantity at a named axis', () => {
		const shop = matrix('weight[from] * 1[h]', { per: ['from: product'] });
		expect(computed(shop, 'result', 'B')).toBe(20);
	});
});
