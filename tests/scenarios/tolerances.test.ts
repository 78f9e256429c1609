/** Diameter, adhesive and barrier of the shipped plant, set above their least by three spreads; what that costs, by hand. */
import { describe, expect, it } from 'vitest';
import { enter, openShipped, read } from '../reference/shipped';

describe('the diameter', () => {
	it('is set three spreads above the least permitted: at nominal, as shipped', () => {
		const model = openShipped('marram');
		for (const [product, nominal] of [
			['PX10B', 10],
			['PX15B', 15],
			['PX22B', 22],
			['PX28B', 28]
		] as const)
			expect(read(model, 'diameter_set_point', product)).toBeCloseTo(nominal, 12);
	});

	it('weighs and costs more with more spread', () => {
		const model = openShipped('marram');
		const mass = read(model, 'mass_per_metre', 'PX15P');
		const wall = read(model, 'wall_set_point', 'PX15P');
		enter(model, ['diameter_spread', ['PX15P'], 0.03]);
		// 15 − 0.06 + 3 × 0.03 mm; a pipe of one resin: π × 0.03 mm × wall × 945 kg/m³ more
		expect(read(model, 'diameter_set_point', 'PX15P')).toBeCloseTo(15.03, 12);
		const more = read(model, 'mass_per_metre', 'PX15P') - mass;
		expect(more).toBeCloseTo(Math.PI * 0.03 * wall * 945e-6, 12);
		// all 0.09 mm above the least, at the price of the resin
		expect(read(model, 'diameter_cost_per_metre', 'PX15P')).toBeCloseTo(
			Math.PI * 0.09 * wall * 945e-6 * read(model, 'material_price', 'PEXB'),
			12
		);
		expect(read(model, 'hot_outside_diameter', 'PX15P')).toBeCloseTo(15.03 * 1.021, 12);
	});

	it('brings a caution where the thickest pipe is beyond its tolerance', () => {
		const model = openShipped('marram');
		// set at nominal, three spreads of 0.02 mm above it, up to 0.10 mm permitted
		expect(read(model, 'diameter_beyond', 'PX15B')).toBe(0);
		// 15 − 0.06 + 6 × 0.03 = 15.12 mm
		enter(model, ['diameter_spread', ['PX15B'], 0.03]);
		expect(read(model, 'diameter_beyond', 'PX15B')).toBe(1);
	});
});

describe('adhesive and barrier', () => {
	it('keep their least thickness at the thinnest point', () => {
		const model = openShipped('marram');
		// 0.045 mm and three spreads of 0.005
		expect(read(model, 'layer_thickness', 'PX15B', 'barrier')).toBeCloseTo(0.06, 12);
		enter(model, ['layer_spread', ['PX15B', 'barrier'], 0.008]);
		expect(read(model, 'layer_thickness', 'PX15B', 'barrier')).toBeCloseTo(0.069, 12);
		// the wall stays: the inner layer gives way
		expect(read(model, 'layers_close', 'PX15B')).toBeCloseTo(0, 12);
	});

	it('cost what their spread asks for, against base resin in its place', () => {
		const model = openShipped('marram');
		const price = (material: string) => read(model, 'material_price', material);
		// 0.015 mm at the middle of the layer, whose outside is 15 − 2 × (0.28 + 0.05) mm
		const area = Math.PI * (15 - 2 * 0.33 - 0.06) * 0.015;
		expect(read(model, 'layer_over_cost_per_metre', 'PX15B', 'barrier')).toBeCloseTo(
			area * 1e-6 * (1180 * price('EVOH') - 945 * price('PEXB')),
			12
		);
		expect(read(model, 'layer_over_cost_in_all')).toBeGreaterThan(100_000);
	});
});
