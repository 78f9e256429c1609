/**
 * How often each product is run: by lot as shipped, and in campaigns where they are switched on, against an independent
 * model that tries every choice and allocates with GLPK.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Model } from '$lib/engine/model';
import { Solver } from '$lib/programmes/highs';
import { Memory } from '$lib/programmes/memory';
import { planAll, planningOrder } from '$lib/programmes/plan-all';
import type { Planned } from '$lib/programmes/planning';
import { ownPlan } from '$lib/workbook/plans';
import { apply, enter, openShipped, read } from '../reference/shipped';
import { SAME_PRICES, switchCampaigns } from './campaign-switch';
import { allocate, valueOf } from './independent/allocation';
import { made, months, sold, stock } from './independent/allocation-programme';
import {
	bestCampaigns,
	campaignHolding,
	candidatesOf,
	changeoverBetween,
	costAt,
	worksInCampaigns
} from './independent/campaigns';
import { cardsOf, poolsOf } from './independent/cost';
import { yearOf } from './independent/metres';
import { plant, products, productOf, SCENARIOS, sum, type ScenarioId } from './independent/plant';
import { at, worksOf } from './independent/works';
import { MONTH_NAMES } from './workbook-plan';

let solver: Solver;
beforeAll(async () => {
	solver = await Solver.load();
});
afterAll(() => solver.dispose());

function plan(model: Model, memory: Memory, scenarios?: readonly string[]): Planned[] {
	const made = planAll(solver, model, (_, id) => scenarios?.includes(id) ?? true, {
		memory,
		staleOnly: true
	});
	return [...made];
}

describe('by lot, as shipped', () => {
	const model = openShipped('marram');

	it('a set-up for each lot is what lines, scrap and energy count', () => {
		for (const { setting } of [worksOf('base')])
			for (const line of setting.lines) {
				const lots = line.products.map((id) => {
					const metres = read(model, 'planned_metres', id, line.id, 'today');
					return (metres / productOf(id).lot_m) * productOf(id).setup_h;
				});
				expect(read(model, 'setup_hours', line.id), line.id).toBeCloseTo(sum(lots), 6);
				expect(read(model, 'energy_on_line', line.id, 'at_standby'), line.id).toBeCloseTo(
					sum(lots) * (line.standby_kW ?? plant.energy.standby_kW_per_line),
					4
				);
			}
	});

	it('nothing on the sheet says otherwise: no campaign, no stock of campaigns, no hour saved', () => {
		for (const line of worksOf('base').setting.lines) {
			expect(read(model, 'setup_hours_saved', line.id)).toBeCloseTo(0, 9);
			for (const id of line.products) expect(read(model, 'campaigns_in_year', id, line.id)).toBe(0);
		}
		for (const { id } of products) expect(read(model, 'campaign_stock', id)).toBe(0);
		expect(read(model, 'campaign_stock_cost')).toBe(0);
		expect(read(model, 'campaign_cost')).toBe(0);
	});

	it('is off, and solved before the plan by month, which takes set-ups as they are', () => {
		const programmes = model.workbook.programmes!;
		expect(programmes.map(({ name, off }) => [name, off ?? false])).toEqual([
			['campaigns', true],
			['allocation', false]
		]);
		expect(planningOrder(model).every(({ programme }) => programme.name === 'allocation')).toBe(
			true
		);
	});
});

describe('in campaigns', () => {
	const PLANNED: readonly ScenarioId[] = ['base', 'new_line'];
	const model = openShipped('marram');
	const memory = new Memory();
	let campaigns: readonly Planned[];

	beforeAll(() => {
		enter(model, ...SAME_PRICES);
		switchCampaigns(model, false);
		// What another scenario decides is no part of these; of campaigns all are looked at.
		campaigns = plan(model, memory).filter(({ programme }) => programme === 'campaigns');
	});

	/** A scenario whose rows are those of the one it stands on takes over that one's plan. */
	const inForce = (id: string): Planned =>
		campaigns.find(({ scenario }) => scenario === id) ??
		inForce(model.workbook.scenarios.find((one) => one.id === id)!.parent!);

	const bestOf = (id: ScenarioId) => {
		const candidates = candidatesOf(worksOf(id));
		return { candidates, chosen: bestCampaigns(candidates) };
	};
	const inCampaigns = (id: ScenarioId) => {
		const works = worksOf(id);
		return worksInCampaigns(works.setting, bestCampaigns(candidatesOf(works)));
	};

	it.each(SCENARIOS)('of %s are those that no other choice of whole numbers betters', (id) => {
		const { chosen } = bestOf(id);
		const planned = inForce(id);
		expect([planned.status, planned.proven, planned.gap]).toEqual(['optimal', true, 0]);
		const cost = sum(chosen.map((one) => costAt(one, one.timesAYear)));
		expect(planned.objective / cost).toBeCloseTo(1, 9);
		for (const line of worksOf(id).setting.lines)
			for (const product of line.products) {
				const own = chosen.find((one) => one.product.id === product && one.line === line.id);
				expect(
					read(model, 'campaigns_in_year', product, line.id, { scenario: id }),
					`${product} on ${line.id}`
				).toBe(own?.timesAYear ?? 0);
			}
	});

	describe.each(PLANNED)('%s', (id) => {
		const here = { scenario: id };
		const lines = worksOf(id).setting.lines;
		const number = (name: string, ...members: string[]) => read(model, name, ...members, here);
		const planned = () =>
			lines.flatMap((line) =>
				line.products.map((product) => ({
					line: line.id,
					product,
					metres: number('planned_metres', product, line.id, 'today')
				}))
			);

		it('has campaigns as the set-ups of hours, kilograms and cost cards', () => {
			const works = inCampaigns(id);
			for (const { line, product } of planned()) {
				const run = at(at(works.runs, line), product);
				const where = `${product} on ${line}`;
				expect(
					number('hours_per_metre', product, line) / 1000 / run.hoursPerMetre,
					where
				).toBeCloseTo(1, 9);
				expect(number('mass_extruded', product, line) / run.kgExtruded, where).toBeCloseTo(1, 9);
			}
			const cards = cardsOf(works, poolsOf(works), yearOf(works, planned()));
			for (const { id: product } of products) {
				const card = at(cards, product);
				expect(number('variable_cost_per_metre', product) / card.variable, product).toBeCloseTo(
					1,
					9
				);
				expect(number('cost_per_metre', product) / card.perMetre, product).toBeCloseTo(1, 9);
			}
		});

		it('counts the same set-up hours on the line, in its load and in its energy', () => {
			const works = inCampaigns(id);
			for (const line of lines) {
				const own = planned().filter((one) => one.line === line.id);
				const hours = sum(
					own.map(({ product, metres }) => {
						const { setUps } = at(at(works.runs, line.id), product);
						return metres * setUps.perMetre * setUps.hours;
					})
				);
				expect(number('setup_hours', line.id), line.id).toBeCloseTo(hours, 6);
				expect(number('busy_time_agrees', line.id), line.id).toBeCloseTo(0, 6);
				expect(number('energy_on_line', line.id, 'at_standby')).toBeCloseTo(
					hours * (line.standby_kW ?? plant.energy.standby_kW_per_line),
					4
				);
				const byMonth = sum(
					MONTH_NAMES.map((month) => number('line_hours_planned', line.id, month, 'today'))
				);
				const all = sum(
					own.map(
						({ product, metres }) => metres * at(at(works.runs, line.id), product).hoursPerMetre
					)
				);
				expect(byMonth / all, line.id).toBeCloseTo(1, 9);
			}
		});

		it('is planned by month as well as GLPK can, with campaigns as set-ups and their stock in the room', () => {
			const works = inCampaigns(id);
			const best = allocate(works, 0);
			const decided: Record<string, number> = {};
			for (const month of months) {
				const name = MONTH_NAMES[month]!;
				for (const { id: product } of products) {
					decided[sold(product, month)] = number('sold', product, name, 'today');
					decided[stock(product, month)] = number('stock', product, name, 'today');
				}
				for (const line of lines)
					for (const product of line.products)
						decided[made(product, line.id, month)] = number(
							'made',
							product,
							line.id,
							name,
							'today'
						);
			}
			for (const { name, terms, kind, most } of best.programme.rows)
				if (kind === 'most')
					expect(valueOf(terms, decided), name).toBeLessThanOrEqual(
						most + 1e-3 + 1e-9 * Math.abs(most)
					);
			for (const { name, most } of best.programme.bounds)
				expect(decided[name], name).toBeLessThanOrEqual(most + 1e-3);
			const earned = valueOf(best.programme.profit, decided);
			expect(earned / best.contribution).toBeGreaterThan(1 - 1e-6);
			expect(earned / best.contribution).toBeLessThan(1 + 1e-9);
			const said = number('contribution_of_plan', 'today');
			expect(said / (earned - campaignHolding(works))).toBeCloseTo(1, 9);
		});
	});

	it('do not lose the print and coil changes of a line with one product', () => {
		const rt = productOf('RT15B');
		expect(changeoverBetween(rt, rt)).toBe(0.5);
		const times = read(model, 'campaigns_in_year', 'RT15B', 'L7');
		const share =
			read(model, 'planned_metres', 'RT15B', 'L7', 'today') /
			read(model, 'laid_out', 'RT15B', 'L7');
		expect(times * share * 0.5).toBeGreaterThan(0);
		expect(read(model, 'setup_hours', 'L7')).toBeCloseTo(times * share * 0.5, 6);
	});

	it.each(SCENARIOS)('leave no check of %s unmet and no value without one', (id) => {
		expect(model.checks(id).fail).toEqual([]);
		expect(model.errorOrigins(id)).toEqual([]);
	});

	it('and the plan by month are both made anew when a resin costs more, the plan alone when a price falls', () => {
		const before = PLANNED.map((id) => ownPlan(model.workbook, 'campaigns', id)!.digest);
		enter(model, ['main_price', ['PEXB'], 2.2]);
		const made = plan(model, memory, ['base']);
		expect(made.map(({ programme }) => programme)).toEqual(['campaigns', 'allocation']);
		expect(ownPlan(model.workbook, 'campaigns', 'base')!.digest).not.toBe(before[0]);
		enter(model, ['price', ['PX15B'], 0.4]);
		expect(plan(model, memory, ['base']).map(({ programme }) => programme)).toEqual(['allocation']);
		expect(plan(model, memory, ['base'])).toEqual([]);
	});

	it('run a product as often as somebody enters, and the others around it', () => {
		enter(model, ['campaign_chosen', ['RT15B', 'L7', '36 a year'], true]);
		const [planned] = plan(model, memory, ['base']);
		expect([planned!.programme, planned!.proven]).toEqual(['campaigns', true]);
		expect(read(model, 'campaigns_in_year', 'RT15B', 'L7')).toBe(36);
	});

	it('are gone when they are switched off and nobody entered one: a set-up for each lot again', () => {
		switchCampaigns(model, true);
		expect(read(model, 'campaigns_in_year', 'RT15B', 'L7')).toBe(36);
		expect(read(model, 'campaigns_in_year', 'PX28B', 'L4')).toBe(0);
		const entry = { quantity: 'campaign_chosen', at: ['RT15B', 'L7', '36 a year'] };
		apply(model, {
			kind: 'set_inputs',
			scenario: 'base',
			entries: [{ ...entry, value: undefined }]
		});
		const { lot_m, setup_h } = productOf('RT15B');
		const perMetre = setup_h / lot_m;
		expect(read(model, 'setup_hours_per_metre', 'RT15B', 'L7') / 1000).toBeCloseTo(perMetre, 12);
		expect(read(model, 'campaign_stock', 'RT15B')).toBe(0);
		expect(plan(model, memory, ['base']).map(({ programme }) => programme)).toEqual(['allocation']);
	});
});
