import { describe, expect, it } from 'vitest';
import { applyCommand } from '$lib/workbook/commands';
import { inputAt } from '$lib/workbook/scenario';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { onlyInNew, presenceInput } from '$lib/ui/members/only-in';
import { shop } from '../shop';

const installed = (formula?: Quantity['formula']): Quantity => ({
	...{ name: 'installed', label: 'Installed', type: 'yes_no', per: ['line'] },
	value: { L1: true, L2: true },
	...(formula !== undefined && { formula })
});
const plant = (formula?: Quantity['formula'], present = 'installed'): Workbook => ({
	...shop,
	sets: shop.sets.map((set) => (set.name === 'line' ? { ...set, present } : set)),
	sheets: [...shop.sheets, { title: 'There', quantities: [installed(formula)] }]
});
const lines = (workbook: Workbook) => workbook.sets.find(({ name }) => name === 'line')!;

describe('a copy that stands in a scenario alone', () => {
	it('is offered where an input says of the member whether it is there', () => {
		const asked = (workbook: Workbook, like = 'L1') =>
			presenceInput(workbook, lines(workbook), like);
		expect(asked(plant())).toBe('installed');
		expect(asked(shop)).toBeNull();
		expect(asked(plant('1 > 2'))).toBeNull();
		const byCase = plant({ by: 'line', cases: { L2: '1 > 2', '*': 'input' } });
		expect([asked(byCase), asked(byCase, 'L2')]).toEqual(['installed', null]);
	});

	it('is there in the new scenario, and nowhere else, in one step', () => {
		const workbook = plant();
		const made = onlyInNew(workbook, 'installed', 'L3', 'A third line');
		const done = applyCommand(workbook, {
			kind: 'several',
			commands: [
				{ kind: 'add_member', set: 'line', index: 2, member: { id: 'L3' }, like: 'L2' },
				...made.commands
			]
		});
		if (!done.ok) throw new Error(done.problem.message);
		expect(made.id).toBe('a_third_line');
		const there = (scenario: string) => inputAt(done.workbook, scenario, 'installed', ['L3']).value;
		expect(workbook.scenarios.map(({ id }) => there(id))).toEqual(
			workbook.scenarios.map(() => false)
		);
		expect(there('a_third_line')).toBe(true);
		const undone = applyCommand(done.workbook, done.inverse);
		expect(undone.ok && undone.workbook).toEqual(workbook);
	});
});
