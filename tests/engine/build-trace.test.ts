/** One formula judged as it is written, and one lowered again for the question why. */
import { describe, expect, it } from 'vitest';
import { tryFormula } from '$lib/engine/planner/check';
import { buildPlan } from '$lib/engine/planner/plan';
import { trace } from '$lib/engine/planner/trace';
import { printFormula } from '$lib/formula/print';
import { visit } from '$lib/formula/walk';
import type { Expression } from '$lib/formula/tree';
import { Op } from '$lib/engine/operations';
import type { Plan } from '$lib/engine/plan';
import { cellOf, planOf, workbookOf, type Shop } from './plan-builder';

const shop: Shop = {
	sets: { product: ['A', 'B'], layer: ['inner', 'outer'] },
	quantities: {
		mass: { per: ['product', 'layer'], unit: 'kg/m' },
		length: { unit: 'm', value: 100, fixed: true },
		share: { per: ['product', 'layer'], unit: '%', formula: 'mass / SUM(mass over layer)' },
		coil: { per: ['product'], unit: 'g', formula: 'SUM(mass) * length' },
		pick: { type: { member_of: 'product' }, value: 'A' },
		chosen: { unit: 'g', formula: 'IF(length > 1[m]; coil[pick]; coil[B])' }
	}
};

describe('trying a formula', () => {
	const plan = planOf(shop);
	const tried = (formula: string, more: object = {}) =>
		tryFormula(plan, { name: 'draft', label: '', formula, ...more });

	it('says what a formula gives and how it is printed', () => {
		const result = tried('SUM(mass)*length', { unit: 'kg', per: ['product'] });
		expect(result.problems).toEqual([]);
		expect(result.gives).toMatchObject([{ kind: 'number', part: null, set: null }]);
		expect(result.gives[0]?.unit?.text).toBe('kg');
		expect(result.printed).toEqual([{ part: null, text: 'SUM(mass over layer) * length' }]);
	});

	it('says what it gives also where that does not fit', () => {
		const result = tried('mass[A; inner]', { unit: 'kg' });
		expect(result.problems.map((problem) => problem.code)).toEqual(['unlike-units']);
		expect(result.gives[0]?.unit?.text).toBe('kg/m');
		expect(result.printed).toEqual([]);
	});

	it('gives a member and yes or no', () => {
		expect(tried('ARGMAX(coil over product)', { type: { member_of: 'product' } }).gives).toEqual([
			{ part: null, kind: 'member', unit: null, set: 'product' }
		]);
		expect(tried('length > 3[m]', { type: 'yes_no' }).gives[0]?.kind).toBe('yes_no');
	});

	it('puts a draft in the place of its namesake, and finds the loop it would make', () => {
		const loop = tryFormula(plan, {
			name: 'coil',
			label: '',
			per: ['product'],
			unit: 'g',
			formula: 'chosen * 1'
		});
		expect(loop.problems.map((problem) => problem.message.split(':')[0])).toEqual([
			'coil of A ← chosen ← coil'
		]);
		expect(
			tryFormula(plan, { name: 'coil', label: '', per: ['product'], unit: 'g', formula: '7[g]' })
				.problems
		).toEqual([]);
	});

	it('finds a loop of a new quantity with itself', () => {
		expect(tried('draft + 1').problems.map((problem) => problem.code)).toEqual(['circular']);
		expect(tried('draft[layer - 1 else 1] + 1', { per: ['layer'] }).problems).toEqual([]);
	});

	it('finds what only lowering shows', () => {
		const result = tried('SUM(mass[p; l] * mass over p in product × l in layer)', {
			per: ['moon']
		});
		expect(result.problems[0]?.code).toBe('unknown-set');
	});

	it('agrees with the plan on every formula of the workbook', () => {
		for (const quantity of plan.layout.quantities)
			expect(tryFormula(plan, quantity.quantity).problems).toEqual([]);
	});

	it('takes a workbook that has no plan yet', () => {
		expect(
			tryFormula(workbookOf(shop), { name: 'x', label: '', formula: 'y' }).problems[0]?.code
		).toBe('unknown-name');
	});

	it('needs nothing that a plan from another thread has lost', () => {
		const copy = structuredClone(buildPlan(workbookOf(shop)));
		expect(
			tryFormula(copy, { name: 'x', label: '', formula: 'length', unit: 'mm' }).problems
		).toEqual([]);
	});
});

describe('tracing a formula', () => {
	const plan: Plan = planOf(shop);
	const named = (expression: Expression, name: string) => {
		let found: Expression | null = null;
		visit(expression, (node) => {
			if ((node.kind === 'reference' || node.kind === 'call') && node.name === name) found ??= node;
		});
		return found!;
	};

	it('gives a node to every name and to every whole aggregate', () => {
		const found = trace(plan, cellOf(plan, 'coil', 'B'));
		expect(found && printFormula(found.expression)).toBe('SUM(mass over layer) * length');
		if (!found) return;
		const sum = found.nodeOf.get(named(found.expression, 'SUM')) ?? -1;
		expect(found.nodes.op[sum]).toBe(Op.Sum);
		expect(found.unitOf.get(named(found.expression, 'SUM'))).toBe('kg/m');
		// Fixed, so the plan holds its number; here it is a cell again.
		const length = named(found.expression, 'length');
		expect(found.nodes.op[found.nodeOf.get(length) ?? -1]).toBe(Op.Cell);
		expect(found.cellOf.get(length)).toBe(cellOf(plan, 'length'));
		expect(found.nodes.op[found.root]).toBe(Op.Multiply);
	});

	it('spans are places in the printed text', () => {
		const found = trace(plan, cellOf(plan, 'coil', 'B'));
		const text = plan.printed.get('3') ?? '';
		if (!found) throw new Error('no trace');
		const { span } = named(found.expression, 'length');
		expect(text.slice(span.start, span.end)).toBe('length');
	});

	it('keeps the branch that the plan dropped', () => {
		const found = trace(plan, cellOf(plan, 'chosen'));
		if (!found) throw new Error('no trace');
		const cells = [...found.cellOf.values()];
		expect(cells).toContain(cellOf(plan, 'coil', 'B'));
		expect(cells).toContain(cellOf(plan, 'pick'));
	});

	it('is none of an input and of a formula that is not proven', () => {
		expect(trace(plan, cellOf(plan, 'mass', 'A', 'inner'))).toBeNull();
		const bad = planOf({ quantities: { x: { formula: 'y' } } });
		expect(trace(bad, 0)).toBeNull();
		expect(trace(plan, 9999)).toBeNull();
	});
});
