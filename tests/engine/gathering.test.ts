/** What a formula gathers without saying so is written into it when it is kept. */
import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import type { Quantity } from '$lib/workbook/schema';
import { workbookOf } from './plan-builder';

const model = Model.open(
	workbookOf({
		sets: { layer: ['inner', 'cover'], pipe: ['A', 'B'] },
		quantities: {
			mass: { unit: 'kg/m', per: ['pipe', 'layer'], value: { A: { inner: 1, cover: 2 } } },
			heavy: { type: 'yes_no', per: ['pipe'], value: { A: true, B: false } }
		}
	})
);

function kept(quantity: Omit<Quantity, 'label' | 'name'>): Quantity {
	return model.tryQuantity({ name: 'total', label: 'Total', ...quantity }).written;
}

describe('a formula that is kept', () => {
	it('says what it gathers', () => {
		const quantity = kept({ unit: 'kg/m', per: ['pipe'], formula: 'SUM( mass )' });
		expect(quantity.formula).toBe('SUM(mass over layer)');
	});

	it('stays as its author wrote it where it says so already', () => {
		const formula = '2*SUM( mass  over layer )';
		expect(kept({ unit: 'kg/m', per: ['pipe'], formula }).formula).toBe(formula);
	});

	it('says it in every case and in its where', () => {
		const quantity = kept({
			unit: 'kg/m',
			per: ['pipe'],
			formula: { by: 'pipe', cases: { A: 'SUM(mass)', '*': '0' } },
			where: 'ANY(mass > 0)'
		});
		expect(quantity.formula).toEqual({
			by: 'pipe',
			cases: { A: 'SUM(mass over layer)', '*': '0' }
		});
		expect(quantity.where).toBe('ANY(mass > 0 over layer)');
	});

	it('stays as it is while it cannot be proven', () => {
		const formula = 'SUM(mas)';
		expect(kept({ unit: 'kg/m', per: ['pipe'], formula }).formula).toBe(formula);
	});
});
