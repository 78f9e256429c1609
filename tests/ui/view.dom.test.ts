import { describe, expect, it } from 'vitest';
import { View } from '$lib/ui/view.svelte';
import { shop } from './shop';

describe('What a reader has open', () => {
	it('is found again with the scenario in hand, the base too', () => {
		const first = new View();
		first.begin(shop, null);
		for (const { id } of shop.scenarios) {
			first.selectScenario(id);
			const again = new View();
			again.begin(shop, first.kept);
			expect(again.selectedScenario).toBe(id);
		}
		const [base, second] = shop.scenarios;
		first.selectScenario(second!.id);
		const without = new View();
		without.begin({ ...shop, scenarios: [base!] }, first.kept);
		expect(without.selectedScenario).toBe(base!.id);
	});

	it('is found again with the columns that tables leave out', () => {
		const first = new View();
		first.begin(shop, null);
		first.leaveOut('scenarios', 'cheap', true);
		first.leaveOut('patterns', 'cheap', true);
		first.leaveOut('patterns', 'cheap', false);
		const again = new View();
		again.begin(shop, first.kept);
		expect(again.leaves('scenarios', 'cheap')).toBe(true);
		expect(again.leaves('patterns', 'cheap')).toBe(false);
	});

	it('gives a scenario a column where one of its cells is gone to; the base has its own, whatever it is called', () => {
		const [base, second] = shop.scenarios;
		const plant = { ...shop, scenarios: [{ ...base!, id: 'today' }, second!] };
		const view = new View();
		view.begin(plant, { shown: [], selectedScenario: second!.id });
		view.goTo('today', 3);
		expect(view).toMatchObject({ shown: [], selectedScenario: second!.id });
		expect(view.goal).toEqual({ cell: 3, scenario: 'today' });
		view.goTo(second!.id, 4);
		expect(view.shown).toEqual([second!.id]);
		view.selectScenario('today');
		expect(view).toMatchObject({ shown: [second!.id], selectedScenario: 'today' });
	});
	it('keeps the column of a frozen copy, which is never the scenario in hand, until the copy goes', () => {
		const copy = {
			...{ id: 'budget', title: 'Budget', of: 'Base', date: '2027-11-30' },
			quantities: [{ name: 'price', label: 'Resin price', unit: 'EUR/kg', value: 2 }]
		};
		const view = new View();
		view.begin({ ...shop, frozen: [copy] }, { shown: ['cheap', 'budget'] });
		expect(view).toMatchObject({ shown: ['cheap', 'budget'], selectedScenario: 'cheap' });
		view.follow({ ...shop, frozen: [copy], scenarios: [shop.scenarios[0]!] });
		expect(view).toMatchObject({ shown: ['budget'], selectedScenario: 'base' });
		view.follow(shop);
		expect(view.shown).toEqual([]);
	});
	it('gives the scenario that became the base no second column', () => {
		const [base, second] = shop.scenarios;
		const view = new View();
		view.begin(shop, { shown: [second!.id] });
		view.follow({ ...shop, scenarios: [second!, base!] });
		expect(view.shown).toEqual([]);
	});
});
