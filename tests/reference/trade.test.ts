/**
 * Facts of the trade, each 'common practice, no source', put into the shipped workbooks; what follows from them
 * is worked out by hand beside the check.
 */
import { describe, expect, it } from 'vitest';
import { apply, enter, openShipped, read } from './shipped';

describe('a dosing recipe (common practice, no source)', () => {
	it('of 6.5 % adhesive leaves 93.5 % main material and closes to 100 %', () => {
		const model = openShipped('marram');
		// 6.5 % adhesive: 5.5 % of catalyst beside the 1 % of colour that the recipe holds
		enter(model, ['recipe_share', ['PEXB', 'catalyst'], 5.5]);
		expect(read(model, 'main_share', 'PEXB')).toBeCloseTo(93.5, 12);
		expect(read(model, 'masterbatch_share', 'PEXB')).toBeCloseTo(6.5, 12);
	});

	it('changes the one share when the other changes', () => {
		const model = openShipped('marram');
		enter(model, ['recipe_share', ['PEXB', 'colourant'], 3]);
		expect(read(model, 'main_share', 'PEXB')).toBeCloseTo(93, 12); // 4 % of catalyst, 3 % of colour
	});
});

describe('a 15 mm pipe at a wall of 1.7 mm (common practice, no source)', () => {
	it('weighs 0.0671 kg a metre at 945 kg/m³', () => {
		const model = openShipped('marram');
		enter(
			model,
			['wall_minimum', ['PX15P'], 1.7],
			['eccentricity', ['PX15P', 'today'], 0],
			['k_factor', ['PX15P'], 0]
		);
		// pi x 13.3 mm x 1.7 mm x 945 kg/m3 = 71.031 mm2 x 945e-6
		expect(read(model, 'mass_per_metre', 'PX15P')).toBeCloseTo(0.067124, 5);
	});

	it('is set above its minimum by more than a gauge that reads to 0.01 mm can miss', () => {
		const model = openShipped('marram');
		enter(model, ['gauge_uncertainty', ['PX15P', 'today'], 0.01]);
		const room = read(model, 'wall_set_point', 'PX15P') - read(model, 'wall_minimum', 'PX15P');
		expect(room).toBeGreaterThan(0.01);
	});

	it('measures 15.25 mm hot at the gauge when the hot diameter is 1.0167 times the cold', () => {
		const model = openShipped('marram');
		enter(model, ['hot_over_cold', ['PEXB'], 15.25 / 15]);
		const hot = read(model, 'hot_outside_diameter', 'PX15P');
		expect(hot).toBeCloseTo(15.25, 10);
		// some 0.2 mm more than cold
		expect(hot - read(model, 'outside_diameter', 'PX15P')).toBeCloseTo(0.25, 10);
	});
});

/** A line at 23 m/min that loses nothing: the bare arithmetic of the trade. */
function lineAt23(daysAWeek: number) {
	const model = openShipped('shop');
	enter(
		model,
		['haul_off_limit', [], 23],
		['max_output', [], 1000],
		['availability', [], 100],
		['scrap', ['R16'], 0],
		['shifts', [], 3],
		['working_days', [], 52 * daysAWeek],
		['demand', ['R16'], 1e9],
		['demand', ['R20'], 0],
		['outside_diameter', ['R16'], 15],
		['wall_minimum', ['R16'], 1.7],
		['eccentricity', [], 0],
		['spread_of_mean_wall', [], 0],
		['density', [], 945]
	);
	return model;
}

/** What all hours of the year make: a plan decides how many of them are used. */
const metresOfYear = (model: ReturnType<typeof openShipped>) =>
	(1000 * read(model, 'net_hours')) / read(model, 'hours_per_metre', 'R16'); // unit h/km

describe('a line at 23 m/min (common practice, no source)', () => {
	it('takes 92.6 kg an hour', () => {
		const model = lineAt23(6);
		const kilogramsAnHour =
			read(model, 'line_speed', 'R16') * 60 * read(model, 'mass_per_metre', 'R16');
		// 23 m/min x 60 x 0.067124 kg/m
		expect(kilogramsAnHour).toBeCloseTo(92.63, 2);
	});

	it('makes 10.33 million metres in a year of six days round the clock', () => {
		// 23 m/min x 60 x 24 h x 312 days = 10,333,440 m
		expect(metresOfYear(lineAt23(6))).toBeCloseTo(10_333_440, 3);
	});

	it('makes a sixth more on seven days', () => {
		// 23 x 60 x 24 x 364 = 12,055,680 m
		expect(metresOfYear(lineAt23(7))).toBeCloseTo(12_055_680, 3);
	});

	it.each([
		[25, 55.2],
		[50, 27.6],
		[100, 13.8]
	])('fills coils of %i m at %f an hour', (length, coils) => {
		const model = lineAt23(6);
		enter(model, ['coil_length', ['R16'], length]);
		const metresAnHour = 1000 / read(model, 'hours_per_metre', 'R16'); // unit h/km
		expect(metresAnHour / read(model, 'coil_length', 'R16')).toBeCloseTo(coils, 9); // 1380 m/h
	});

	it('loses half an hour of a set-up: 690 m', () => {
		const model = openShipped('marram');
		const without = (enter(model, ['setup_time', ['RT15B'], 0]), hoursOfLot(model));
		enter(model, ['setup_time', ['RT15B'], 0.5]);
		expect(hoursOfLot(model) - without).toBeCloseTo(0.5, 9);
	});

	it('of half a million euros is paid back when the yearly gain has added up to it', () => {
		const model = openShipped('shop');
		enter(model, ['tax_rate', [], 0], ['life', [], 6]);
		apply(model, {
			kind: 'set_inputs',
			scenario: 'second_shift',
			entries: [{ quantity: 'outlay', at: [], value: 500_000 }]
		});
		const gain = read(model, 'gain', { scenario: 'second_shift' });
		// Simple payback of an even gain: outlay ÷ gain.
		expect(read(model, 'payback', { scenario: 'second_shift' })).toBeCloseTo(500_000 / gain, 9);
		expect(gain).toBeGreaterThan(100_000);
	});

	it('doubles the output with a second machine of the same kind', () => {
		const model = openShipped('marram');
		const alone = read(model, 'sole_capacity', 'RT15B', 'extrude');
		apply(model, { kind: 'add_member', set: 'line', index: 8, member: { id: 'L9' }, like: 'L7' });
		expect(read(model, 'sole_capacity', 'RT15B', 'extrude')).toBeCloseTo(2 * alone, 9);
	});
});

function hoursOfLot(model: ReturnType<typeof openShipped>) {
	const hoursAMetre = read(model, 'hours_per_metre', 'RT15B', 'L7') / 1000; // unit h/km
	return hoursAMetre * read(model, 'lot_size', 'RT15B');
}
