/** Numbers outside of where they usually lie: computed with as ever, and cautioned about, each by name. */
import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { OK } from '$lib/engine/state';
import { findQuantity } from '$lib/workbook/lookup';
import { openShipped } from '../reference/shipped';

const shop = openShipped('shop').workbook;
const bounded = (name: string, usual: { min?: number; max?: number }) =>
	Model.open({
		...shop,
		sheets: shop.sheets.map((sheet) => ({
			...sheet,
			quantities: sheet.quantities.map((quantity) =>
				quantity.name === name ? { ...quantity, usual } : quantity
			)
		}))
	});
const cautionsOf = (model: Model, quantity: string, scenario = 'base') =>
	model.checks(scenario).cautions.filter(({ place }) => place.quantity === quantity);

describe('a number outside of its usual range', () => {
	it('is taken, and cautioned about with its member, its value and what is usual', () => {
		const model = bounded('scrap', { min: 1.5, max: 12 });
		expect(cautionsOf(model, 'scrap')).toEqual([]);
		const entries = [{ quantity: 'scrap', at: ['R20'], value: 45 }];
		expect(model.apply({ kind: 'set_inputs', scenario: 'base', entries }).ok).toBe(true);
		expect(cautionsOf(model, 'scrap')).toMatchObject([
			{
				place: { members: ['R20'] },
				message: expect.stringContaining(
					'Scrap of R20 is 45 %, usual is at least 1.5 and at most 12 %.'
				)
			}
		]);
		const { base } = model.layout.byName.get('cost_per_metre')!;
		expect(model.results('base').states[base]).toBe(OK);
	});

	it('is told in the scenario that enters it alone', () => {
		const model = bounded('shifts', { max: 1.5 });
		expect(cautionsOf(model, 'shifts')).toEqual([]);
		expect(cautionsOf(model, 'shifts', 'second_shift')).toHaveLength(1);
	});

	it('may be a computed one', () => {
		const model = bounded('ebit', { max: 1 });
		expect(cautionsOf(model, 'ebit')).toHaveLength(1);
	});

	it('is an entered one where other members follow formulas', () => {
		const scrap = findQuantity(shop, 'scrap')!;
		const model = Model.open(shop);
		const quantity = {
			...{ ...scrap, usual: { max: 12 } },
			value: { R20: 4.5 },
			formula: { by: 'product', cases: { R20: 'input', '*': '4 * scrap[R20]' } }
		};
		expect(model.apply({ kind: 'replace_quantity', name: 'scrap', quantity }).ok).toBe(true);
		const { base } = model.layout.byName.get('scrap')!;
		expect(model.results('base').values[base]).toBeCloseTo(18, 9);
		expect(cautionsOf(model, 'scrap')).toEqual([]);
		const entries = [{ quantity: 'scrap', at: ['R20'], value: 45 }];
		expect(model.apply({ kind: 'set_inputs', scenario: 'base', entries }).ok).toBe(true);
		expect(cautionsOf(model, 'scrap').map(({ place }) => place.members)).toEqual([['R20']]);
	});

	it('keeps the plan of cells when its usual range changes', () => {
		const model = bounded('resin_price', { max: 4 });
		const quantity = { ...findQuantity(model.workbook, 'resin_price')!, usual: { max: 1 } };
		const applied = model.apply({ kind: 'replace_quantity', name: 'resin_price', quantity });
		expect(applied).toMatchObject({ ok: true, structural: false });
		expect(cautionsOf(model, 'resin_price')).toHaveLength(1);
	});
});
