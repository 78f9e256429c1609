/**
 * The Quote sheet of the shipped workbook: each figure worked out again from others in plain arithmetic.
 * Prices, terms and hour values in it are invented.
 */
import { describe, expect, it } from 'vitest';
import { enter, openShipped, read } from '../reference/shipped';
import { WorkbookFigures } from './workbook-figures';

const FILE = 'scenarios/marram-coil-works.json';
const figures = new WorkbookFigures(FILE);
const of = (name: string, ...at: string[]) => figures.number('base', name, ...at);

/** An order like the standard lot: its quantity, its coil, on the line it takes. */
const standard = new WorkbookFigures(FILE, [
	{ quantity: 'quote_quantity', at: [], value: of('lot_size', 'PX15B') }
]);

describe('the order as shipped', () => {
	it('goes to the line where metre and hours together cost least', () => {
		const cost = ['L1', 'L2', 'L3'].map((line) => of('quote_cost_on_line', line));
		const least = ['L1', 'L2', 'L3'][cost.indexOf(Math.min(...cost))];
		expect(figures.member('base', 'quote_line')).toBe(least);
	});

	it('has a floor of metre, packaging, set-up spread over it, and what the hours would earn', () => {
		const line = figures.member('base', 'quote_line')!;
		const perLot = of('setup_time', 'PX15B');
		const hours = of('hours_per_metre', 'PX15B', line) / 1000 - perLot / of('lot_size', 'PX15B');
		// What the plan leaves free of the hours costs nothing: it lies a hair inside of what the line has.
		const taken = 1 - of('line_hours_free', line, 'Oct') / of('quote_hours');
		const worth = of('hour_value', 'Oct', line) * taken;
		const rewinding =
			(of('rewind_need', 'PX15B') / 1000) * of('hour_value_of_stage', 'Oct', 'rewind');
		const setupMoney = of('quote_setup_cost');
		const metre = of('variable_cost_on_line', 'PX15B', line) - setupMoney / of('lot_size', 'PX15B');
		const once = (setupMoney + perLot * worth) / 60_000;
		const floor = metre + of('warranty_provision', 'PX15B') + hours * worth + rewinding + once;
		expect(of('quote_floor')).toBeCloseTo(floor, 12);
	});

	it('costs at a standard lot what the line’s own metre costs', () => {
		const line = standard.member('base', 'quote_line')!;
		const sum = ['quote_variable', 'quote_packaging', 'quote_setup'].reduce(
			(so, name) => so + standard.number('base', name),
			0
		);
		expect(sum).toBeCloseTo(of('variable_cost_on_line', 'PX15B', line), 12);
		const hours = standard.number('base', 'quote_hours') / of('lot_size', 'PX15B');
		expect(hours).toBeCloseTo(of('hours_per_metre', 'PX15B', line) / 1000, 12);
		expect(standard.number('base', 'quote_rewind_hours')).toBeCloseTo(
			of('rewind_need', 'PX15B'),
			12
		);
	});

	it('keeps net-net of the invoice what rebate, commission, waiting and freight leave', () => {
		const invoice = of('list_price', 'PX15B') * (1 - 0.08);
		const waiting = (invoice * 58 * 0.09) / 365;
		// 34 pallets near the works: a full load of 33 at 14 EUR, and a single one at 58 EUR.
		const freight = (33 * 14 + 58) / 60_000;
		expect(of('quote_net_net')).toBeCloseTo(invoice * (1 - 0.03 - 0.025) - waiting - freight, 12);
	});

	it('falls from the list price to what is left in steps that add up', () => {
		const steps = figures.row('base', 'quote_waterfall');
		const levels = figures.row('base', 'waterfall_level');
		expect(levels.at(-1)).toBeCloseTo(of('quote_net_net') - of('quote_floor'), 12);
		// A total stands for itself; every other step moves the level by its own size.
		const totals = new Set([0, 3, 9, 15]);
		steps.forEach((step, i) => {
			if (totals.has(i)) expect(levels[i]).toBeCloseTo(step, 12);
			else expect(levels[i]! - levels[i - 1]!).toBeCloseTo(step, 12);
		});
	});

	it('moves by the clause as its shares and indices say', () => {
		const factor = 0.25 + 0.5 * 1.034 + 0.17 * 1.012 + 0.08 * 0.985;
		expect(of('clause_factor')).toBeCloseTo(100 * factor, 10);
		expect(of('price_by_clause')).toBeCloseTo(of('quote_invoice') * factor, 12);
	});
});

describe('the ladders', () => {
	it('meet the quote at its own size and length', () => {
		expect(of('ladder_floor', '60 km')).toBeCloseTo(of('quote_floor'), 12);
		expect(of('ladder_offered', '60 km')).toBeCloseTo(of('quote_net_net'), 12);
		expect(of('ladder_target', '60 km')).toBeCloseTo(of('quote_target'), 12);
		expect(of('coil_floor', '50 m')).toBeCloseTo(of('quote_floor'), 12);
		expect(of('coil_target', '50 m')).toBeCloseTo(of('quote_target'), 12);
	});

	it('say at another size and length what a quote of that size and length says', () => {
		const model = openShipped('marram');
		const small = read(model, 'ladder_floor', '10 km');
		const offered = read(model, 'ladder_offered', '10 km');
		const target = read(model, 'ladder_target', '10 km');
		enter(model, ['quote_quantity', [], 10_000]);
		expect(read(model, 'quote_floor')).toBeCloseTo(small, 12);
		expect(read(model, 'quote_net_net')).toBeCloseTo(offered, 12);
		expect(read(model, 'quote_target')).toBeCloseTo(target, 12);
		const short = read(model, 'coil_floor', '25 m');
		enter(model, ['quote_coil_length', [], 25]);
		expect(read(model, 'quote_floor')).toBeCloseTo(short, 12);
		expect(read(model, 'extra_wanted', 'short_coils')).toBe(1);
	});

	it('spread the set-up: twice the order, half of it on each metre', () => {
		const above = (step: string) => of('ladder_floor', step) - of('ladder_floor', '240 km');
		const line = figures.member('base', 'quote_line')!;
		const worth = of('hour_value', 'Oct', line);
		// As are the hours that the plan leaves free: the fewer metres, the more of each.
		const hours = of('quote_setup_hours') - of('line_hours_free', line, 'Oct');
		const once = of('quote_setup_of_order') + hours * worth;
		expect(above('120 km')).toBeCloseTo(once / 240_000, 12);
	});
});

describe('terms and choices', () => {
	it('leave the same over the floor on whichever side freight counts', () => {
		const model = openShipped('marram');
		const left = read(model, 'quote_over_floor');
		const floor = read(model, 'quote_floor');
		enter(model, ['quote_freight_rule', [], 'in_floor']);
		expect(read(model, 'quote_over_floor')).toBeCloseTo(left, 12);
		expect(read(model, 'quote_floor')).toBeCloseTo(floor + read(model, 'quote_freight'), 12);
		enter(model, ['quote_freight_rule', [], 'by_customer']);
		expect(read(model, 'quote_over_floor')).toBeGreaterThan(left + 0.005);
	});

	it('charge an order that joins a campaign the set-up it adds', () => {
		const model = openShipped('marram');
		const whole = read(model, 'quote_setup_of_order');
		enter(model, ['quote_run_rule', [], 'joins']);
		expect(read(model, 'quote_setup_of_order')).toBeCloseTo(0.25 * whole, 12);
		expect(read(model, 'quote_setup_hours')).toBeCloseTo(0.25 * 2.4, 12);
	});

	it('cost nothing for hours in a month with free ones', () => {
		const model = openShipped('marram');
		enter(model, ['quote_month', [], 'Feb']);
		expect(read(model, 'quote_opportunity')).toBe(0);
		expect(read(model, 'opportunity_by_month', 'Oct')).toBeGreaterThan(0.05);
	});

	it('convert an order in pounds by its rate, and take the cost of cover off', () => {
		const model = openShipped('marram');
		enter(model, ['quote_customer', [], 'Ouseburn']);
		const invoice = read(model, 'quote_invoice');
		expect(read(model, 'price_in_currency')).toBeCloseTo(invoice / 1.16, 12);
		expect(read(model, 'quote_waterfall', 'step_currency')).toBeCloseTo(-0.006 * invoice, 12);
	});

	it('warn under the least margin, and under the floor', () => {
		const model = openShipped('marram');
		const both = () => [read(model, 'quote_below_margin'), read(model, 'quote_below_floor')];
		expect(both()).toEqual([0, 0]);
		// 5.5 % less is under what the hours would earn, and over full cost by more than the least margin still
		enter(model, ['further_discount', ['Skerrow'], 5.5]);
		expect(both()).toEqual([0, 1]);
		enter(model, ['further_discount', ['Skerrow'], 20]);
		expect(both()).toEqual([1, 1]);
		// A discount with the wrong sign: what is left lies over the list price.
		expect(read(model, 'quote_between')).toBe(1);
		enter(model, ['further_discount', ['Skerrow'], -30]);
		expect(read(model, 'quote_between')).toBe(0);
	});

	it('caution a larger step of the price list that costs more a metre than the one below it', () => {
		const model = openShipped('marram');
		const cautioned = () =>
			model
				.checks('base')
				.cautions.flatMap(({ place }) =>
					place.quantity === 'larger_step_dearer' ? place.members : []
				);
		expect(cautioned()).toEqual([]);
		enter(model, ['discount_of_step', ['120 km'], 7.5]);
		expect(cautioned()).toEqual(['120 km']);
	});

	it('take no quantity that no plant could make, and caution one that is seldom asked for', () => {
		const model = openShipped('marram');
		const unusual = () =>
			model.checks('base').cautions.filter(({ place }) => place.quantity === 'quote_quantity');
		for (const [metres, cautions] of [
			[5_000, 0],
			[400_000, 0],
			[60, 1],
			[3_000_000, 1]
		] as const) {
			enter(model, ['quote_quantity', [], metres]);
			expect(model.faults('base')).toEqual([]);
			expect(unusual()).toHaveLength(cautions);
		}
		enter(model, ['quote_quantity', [], 1e99]);
		expect(model.faults('base').map(({ quantity }) => quantity)).toContain('quote_quantity');
	});

	it('price each extra at its cost, the target margin and selling, and charge those wanted', () => {
		const model = openShipped('marram');
		const kept = 1 - 0.08 - of('selling_rate') / 100;
		const invoice = read(model, 'quote_invoice');
		// 240 EUR of print over 60,000 m, at a margin of 8 % after selling and administration
		expect(read(model, 'extra_price', 'own_print')).toBeCloseTo(240 / 60_000 / kept, 12);
		enter(model, ['extra_wanted', ['own_print'], true]);
		expect(read(model, 'quote_invoice')).toBeCloseTo(invoice + 240 / 60_000 / kept, 12);
	});

	it('buy where bought pipe costs less than making it with its hours', () => {
		const model = openShipped('marram');
		const making = read(model, 'make_cost');
		enter(model, ['buy_price', ['PX15B'], making + 0.001]);
		expect(read(model, 'buy_instead')).toBe(0);
		enter(model, ['buy_price', ['PX15B'], making - 0.001]);
		expect(read(model, 'buy_instead')).toBe(1);
		// In a month with free hours making costs less.
		enter(model, ['quote_month', [], 'Feb']);
		expect(read(model, 'buy_instead')).toBe(0);
	});
});

describe('the full cost of an order', () => {
	it.each(['PX28B', 'PB22B', 'RT15B'])(
		'of a standard lot of %s, in its coil, is that of its cost card',
		(product) => {
			const model = openShipped('marram');
			const lot = read(model, 'lot_size', product);
			enter(
				model,
				...([
					['quote_product', [], product],
					['quote_quantity', [], lot],
					['quote_coil_length', [], read(model, 'coil_length', product)],
					['quote_freight_rule', [], 'by_customer']
				] as const)
			);
			const card = read(model, 'cost_per_metre', product);
			const warranty = read(model, 'warranty_provision', product);
			expect(read(model, 'quote_works_cost')).toBeCloseTo(card + warranty, 12);
			const selling = (read(model, 'selling_rate') / 100) * read(model, 'quote_net_net');
			expect(read(model, 'quote_full_cost')).toBeCloseTo(card + warranty + selling, 12);
		}
	);

	it('leaves the target margin at the target price, after selling and administration', () => {
		const price = of('quote_target');
		const selling = (of('selling_rate') / 100) * price;
		expect((price - of('quote_works_cost') - selling) / price).toBeCloseTo(0.08, 12);
	});

	it('comes to the target again from its invoice price, down all terms', () => {
		const invoice = of('target_on_invoice');
		const waiting = (invoice * 58 * 0.09) / 365;
		const net = invoice * (1 - 0.03 - 0.025) - waiting - of('quote_freight');
		expect(net).toBeCloseTo(of('quote_target'), 12);
		expect(of('mark_per_coil', 'mark_target')).toBeCloseTo(50 * invoice, 12);
		expect(of('mark_per_100_m', 'mark_target')).toBeCloseTo(100 * invoice, 12);
		expect(of('mark_per_pallet', 'mark_floor')).toBeCloseTo(1800 * of('floor_on_invoice'), 9);
	});
});

describe('whole coils and pallets', () => {
	it('are counted, and an order is cautioned where whole coils differ from it by more than a delivery may', () => {
		// 1,200 coils of 50 m, 36 to a pallet: 33 full ones and 12 coils.
		expect(of('quote_coils')).toBe(1200);
		expect(of('quote_pallets')).toBe(34);
		expect(of('quote_last_pallet')).toBe(12);
		expect(of('quote_not_whole')).toBe(0);
		const model = openShipped('marram');
		enter(model, ['quote_quantity', [], 12_345], ['quote_coil_length', [], 33]);
		expect(read(model, 'quote_coils')).toBe(375);
		expect(read(model, 'quote_whole_metres')).toBe(12_375);
		// 30 m on 12 km are what a delivery may differ by; 20 m on 1,234 are not.
		expect(read(model, 'quote_not_whole')).toBe(0);
		enter(model, ['quote_quantity', [], 1234]);
		expect(read(model, 'quote_whole_metres')).toBe(1254);
		expect(read(model, 'quote_not_whole')).toBe(1);
	});
});

describe('the smallest order that covers its floor', () => {
	it('has to pay for the print as well, which is paid once', () => {
		const model = openShipped('marram');
		// At a fixed price by the metre: at that quantity nothing is left over the floor.
		const least = read(model, 'least_quantity');
		enter(model, ['extra_wanted', ['own_print'], true]);
		const withPrint = read(model, 'least_quantity');
		expect(withPrint).toBeGreaterThan(least);
		const once =
			read(model, 'quote_setup_of_order') +
			240 +
			read(model, 'quote_setup_hours') * read(model, 'quote_hour_value');
		const each = read(model, 'quote_over_floor') + once / 60_000;
		expect(withPrint * each).toBeCloseTo(once, 6);
	});
});

describe('discounts', () => {
	it('are taken one after the other, or added up where that is chosen', () => {
		const model = openShipped('marram');
		enter(model, ['quote_customer', [], 'Tidewell'], ['quote_quantity', [], 120_000]);
		const list = read(model, 'list_price', 'PX15B');
		// 14 % by size, then 2 % of the rest: 15.72 %.
		expect(read(model, 'quote_discount')).toBeCloseTo(12.78, 10);
		expect(read(model, 'quote_invoice')).toBeCloseTo(list * 0.89 * 0.98, 12);
		expect(read(model, 'ladder_offered', '120 km')).toBeCloseTo(read(model, 'quote_net_net'), 12);
		enter(model, ['discount_rule', [], 'added']);
		expect(read(model, 'quote_discount')).toBeCloseTo(13, 10);
		expect(read(model, 'quote_invoice')).toBeCloseTo(list * 0.87, 12);
		expect(read(model, 'ladder_offered', '120 km')).toBeCloseTo(read(model, 'quote_net_net'), 12);
	});
});

describe('freight', () => {
	it.each([
		// A small order pays for a single pallet, whatever it weighs.
		[500, 'Skerrow', 58],
		// 5 pallets at 58 EUR are dearer than 6 paid at 36 EUR; so are 14 at 36 EUR than half a load at 22.
		[9_000, 'Skerrow', 6 * 36],
		[25_000, 'Skerrow', 16 * 22],
		[25_000, 'Ouseburn', 16 * 66],
		// Two full loads and one pallet more.
		[120_000, 'Tidewell', 66 * 21 + 82]
	])(
		'of %i m to %s goes by pallet and zone, at the step that comes cheapest',
		(metres, customer, eur) => {
			const model = openShipped('marram');
			enter(model, ['quote_quantity', [], metres], ['quote_customer', [], customer]);
			expect(read(model, 'quote_freight_of_order')).toBeCloseTo(eur, 9);
			expect(read(model, 'quote_freight')).toBeCloseTo(eur / metres, 12);
		}
	);

	it('stands in the ladder as in a quote of that size, in price and in floor', () => {
		const model = openShipped('marram');
		enter(model, ['quote_freight_rule', [], 'in_floor']);
		const at = (name: string) => read(model, name, '5 km');
		const ladder = [at('ladder_floor'), at('ladder_target'), at('ladder_offered')];
		enter(model, ['quote_quantity', [], 5_000]);
		const quoted = ['quote_floor', 'quote_target', 'quote_net_net'].map((one) => read(model, one));
		ladder.forEach((figure, i) => expect(figure).toBeCloseTo(quoted[i]!, 12));
	});
});
