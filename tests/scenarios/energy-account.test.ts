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

describe('starts', () => {
	const onAllLines = (pattern: string) => {
		const model = openShipped('marram');
		const lines = ['L1', 'L2', 'L3', 'L4', 'L5', 'L6', 'L7'];
		enter(model, ...lines.map((line) => ['pattern_of_line', [line], pattern] as const));
		return model;
	};

	it('every morning draw more than the base load was measured with, none at all less', () => {
		const tariff = of('all_hours_tariff');
		const two = onAllLines('2x8x5');
		// 7 × 250 starts of 90 kWh, of which 350 are in the base load of 112 kW
		const more = (7 * 250 - 350) * 90;
		expect(read(two, 'base_load_energy')).toBeCloseTo(112 * 8760 + more, 6);
		expect(read(two, 'base_energy_cost') - of('base_energy_cost')).toBeCloseTo(more * tariff, 6);
		const seven = onAllLines('7x24');
		expect(read(seven, 'base_load_energy')).toBeCloseTo(112 * 8760 - 350 * 90, 6);
		expect(read(seven, 'restart_peak')).toBe(0);
	});

	it('are part of what a pattern costs', () => {
		const energy = (pattern: string) => of('start_energy_of_pattern', pattern);
		expect(energy('2x8x5')).toBeCloseTo(7 * 250 * 90 * of('all_hours_tariff'), 6);
		expect(energy('7x24')).toBe(0);
		const metres = 1e6 * of('good_metres_of_pattern', '5x24');
		const cost = ['people_cost_of_pattern', 'start_scrap_of_pattern', 'start_energy_of_pattern']
			.map((part) => of(part, '5x24'))
			.reduce((sum, part) => sum + part, 0);
		expect(of('conversion_cost_of_pattern', '5x24')).toBeCloseTo(
			cost / metres + of('energy_of_a_metre') * of('average_tariff', '5x24'),
			9
		);
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
		// and it is what the demand charge is worked out from
		expect(read(model, 'demand_cost')).toBeCloseTo(892 * 9.2 * 12, 6);
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
