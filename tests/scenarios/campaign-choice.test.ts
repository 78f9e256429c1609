/** How often each product is run, where nothing but set-ups and stock decides: against a formula of inventory theory. */
import { beforeAll, describe, expect, it } from 'vitest';
import { Solver } from '$lib/programmes/highs';
import { planAll } from '$lib/programmes/plan-all';
import type { Programme } from '$lib/workbook/programme-schema';
import { enter, openShipped, read } from '../reference/shipped';
import { SAME_PRICES, switchCampaigns } from './campaign-switch';
import { bestCampaigns, candidatesOf, type Candidate } from './independent/campaigns';
import { given, plant } from './independent/plant';
import { worksOf } from './independent/works';

const LEAST: Readonly<Record<string, number>> = plant.campaigns.least_lot_m;
const TIMES = plant.campaigns.times_a_year;

describe('campaigns where stock is dear and room ample', () => {
	const DEARER = 4;
	const model = openShipped('marram');
	const candidates = candidatesOf(worksOf('base')).map((one) => ({
		...one,
		holding: one.holding * DEARER
	}));
	beforeAll(async () => {
		const rate = plant.finance.holding_rate_month * 100 * DEARER;
		enter(model, ...SAME_PRICES, ['holding_rate', [], rate], ['room_for_campaigns', [], 100]);
		switchCampaigns(model, false);
		const solver = await Solver.load();
		const isAsked = ({ name }: Programme, id: string) => name === 'campaigns' && id === 'base';
		for (const { proven } of planAll(solver, model, isAsked)) expect(proven).toBe(true);
		solver.dispose();
	});
	const timesOf = ({ product, line }: Candidate) =>
		read(model, 'campaigns_in_year', product.id, line);

	it('are more, and again those that no other choice betters', () => {
		const chosen = bestCampaigns(candidates, 1);
		for (const one of chosen) expect(timesOf(one), one.product.id).toBe(one.timesAYear);
		expect(chosen).toHaveLength(candidates.length);
	});

	it('are as long as the economic production quantity, to a step', () => {
		// Q = √(2·D·S / (h·(1 − D/R))), with a finite rate of production: E. W. Taft, "The Most Economical Production
		// Lot", The Iron Age 101 (1918); from memory. The cost is convex in the number of campaigns, so the best of some
		// steps is one of the two about D/Q.
		let between = 0;
		for (const one of candidates) {
			const { metres, couldMake, setUpCost, holding } = one;
			const quantity = Math.sqrt((2 * metres * setUpCost) / (holding * (1 - metres / couldMake)));
			const least = given(LEAST, one.product.id);
			const steps = TIMES.filter((step) => step * least <= metres);
			const below = steps.filter((step) => step <= metres / quantity).at(-1) ?? steps[0]!;
			const above = steps.find((step) => step >= metres / quantity) ?? steps.at(-1)!;
			expect([below, above], `${one.product.id} on ${one.line}`).toContain(timesOf(one));
			if (below < above) between++;
		}
		expect(between).toBeGreaterThan(candidates.length / 2);
	});
});
