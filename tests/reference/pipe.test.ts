/**
 * Wall and mass of the shipped workbooks' own formulas against published tables and hand sums; every case
 * carries its source and standing in published/pipe.json and published/oee-and-set-point.json.
 */
import { describe, expect, it } from 'vitest';
import { apply, enter, openShipped, read } from './shipped';
import setPoints from './published/oee-and-set-point.json';
import pipes from './published/pipe.json';

interface Figure {
	readonly value: number | number[];
	readonly tolerance?: number;
}
interface Case {
	readonly id: string;
	readonly topic: string;
	readonly basis: string;
	readonly inputs: Readonly<Record<string, Figure>>;
	readonly expected: Readonly<Record<string, Figure>>;
}
const pipeCases = pipes as unknown as readonly Case[];
const wallCases = setPoints as unknown as readonly Case[];
const number = (figure: Figure | undefined) => figure!.value as number;
const list = (figure: Figure | undefined) => figure!.value as number[];

/** The small shop with a pipe of this mean wall: no eccentricity, no spread. */
function shopWith(diameter: number, wall: number, density: number) {
	const model = openShipped('shop');
	enter(
		model,
		['outside_diameter', ['R16'], diameter],
		['wall_minimum', ['R16'], wall],
		['eccentricity', [], 0],
		['spread_of_mean_wall', [], 0],
		['density', [], density]
	);
	return model;
}

describe('mass_per_metre', () => {
	it.each(pipeCases.filter(({ topic }) => topic === 'Mass per metre, solid-wall PE'))(
		'$id of a published weight table ($basis)',
		({ inputs, expected }) => {
			const model = shopWith(
				number(inputs['outside_diameter']),
				number(inputs['mean_wall']),
				number(inputs['density'])
			);
			const mass = expected['mass_per_length']!;
			expect(Math.abs(read(model, 'mass_per_metre', 'R16') - number(mass))).toBeLessThanOrEqual(
				mass.tolerance!
			);
		}
	);

	it.each(pipeCases.filter(({ inputs }) => 'wall' in inputs))(
		'$id of plumbing sizes ($basis)',
		({ inputs, expected }) => {
			const model = shopWith(
				number(inputs['outside_diameter']),
				number(inputs['wall']),
				number(inputs['density'])
			);
			const mass = expected['mass_per_length']!;
			expect(Math.abs(read(model, 'mass_per_metre', 'R16') - number(mass))).toBeLessThanOrEqual(
				mass.tolerance!
			);
		}
	);

	it('of a pipe with adhesive and barrier is the sum of its rings', () => {
		const { inputs, expected } = pipeCases.find(
			({ id }) => id === 'mass-layers-16x2p0-evoh-outside'
		)!;
		const [inner, tie, barrier] = list(inputs['layers_inside_to_outside_thickness']);
		const [baseDensity, tieDensity, barrierDensity] = list(inputs['layer_density']);
		const model = openShipped('marram');
		// A plain product gets adhesive and barrier outside: its cover becomes the barrier.
		for (const [layer, exists] of [
			['tie_in', true],
			['barrier', true],
			['cover', false]
		] as const)
			apply(model, {
				kind: 'set_relation_pair',
				relation: 'has_layer',
				pair: ['PX15P', layer],
				exists
			});
		enter(
			model,
			['layer_material', ['PX15P', 'tie_in'], 'TIE'],
			['layer_material', ['PX15P', 'barrier'], 'EVOH'],
			['layer_minimum', ['PX15P', 'tie_in'], tie!],
			['layer_minimum', ['PX15P', 'barrier'], barrier!],
			['layer_spread', ['PX15P', 'tie_in'], 0],
			['layer_spread', ['PX15P', 'barrier'], 0],
			['outside_diameter', ['PX15P'], number(inputs['outside_diameter'])],
			['wall_minimum', ['PX15P'], inner! + tie! + barrier!],
			['eccentricity', ['PX15P', 'today'], 0],
			['k_factor', ['PX15P'], 0],
			['density', ['PEXB'], baseDensity!],
			['density', ['TIE'], tieDensity!],
			['density', ['EVOH'], barrierDensity!]
		);
		// 1 kg/m = 1000 g/m
		const layers = { inner: 'mass_base', tie_in: 'mass_adhesive', barrier: 'mass_evoh' };
		for (const [layer, name] of Object.entries(layers)) {
			const mass = read(model, 'layer_mass', 'PX15P', layer) / 1000;
			expect(Math.abs(mass - number(expected[name])), layer).toBeLessThanOrEqual(1e-6);
		}
		const total = read(model, 'mass_per_metre', 'PX15P');
		expect(Math.abs(total - number(expected['mass_total']))).toBeLessThanOrEqual(1e-6);
	});
});

describe('wall_set_point', () => {
	it.each(wallCases.filter(({ inputs }) => 'target_cpk_lower' in inputs))(
		'$id: three times the capability index in spreads above the minimum ($basis)',
		({ inputs, expected }) => {
			const model = openShipped('marram');
			enter(
				model,
				['wall_minimum', ['PX15P'], number(inputs['minimum_wall'])],
				['eccentricity', ['PX15P', 'today'], 0],
				['spread_of_mean_wall', ['PX15P', 'today'], number(inputs['sigma'])],
				['gauge_uncertainty', ['PX15P', 'today'], 0],
				['k_factor', ['PX15P'], 3 * number(inputs['target_cpk_lower'])],
				['outside_diameter', ['PX15P'], number(inputs['outside_diameter'])],
				['density', ['PEXB'], number(inputs['density'])]
			);
			expect(read(model, 'wall_set_point', 'PX15P')).toBeCloseTo(number(expected['mean_wall']), 6);
			expect(read(model, 'mass_per_metre', 'PX15P')).toBeCloseTo(
				number(expected['mass_at_mean']),
				5
			);
			// a share is shown in %
			expect(read(model, 'giveaway', 'PX15P') / 100).toBeCloseTo(
				number(expected['overweight_against_minimum']),
				5
			);
		}
	);
});
