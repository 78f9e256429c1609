import { describe, expect, it } from 'vitest';
import { layOut } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { viewCell } from '$lib/ui/cells';
import { differenceTerms } from '$lib/ui/difference-terms';
import { openShipped } from '../reference/shipped';
import { workbookOf } from '../engine/plan-builder';

describe('the terms of a difference', () => {
	it('are the names that a formula adds and subtracts', () => {
		expect(
			differenceTerms('stock - stock[month - 1 else stock[month.Dec]] - made_in_all + sold')
		).toEqual(['stock', 'made_in_all', 'sold']);
		expect(differenceTerms('(made + bought) - sold')).toEqual(['made', 'bought', 'sold']);
	});
	it('are those of a choice between a difference and zero, and of no other choice', () => {
		expect(differenceTerms('IF(AND(held; now); 0[m]; stock - stock[a; b] - sold)')).toEqual([
			...['stock', 'sold']
		]);
		expect(differenceTerms('IF(held; made - sold; 0)')).toEqual(['made', 'sold']);
		expect(differenceTerms('IF(held; price; made - sold)')).toEqual([]);
		expect(differenceTerms('IF(held; 0; made - sold) - IF(held; 0; sold)')).toEqual([]);
	});
	it('are none of a sum, a product or anything gathered', () => {
		expect(differenceTerms('made + bought')).toEqual([]);
		expect(differenceTerms('price * mass - cost')).toEqual([]);
		expect(differenceTerms('SUM(made over line) - sold')).toEqual([]);
		expect(differenceTerms('2 - made')).toEqual([]);
	});
});

describe('a difference of large terms', () => {
	const layout = layOut(
		workbookOf({
			sets: {},
			quantities: {
				made: { unit: 'm', value: 1_000_000 },
				sold: { unit: 'm', value: 1_000_000 },
				left: { unit: 'm', formula: 'made - sold' },
				small: { unit: 'm', formula: 'made * 0.0001' }
			}
		})
	);
	const shown = (name: string, value: number, made = 1_000_000) => {
		const quantity = layout.byName.get(name)!;
		const values = Float64Array.of(made, made, value, value);
		const base: Results = { scenario: 'base', values, states: new Uint8Array(4) };
		return viewCell({ layout, quantity, locale: 'en', base }, base, quantity.base).text;
	};
	it('is none where it is a ten-thousand-millionth of them', () => {
		expect(shown('left', -6.6e-5)).toBe('0');
		expect(shown('left', 1.2e-7)).toBe('0');
	});
	it('is shown where its terms are small themselves, or it is no difference', () => {
		expect(shown('left', -6.6e-5, 1)).toBe('−0.000066');
		expect(shown('left', 0.02)).toBe('0.02');
		expect(shown('small', 6.6e-5)).toBe('0.000066');
	});
});

describe('the hair by which a plan keeps inside its bounds', () => {
	it('is shown as none in what the plant makes, sells and has left', () => {
		const model = openShipped('marram');
		const { layout } = model;
		const base = model.results('base');
		for (const name of ['made', 'sold', 'stock_gap']) {
			const quantity = layout.byName.get(name)!;
			const hairs: string[] = [];
			for (let cell = quantity.base; cell < quantity.base + quantity.count; cell++) {
				const value = Math.abs(base.values[cell]!);
				if (base.states[cell] === 0 && value > 0 && value < 1e-3)
					hairs.push(viewCell({ layout, quantity, locale: 'en', base }, base, cell).text);
			}
			expect(new Set(hairs.map(Number)), name).toEqual(new Set([0]));
		}
	});
});
