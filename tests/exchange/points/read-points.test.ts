/** Points of a fit from a table: which column is which, units of the table, and rows that are left out. */
import { describe, expect, it } from 'vitest';
import { readCsv } from '$lib/exchange/csv/rows';
import { proposePoints, readPoints, type PointMapping } from '$lib/exchange/points/read-points';
import type { Calibration } from '$lib/workbook/calibration-schema';
import { logBook } from '../log/log-book';

const load: Calibration = {
	name: 'load',
	title: 'Load',
	form: 'line',
	each: 'line',
	x: { label: 'Mass extruded', unit: 'kg' },
	y: { label: 'Meter', unit: 'kWh' },
	gives: [{ parameter: 'slope' }]
};

function gridOf(text: string) {
	const read = readCsv(text, 'f.csv');
	if (!read.ok) throw new Error(read.message);
	return read.grid;
}
function read(text: string, fit = load, change: Partial<PointMapping> = {}) {
	const grid = gridOf(text);
	return readPoints(grid, { ...proposePoints(grid, fit, logBook), ...change }, fit, logBook);
}

describe('the columns of points', () => {
	it('are told by the words of the fit, whatever their order, with the unit of the heading', () => {
		const grid = gridOf('Meter (MWh);Line;Mass extruded (t)\n1,5;L1;2,5\n');
		expect(proposePoints(grid, load, logBook)).toEqual({
			columns: { at: 1, of: null, group: null, x: 2, y: 0 },
			units: { x: 't', y: 'MWh' }
		});
		expect(readPoints(grid, proposePoints(grid, load, logBook), load, logBook)).toEqual({
			ok: true,
			points: [{ at: 'L1', x: 2500, y: 1500 }],
			left: [],
			leftRows: 0
		});
	});

	it('are asked for where two columns of numbers have other headings', () => {
		expect(read('Line;a;b\nL1;1;2\n')).toEqual({
			ok: false,
			message: 'Say which column holds Mass extruded.'
		});
		expect(read('Mass extruded;b\n1;2\n')).toEqual({
			ok: false,
			message: 'Say which column holds Line.'
		});
	});

	it('is the only column of numbers where nothing else is sought', () => {
		const mean: Calibration = {
			name: 'm',
			title: 'M',
			form: 'mean',
			y: { label: 'Repair', unit: 'h' },
			gives: [{ parameter: 'mean' }]
		};
		expect(read('Stopped\n1.5\n2\n', mean)).toMatchObject({ points: [{ y: 1.5 }, { y: 2 }] });
	});

	it('cannot be in a unit that measures something else', () => {
		expect(
			read('Line;Mass extruded;Meter\nL1;1;2\n', load, { units: { x: 'm', y: '' } })
		).toMatchObject({
			ok: false,
			message: expect.stringMatching(/^Mass extruded: m cannot become kg/)
		});
	});
});

describe('rows that are no points', () => {
	it('are left out with their lines', () => {
		const found = read('Line;Mass extruded;Meter\nL1;1;2\nL9;1;2\nL1;;2\nL1;much;2\n');
		expect(found).toMatchObject({ ok: true, leftRows: 3, points: [{ at: 'L1', x: 1, y: 2 }] });
		expect(found.ok && found.left.map(({ line }) => line)).toEqual([3, 4, 5]);
		expect(found.ok && found.left[0]!.message).toBe('There is no line "L9".');
	});

	it('of shares have a member, and a group where a column says it', () => {
		const season: Calibration = {
			name: 's',
			title: 'S',
			form: 'shares',
			over: 'month',
			y: { label: 'Sold', unit: 'm' },
			gives: [{ parameter: 'share' }]
		};
		const grid = gridOf('Year;Month;Sold\n2026;Jan;5\n');
		const proposed = proposePoints(grid, season, logBook);
		expect(proposed.columns).toMatchObject({ of: 1, y: 2, group: null });
		const columns = { ...proposed.columns, group: 0 };
		expect(readPoints(grid, { ...proposed, columns }, season, logBook)).toMatchObject({
			points: [{ of: 'Jan', group: '2026', y: 5 }]
		});
	});
});
