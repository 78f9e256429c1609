/** Language rule 7 and section 3: what is fixed costs nothing, and the plan grows with the values alone. */
import { describe, expect, it } from 'vitest';
import { tryFormula } from '$lib/engine/planner/check';
import { Op } from '$lib/engine/operations';
import { cellOf, computed, formula, planOf, problemOf, type Shop } from './plan-builder';

// Much is computed here, and a busy machine is no fault.

describe('folding', () => {
	const calendar = (text: string, per: string[]): Shop => ({
		sets: {
			day: Array.from({ length: 28 }, (_, at) => `d${at}`),
			month: ['feb', 'other'],
			weekday: ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun']
		},
		quantities: {
			month_of_day: {
				per: ['day'],
				type: { member_of: 'month' },
				fixed: true,
				value: Object.fromEntries(Array.from({ length: 28 }, (_, at) => [`d${at}`, 'feb']))
			},
			weekday_of_day: {
				per: ['day'],
				type: { member_of: 'weekday' },
				fixed: true,
				value: Object.fromEntries(
					Array.from({ length: 28 }, (_, at) => [
						`d${at}`,
						['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'][at % 7] ?? ''
					])
				)
			},
			works: {
				per: ['day'],
				type: 'yes_no',
				fixed: true,
				value: { d0: false, d7: true, d14: true, d21: true }
			},
			open: { per: ['day'], type: 'yes_no' },
			result: { per, unit: 'day', formula: text }
		}
	});
	const days =
		'SUM(works * 1[day] over day where AND(month_of_day = month; weekday_of_day = weekday))';

	it('makes a whole calendar one number', () => {
		const plan = planOf(calendar(days, ['month', 'weekday']));
		expect(plan.problems).toEqual([]);
		expect(formula(plan, 'result', 'feb', 'mon')).toBe('3');
		expect(formula(plan, 'result', 'other', 'mon')).toBe('0');
	});

	it('keeps an input that can change', () => {
		const moving = days.replace('works', 'open');
		const plan = planOf(calendar(moving, ['month', 'weekday']));
		expect(formula(plan, 'result', 'feb', 'sun')).toBe(
			'Sum(Multiply(open[d6], 1), Multiply(open[d13], 1), Multiply(open[d20], 1), Multiply(open[d27], 1))'
		);
	});

	it('does not hide an empty fixed input', () => {
		const shop = calendar('SUM(works * 1[day] over day)', []);
		expect(computed(shop, 'result')).toBe('uses-empty');
	});

	const small = (text: string): Shop => ({
		sets: { year: ['y0', 'y1'] },
		quantities: {
			x: { value: 6 },
			two: { value: 2, fixed: true },
			zero: { value: 0, fixed: true },
			big: { type: 'yes_no', value: true, fixed: true },
			grows: { type: 'yes_no', value: false },
			result: { formula: text }
		}
	});

	it('does arithmetic on what is fixed, and leaves a fault to be found', () => {
		expect(formula(planOf(small('x * (two + 3)')), 'result')).toBe('Multiply(x, 5)');
		expect(formula(planOf(small('x * (two / zero)')), 'result')).toBe('Multiply(x, Divide(2, 0))');
		expect(computed(small('two / zero'), 'result')).toBe('divides-by-zero');
	});

	it('takes one branch, and the reads of the other out of the plan', () => {
		const plan = planOf(small('IF(big; x; result + 1)'));
		expect(plan.problems).toEqual([]);
		expect(formula(plan, 'result')).toBe('x');
	});

	it('a fixed condition decides AND and OR', () => {
		expect(formula(planOf(small('IF(AND(grows; NOT(big)); 1; 2)')), 'result')).toBe('2');
		expect(formula(planOf(small('IF(OR(grows; big); 1; 2)')), 'result')).toBe('1');
		expect(formula(planOf(small('IF(AND(big; grows); 1; 2)')), 'result')).toBe(
			'If(And(grows), 1, 2)'
		);
	});
});

describe('a fixed grouping', () => {
	const grouped = (value: Record<string, string>, text: string): Shop => ({
		sets: { part: ['p1', 'p2', 'p3', 'p4'], group: ['g1', 'g2', 'g3'] },
		quantities: {
			x: { per: ['part'], value: { p1: 1, p2: 2, p3: 4, p4: 8 } },
			group_of: { per: ['part'], type: { member_of: 'group' }, fixed: true, value },
			result: { per: ['group'], formula: text }
		}
	});
	const all = { p1: 'g1', p2: 'g2', p3: 'g1', p4: 'g2' };

	it('gathers the members of each group, in set order', () => {
		const plan = planOf(grouped(all, 'SUM(x over part where group_of = group)'));
		expect(formula(plan, 'result', 'g1')).toBe('Sum(x[p1], x[p3])');
		expect(formula(plan, 'result', 'g2')).toBe('Sum(x[p2], x[p4])');
		expect(formula(plan, 'result', 'g3')).toBe('0');
	});

	it('goes with other conditions', () => {
		const plan = planOf(grouped(all, 'SUM(x over part where AND(x > 1; group = group_of))'));
		expect(formula(plan, 'result', 'g1')).toContain('x[p3] if');
		expect(
			computed(grouped(all, 'SUM(x over part where AND(x > 1; group = group_of))'), 'result', 'g1')
		).toBe(4);
	});

	it('does not lose a member whose group nobody entered', () => {
		const { p1, p2, p4 } = all;
		const shop = grouped({ p1, p2, p4 }, 'SUM(x over part where group_of = group)');
		for (const group of ['g1', 'g2', 'g3'])
			expect(computed(shop, 'result', group)).toBe('uses-empty');
	});

	it('leaves such a member out where the fault is caught, and looks at those of the group alone', () => {
		const { p1, p2, p4 } = all;
		const text = 'SUM(x over part where IFERROR(group_of = group; FALSE()))';
		expect(formula(planOf(grouped(all, text)), 'result', 'g1')).toBe('Sum(x[p1], x[p3])');
		const plan = planOf(grouped({ p1, p2, p4 }, text));
		expect(formula(plan, 'result', 'g1')).toBe('Sum(x[p1])');
		expect(formula(plan, 'result', 'g2')).toBe('Sum(x[p2], x[p4])');
		expect(formula(plan, 'result', 'g3')).toBe('0');
		// Caught as a yes it is in every group, and nothing is listed.
		const kept = grouped({ p1, p2, p4 }, text.replace('FALSE', 'TRUE'));
		expect(computed(kept, 'result', 'g3')).toBe(4);
	});
});

describe('lifting', () => {
	const shares: Shop = {
		sets: { product: ['A', 'B'], layer: ['in', 'out'], month: ['jan', 'feb', 'mar'] },
		quantities: {
			mass: { per: ['product', 'layer'], value: { A: { in: 1, out: 3 }, B: { in: 2, out: 2 } } },
			share: { per: ['product', 'layer'], formula: 'mass / SUM(mass over layer)' },
			monthly: { per: ['product', 'month'], formula: 'ORD(month) * SUM(mass over layer)' },
			other: {
				per: ['product', 'month'],
				formula: 'ORD(month) * SUM(mass over layer where mass > 1)'
			}
		}
	};

	it('computes once for each product what does not depend on the layer', () => {
		const plan = planOf(shares);
		expect(plan.cells - plan.layout.cells).toBe(4); // two sums for two products
		expect(formula(plan, 'share', 'A', 'out')).toBe(
			'Divide(mass[A;out], {Sum(mass[A;in], mass[A;out])})'
		);
		expect(computed(shares, 'share', 'A', 'out')).toBe(0.75);
	});

	it('shares the same aggregate between formulas, and keeps different ones apart', () => {
		const plan = planOf(shares);
		const reads = (name: string, ...members: string[]) => {
			const cell = cellOf(plan, name, ...members);
			const { starts, targets } = plan.precedents;
			return [...targets.subarray(starts[cell], starts[cell + 1])].filter(
				(one) => one >= plan.layout.cells
			);
		};
		expect(reads('monthly', 'A', 'feb')).toEqual(reads('share', 'A', 'in'));
		expect(reads('monthly', 'A', 'feb')).toEqual(reads('monthly', 'A', 'mar'));
		expect(reads('other', 'A', 'feb')).not.toEqual(reads('share', 'A', 'in'));
		expect(computed(shares, 'other', 'A', 'feb')).toBe(6); // 2 × 3
	});

	it('names the quantity that a lifted cell comes from', () => {
		const plan = planOf(shares);
		expect([...plan.liftedFrom]).toEqual([1, 1, 3, 3]);
	});

	it('orders a lifted cell after what it reads and before who reads it', () => {
		const plan = planOf(shares);
		const place = new Map([...plan.order].map((cell, at) => [cell, at]));
		const { starts, targets } = plan.precedents;
		for (const [cell, at] of place)
			for (const needed of targets.subarray(starts[cell], starts[cell + 1]))
				expect(place.get(needed) ?? -1).toBeLessThan(at);
		expect(place.size).toBe(plan.cells - 4); // all but the four masses
	});
});

describe('edges', () => {
	it('are the same both ways', () => {
		const plan = planOf({
			sets: { month: ['jan', 'feb', 'mar'] },
			quantities: {
				x: { per: ['month'] },
				total: { formula: 'SUM(x over month) + x[jan]' },
				part: { per: ['month'], formula: 'x / total' }
			}
		});
		const { precedents, dependents } = plan;
		const forward: string[] = [];
		const back: string[] = [];
		for (let cell = 0; cell < plan.cells; cell++) {
			for (const to of precedents.targets.subarray(
				precedents.starts[cell],
				precedents.starts[cell + 1]
			))
				forward.push(`${cell}-${to}`);
			for (const from of dependents.targets.subarray(
				dependents.starts[cell],
				dependents.starts[cell + 1]
			))
				back.push(`${from}-${cell}`);
		}
		expect(forward.length).toBe(3 + 6);
		expect(back.sort()).toEqual(forward.sort());
	});
});

describe('growth', () => {
	/** Every product's cost from shares of a plant-wide sum, grouped by a fixed mapping and picked by a choice. */
	const plantOf = (products: number): Shop => {
		const ids = Array.from({ length: products }, (_, at) => `P${at}`);
		const lines = ['L1', 'L2', 'L3'];
		return {
			sets: { product: ids, line: lines },
			quantities: {
				metres: { per: ['product'] },
				line_of: { per: ['product'], type: { member_of: 'line' } },
				rate: { per: ['line'] },
				share: { per: ['product'], formula: 'metres / SUM(metres over product)' },
				pool: { per: ['line'], formula: 'SUM(metres over product where line_of = line)' },
				cost: { per: ['product'], formula: 'rate[line_of] * pool[line_of] / metres' }
			}
		};
	};

	it('is in step with the values', () => {
		const [small, large] = [planOf(plantOf(100)), planOf(plantOf(1000))];
		expect(large.nodes.count / small.nodes.count).toBeLessThan(10.2);
		expect(large.nodes.lists.length / small.nodes.lists.length).toBeLessThan(10.2);
		expect(large.precedents.targets.length / small.precedents.targets.length).toBeLessThan(10.2);
	});

	it('a chain of 10,000 members is ordered without recursion', () => {
		const plan = planOf({
			sets: { day: Array.from({ length: 10_000 }, (_, at) => `d${at}`) },
			quantities: {
				sold: { per: ['day'] },
				stock: { per: ['day'], formula: 'stock[day - 1 else 9] - sold' }
			}
		});
		expect(plan.problems).toEqual([]);
		expect(plan.order.length).toBe(10_000);
		expect(plan.nodes.op[plan.roots[10_000] ?? 0]).toBe(Op.Subtract);
	});

	it('beyond two million steps is refused with the remedy, and the rest computes', () => {
		const shop: Shop = {
			sets: { day: Array.from({ length: 1500 }, (_, at) => `d${at}`) },
			quantities: {
				x: { per: ['day'], value: 1 },
				pairs: { per: ['day'], formula: 'SUM(x[d] * x over d in day)' },
				fine: { formula: '1 + 1' }
			}
		};
		const problem = problemOf(planOf(shop));
		expect([problem.quantity, problem.code]).toEqual(['pairs', 'too-many-nodes']);
		expect(problem.message).toContain('pairs takes more than 2,000,000 steps to compute');
		expect(computed(shop, 'pairs', 'd0')).toBe('bad-formula');
		expect(computed(shop, 'fine')).toBe(2);
	});

	it('a choice among very many members, for each of them, is refused with the remedy', () => {
		const shop: Shop = {
			sets: { day: Array.from({ length: 1500 }, (_, at) => `d${at}`) },
			quantities: {
				x: { per: ['day'], value: { d7: 7 } },
				which: { per: ['day'], type: { member_of: 'day' }, value: { d0: 'd7' } },
				chosen: { per: ['day'], formula: 'x[which]' },
				one: { formula: 'x[which[d0]]' }
			}
		};
		const plan = planOf(shop);
		expect(problemOf(plan).quantity).toBe('chosen');
		expect(problemOf(plan).message).toContain('mark the choice as fixed');
		expect(plan.precedents.targets.length).toBeLessThan(10_000);
		expect(computed(shop, 'one')).toBe(7);
	});

	it('looking at very many pairs to keep none is refused before it takes long', () => {
		const shop: Shop = {
			sets: { day: Array.from({ length: 2400 }, (_, at) => `d${at}`) },
			quantities: {
				x: { per: ['day'], value: 1 },
				pairs: { per: ['day'], formula: 'SUM(x[d] over d in day where AND(d < day; d > day))' }
			}
		};
		const problem = problemOf(planOf(shop));
		expect([problem.quantity, problem.code]).toEqual(['pairs', 'too-many-nodes']);
		expect(problem.message).toContain('pairs looks at too many combinations of members');
	});

	it('a sum of 490 terms and 190 brackets is lowered', () => {
		const sum = Array.from({ length: 490 }, () => 'x').join(' + ');
		const deep = `${'('.repeat(190)}x${')'.repeat(190)}`;
		const shop: Shop = {
			quantities: { x: { value: 1 }, y: { formula: sum }, z: { formula: deep } }
		};
		expect(computed(shop, 'y')).toBe(490);
		expect(computed(shop, 'z')).toBe(1);
		expect(tryFormula(planOf(shop), { name: 'y', label: '', formula: sum }).problems).toEqual([]);
	});
});
