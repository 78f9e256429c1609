/** Results of two revisions side by side, and the bridge between them. */
import { describe, expect, it } from 'vitest';
import { freeze, frozenColumn } from '$lib/engine/frozen';
import { Model } from '$lib/engine/model';
import { runBridge } from '$lib/studies/bridge';
import { applyCommand } from '$lib/workbook/commands';
import { bridgeBetween, resultRows } from '$lib/ui/shared/revision-results';
import { base, layout, shop } from '../shop';

const dearer = applyCommand(shop, {
	...{ kind: 'set_inputs', scenario: 'base' },
	entries: [{ quantity: 'price', at: [], value: 3.03 }]
});
if (!dearer.ok) throw new Error(dearer.problem.message);
const copyOf = (id: string, of: Model) =>
	freeze(of.layout, of.results('base'), { id, title: id, of: 'Base', date: '2027-11-30' })!;
const sides = [
	copyOf('one', Model.open(shop)),
	copyOf('two', Model.open(dearer.workbook))
] as const;
const [from, to] = sides.map((copy) => frozenColumn(layout, copy));
const rows = (...names: string[]) =>
	resultRows({ layout, from: from!, to: to!, subject: null, locale: 'en' }, names);

describe('results of two revisions', () => {
	it('stand side by side with what differs: more in the second is a plus', () => {
		const [price, night, gone] = rows('price', 'night', 'gone');
		expect(price).toMatchObject({
			from: '2.02',
			to: '3.03',
			difference: '+1.01',
			relative: '+50.0 %'
		});
		expect(night).toMatchObject({ from: 'no', to: 'no', difference: '', members: null });
		expect(gone).toBeUndefined();
		expect(from!.values).toEqual(base.values);
	});

	it('are bridged one by one, by causes that close on what each revision holds', () => {
		const [cost] = rows('cost');
		// Per product, so many values stand for none of them.
		expect(cost!.members).toBeNull();
		const asked = bridgeBetween(
			{ ...cost!, label: 'Resin cost of B22', members: ['B22'] },
			...(['one', 'two'] as const)
		);
		const found = runBridge({ ...shop, frozen: [...sides] }, asked);
		if (!found.ok) throw new Error(found.problem.message);
		const { start, end, parts, total } = found.value;
		expect(start).toBeCloseTo(0.202, 12);
		expect(end).toBeCloseTo(0.303, 12);
		expect(parts.find(({ cells }) => cells.length > 0)!.value).toBeCloseTo(0.101, 12);
		expect(total).toBeCloseTo(end - start, 12);
	});
});
