/** Language section 5: what a person is likely to type, and what the plan says. */
import { describe, expect, it } from 'vitest';
import { at, computed, planOf, problemOf, type Shop } from './plan-builder';

const plant = (text: string, more: Partial<Shop['quantities'][string]> = {}): Shop => ({
	sets: {
		product: ['PX15B', 'PB28B'],
		layer: ['inner', 'outer'],
		line: ['L1', 'L2'],
		stage: { members: [{ id: 'extrude' }, { id: 'rewind' }, { id: 'crosslink' }], plural: 'Stages' }
	},
	relations: {
		runs: {
			sets: ['product', 'line'],
			pairs: [
				['PX15B', 'L1'],
				['PB28B', 'L2']
			]
		}
	},
	quantities: {
		layer_mass: { per: ['product', 'layer'], unit: 'kg/m' },
		variable_cost: { per: ['product', 'line'], in: ['runs'], unit: 'EUR/m' },
		labour_pool: { per: ['stage'], unit: 'h' },
		line_scheduled: { per: ['line'], unit: 'h' },
		length: { unit: 'm', value: 3 },
		result: { formula: text, ...more }
	}
});

describe('a likely mistake', () => {
	it.each<[string, object, string, string]>([
		[
			'layer_mass / SUM(layer_mass)',
			{ per: ['product', 'layer'] },
			'SUM(layer_mass)',
			'SUM gathers nothing: everything is taken at the same product and layer. Write SUM(layer_mass over layer).'
		],
		[
			'variable_cost',
			{ per: ['product'], unit: 'EUR/m' },
			'variable_cost',
			'variable_cost is per line, but result is per product: choose one, as in variable_cost[L1], or gather, as in SUM(variable_cost over line).'
		],
		['length + 5', { unit: 'm' }, '5', 'length is in m, 5 has no unit: 5[m]?'],
		['5 + length', { unit: 'm' }, '5', 'length is in m, 5 has no unit: 5[m]?'],
		[
			'SUM(line_scheduled)',
			{ unit: 'h/year' },
			'SUM(line_scheduled)',
			'The formula gives h, but result is in h/year: divide by 1[year]?'
		],
		[
			'labour_pool[line]',
			{ per: ['line'], unit: 'h' },
			'line',
			'line is a set here; the stages are extrude, rewind, crosslink.'
		],
		[
			'variable_cost[PB28B; L1]',
			{ unit: 'EUR/m' },
			'variable_cost[PB28B; L1]',
			'variable_cost has no value for PB28B and L1: they are no pair of the relation runs. Choose another pair, or add this one to runs.'
		],
		['3[hours]', { unit: 'h' }, 'hours', 'Unknown unit "hours". Write h.'],
		[
			'layer',
			{},
			'layer',
			'layer is a set, and result is one value, so there is no current layer: make it per layer, gather over layer, or choose a member (the members of layer are inner, outer).'
		],
		[
			'length = L1',
			{ type: 'yes_no' },
			'length = L1',
			'length is a number, but L1 is a member of line: only members of one set can be compared.'
		],
		[
			'variable_cost.L1',
			{ unit: 'EUR/m' },
			'variable_cost.L1',
			'A point stands between a set and its member, and variable_cost is a quantity per product and line: write variable_cost[L1].'
		],
		[
			'length.L1',
			{ unit: 'm' },
			'length.L1',
			'length has one value in all, so no member belongs behind it: write length.'
		],
		['SUM', {}, 'SUM', 'There is no SUM: a function takes brackets, as in SUM(…).']
	])('%s', (text, more, words, message) => {
		const problem = problemOf(planOf(plant(text, more)));
		expect(problem.message).toBe(message);
		expect(at(text, problem)).toBe(words);
		expect(problem.quantity).toBe('result');
	});

	it.each(['SUMIF(length; 1)', '-length^2', '2^3^2', 'A1:B3', '5 kg', '1 < 2 < 3', '('])(
		'%s is reported as the reader of formulas says it',
		(text) => {
			const problem = problemOf(planOf(plant(text, { unit: 'm' })));
			expect(problem.message.length).toBeGreaterThan(20);
			expect(problem.span.end).toBeLessThanOrEqual(text.length);
		}
	);
});

describe('a workbook with mistakes', () => {
	it('is planned all the same', () => {
		const shop = plant('length * 2', { unit: 'm' });
		shop.quantities.broken = { formula: 'lenght * 2', unit: 'm' };
		shop.quantities.user = { formula: 'broken + length', unit: 'm' };
		expect(planOf(shop).problems.map((problem) => problem.quantity)).toEqual(['broken']);
		expect(computed(shop, 'result')).toBe(6);
		expect(computed(shop, 'user')).toBe('bad-formula');
	});

	it('never makes the plan throw, whatever is missing', () => {
		const shop: Shop = {
			sets: {
				line: { members: [], present: 'nothing' },
				odd: { members: [{ id: 'a' }], number_unit: '?', spans: 'long' }
			},
			relations: { runs: { sets: ['line', 'moon'], pairs: [['x', 'y']] } },
			quantities: {
				a: { per: ['moon'], formula: '1' },
				b: { per: ['line'], in: ['runs', 'none'], formula: 'a' },
				c: { type: { member_of: 'moon' }, formula: 'b' },
				d: { formula: { by: 'line', cases: { '*': '1', __proto__: '2' } } },
				e: { per: ['odd'], formula: { by: 'odd', cases: {} }, where: '(' },
				f: { formula: 'SUM(a) + SUM(b over line) + c + NUMBER(odd) + SPAN(odd)' }
			}
		};
		const plan = planOf(shop);
		expect(new Set(plan.problems.map((problem) => problem.quantity))).toEqual(
			new Set(['a', 'b', 'c', 'd', 'e', 'f'])
		);
	});

	it('with too many values for one quantity says so and keeps the rest', () => {
		const shop = plant('length', { unit: 'm' });
		shop.sets!.part = Array.from({ length: 2000 }, (_, at) => `p${at}`);
		shop.quantities.fit = { per: ['part', 'other: part'], formula: '1' };
		shop.quantities.most = { formula: 'MAX(fit)' };
		const plan = planOf(shop);
		expect(plan.problems.map((problem) => [problem.quantity, problem.code])).toEqual([
			['fit', 'too-many-cells'],
			['most', 'broken-quantity']
		]);
		expect(computed(shop, 'result')).toBe(3);
	});
});
