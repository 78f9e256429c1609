/** Language rules 4, 5, 8 and 18: members that come and go, conditions, ranges, rules by member. */
import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import {
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
		line: {
			members: [{ id: 'L1' }, { id: 'L7' }, { id: 'L8' }, { id: 'L9' }],
			present: 'installed'
		},
		product: ['A', 'B']
	},
	quantities: {
		installed: {
			per: ['line'],
			type: 'yes_no',
			value: { L1: true, L7: true, L8: false, L9: true }
		},
		hours: { per: ['line'], value: { L1: 10, L7: 20, L8: 40, L9: 80 } },
		twice: { per: ['line'], formula: 'hours * 2' },
		result: { formula: text, ...more }
	}
});

/** The plant in its base, where L8 is not there, and with it. */
function withNewLine(shop: Shop): Model {
	return Model.open({
		...workbookOf(shop),
		scenarios: [
			{ id: 'base', title: 'Base', parent: null, changes: [] },
			{
				id: 'new_line',
				title: 'New line',
				parent: 'base',
				changes: [{ quantity: 'installed', value: { L8: true } }]
			}
		]
	});
}

describe('members that are present in some scenarios only', () => {
	it('are absent, their inputs as well, where they are not present', () => {
		const model = withNewLine(plant('hours', { per: ['line'] }));
		expect(computedIn(model, 'base', 'result', 'L8')).toBe('absent');
		expect(computedIn(model, 'base', 'twice', 'L8')).toBe('absent');
		expect(computedIn(model, 'new_line', 'twice', 'L8')).toBe(80);
	});

	it('are skipped by every aggregate', () => {
		const model = withNewLine(plant('SUM(hours over line) + COUNT(twice > 30 over line) / 1000'));
		expect(model.problems).toEqual([]);
		expect(computedIn(model, 'base', 'result')).toBe(110.002); // 10 + 20 + 80, two above 30
		expect(computedIn(model, 'new_line', 'result')).toBe(150.003);
	});

	it('a condition on an absent member is not judged', () => {
		const model = withNewLine(plant('SUM(hours over line where twice > 30)'));
		expect(computedIn(model, 'base', 'result')).toBe(100);
	});

	it('are an error in arithmetic', () => {
		const model = withNewLine(plant('hours[L8] + 1'));
		expect(computedIn(model, 'base', 'result')).toBe('hits-nothing');
		expect(computedIn(model, 'new_line', 'result')).toBe(41);
	});

	it('are passed over by a step to the neighbour', () => {
		const model = withNewLine(plant('hours[line - 1 else 0 - 1]', { per: ['line'] }));
		expect(computedIn(model, 'base', 'result', 'L9')).toBe(20);
		expect(computedIn(model, 'new_line', 'result', 'L9')).toBe(40);
		expect(computedIn(model, 'base', 'result', 'L1')).toBe(-1);
		const two = withNewLine(plant('hours[line - 2]', { per: ['line'] }));
		expect(computedIn(two, 'base', 'result', 'L9')).toBe(10);
		expect(computedIn(two, 'new_line', 'result', 'L9')).toBe(20);
	});

	it('are judged in the scenario that is read', () => {
		const model = withNewLine(plant('SUM(hours[reference] over line)'));
		expect(computedIn(model, 'new_line', 'result')).toBe(110);
	});

	it('the quantity that says so can be counted itself', () => {
		const model = withNewLine(plant('COUNT(installed over line)'));
		expect(computedIn(model, 'base', 'result')).toBe(3);
		expect(computedIn(model, 'new_line', 'result')).toBe(4);
	});

	it('are counted by their set alone', () => {
		const model = withNewLine(plant('COUNT(line over line where ORD(line) > 1)'));
		expect(computedIn(model, 'base', 'result')).toBe(2);
		expect(computedIn(model, 'new_line', 'result')).toBe(3);
	});

	it('that are fixed cost nothing', () => {
		const shop = plant('SUM(hours over line)');
		shop.quantities.installed!.fixed = true;
		expect(formula(planOf(shop), 'result')).toBe('Sum(hours[L1], hours[L7], hours[L9])');
		expect(formula(planOf(shop), 'twice', 'L8')).toBe('Nothing(1)');
	});

	it('keep cash flows from being discounted', () => {
		const problem = problemOf(planOf(plant('NPV(0.1; hours over line)')));
		expect(problem.code).toBe('moving-where');
	});
});

describe('a condition of a quantity', () => {
	const conditional = (text: string) => {
		const shop = plant(text);
		shop.quantities.need = { per: ['product'], value: { A: 0, B: 4 } };
		shop.quantities.speed = { per: ['product'], formula: '8 / need', where: 'need > 0' };
		shop.quantities.alias = { per: ['product'], formula: 'speed' };
		shop.quantities.entered = { per: ['product'], value: { A: 5, B: 6 }, where: 'need > 0' };
		return shop;
	};

	it('makes the value absent where it says no, and no error comes of it', () => {
		expect(computed(conditional('1'), 'speed', 'A')).toBe('absent');
		expect(computed(conditional('1'), 'speed', 'B')).toBe(2);
	});

	it('is skipped by aggregates, also behind another name', () => {
		expect(computed(conditional('MIN(speed over product)'), 'result')).toBe(2);
		expect(computed(conditional('MIN(alias over product)'), 'result')).toBe(2);
		expect(computed(conditional('MIN(alias + 1 over product where alias > 0)'), 'result')).toBe(3);
	});

	it('holds for an entered value as its readers see it', () => {
		expect(computed(conditional('SUM(entered over product)'), 'result')).toBe(6);
		expect(computed(conditional('entered[A] + 1'), 'result')).toBe('hits-nothing');
	});

	it('must say yes or no', () => {
		const shop = conditional('1');
		shop.quantities.speed!.where = 'need';
		const problem = problemOf(planOf(shop));
		expect([problem.quantity, problem.part, problem.code]).toEqual([
			'speed',
			'where',
			'not-a-condition'
		]);
		expect(computed(shop, 'speed', 'B')).toBe('bad-formula');
	});
});

describe('a permitted range', () => {
	it('holds for results and for inputs, fixed ones too', () => {
		const shop = plant('ratio * 2', { range: { max: 3 } });
		shop.quantities.ratio = { value: 2, range: { above: 0 } };
		expect(computed(shop, 'result')).toBe('out-of-range');
		shop.quantities.ratio.value = 1;
		expect(computed(shop, 'result')).toBe(2);
		shop.quantities.ratio.value = 0;
		expect(computed(shop, 'result')).toBe('out-of-range');
		expect(computed(shop, 'ratio')).toBe('out-of-range');
		shop.quantities.ratio.fixed = true;
		expect(computed(shop, 'result')).toBe('out-of-range');
	});
});

describe('rules by member', () => {
	const layers = (cases: Record<string, string>, more: object = {}): Shop => ({
		sets: { product: ['A', 'B'], layer: ['inner', 'tie', 'outer'] },
		quantities: {
			wall: { per: ['product'], unit: 'mm', value: { A: 4, B: 2 } },
			thickness: {
				per: ['product', 'layer'],
				unit: 'mm',
				value: { A: { tie: 0.5, outer: 1 }, B: { tie: 0.25 } },
				formula: { by: 'layer', cases },
				...more
			}
		}
	});

	it('let one member be what the others leave', () => {
		const shop = layers({
			inner: 'wall - SUM(thickness over layer where layer > inner)',
			'*': 'input'
		});
		expect(planOf(shop).problems).toEqual([]);
		expect(computed(shop, 'thickness', 'A', 'inner')).toBe(2.5); // 4 − 0.5 − 1
		expect(computed(shop, 'thickness', 'A', 'outer')).toBe(1);
		expect(computed(shop, 'thickness', 'B', 'inner')).toBe('uses-empty');
	});

	it('are judged one by one: a bad rule spoils its own members only', () => {
		const shop = layers({ inner: 'wall', tie: 'wal', outer: 'wall / 2' });
		const problem = problemOf(planOf(shop));
		expect([problem.quantity, problem.part]).toEqual(['thickness', 'tie']);
		expect(computed(shop, 'thickness', 'A', 'outer')).toBe(2);
		expect(computed(shop, 'thickness', 'A', 'tie')).toBe('bad-formula');
		expect(planOf(shop).printed.get('1:outer')).toBe('wall / 2');
	});

	it('hold for existing members, and for every one', () => {
		const problems = planOf(layers({ inner: 'wall', middle: 'wall' })).problems;
		expect(problems.map((problem) => problem.message)).toEqual([
			'thickness has a rule for middle, but layer has no such member: take the rule out, or write it for another.',
			'thickness has no rule for tie and 1 more: write one for it, or one for * that holds for every other member.'
		]);
		expect(computed(layers({ inner: 'wall' }), 'thickness', 'A', 'tie')).toBe('bad-formula');
	});

	it('go by a set of the quantity', () => {
		const shop = layers({ '*': 'wall' }, { formula: { by: 'line', cases: { '*': 'wall' } } });
		expect(problemOf(planOf(shop)).message).toContain('is not per line');
		expect(computed(shop, 'thickness', 'A', 'tie')).toBe('bad-formula');
	});

	it('reach ARGMIN, which names the member', () => {
		const shop: Shop = {
			sets: { limit: ['cooling', 'winder'] },
			quantities: {
				cool: { unit: 'm/min', value: 12 },
				wind: { unit: 'm/h', value: 600 },
				speed_limit: {
					per: ['limit'],
					unit: 'm/min',
					formula: { by: 'limit', cases: { cooling: 'cool', winder: 'wind' } }
				},
				limited_by: { type: { member_of: 'limit' }, formula: 'ARGMIN(speed_limit over limit)' }
			}
		};
		expect(computed(shop, 'limited_by')).toBe(1); // 600 m/h ÷ 60 = 10 m/min < 12
	});
});

describe('an empty input', () => {
	it('is not zero', () => {
		const shop = plant('MAX(mtbf; 1)');
		shop.quantities.mtbf = {};
		expect(computed(shop, 'result')).toBe('uses-empty');
		expect(computed(shop, 'mtbf')).toBe('not-entered');
	});
});

describe('the where of an entered value', () => {
	it('may ask about that value, which it reads as entered', () => {
		const shop = {
			sets: { pipe: ['A', 'B'] },
			quantities: {
				stock: { per: ['pipe'], value: { A: 5, B: -7 }, where: 'stock > 0' },
				total: { formula: 'SUM(stock over pipe)' }
			}
		};
		expect(computed(shop, 'total')).toBe(5);
		expect(computed(shop, 'stock', 'B')).toBe('absent');
	});

	it('is circular where two need each other, and fails nothing else', () => {
		const shop = {
			quantities: {
				a: { value: 1, where: 'b > 0' },
				b: { value: 1, where: 'a > 0' },
				both: { formula: 'a + b' },
				other: { formula: '1 + 1' }
			}
		};
		expect(computed(shop, 'both')).toBe('circular');
		expect(computed(shop, 'other')).toBe(2);
	});
});
