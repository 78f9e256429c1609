/**
 * Variances of the shipped month-end against textbook cases, entered into its own formulas.
 *
 * Material and labour: Horngren, Cost Accounting, the Webb Company (from memory; recomputed, the variances add
 * up). Volume, mix and price: definitions as in the workbook (volume at the old mean, mix at old margins, price
 * at new quantities), figures recomputed. Others exist; a comparison must name its reference quantities.
 */
import { describe, expect, it } from 'vitest';
import shipped from '../../scenarios/marram-coil-works.json';
import { enter, makeInYear, openAgainstBase, read, type Entry } from './shipped';

/** One of the closed months. */
const MONTH = '2027-03';

describe('the Webb Company, material (Horngren, from memory)', () => {
	it('buys 22,200 at 28 for 30 and uses them for 20,000: 44,400 favourable, 66,000 adverse', () => {
		const model = openAgainstBase();
		enter(
			model,
			['recipe_share', ['PEXB', 'catalyst'], 0],
			['recipe_share', ['PEXB', 'colourant'], 0],
			['main_price', ['PEXB'], 30],
			['scrap_value', ['PEXB'], 0],
			['actual_material_price', ['PEXB', MONTH], 28],
			['actual_dosed', ['PX15P', MONTH], 22_200]
		);
		// The standard allows 20,000 for the output: so many metres at mass and scrap of a metre (g/m).
		const perMetre =
			read(model, 'mass_per_metre', 'PX15P') +
			read(model, 'standard_scrap_mass', 'PX15P', 'L1') / 1000;
		enter(
			model,
			['actual_metres', ['PX15P', 'L1', MONTH], 20_000 / perMetre],
			['actual_metres', ['PX15P', 'L2', MONTH], 0]
		);
		const variance = (name: string) => read(model, 'variance_of_product', 'PX15P', name, MONTH);
		expect(variance('by_material_price')).toBeCloseTo(44_400, 6);
		// its efficiency variance is the usage here, in two parts
		expect(variance('by_giveaway') + variance('by_scrap')).toBeCloseTo(-66_000, 6);
	});
});

describe('the Webb Company, labour (Horngren, from memory)', () => {
	it('pays 9,000 h at 22 for 8,000 h at 20: 18,000 and 20,000 adverse', () => {
		const model = openAgainstBase();
		const post = ['shift leader'] as const;
		const [posts, wage] = [read(model, 'posts', ...post), read(model, 'wage', ...post)];
		enter(
			model,
			['posts', post, (posts * 8000) / read(model, 'standard_paid_hours', ...post, MONTH)],
			['wage', post, (wage * 20) / read(model, 'standard_hour_cost', ...post, MONTH)],
			['actual_paid_hours', [...post, MONTH], 9000],
			['actual_hour_cost', [...post, MONTH], 22]
		);
		expect(read(model, 'standard_hour_cost', ...post, MONTH)).toBeCloseTo(20, 9);
		expect(read(model, 'rate_of_post', ...post, MONTH)).toBeCloseTo(-18_000, 6);
		expect(read(model, 'hours_of_post', ...post, MONTH)).toBeCloseTo(-20_000, 5);
	});
});

describe('price, volume and mix (recomputed)', () => {
	it('of 60 and 40 at 5 and 8, sold as 50 and 70 at 5.5 and 7.8: 124, 66 and 11', () => {
		const model = openAgainstBase();
		const products = shipped.sets
			.find(({ name }) => name === 'product')!
			.members.map(({ id }) => id);
		const pairs = shipped.relations.find(({ name }) => name === 'runs')!.pairs;
		const planned = (product: string, line: string) =>
			product === 'PX15P' && line === 'L1' ? 60 : product === 'RT15B' ? 40 : 0;
		const sold = (product: string, line: string) =>
			product === 'PX15P' && line === 'L1' ? 50 : product === 'RT15B' ? 70 : 0;
		enter(
			model,
			...pairs.flatMap(([product, line]) =>
				makeInYear(product!, line!, 12 * planned(product!, line!))
			),
			// what is sold is what the plan sells and what is invoiced; it is made as it is sold
			...pairs
				.filter(([, line]) => line !== 'L8')
				.map(([product, line]): Entry => [
					'actual_metres',
					[product!, line!, MONTH],
					sold(product!, line!)
				]),
			...products.flatMap((product): Entry[] => [
				['sold', [product, 'Mar', 'today'], planned(product, 'L1')],
				['invoiced_metres', [product, MONTH], sold(product, 'L1')]
			])
		);
		// The margins are to be 5 and 8, so prices make up the difference after rebate and commission.
		const kept = 1 - read(model, 'rebate_and_commission') / 100;
		for (const [product, margin] of [
			['PX15P', 5],
			['RT15B', 8]
		] as const) {
			const short = margin - read(model, 'margin_per_metre', product);
			enter(model, ['price', [product], read(model, 'price', product) + short / kept]);
		}
		enter(
			model,
			['actual_net_price', ['PX15P', MONTH], read(model, 'net_net_price', 'PX15P') + 0.5],
			['actual_net_price', ['RT15B', MONTH], read(model, 'net_net_price', 'RT15B') - 0.2]
		);
		const variance = (name: string) => read(model, 'variance_amount', name, MONTH);
		expect(variance('volume')).toBeCloseTo(124, 6);
		expect(variance('mix')).toBeCloseTo(66, 6);
		expect(variance('selling_price')).toBeCloseTo(11, 6);
	});
});
