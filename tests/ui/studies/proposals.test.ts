import { describe, expect, it } from 'vitest';
import { askStudy } from '$lib/studies/ask-study';
import { Model } from '$lib/engine/model';
import { applyCommand } from '$lib/workbook/commands';
import { VERSION, type Workbook } from '$lib/workbook/schema';
import type { StudyOf } from '$lib/workbook/study-schema';
import { proposalOfInput } from '$lib/ui/studies/proposals';

/** A saving against the base: resin price moves both, the outlay the option alone. */
const workbook: Workbook = {
	format: 'metrewright',
	version: VERSION,
	title: 'Shop',
	sets: [],
	sheets: [
		{
			title: 'One',
			quantities: [
				{ name: 'price', label: 'Price', value: 2 },
				{ name: 'mass', label: 'Mass', value: 100 },
				{ name: 'outlay', label: 'Investment', value: 0 },
				{ name: 'cost', label: 'Cost', formula: 'price * mass + outlay' },
				{ name: 'saving', label: 'Saving', formula: 'cost[reference] - cost' }
			]
		}
	],
	scenarios: [
		{ id: 'base', title: 'Base', parent: null, changes: [] },
		{
			id: 'thin',
			title: 'Thin wall',
			parent: 'base',
			changes: [
				{ quantity: 'mass', value: 90 },
				{ quantity: 'outlay', value: 30 }
			]
		}
	]
};
const study = (quantity: string, from: number, to: number): StudyOf<'break_even'> => ({
	...{ name: 's', title: 'S', kind: 'break_even', quantity: 'saving', scenario: 'thin', target: 0 },
	input: { quantity, mode: 'set', from, to }
});

function savingOfProposal(one: StudyOf<'break_even'>) {
	const found = askStudy(workbook, one);
	if (!found.ok || found.value.kind !== 'break_even') throw new Error('no break-even');
	const value = found.value.crossings[0]!.input;
	const { commands, id } = proposalOfInput(workbook, 'thin', one.input, value, 'Proposed');
	const after = commands.reduce((book, command) => {
		const result = applyCommand(book, command);
		if (!result.ok) throw new Error(result.problem.message);
		return result.workbook;
	}, workbook);
	const model = Model.open(after);
	return {
		value,
		scenarios: after.scenarios.map(({ title }) => title),
		saving: model.results(id).values[model.layout.byName.get('saving')!.base]!
	};
}

describe('a break-even that becomes a scenario', () => {
	it('moves what it is measured against too where both take the input from the same place', () => {
		// Ten kilograms less are worth the outlay of 30 at 3 a kilogram, in the base as in the option.
		const { value, scenarios, saving } = savingOfProposal(study('price', 1, 5));
		expect(value).toBeCloseTo(3, 9);
		expect(scenarios).toEqual(['Base', 'Thin wall', 'Proposed, to compare', 'Proposed']);
		expect(saving).toBeCloseTo(0, 9);
	});

	it('is one scenario where the input is the option’s own', () => {
		const { value, scenarios, saving } = savingOfProposal(study('outlay', 0, 50));
		expect(value).toBeCloseTo(20, 9);
		expect(scenarios).toEqual(['Base', 'Thin wall', 'Proposed']);
		expect(saving).toBeCloseTo(0, 9);
	});
});
