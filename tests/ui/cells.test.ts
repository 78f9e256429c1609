import { describe, expect, it } from 'vitest';
import { ABSENT, DIVIDES_BY_ZERO, NO_ANSWER, NOT_ENTERED } from '$lib/engine/state';
import { isInputCell } from '$lib/engine/input-cell';
import { viewCell, viewSpan } from '$lib/ui/cells';
import { base, cheap, layout, resultsOf, shop } from './shop';

const quantity = (name: string) => layout.byName.get(name)!;
const view = (name: string, results = cheap, place = 0) => {
	const of = quantity(name);
	return viewCell({ layout, quantity: of, locale: 'en', base }, results, of.base + place);
};
const span = (name: string, results = cheap) => {
	const of = quantity(name);
	const context = { layout, quantity: of, locale: 'en', base };
	return viewSpan(context, results, of.base, of.base + of.count);
};

describe('a cell of a scenario', () => {
	it('is "same" where it equals the base', () => {
		expect(view('mass')).toMatchObject({ same: true, difference: null, relative: '' });
	});
	it('carries its difference and percent where it does not', () => {
		// 0.95 − 2.02 = −1.07; −1.07 ÷ 2.02 = −53.0 %
		expect(view('price')).toMatchObject({
			parts: { whole: '0', fraction: '.95' },
			difference: { whole: '−1', fraction: '.07' },
			relative: '−53.0 %'
		});
	});
	it('is neither same nor different in the base', () => {
		expect(view('price', base)).toMatchObject({ same: null, difference: null });
	});
	it('says yes instead of no', () => {
		const lit = resultsOf('cheap', [2.02, 0.06, 0.1, 0.1, 0.2, 30, 28, 20, 1, 1, 1]);
		expect(view('night', lit)).toMatchObject({
			kind: 'words',
			text: 'yes',
			instead: 'instead of no'
		});
		expect(view('main_line', lit)).toMatchObject({ text: 'L2', instead: 'instead of L1' });
	});
	it('says which kind of nothing it is, and never zero', () => {
		const empty = resultsOf('base', [{ state: NOT_ENTERED }, { state: NO_ANSWER }]);
		expect(view('price', empty)).toMatchObject({ kind: 'nothing', text: 'not entered' });
		expect(view('mass', empty)).toMatchObject({ kind: 'nothing', text: 'none' });
	});
	it('has no value where it is in error', () => {
		const bad = resultsOf('cheap', [{ state: DIVIDES_BY_ZERO }]);
		expect(view('price', bad)).toMatchObject({ kind: 'error', text: 'No value', same: false });
	});
	it('calls a difference in the last digits nearly the same, with all digits on demand', () => {
		const near = resultsOf('cheap', [2.0200001, 0.06, 0.1, 0.1212, 0.202, 30, 28, 20, 0, 0, 0]);
		expect(view('price', near)).toMatchObject({
			instead: 'no change',
			isNearly: true,
			full: '2.0200001 EUR/kg'
		});
	});
});

describe('what is left of a check', () => {
	const check = { message: 'The ways differ.', tolerance: 1e-6 };
	const place = quantity('cost');
	const closing = { ...place, quantity: { ...place.quantity, check } };
	const of = (...values: readonly number[]) => {
		const results = resultsOf('base', [2.02, 0.06, 0.1, ...values]);
		const context = { layout, quantity: closing, locale: 'en', base: results };
		return [
			viewCell(context, results, place.base),
			viewSpan(context, results, place.base, place.base + 2)
		];
	};

	it('within its tolerance shows as none, with all digits on demand', () => {
		const [cell, all] = of(-2.3e-10, 0);
		expect(cell).toMatchObject({ text: '0', full: expect.stringContaining('0.00000000023') });
		expect(all!.text).toBe('all 0');
	});

	it('of a computed value beside one a thousand million times as large shows as none too', () => {
		const results = resultsOf('base', [2.02, 0.06, 0.1, 0.00026, 1_216_505]);
		const context = { layout, quantity: place, locale: 'en', base: results };
		expect(viewSpan(context, results, place.base, place.base + 2).text).toBe('0 to 1,216,505');
		const entered = { ...context, quantity: quantity('mass') };
		const small = resultsOf('base', [2.02, 0.00026, 1_216_505]);
		const { base } = quantity('mass');
		expect(viewSpan({ ...entered, base: small }, small, base, base + 2).text).toMatch(/^0\.00026/);
	});

	it('beyond it shows what it is', () => {
		expect(of(-2.3e-10, 0.25)[1]!.text).toMatch(/^0(\.0+)? to 0\.25/);
		expect(of(-0.5, 0)[0]!.text).toMatch(/^−0\.5/);
	});
});

describe('a folded row', () => {
	it('spans its members and counts those that differ', () => {
		expect(span('cost', base).text).toBe('0.1212 to 0.2020');
		expect(span('cost')).toMatchObject({ text: '0.0570 to 0.0950', instead: '2 of 2 differ' });
		expect(span('mass')).toMatchObject({ same: true, instead: '' });
	});
	it('says "all" of members only that all have a value', () => {
		const one = resultsOf('cheap', [2.02, 0.06, { state: NOT_ENTERED }]);
		expect(span('mass', one).text).toBe('0.06 in 1 of 2');
		const both = resultsOf('cheap', [2.02, 0.06, 0.06]);
		expect(span('mass', both).text).toBe('all 0.06');
	});
	it('tells members that the base has not at all from those that it has otherwise', () => {
		const without = resultsOf('base', [2.02, 0.06, { state: ABSENT }]);
		const of = quantity('mass');
		const context = { layout, quantity: of, locale: 'en', base: without };
		const seen = (second: number) =>
			viewSpan(context, resultsOf('cheap', [2.02, second, 0.06]), of.base, of.base + 2);
		expect(seen(0.06)).toMatchObject({ text: 'all 0.06', instead: '1 only here' });
		expect(seen(0.07).instead).toBe('2 of 2 differ');
	});
	it('says how many members have no value', () => {
		const bad = resultsOf('cheap', [1, 0.06, 0.1, { state: DIVIDES_BY_ZERO }, 0.2]);
		expect(span('cost', bad)).toMatchObject({
			kind: 'error',
			text: '1 of 2 no value',
			full: '1 of 2 have no value'
		});
	});
});

describe('decimals of a row', () => {
	const mass = quantity('mass');
	const texts = (formula: string | undefined, ...values: readonly number[]) => {
		const place = {
			...{ ...mass, base: 0, count: values.length },
			quantity: { ...mass.quantity, formula }
		} as typeof mass;
		const results = resultsOf('base', values);
		const context = { layout, quantity: place, locale: 'en', base: results };
		return values.map((_, cell) => viewCell(context, results, cell).text);
	};

	it('are those that most of its members need: one that lies far out takes none from the others', () => {
		expect(texts(undefined, 2500, 20.6, 17.9, 18.6, 22.4, 25.2)).toEqual([
			...['2,500.0', '20.6', '17.9', '18.6', '22.4', '25.2']
		]);
		// Four digits of 25.2; two decimals more than fit 2,500.
		expect(texts('1', 2500, 20.612, 17.931, 18.644, 22.423, 25.211)[1]).toBe('20.61');
		// Rows of one size are as they were.
		expect(texts('1', 1216.4, 812.25, 230.12, 1800.5)[1]).toBe('812');
	});

	it('hide no digit that was entered, up to those that the row bears', () => {
		expect(texts(undefined, 2500, 20.6)).toEqual(['2,500', '20.6']);
		expect(texts(undefined, 2500, 20.61234)).toEqual(['2,500', '20.61']);
		// Full of digits: nobody wrote it, so it is shown as its row is.
		expect(texts(undefined, 2500, 20.612345678901)).toEqual(['2,500', '21']);
	});

	it('show what rounding left of a formula, or in a plan, as none, and what was entered as entered', () => {
		expect(texts('1', 4.132e-18, -3.958e-9)).toEqual(['0', '0']);
		expect(texts(undefined, 4.1321234567891e-18)).toEqual(['0']);
		expect(texts(undefined, 2e-9)[0]).toContain('2');
		expect(texts('1', 2e-8)[0]).toBe('0.00000002');
	});
});

describe('an input', () => {
	it('is what no formula computes, member by member', () => {
		expect(isInputCell(shop, quantity('price'), 0)).toBe(true);
		expect(isInputCell(shop, quantity('cost'), quantity('cost').base)).toBe(false);
		const mixed = {
			...quantity('mass'),
			quantity: {
				...quantity('mass').quantity,
				formula: { by: 'product', cases: { A15: 'input', '*': '2 * price' } }
			}
		};
		expect(isInputCell(shop, mixed, mixed.base)).toBe(true);
		expect(isInputCell(shop, mixed, mixed.base + 1)).toBe(false);
	});
});
