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
});
