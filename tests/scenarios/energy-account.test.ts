/**
 * Energy by use, restarts, meter readings and CO2 of the shipped workbook, worked out again by hand from inputs,
 * which are invented. That uses, bands and cost cards agree is held by the workbook's own checks.
 */
import { describe, expect, it } from 'vitest';
import { enter, openShipped, read } from '../reference/shipped';
import { WorkbookFigures } from './workbook-figures';

const figures = new WorkbookFigures('scenarios/marram-coil-works.json');
const of = (name: string, ...at: string[]) => figures.number('base', name, ...at);
const products = ['PX10B', 'PX15P', 'PX15B', 'PX22B', 'PX28B'];

describe('energy by use', () => {
	it('heats each kilogram that is cross-linked, and each line for each start', () => {
		const crosslinked = products.reduce(
			(sum, product) => sum + of('good_metres', product) * of('mass_per_metre', product),
			0
		);
		expect(of('energy_of_use', 'crosslinking')).toBeCloseTo(crosslinked * 0.28, 3);
		expect(of('energy_of_use', 'heat_ups')).toBeCloseTo(7 * 50 * 90, 6);
	});

	it('shows the heat-ups as a part of the base load and adds nothing', () => {
		const base = of('energy_of_use', 'heat_ups') + of('energy_of_use', 'site_rest');
		expect(base).toBeCloseTo(112 * 8760, 6);
	});
});

describe('the Monday restart', () => {
	it('of four lines stays below the peak, of all lines would not', () => {
		expect(of('restart_peak')).toBeCloseTo(112 + 4 * 90 + 150, 9);
		expect(of('restart_peak_of_all')).toBeCloseTo(112 + 7 * 90 + 150, 9);
		const over = 112 + 7 * 90 + 150 - of('peak_power');
		expect(of('cost_of_starting_together')).toBeCloseTo(over * 9.2 * 12, 6);
	});

	it('of all lines at once brings the caution', () => {
		const model = openShipped('marram');
		expect(read(model, 'restart_sets_peak')).toBe(0);
		enter(model, ['lines_heated_together', [], 7]);
		expect(read(model, 'restart_sets_peak')).toBe(1);
		expect(read(model, 'worst_quarter_hour')).toBeCloseTo(892, 9);
	});
});

describe('meter readings', () => {
	it('give a base load and a slope near the entered ones, beside which they stand', () => {
		expect(of('fitted_slope') - of('entered_slope')).toBeCloseTo(of('slope_difference'), 12);
		expect(Math.abs(of('slope_difference') / of('entered_slope'))).toBeLessThan(0.05);
		expect(Math.abs(of('base_power_difference') / of('base_power'))).toBeLessThan(0.05);
		expect(of('fit_quality')).toBeGreaterThan(98);
	});

	it('that grow by a constant move the base load alone', () => {
		const model = openShipped('marram');
		const [slope, base] = [read(model, 'fitted_slope'), read(model, 'fitted_base')];
		const months = model.layout.sets.get('month')!.members.map(({ id }) => id);
		enter(
			model,
			...months.map((id): [string, string[], number] => [
				'meter_energy',
				[id],
				read(model, 'meter_energy', id) + 7300
			])
		);
		expect(read(model, 'fitted_slope')).toBeCloseTo(slope, 9);
		expect(read(model, 'fitted_base')).toBeCloseTo(base + 7300, 4);
		expect(read(model, 'ebit')).toBe(of('ebit'));
	});
});

describe('CO2 of a metre', () => {
	it('is material with its scrap and electricity, by the grid or by the contract', () => {
		const electricity = of('electricity_per_metre', 'PX15P');
		// plain pipe: PEX-b alone, at 1.95 kg of CO2 a kilogram
		const material = of('extruded_per_metre', 'PX15P') * 1950;
		const at = (basis: string) => of('co2_per_metre', 'PX15P', basis);
		expect(at('location')).toBeCloseTo(material + electricity * 380, 9);
		expect(at('market')).toBeCloseTo(material + electricity * 120, 9);
	});
});
