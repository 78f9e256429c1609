/** Fits by member, what they would be entered as, what is to be minded, and the edit that enters them. */
import { describe, expect, it } from 'vitest';
import { acceptCommands } from '$lib/calibration/accept';
import { candidatesOf, type Candidate } from '$lib/calibration/candidates';
import { fitted } from '$lib/calibration/fit';
import { fittingOf } from '$lib/calibration/members';
import { fittedShares } from '$lib/calibration/shares';
import { warningsOf } from '$lib/calibration/warnings';
import type { Calibration } from '$lib/workbook/calibration-schema';
import { applyCommand } from '$lib/workbook/commands';
import { findProblems } from '$lib/workbook/consistency';
import { loadWorkbook } from '$lib/workbook/load';
import { findQuantity } from '$lib/workbook/lookup';
import { saveWorkbook } from '$lib/workbook/save';
import { VERSION, type Workbook } from '$lib/workbook/schema';

const book: Workbook = {
	format: 'metrewright',
	version: VERSION,
	title: 'Fits',
	invented: true,
	sets: [
		{ name: 'line', label: 'Line', members: [{ id: 'L1' }, { id: 'L2' }] },
		{ name: 'gauging', label: 'Gauging', members: [{ id: 'today' }, { id: 'gauged' }] },
		{ name: 'month', label: 'Month', members: [{ id: 'Jan' }, { id: 'Feb' }] }
	],
	sheets: [
		{
			title: 'All',
			quantities: [
				{
					name: 'base_power',
					label: 'Base load',
					unit: 'kW',
					value: 100,
					range: { min: 0 },
					source: 'a guess'
				},
				{ name: 'slope', label: 'Slope', unit: 'kWh/kg', formula: '0.5[kWh/kg]' },
				{
					name: 'mtbf',
					label: 'Time between stops',
					unit: 'h',
					per: ['line'],
					value: { L1: 50, L2: 60 },
					source: 'asked'
				},
				{ name: 'sigma', label: 'Spread', unit: 'µm', per: ['line', 'gauging'] },
				{ name: 'season', label: 'Season', unit: '%', per: ['month'] }
			]
		}
	],
	scenarios: [{ id: 'base', title: 'Today', parent: null, changes: [] }]
};

const load: Calibration = {
	name: 'load',
	title: 'Base load of the site',
	form: 'line',
	x: { label: 'Mass', unit: 't' },
	y: { label: 'Energy', unit: 'MWh' },
	gives: [
		{ parameter: 'intercept', quantity: 'base_power', per: '730 h' },
		{ parameter: 'slope', quantity: 'slope' }
	],
	data: [
		{
			source: 'meter.csv',
			// 80 MWh a month, 0.55 MWh a tonne; off by ±1 in turn.
			points: [300, 320, 340, 360, 380, 400, 420, 440].map((x, i) => ({
				x,
				y: 80 + 0.55 * x + (i % 2 === 0 ? 1 : -1)
			}))
		}
	]
};
const standing = (name: string) => (name === 'slope' ? 0.5 : null);
const first = (calibration: Calibration, at = 0) => {
	const one = fittingOf(calibration, book).fits[at]!;
	return { one, candidates: candidatesOf(calibration, one, book, standing) };
};

describe('a line', () => {
	it('gives each figure in the unit of its quantity, beside what stands, in standard errors', () => {
		const { candidates } = first(load);
		const [base, slope] = candidates as [Candidate, Candidate];
		// The alternating ±1 tilts the line by a hair: 80 and 0.55 to within their errors.
		expect(base.unit).toBe('kW');
		expect(Math.abs(base.value - 80_000 / 730)).toBeLessThan(2 * base.error!);
		expect(base.low!).toBeLessThan(base.value);
		expect(base.stands).toBe(100);
		expect(base.difference).toBeCloseTo(base.value - 100, 9);
		expect(base.inErrors).toBeCloseTo((base.value - 100) / base.error!, 9);
		expect(slope.value).toBeCloseTo(0.55, 1);
		expect([slope.stands, slope.refused]).toEqual([0.5, 'Slope follows a formula.']);
	});

	it('names the point that lies far off, and does not for points that scatter alike', () => {
		expect(fittingOf(load, book).fits[0]!.fit!.far).toEqual([]);
		const points = load.data![0]!.points.map((point, i) =>
			i === 3 ? { ...point, y: point.y + 60 } : point
		);
		const slip = { ...load, data: [{ source: 's', points }] };
		expect(fittingOf(slip, book).fits[0]!.fit!.far).toEqual([3]);
	});

	it('is none where all points have one x', () => {
		expect(
			fitted('line', [
				{ x: 1, y: 1 },
				{ x: 1, y: 2 }
			])
		).toMatchObject({ ok: false });
	});
});

describe('what is to be minded', () => {
	const kinds = (calibration: Calibration, today: number | null = null) => {
		const { one, candidates } = first(calibration);
		return warningsOf(calibration, one, candidates, today).map(({ kind }) => kind);
	};
	const withPoints = (points: { x: number; y: number }[]): Calibration => ({
		...load,
		data: [{ source: 's', points }]
	});

	it('is that x today lies where there are no points', () => {
		expect(kinds(load)).toEqual(['far_from_nought']);
		expect(kinds(load, 350)).toEqual(['far_from_nought']);
		expect(kinds(load, 500)).toEqual(['out_of_reach', 'far_from_nought']);
	});

	it('is too few points, a base load below 0, and a line that explains little', () => {
		const found = kinds(
			withPoints([
				{ x: 1, y: -3 },
				{ x: 2, y: 1 },
				{ x: 9, y: 20 }
			])
		);
		expect(found).toContain('few');
		expect(found).toContain('negative');
		expect(
			kinds(
				withPoints([
					{ x: 1, y: 5 },
					{ x: 2, y: 9 },
					{ x: 3, y: 4 },
					{ x: 4, y: 8 }
				])
			)
		).toContain('explains_little');
	});
});

describe('a ratio for each line', () => {
	const stops: Calibration = {
		name: 'stops',
		title: 'Time between stops',
		form: 'ratio',
		each: 'line',
		x: { label: 'Stops' },
		y: { label: 'Run', unit: 'h' },
		gives: [{ parameter: 'ratio', quantity: 'mtbf' }],
		data: [
			{
				source: 'log',
				points: [
					{ at: 'L1', x: 2, y: 150 },
					{ at: 'L1', x: 4, y: 330 },
					{ at: 'L9', x: 1, y: 1 }
				]
			}
		]
	};

	it('is the run time over the stops; lines without points say so, and points of lines that are gone are told', () => {
		const { candidates } = first(stops);
		expect(candidates[0]!.value).toBe(80);
		const { fits, strays } = fittingOf(stops, book);
		expect(fits[1]!.message).toBe('There are no points yet.');
		expect(strays.map(({ at }) => at)).toEqual(['L9']);
	});

	it('is entered for its line alone, with its source before what was said of the others, in one step', () => {
		const { one, candidates } = first(stops);
		const made = applyCommand(book, {
			kind: 'several',
			commands: acceptCommands(candidates, stops, one, book)
		});
		if (!made.ok) throw new Error(made.problem.message);
		const mtbf = findQuantity(made.workbook, 'mtbf')!;
		expect(mtbf.value).toEqual({ L1: 80, L2: 60 });
		expect(mtbf.source).toBe(
			'L1: Time between stops, fitted from 2 points of log; other values: asked'
		);
		const back = applyCommand(made.workbook, made.inverse);
		expect(back.ok && back.workbook).toEqual(book);
	});
});

describe('a standard deviation', () => {
	it('is entered at the member that the fit names of the other axis', () => {
		const sigma: Calibration = {
			name: 'sigma',
			title: 'Spread of the wall',
			form: 'deviation',
			each: 'line',
			y: { label: 'Wall', unit: 'mm' },
			gives: [{ parameter: 'deviation', quantity: 'sigma', at: [{ of: 'gauging', id: 'today' }] }],
			data: [{ source: 'gauge', points: [2.0, 2.02, 1.98].map((y) => ({ at: 'L2', y })) }]
		};
		const { candidates } = first(sigma, 1);
		expect([candidates[0]!.at, candidates[0]!.unit]).toEqual([['L2', 'today'], 'µm']);
		expect(candidates[0]!.value).toBeCloseTo(20, 9);
		// Chi-squared of 2 degrees: 0.05064 and 7.378 (NIST/SEMATECH e-Handbook, 1.3.6.7.4; from memory).
		expect(candidates[0]!.low).toBeCloseTo(20 * Math.sqrt(2 / 7.3778), 2);
		expect(candidates[0]!.high).toBeCloseTo(20 * Math.sqrt(2 / 0.050636), 1);
	});
});

describe('shares', () => {
	it('are the mean of the shares of each year, and add up to 1', () => {
		const read = fittedShares(
			[
				{ of: 'Jan', group: '2025', y: 10 },
				{ of: 'Feb', group: '2025', y: 30 },
				{ of: 'Jan', group: '2026', y: 60 },
				{ of: 'Feb', group: '2026', y: 140 }
			],
			['Jan', 'Feb']
		);
		if (!read.ok) throw new Error(read.message);
		expect(read.shares.map(({ value }) => value)).toEqual([0.275, 0.725]);
		// 25 % and 30 %: a standard deviation of 3.54 points, over the root of two.
		expect(read.shares[0]!.error).toBeCloseTo(0.025, 9);
	});

	it('are none while a month has no point', () => {
		expect(fittedShares([{ of: 'Jan', group: '', y: 1 }], ['Jan', 'Feb'])).toEqual({
			ok: false,
			message: 'there is no point of Feb. Add them, with 0 where there was none.'
		});
	});
});

describe('a fit in the workbook', () => {
	it('is written and read back, follows new names, and outlives its quantity', () => {
		const put = applyCommand(book, { kind: 'put_calibration', calibration: load });
		if (!put.ok) throw new Error(put.problem.message);
		const loaded = loadWorkbook(saveWorkbook(put.workbook), 'f.json');
		expect(loaded.ok && loaded.workbook.calibrations).toEqual([load]);
		const base = findQuantity(book, 'base_power')!;
		const renamed = applyCommand(put.workbook, {
			kind: 'replace_quantity',
			name: 'base_power',
			quantity: { ...base, name: 'idle_power' }
		});
		if (!renamed.ok) throw new Error(renamed.problem.message);
		expect(renamed.workbook.calibrations![0]!.gives[0]!.quantity).toBe('idle_power');
		const gone = applyCommand(put.workbook, {
			kind: 'remove_quantity',
			name: 'base_power',
			also: true
		});
		if (!gone.ok) throw new Error(gone.problem.message);
		const [one] = fittingOf(load, gone.workbook).fits;
		expect(candidatesOf(load, one!, gone.workbook, () => null)[0]!.refused).toMatch(
			/There is no quantity "base_power"/
		);
		const back = applyCommand(put.workbook, put.inverse);
		expect(back.ok && back.workbook).toEqual(book);
	});

	it('is refused where its form has no such figure, or lacks x or a set for its shares', () => {
		const { x: _x, ...without } = load;
		const codes = (one: Calibration) =>
			findProblems({ ...book, calibrations: [one] }).map(({ code }) => code);
		expect(codes(without)).toEqual(['no-x']);
		expect(codes({ ...load, form: 'mean' })).toEqual(['no-parameter']);
		expect(codes({ ...load, form: 'shares', gives: [{ parameter: 'share' }] })).toEqual([
			'no-over'
		]);
		expect(findProblems({ ...book, calibrations: [load, load] }).map(({ code }) => code)).toEqual([
			'duplicate-calibration'
		]);
	});
});
