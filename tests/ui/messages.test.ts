import { expect, it } from 'vitest';
import { layOut } from '$lib/engine/layout';
import { inheritedFrom } from '$lib/ui/messages';
import type { QuantityFault } from '$lib/engine/faults';
import { shop } from './shop';

it('says whose error a quantity carries, worked out once for the same faults and layout', () => {
	const layout = layOut(shop);
	const price = layout.byName.get('price')!.quantity;
	const fault = {
		...{ quantity: 'cost', cell: 1, count: 1 },
		origin: { from: { quantity: 'price', members: [], cell: 0 }, reason: 'not entered' }
	} as unknown as QuantityFault;
	const faults = [fault];
	const causes = inheritedFrom(layout, faults);
	expect([...causes]).toEqual([['cost', price.label ?? 'price']]);
	expect(inheritedFrom(layout, faults)).toBe(causes);
	expect(inheritedFrom(layOut(shop), faults)).not.toBe(causes);
	expect(inheritedFrom(layout, undefined).size).toBe(0);
});
