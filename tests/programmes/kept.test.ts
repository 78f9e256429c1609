import { expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { keptNow } from '$lib/programmes/kept';
import { smallPlant, withQuantity } from './small-plant';

/** 100 m of A made and sold in January, at 3 EUR each. */
const kept = (change?: Parameters<typeof smallPlant>[0]) =>
	Model.open({
		...smallPlant(change),
		plans: [
			{
				...{ programme: 'allocation', scenario: 'base', digest: 'of another day', objective: 999 },
				kept: '2026-03-01',
				values: [
					{ quantity: 'sold', value: { A: { jan: 100 } } },
					{ quantity: 'made', value: { A: { L1: { jan: 100 } } } }
				]
			}
		]
	});

it('a plan that is kept brings what the formulas say now, not what it brought then', () => {
	expect(keptNow(kept(), 'allocation', 'base')).toEqual({ kept: 300, fits: true });
	const dearer = kept(withQuantity('margin', { value: { A: 4, B: 2 } }));
	expect(keptNow(dearer, 'allocation', 'base').kept).toBe(400);
});

it('it fits no more where something that is required fails', () => {
	// Only 5 h of L1 in January, of which 100 m take 10.
	const fewer = kept(withQuantity('hours', { value: { L1: { jan: 5 } } }));
	expect(keptNow(fewer, 'allocation', 'base').fits).toBe(false);
});
