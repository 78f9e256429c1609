/** What people look for in their own words is found in the shipped plant. */
import { expect, it } from 'vitest';
import { findQuantities } from '$lib/ui/find';
import { openShipped } from '../reference/shipped';

const { layout } = openShipped('marram');
const found = (typed: string) =>
	findQuantities(layout, typed).map(({ quantity }) => quantity.quantity.name);

it('a line in use is found by its label first', () => {
	expect(found('line in use')[0]).toBe('line_installed');
});

it.each(['out of use', 'line closed', 'line lost', 'line sold'])(
	'a line that is "%s" is found by its note',
	(typed) => {
		expect(found(typed)).toContain('line_installed');
	}
);

it('labels come before notes, and a note is found by the beginnings of its words alone', () => {
	expect(found('lost')[0]).toBe('quality_loss_hours');
	expect(found('osed and out')).toEqual([]);
});

/** What a practitioner types, and the quantity that is meant. Words of the trade: common practice, no source. */
const MEANT: readonly (readonly [typed: string, quantity: string])[] = [
	['resin price', 'main_price'],
	['compound price', 'main_price'],
	['electricity', 'band_price'],
	['tariff', 'band_price'],
	['energy price', 'band_price'],
	['peak demand', 'demand_charge'],
	['electricity bill', 'energy_cost_in_all'],
	['headcount', 'heads'],
	['staff', 'all_heads'],
	['crew size', 'posts'],
	['wage', 'wage'],
	['hourly rate', 'wage'],
	['sick leave', 'sickness'],
	['vacation', 'leave_days'],
	['shift premium', 'night_premium'],
	['shift model', 'pattern_of_line'],
	['downtime', 'breakdown_hours'],
	['uptime', 'availability'],
	['MTBF', 'mtbf'],
	['repair time', 'mttr'],
	['OEE', 'oee'],
	['TEEP', 'teep'],
	['throughput', 'line_speed'],
	['extruder capacity', 'max_output'],
	['changeover', 'setup_time'],
	['set-up time', 'setup_time'],
	['batch size', 'lot_size'],
	['yield', 'scrap_share'],
	['waste', 'running_scrap'],
	['scrap rate', 'running_scrap'],
	['overweight', 'giveaway'],
	['wall thickness', 'wall_minimum'],
	['pipe size', 'outside_diameter'],
	['weight per metre', 'mass_per_metre'],
	['depreciation', 'option_depreciation'],
	['payback', 'payback'],
	['capex', 'outlay_amount'],
	['cost of capital', 'wacc'],
	['freight', 'freight'],
	['transport cost', 'freight'],
	['discount', 'further_discount'],
	['rebate', 'customer_rebate'],
	['price list', 'list_price'],
	['selling price', 'price'],
	['gross margin', 'contribution_per_metre'],
	['manufacturing cost', 'cost_per_metre'],
	['fixed costs', 'overhead_amount'],
	['forecast', 'item_demand'],
	['inventory', 'stock'],
	['lead time', 'delivery_time'],
	['turnover', 'revenue_today'],
	['profit', 'ebit'],
	['utilisation', 'highest_load'],
	['carbon footprint', 'co2_per_metre'],
	['packing cost', 'packaging_per_coil']
];

it.each(MEANT)('"%s" finds what is meant among the first three', (typed, quantity) => {
	expect(found(typed).slice(0, 3)).toContain(quantity);
});

it('says by which other name it was found, where label and name do not say it', () => {
	const [first] = findQuantities(layout, 'gross margin');
	expect(first).toMatchObject({ also: 'gross margin', sheet: 'Price' });
	expect(findQuantities(layout, 'resin price')[0]?.also).toBeUndefined();
	expect(findQuantities(layout, 'price of granulate')[0]).toMatchObject({
		also: 'granulate price'
	});
});

it('what a quantity is called comes before what else it is called', () => {
	// "Headcount" is a label; "headcount in all" another name of what is labelled otherwise.
	expect(found('headcount')[0]).toBe('heads');
});
