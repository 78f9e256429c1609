import { afterEach, expect, it } from 'vitest';
import { applyCommand } from '$lib/workbook/apply';
import { provideStructural, structuralEdits } from '$lib/workbook/commands/structural';
import { shop } from '../ui/shop';

const all = structuralEdits();
afterEach(() => provideStructural(all));

it('until the code of structural edits is there, values can be entered and taken back, and others are refused with what to do', () => {
	provideStructural(null);
	const priced = applyCommand(shop, {
		kind: 'set_inputs',
		scenario: 'base',
		entries: [{ quantity: 'price', at: [], value: 3 }]
	});
	if (!priced.ok) throw new Error(priced.problem.message);
	const back = applyCommand(priced.workbook, priced.inverse);
	expect(back.ok && back.workbook).toEqual(shop);
	const titled = applyCommand(shop, { kind: 'set_title', title: 'Mine' });
	expect(titled).toMatchObject({ ok: false, problem: { code: 'still-fetching' } });
	provideStructural(all);
	expect(applyCommand(shop, { kind: 'set_title', title: 'Mine' }).ok).toBe(true);
});
