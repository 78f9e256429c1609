/** Language section 4: loops are judged on cells and reported on quantities, each once. */
import { describe, expect, it } from 'vitest';
import { at, cellOf, computed, planOf, problemOf, type Shop } from './plan-builder';

describe('loops', () => {
	it('are told in order, with one member as example, once for all members', () => {
		const shop: Shop = {
			sets: { product: ['PX15B', 'PB28B'] },
			quantities: {
				cost: { per: ['product'], value: { PX15B: 2, PB28B: 3 } },
				margin: { per: ['product'], formula: 'price - cost' },
				price: { per: ['product'], formula: 'cost + margin * 0.5' }
			}
		};
		const plan = planOf(shop);
		const problem = problemOf(plan);
		expect([problem.quantity, problem.code]).toEqual(['margin', 'circular']);
		expect(problem.message).toContain('margin of PX15B ← price ← margin: each needs the next');
		expect(at('price - cost', problem)).toBe('price');
		expect([...plan.circular]).toEqual([2, 3, 4, 5]);
		expect(plan.order.length).toBe(0);
		expect(computed(shop, 'margin', 'PB28B')).toBe('circular');
	});

	it('through an aggregate name the quantities alone', () => {
		const problem = problemOf(
			planOf({
				sets: { product: ['A', 'B'] },
				quantities: {
					share: { per: ['product'], formula: '1 / SUM(weight over product)' },
					weight: { per: ['product'], formula: 'share * 2' }
				}
			})
		);
		expect(problem.message).toContain('share of A ← weight ← share');
	});

	it('that lie in the cells alone are none: a balance carried forward', () => {
		const plan = planOf({
			sets: { month: ['jan', 'feb', 'mar'] },
			quantities: {
				made: { per: ['month'] },
				opening: { per: ['month'], formula: 'closing[month - 1 else 0]' },
				closing: { per: ['month'], formula: 'opening + made' }
			}
		});
		expect(plan.problems).toEqual([]);
		expect(plan.order.length).toBe(6);
	});

	it('of the same pair in a cyclic set are one, however many cells are on it', () => {
		const plan = planOf({
			sets: {
				month: { members: [{ id: 'jan' }, { id: 'feb' }, { id: 'mar' }], cyclic: true }
			},
			quantities: {
				opening: { per: ['month'], formula: 'closing[month - 1]' },
				closing: { per: ['month'], formula: 'opening + 1' }
			}
		});
		expect(problemOf(plan).message).toContain('opening of jan ← closing of mar ← opening of mar');
		expect(plan.circular.length).toBe(6);
	});

	const pointed = (fixed: boolean): Shop => ({
		sets: { product: ['A', 'B'] },
		quantities: {
			ref_line: {
				per: ['product'],
				type: { member_of: 'product' },
				value: { A: 'B', B: 'A' },
				fixed
			},
			own: { per: ['product'], type: 'yes_no', value: { A: true, B: false }, fixed: true },
			rate: { per: ['product'], formula: 'IF(own; 7; rate[ref_line] * 2)' }
		}
	});

	it('by a moving choice into the own quantity say that it may point at itself', () => {
		const problem = problemOf(planOf(pointed(false)));
		expect(problem.message).toContain('ref_line may point at itself');
	});

	it('by a fixed choice are none where the choice does not come back', () => {
		expect(planOf(pointed(true)).problems).toEqual([]);
		expect(computed(pointed(true), 'rate', 'B')).toBe(14);
	});

	it('leave what depends on them in order: it inherits the error', () => {
		const shop: Shop = {
			quantities: { a: { formula: 'b + 1' }, b: { formula: 'a + 1' }, c: { formula: 'a * 2' } }
		};
		const plan = planOf(shop);
		expect([...plan.order]).toEqual([cellOf(plan, 'c')]);
		expect(computed(shop, 'c')).toBe('circular');
	});

	it('of different quantities are reported each', () => {
		const problems = planOf({
			quantities: {
				a: { formula: 'a + 1' },
				b: { formula: 'c' },
				c: { formula: 'b' },
				d: { formula: '1' }
			}
		}).problems;
		expect(problems.map((problem) => problem.message.split(':')[0])).toEqual([
			'a ← a',
			'b ← c ← b'
		]);
	});
});
