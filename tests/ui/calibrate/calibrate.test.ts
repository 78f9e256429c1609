/** What the page of fits writes and draws, and the fits that the shipped plant names. */
import { describe, expect, it } from 'vitest';
import { candidatesOf } from '$lib/calibration/candidates';
import { fittingOf } from '$lib/calibration/members';
import type { Warning } from '$lib/calibration/warnings';
import { candidateWords, warningWords } from '$lib/ui/calibrate/fit-words';
import { drawnOf } from '$lib/ui/calibrate/fit-drawn';
import { standingIn, todayOf } from '$lib/ui/calibrate/standing';
import { withoutBatch, withoutPoint } from '$lib/ui/calibrate/without';
import type { Calibration } from '$lib/workbook/calibration-schema';
import { openShipped } from '../../reference/shipped';

const { workbook } = openShipped('marram');
const named = (name: string) => workbook.calibrations!.find((one) => one.name === name)!;
const load = named('base_load');

describe('the fits of the shipped plant', () => {
	it('each name quantities that are there, in units that fit', () => {
		for (const calibration of workbook.calibrations!) {
			const points =
				calibration.form === 'shares'
					? workbook.sets
							.find(({ name }) => name === calibration.over)!
							.members.map(({ id }, i) => ({ of: id, y: i + 1 }))
					: [1, 2, 4].map((x) => ({ x, y: 0.01 * x + (x === 2 ? 0.001 : 0) }));
			const first = workbook.sets.find(({ name }) => name === calibration.each)?.members[0]?.id;
			const data = [
				{ source: 's', points: points.map((one) => (first ? { ...one, at: first } : one)) }
			];
			const filled = { ...calibration, data };
			const [one] = fittingOf(filled, workbook).fits;
			const candidates = candidatesOf(filled, one!, workbook, () => null);
			expect(candidates.length, calibration.name).toBeGreaterThan(0);
			for (const { refused } of candidates)
				expect(refused, calibration.name).toMatch(/^$|follows a formula/);
			expect(
				candidates.some(({ quantity, refused }) => quantity && !refused),
				calibration.name
			).toBe(true);
		}
	});

	it('hold no points that are not marked as invented', () => {
		for (const { data = [] } of workbook.calibrations!)
			for (const { source } of data) expect(source).toMatch(/^Invented/);
	});

	it('find for the base load what the formulas of the workbook find by least squares', () => {
		const { layout, results } = plantResults();
		const standing = standingIn(layout, results);
		const [base, slope] = candidatesOf(
			load,
			fittingOf(load, workbook).fits[0]!,
			workbook,
			standing
		);
		expect(base!.value / standing('fitted_base_power', [])!).toBeCloseTo(1, 9);
		expect(slope!.value / standing('fitted_slope', [])!).toBeCloseTo(1, 9);
		expect([base!.stands, slope!.stands]).toEqual([112, standing('entered_slope', [])]);
	});
});

function plantResults() {
	const model = openShipped('marram');
	const results = model.results(workbook.scenarios[0]!.id);
	return { layout: model.layout, results };
}

describe('figures in words', () => {
	const one = {
		parameter: 'intercept' as const,
		of: null,
		quantity: null,
		at: [],
		unit: 'kW',
		value: 114.6321,
		error: 8.6412,
		low: 95.4,
		high: 133.9,
		stands: 112,
		difference: 2.6321,
		inErrors: 0.3046,
		refused: ''
	};

	it('have as many decimals as their error has a use for', () => {
		expect(candidateWords(one, 'en')).toMatchObject({
			value: '114.6',
			error: '8.6',
			interval: '95.4 … 133.9',
			difference: '+2.6',
			inErrors: '+0.30 std. errors'
		});
		expect(
			candidateWords({ ...one, error: null, low: null, high: null, inErrors: null }, 'en')
		).toMatchObject({
			error: '',
			interval: '',
			inErrors: ''
		});
	});

	it.each<[Warning, RegExp]>([
		[{ kind: 'few', points: 1 }, /^Only 1 point:/],
		[
			{ kind: 'out_of_reach', today: 900, low: 100, high: 400 },
			/Today x is 900.* kg, .* from 100.* to 400/
		],
		[{ kind: 'negative', parameter: 'intercept' }, /below 0/],
		[{ kind: 'may_be_nought', parameter: 'slope' }, /holds 0/],
		[{ kind: 'far_from_nought', low: 200 }, /begin at 200/],
		[{ kind: 'explains_little', share: 0.31 }, /explains 31 %/],
		[{ kind: 'one_group' }, /one year/],
		[{ kind: 'far', points: 2 }, /^2 points lie/]
	])('say what to mind: %o', (warning, words) => {
		expect(warningWords(warning, 'kg', 'en')).toMatch(words);
	});
});

describe('the picture', () => {
	it('draws points, those far off apart, and the line from where x is 0', () => {
		const drawn = drawnOf(load, fittingOf(load, workbook).fits[0]!)!;
		expect([drawn.near.length, drawn.far.length]).toEqual([12, 0]);
		expect(drawn.line[0]!.x).toBe(0);
		expect(drawn.line[0]!.y).toBeCloseTo(83_690, -2);
	});

	it('draws points without an x in their order, and shares in per cent', () => {
		const repair: Calibration = {
			...named('time_to_repair'),
			data: [
				{
					source: 's',
					points: [
						{ at: 'L1', y: 2 },
						{ at: 'L1', y: 3 }
					]
				}
			]
		};
		const drawn = drawnOf(repair, fittingOf(repair, workbook).fits[0]!)!;
		expect(drawn.near).toEqual([
			{ x: 1, y: 2 },
			{ x: 2, y: 3 }
		]);
		expect(drawn.inOrder).toBe(true);
		expect(
			drawnOf(named('time_to_repair'), fittingOf(named('time_to_repair'), workbook).fits[0]!)
		).toBeNull();
	});
});

it('x today is what the named quantity stands at, in the unit of x', () => {
	const today = { ...load, today: 'base_power', x: { label: 'Power', unit: 'W' } };
	expect(todayOf(today, null, workbook, () => 112)).toBe(112_000);
	expect(
		todayOf({ ...today, x: { label: 'Mass', unit: 'kg' } }, null, workbook, () => 112)
	).toBeNull();
	expect(todayOf(load, null, workbook, () => 112)).toBeNull();
});

it('a point goes alone, and with the last of its source the source', () => {
	const two: Calibration = {
		...load,
		data: [
			{
				source: 'a',
				points: [
					{ x: 1, y: 1 },
					{ x: 2, y: 2 }
				]
			},
			{ source: 'b', points: [{ x: 3, y: 3 }] }
		]
	};
	expect(withoutPoint(two, { batch: 0, place: 0 }).data![0]!.points).toEqual([{ x: 2, y: 2 }]);
	expect(withoutPoint(two, { batch: 1, place: 0 }).data!.map(({ source }) => source)).toEqual([
		'a'
	]);
	expect(withoutBatch({ ...load, data: [two.data![0]!] }, 0).data).toBeUndefined();
});
