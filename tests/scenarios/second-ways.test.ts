/**
 * Second ways to what the sheets show: each holds as shipped, and speaks when one way alone is spoiled. Many are spoiled in one
 * edit, and only such together that no check stands on two of them: what fails then fails for its own reason.
 */
import { describe, expect, it } from 'vitest';
import type { Model } from '$lib/engine/model';
import { readFormulas } from '$lib/review/formulas';
import { findQuantity } from '$lib/workbook/lookup';
import type { Scalar, Workbook } from '$lib/workbook/schema';
import { apply, enter, openShipped, read } from '../reference/shipped';
import { spoil, Spoilable } from '../reference/spoiled';

type How = (formula: string) => string;
const off: How = (formula) => `(${formula}) * 1.05`;
const far: How = (formula) => `(${formula}) * 1000`;
const small: How = (formula) => `(${formula}) / 1000`;
const not: How = (formula) => `NOT(${formula})`;
const least: How = (formula) => formula.replace('ARGMAX', 'ARGMIN');
const most: How = (formula) => formula.replace('ARGMIN', 'ARGMAX');
const by =
	(from: string, to: string): How =>
	(formula) =>
		formula.replace(from, to);

/** The check, and what stands in one of its ways alone. */
const WAYS: readonly (readonly [check: string, spoiled: string, how?: How])[] = [
	['recipe_parts_close', 'main_share'],
	['recipe_money_closes', 'masterbatch_price'],
	['shrink_closes', 'diameter_shrink'],
	['giveaway_closes', 'giveaway'],
	['limit_is_lowest', 'speed_limited_by', most],
	['extruder_limits_close', 'limit_applies', not],
	['gauging_serves', 'gauging_in_use', (formula) => formula.replace('AND', 'OR')],
	['easter_holds', 'days_to_sunday', (formula) => `(${formula}) + 1[day]`],
	['weekend_absence_closes', 'weekend_absence'],
	['weekend_labour_closes', 'weekend_labour'],
	['pallets_close', 'quote_rest_pallets'],
	['ahead_within_room', 'quote_ahead', far],
	['year_hours_close', 'pattern_hours'],
	['tariff_hours_close', 'tariff_of_month'],
	['premium_hours_close', 'premium_of_month'],
	['scheduled_closes', 'lines_scheduled'],
	['line_premiums_close', 'premium_of_line'],
	['line_scrap_closes', 'restart_scrap_of_line'],
	['repairs_close', 'breakdowns'],
	['teep_closes', 'teep'],
	['plant_oee_closes', 'plant_oee'],
	['setups_close', 'setups_in_all'],
	['campaign_rows_hold', 'campaign_room_holds', not],
	['line_load_closes', 'line_load_of_demand'],
	['planned_load_closes', 'planned_load_by_month'],
	['hours_left_close', 'hours_left_of_stage'],
	['line_short_closes', 'line_short_of_year'],
	['stage_due_closes', 'stage_load_of_demand'],
	['planned_stage_closes', 'planned_stage_load_by_month'],
	['drum_time_closes', 'drum_load_by_month'],
	['planned_drums_close', 'planned_drum_load'],
	['fullest_is_named', 'limiting_stage', least],
	['hours_ahead_hold', 'line_hours_ahead', (formula) => `0[h] - ${formula}`],
	['made_within_reach', 'sole_capacity', small],
	['way_closes', 'cost_of_way'],
	['later_gain_closes', 'ebit_gained_later'],
	['lost_contribution_closes', 'lost_contribution'],
	['mean_cost_closes', 'mean_factory_cost'],
	['cost_with_idle_closes', 'cost_with_idle'],
	['ebitda_closes', 'ebitda'],
	['line_hours_cost_close', 'people_of_line_hour'],
	['premium_of_lines_closes', 'premium_of_lines'],
	['starts_close', 'starts_of_lines'],
	['metres_close', 'total_good_metres'],
	['unmet_closes', 'unmet_metres'],
	['unmet_months_close', 'unmet_in_month'],
	['highest_loads_hold', 'highest_load', small],
	['ebit_share_closes', 'ebit_share'],
	['pattern_year_closes', 'net_hours_of_pattern'],
	['pattern_starts_close', 'start_scrap_of_pattern'],
	['pattern_chambers_hold', 'chamber_hours_of_pattern', far],
	['running_energy_closes', 'running_power'],
	['hour_energy_closes', 'energy_cost_of_hour'],
	['crews_by_week_close', 'hours_per_head'],
	['pattern_cost_closes', 'conversion_cost_of_pattern'],
	['pattern_reach_holds', 'stage_that_limits_pattern', most],
	['metres_more_close', 'cost_of_metre_more'],
	['cover_closes', 'order_point'],
	['stock_between', 'stock_value', far],
	['scrap_shares_close', 'scrap_share'],
	['crosslinked_closes', 'crosslinked_scrap'],
	['removal_holds', 'crosslinked_scrap_removal', far],
	['giveaway_money_closes', 'giveaway_in_all'],
	['diameter_money_closes', 'diameter_cost_in_all'],
	['layer_money_closes', 'layer_over_cost_in_all'],
	['regrind_money_holds', 'regrind_absorbable', far],
	['energy_uses_close', 'energy_in_all'],
	['energy_money_closes', 'energy_cost_in_all'],
	['energy_figures_close', 'energy_per_kilogram'],
	['meter_fit_closes', 'meter_fitted'],
	['fit_quality_closes', 'fit_quality'],
	['meter_ties_close', 'slope_difference'],
	['co2_closes', 'co2_of_year'],
	['peaks_hold', 'restart_peak_of_all', small],
	['margin_shares_close', 'margin_share'],
	['full_cost_sizes_close', 'full_cost_per_pallet'],
	['cost_shares_close', 'absorbed_share'],
	['laboratory_closes', 'laboratory_amount'],
	['contract_moves_close', 'contract_price'],
	['item_demand_closes', 'demand'],
	['items_close', 'item_metres'],
	['items_rewinding_closes', 'item_cycle'],
	['items_packing_closes', 'item_packing'],
	['items_cost_closes', 'drum_cost'],
	['items_contribution_closes', 'mean_list_price'],
	['items_coils_close', 'pallets_of_metre'],
	['item_coil_closes', 'item_coil_list_price'],
	['coil_meets_quote', 'coil_floor'],
	['coil_sizes_close', 'mark_per_pallet'],
	['markups_close', 'quote_markup'],
	['order_floor_closes', 'order_over_floor'],
	['last_pallet_holds', 'quote_last_pallet', far],
	['opportunity_months_close', 'opportunity_by_month'],
	['buying_holds', 'buy_instead', not],
	['clause_price_closes', 'price_by_clause'],
	['currency_closes', 'price_in_currency'],
	['verdicts_hold', 'largest_adverse', most],
	['product_differences_close', 'difference_by_product'],
	['gain_closes', 'gain'],
	['cumulative_closes', 'cumulative_cash'],
	['put_in_closes', 'profitability_index'],
	['annuity_closes', 'equivalent_annual_value'],
	['rate_closes', 'irr'],
	['payback_holds', 'payback', (formula) => `(${formula}) + 2[year]`],
	['lost_gain_closes', 'gain_case_can_lose'],
	['contingency_closes', 'contingency_borne'],
	['reinvested_closes', 'mirr'],
	['regrind_within_cap', 'recipe_share', by('MIN', 'MAX')],
	['crosslink_money_closes', 'crosslinked_mass', by(' where crosslinked', '')],
	['crosslink_money_closes', 'crosslink_rate', by('labour_pool[stage.crosslink] + ', '')],
	['drum_batches_close', 'batch_load', by('route.drum', 'route.inline')],
	['weekend_hours_close', 'weekend_pattern_hours', by('crew_hours', 'crew_premium')]
];

const { workbook: shipped } = openShipped('marram');
type Way = (typeof WAYS)[number];

/** Everything that a quantity stands on, itself included. */
function standsOn(workbook: Workbook, name: string, found = new Set<string>()): Set<string> {
	const quantity = found.has(name) ? undefined : findQuantity(workbook, name);
	if (!quantity) return found;
	found.add(name);
	for (const one of readFormulas(quantity).names) standsOn(workbook, one, found);
	return found;
}

/** In groups in which no check stands on what is spoiled for another. */
function groups(): Way[][] {
	const found: Way[][] = [];
	const below = new Map(WAYS.map(([check]) => [check, standsOn(shipped, check)]));
	const apart = ([check, spoiled]: Way, [other, its]: Way) =>
		spoiled !== its && !below.get(check)!.has(its) && !below.get(other)!.has(spoiled);
	for (const way of WAYS) {
		const group = found.find((one) => one.every((other) => apart(way, other)));
		if (group) group.push(way);
		else found.push([way]);
	}
	return found;
}

const spoilable = new Spoilable(WAYS.map(([, spoiled, how = off]) => [spoiled, how]));

describe('a way to a number that is spoiled', () => {
	/** The checks that fail in one scenario after another, as far as anybody asks on. */
	function* failing(model: Model) {
		for (const { id } of shipped.scenarios)
			for (const { place } of model.checks(id).fail) yield place.quantity;
	}
	/** With a customer who pays in pounds, so that the price in currency is there. */
	const open = () => {
		const model = spoilable.open();
		enter(model, ['quote_customer', [], 'Ouseburn']);
		return model;
	};

	it('is none as shipped', () => {
		expect([...failing(open())]).toEqual([]);
	});

	it.each(groups().map((group, i) => ({ group, i })))('is found, group $i', ({ group }) => {
		const model = open();
		spoil(model, ...group.map(([, spoiled]) => spoiled));
		const missed = new Set(group.map(([check]) => check));
		for (const check of failing(model)) {
			missed.delete(check);
			if (missed.size === 0) break;
		}
		expect([...missed]).toEqual([]);
	});
});

/** The products of which a check fails once pairs are left out of a relation. */
function failingWithout(
	...pairs: readonly (readonly [relation: string, pair: readonly string[]])[]
) {
	const model = openShipped('marram');
	apply(model, {
		kind: 'several',
		commands: pairs.map(([relation, [...pair]]) => ({
			...{ kind: 'set_relation_pair', relation, pair, exists: false }
		}))
	});
	const { fail } = model.checks('base');
	return (check: string) =>
		fail.flatMap(({ place }) => (place.quantity === check ? place.members : []));
}

describe('the layers of a pipe', () => {
	it.each([
		['a barrier without adhesive inside, one with no outer pipe over it', 'tie_in', 'cover'],
		['a barrier without adhesive outside, one with no inner pipe', 'tie_out', 'inner']
	])('do not belong together: %s', (_, ofOne, ofOther) => {
		const failing = failingWithout(
			['has_layer', ['PX28B', ofOne]],
			['has_layer', ['PB22B', ofOther]]
		);
		expect(failing('layers_belong').sort()).toEqual(['PB22B', 'PX28B']);
	});

	it('do not belong together: adhesive without a barrier; nor is cross-linked what has no catalyst', () => {
		const failing = failingWithout(
			['has_layer', ['PX28B', 'barrier']],
			['has_component', ['PEXB', 'catalyst']]
		);
		expect(failing('layers_belong')).toEqual(['PX28B']);
		expect(failing('catalyst_belongs')).toEqual(['PX10B', 'PX15P', 'PX15B', 'PX22B', 'PX28B']);
	});
});

describe('a chamber full of pallets', () => {
	it('takes one batch', () => {
		const model = new Spoilable([
			['batch_load', by('pallets_per_chamber', '1.2 * pallets_per_chamber')]
		]).open();
		enter(model, ['route_of_product', ['PX15P'], 'inline']);
		const failing = () =>
			model
				.checks('base')
				.fail.flatMap(({ place }) =>
					place.quantity === 'pallet_batches_close' ? place.members : []
				);
		expect(failing()).toEqual([]);
		spoil(model, 'batch_load');
		expect(failing()).toEqual(['PX15P']);
	});
});

describe('metres invoiced', () => {
	it('caution where a line is left out that much was booked on', () => {
		const model = openShipped('marram');
		const cautioned = () =>
			model
				.checks('base')
				.cautions.flatMap(({ place }) =>
					place.quantity === 'invoiced_off' ? place.members.slice(0, 1) : []
				);
		expect(cautioned()).toEqual([]);
		apply(model, {
			...{ kind: 'set_relation_pair', relation: 'runs', exists: false },
			pair: ['PX15P', 'L1']
		});
		// in more than one of the closed months, and of no other product
		expect(cautioned().length).toBeGreaterThan(1);
		expect(new Set(cautioned())).toEqual(new Set(['PX15P']));
	});

	it('are no caution in a scenario that does without a line that the month had', () => {
		const model = openShipped('marram');
		apply(model, {
			...{ kind: 'set_inputs', scenario: 'new_line' },
			entries: [{ quantity: 'line_installed', at: ['L3'], value: false }]
		});
		const quantities = model.checks('new_line').cautions.map(({ place }) => place.quantity);
		expect(quantities).not.toContain('invoiced_off');
	});

	it('lie within 8 % of those booked less what is made for stock, as shipped', () => {
		const model = openShipped('marram');
		for (const { id } of model.workbook.sets.find(({ name }) => name === 'product')!.members)
			for (const month of ['2027-01', '2027-02', '2027-03', '2027-04']) {
				// less what the plan puts into stock in that month
				const stocked = read(model, 'month_made', id, month) - read(model, 'month_sold', id, month);
				const sold = read(model, 'invoiced_metres', id, month) + stocked;
				expect(
					Math.abs(sold / read(model, 'actual_product_metres', id, month) - 1),
					`${id} ${month}`
				).toBeLessThan(0.08);
			}
	});
});

describe('weekend crews', () => {
	const cautions = (model: Model, scenario: string) =>
		model.checks(scenario).cautions.map(({ place }) => place.quantity);

	const enterIn = (model: Model, quantity: string, at: readonly string[], value: Scalar) =>
		apply(model, {
			...{ kind: 'set_inputs', scenario: 'weekend_crews' },
			entries: [{ quantity, at, value }]
		});

	it('that are chosen and paid for with no hours worked are cautioned', () => {
		const model = openShipped('marram');
		expect(cautions(model, 'weekend_crews')).not.toContain('hours_missing');
		for (const line of ['L2', 'L5', 'L6']) enterIn(model, 'pattern_of_line', [line], '5x24');
		expect(cautions(model, 'weekend_crews')).toContain('hours_missing');
	});

	it('are cautioned where rewinders or chambers work no longer, each for itself', () => {
		const model = openShipped('marram');
		expect(cautions(model, 'weekend_crews')).not.toContain('stages_left_behind');
		enterIn(model, 'pattern_of_chambers', [], '5x24');
		expect(cautions(model, 'weekend_crews')).toContain('stages_left_behind');
		enterIn(model, 'pattern_of_chambers', [], '7x24');
		expect(cautions(model, 'weekend_crews')).not.toContain('stages_left_behind');
		for (const rewinder of ['R1', 'R2']) enterIn(model, 'pattern_of_rewinder', [rewinder], '5x24');
		expect(cautions(model, 'weekend_crews')).toContain('stages_left_behind');
	});

	it('whose hours are worked without a choice of crews are cautioned, until it is said that nothing is paid', () => {
		const model = openShipped('marram');
		const scenario = 'weekend_crews';
		expect(cautions(model, scenario)).not.toContain('crews_missing');
		enterIn(model, 'chosen', ['weekend_crews'], false);
		expect(cautions(model, scenario)).toContain('crews_missing');
		expect(read(model, 'outlay', { scenario })).toBe(0);
		enterIn(model, 'nothing_to_pay', [], true);
		expect(cautions(model, scenario)).not.toContain('crews_missing');
		expect(cautions(model, 'new_line')).not.toContain('crews_missing');
	});
});
