/**
 * Recipes, silos, walls, scrap and the balance of mass of the shipped workbook: each figure worked out again by
 * hand from inputs, which are invented. That every balance closes to nothing is held by the workbook's own checks.
 */
import { describe, expect, it } from 'vitest';
import { enter, openShipped, read } from '../reference/shipped';
import { WorkbookFigures } from './workbook-figures';

const FILE = 'scenarios/marram-coil-works.json';
const figures = new WorkbookFigures(FILE);
const of = (name: string, ...at: string[]) => figures.number('base', name, ...at);

describe('a recipe', () => {
	it('costs what its components cost by their shares', () => {
		// 95 % at 2.02, 4 % of catalyst at 3.55, 1 % of colour at 2.80
		expect(of('material_price', 'PEXB')).toBeCloseTo(0.95 * 2.02 + 0.04 * 3.55 + 0.01 * 2.8, 12);
		expect(of('masterbatch_price', 'PEXB')).toBeCloseTo(3.4, 12);
	});

	it('holds no more regrind than its cap, and the main component gives way', () => {
		const model = openShipped('marram');
		const before = read(model, 'material_price', 'PB1');
		enter(model, ['regrind_wanted', ['PB1'], 20], ['regrind_cap', ['PB1'], 1]);
		expect(read(model, 'recipe_share', 'PB1', 'regrind')).toBeCloseTo(1, 12);
		// 1.5 % of colour and 0.5 % of stabiliser stay
		expect(read(model, 'main_share', 'PB1')).toBeCloseTo(97, 12);
		// each kilogram saves the resin, less its sale as scrap forgone and the grinding
		const saved = 3.28 - 0.75 - 0.35;
		expect(before - read(model, 'material_price', 'PB1')).toBeCloseTo(0.01 * saved, 12);
		const dosed = read(model, 'material_dosed', 'PB1');
		expect(read(model, 'regrind_credit', 'PB1')).toBeCloseTo(0.01 * dosed * saved, 6);
		expect(model.checks('base').fail).toEqual([]);
	});

	it('that asks for more regrind than there is clean scrap is told so, and credited with no more', () => {
		const model = openShipped('marram');
		enter(model, ['regrind_wanted', ['PERT'], 10]);
		const failing = model.checks('base').fail.map(({ place }) => place.quantity);
		expect(failing).toEqual(['regrind_within_offer']);
		const offered = read(model, 'regrind_on_offer', 'PERT');
		expect(read(model, 'regrind_dosed', 'PERT')).toBeGreaterThan(offered);
		expect(read(model, 'regrind_credit', 'PERT')).toBeCloseTo(offered * (1.92 - 0.38 - 0.35), 6);
	});
});

describe('a silo', () => {
	it('covers its size over the use of a day, and is ordered for at lead time and safety', () => {
		const use = of('material_dosed', 'PEXB') / 242;
		expect(of('days_of_cover', 'PEXB')).toBeCloseTo(120_000 / use, 9);
		expect(of('order_point', 'PEXB')).toBeCloseTo((4 + 2) * use, 6);
		expect(of('deliveries_a_year', 'PEXB')).toBeCloseTo((use * 242) / 24_000, 9);
		expect(of('stock_value', 'PEXB')).toBeCloseTo(
			(2 * use + 12_000) * of('material_price', 'PEXB'),
			6
		);
	});
});

describe('the wall', () => {
	it('is hotter and thicker at the gauge', () => {
		expect(of('hot_wall_set_point', 'PX15B')).toBeCloseTo(
			of('wall_set_point', 'PX15B') * 1.019,
			12
		);
		// 1.021 times as wide hot: 1 − 1/1.021
		expect(of('diameter_shrink', 'PEXB')).toBeCloseTo(100 * (1 - 1 / 1.021), 12);
	});

	it('gives away the ring between set-point and minimum, in base resin', () => {
		const ring = (wall: number) => Math.PI * wall * (15 - wall);
		const set = 1.5 + 0.055 + 3 * Math.hypot(0.03, 0.01);
		// mm² × kg/m³ = mg/m × 1000, so g/m is a thousandth of it
		const grams = ((ring(set) - ring(1.5)) * 945) / 1000;
		expect(of('giveaway_mass', 'PX15B')).toBeCloseTo(grams, 9);
		const kilograms = (grams / 1000) * of('good_metres', 'PX15B');
		expect(of('giveaway_kilograms', 'PX15B')).toBeCloseTo(kilograms, 3);
		expect(of('giveaway_cost', 'PX15B')).toBeCloseTo(kilograms * of('material_price', 'PEXB'), 3);
	});

	it('takes adhesive and barrier on top where they do not count', () => {
		const model = openShipped('marram');
		const before = read(model, 'wall_set_point', 'PX15B');
		enter(model, ['barrier_counts', ['PX15B'], false], ['barrier_counts', ['PX15P'], false]);
		// 0.05 + 0.06 + 0.05 mm
		expect(read(model, 'wall_set_point', 'PX15B')).toBeCloseTo(before + 0.16, 12);
		expect(read(model, 'wall_for_barrier', 'PX15P')).toBe(0);
	});

	it('moved below what the process holds brings the caution, and no other', () => {
		const model = openShipped('marram');
		enter(model, ['set_point_trim', ['PX15B'], -0.01]);
		expect(read(model, 'wall_below_process', 'PX15B')).toBe(1);
		expect(read(model, 'wall_below_process', 'PX15P')).toBe(0);
	});
});

describe('scrap by kind', () => {
	const kind = (name: string, product = 'PB28B') => of('scrap_kilograms', product, name);

	it('is set-up by the lot, and samples, cut-outs, drum ends and trims by the metre', () => {
		const good = of('good_metres', 'PB28B'); // the plan leaves some of its demand open
		const mass = good * of('mass_per_metre', 'PB28B');
		expect(kind('set_up')).toBeCloseTo((good / 16_000) * 115, 6);
		// of a kilogram run, 2.3 % is lost running and 1.4 % of the rest at drums and coils
		expect(kind('cut_outs')).toBeCloseTo((mass * 0.023 * 0.5) / (0.977 * 0.986), 6);
		expect(kind('samples')).toBeCloseTo((mass * 0.023 * 0.15) / (0.977 * 0.986), 6);
		expect(kind('coil_trims')).toBeCloseTo((mass * 0.014 * 0.45) / 0.986, 6);
		expect(kind('start_up')).toBe(0); // no line starts its week on it
		expect(kind('start_up', 'RT15B')).toBe(50 * 38);
	});

	it('comes to 3 to 6 % of what is extruded (common practice, no source)', () => {
		expect(of('scrap_share')).toBeGreaterThan(3);
		expect(of('scrap_share')).toBeLessThan(6);
	});

	it('of cross-linked pipe costs money to remove', () => {
		const kilograms = kind('drum_ends', 'PX15B') + kind('coil_trims', 'PX15B');
		expect(of('crosslinked_scrap_removal', 'PX15B')).toBeCloseTo(kilograms * 0.09, 6);
		expect(of('crosslinked_scrap_removal', 'PB28B')).toBe(0);
	});

	it('leaves short coils out: they are sold, at a discount that moves no cost', () => {
		const model = openShipped('marram');
		const good = read(model, 'good_metres', 'PX15B');
		expect(good).toBeCloseTo(13_400_000, 3);
		const loss = good * 0.006 * 0.364 * 0.3;
		expect(read(model, 'loss_amount', 'PX15B', 'short_coils')).toBeCloseTo(loss, 6);
		const before = ['ebit', 'revenue_today'].map((name) => read(model, name));
		enter(model, ['short_coil_discount', [], 60]);
		expect(read(model, 'loss_amount', 'PX15B', 'short_coils')).toBeCloseTo(2 * loss, 6);
		expect(['ebit', 'revenue_today'].map((name) => read(model, name))).toEqual(before);
	});
});
