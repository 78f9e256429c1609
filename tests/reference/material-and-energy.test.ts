/**
 * Densities, base load and the line through the meter readings of the shipped workbook against the outside. Each
 * case carries its source; typical values are limits of the plausible, with their tolerance, and no more.
 */
import { describe, expect, it } from 'vitest';
import shipped from '../../scenarios/marram-coil-works.json';
import { computed, type Shop } from '../engine/plan-builder';
import { openShipped, read } from './shipped';

const model = openShipped('marram');

describe('the density of a material is in the range of its kind', () => {
	it.each([
		// Polybutene Piping Systems Association, properties (http://www.pbpsa.com/pb-1-properties): 925 ± 15
		['PB1', 910, 940],
		// PE-X pipe property sheet (maker not named): 938 ± 10
		['PEXB', 928, 948],
		// PE-RT resin data sheets, from memory: type I 933, type II 947, each ± 5
		['PERT', 928, 952],
		// EVOH producers' data sheets, from memory: 1140 to 1190 for 44 to 32 mol-% ethylene, ± 20
		['EVOH', 1120, 1210]
	])('%s', (material, least, most) => {
		const density = read(model, 'density', material);
		expect(density).toBeGreaterThanOrEqual(least);
		expect(density).toBeLessThanOrEqual(most);
	});
});

describe('energy', () => {
	it('of the base load is 10 to 40 % of all', () => {
		// The range as found in two trade sources: http://www.ptonline.com/articles/whats-your-process-energy-fingerprint
		// (10 to 40 %) and http://www.bpf.co.uk/Plastipedia/Energy/Base_and_variable_loads.aspx (20 to 40 %).
		const share = read(model, 'base_load_share');
		expect(share).toBeGreaterThan(10);
		expect(share).toBeLessThan(40);
	});

	it('of drives and barrels is more than melting the crystals of polyethylene takes', () => {
		// Heat of fusion of perfect crystals 307 J/g: Atkinson and Richardson, Trans. Faraday Soc. 65 (1969) 1764
		// (https://doi.org/10.1039/TF9696501764); half of it is crystal (common practice, no source).
		const melting = (307 * 0.5) / 3600; // kWh/kg
		const spent =
			read(model, 'process_energy_part', 'drives') + read(model, 'process_energy_part', 'heat');
		expect(spent).toBeGreaterThan(melting);
	});
});

/** The workbook's own formulas for the line, with other months and readings. */
function fitted(name: 'fitted_slope' | 'fitted_base', mass: number[], energy: number[]) {
	const months = mass.map((_, i) => `m${i}`);
	const values = (list: number[]) => Object.fromEntries(list.map((value, i) => [`m${i}`, value]));
	const quantities = shipped.sheets.flatMap((sheet) => sheet.quantities as Shipped[]);
	const own = quantities.find((quantity) => quantity.name === name)!;
	const shop: Shop = {
		sets: { month: months },
		quantities: {
			meter_mass: { unit: 'kg', per: ['month'], value: values(mass) },
			meter_energy: { unit: 'kWh', per: ['month'], value: values(energy) },
			[name]: { unit: own.unit!, formula: own.formula as string }
		}
	};
	return computed(shop, name) as number;
}

interface Shipped {
	readonly name: string;
	readonly unit?: string;
	readonly formula?: unknown;
}

describe('the line through the meter readings', () => {
	it('meets the certified values of NIST StRD Norris', () => {
		// https://www.itl.nist.gov/div898/strd/lls/data/LINKS/DATA/Norris.dat, a work of the US Government
		expect(fitted('fitted_slope', NORRIS_X, NORRIS_Y)).toBeCloseTo(1.00211681802045, 11);
		expect(fitted('fitted_base', NORRIS_X, NORRIS_Y)).toBeCloseTo(-0.262323073774029, 9);
	});

	it('finds 0.75 kWh/kg over 45,000 kWh a month', () => {
		// Recomputed; method after http://www.bpf.co.uk/Plastipedia/Energy/Base_and_variable_loads.aspx
		const mass = [100_000, 140_000, 180_000, 120_000];
		const energy = [120_000, 150_000, 180_000, 135_000];
		expect(fitted('fitted_slope', mass, energy)).toBeCloseTo(0.75, 12);
		expect(fitted('fitted_base', mass, energy)).toBeCloseTo(45_000, 6);
	});
});

const NORRIS_X = [
	0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777, 558.2, 0.4, 0.6, 775.5, 666.9,
	338, 447.5, 11.6, 556, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999, 779, 11.1,
	118.3, 229.2, 669.1, 448.9, 0.5
];
const NORRIS_Y = [
	0.1, 338.8, 118.1, 888, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8,
	339.3, 448.9, 10.8, 557.7, 228.3, 998, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888, 998.5, 778.9,
	10.2, 117.6, 228.9, 668.4, 449.2, 0.2
];
