/** Durations as "1:30": read by the unit of their column, three parts by themselves, and never taken for a time of day. */
import { describe, expect, it } from 'vitest';
import { layOut } from '$lib/engine/layout';
import { readCsv } from '$lib/exchange/csv/rows';
import { askedOf } from '$lib/exchange/log/asked';
import { lookOverLog } from '$lib/exchange/log/look';
import type { Log } from '$lib/exchange/log/log';
import { proposeLog } from '$lib/exchange/log/propose-log';
import { durationUnit, readDuration } from '$lib/exchange/table/duration';
import { lookOver } from '$lib/exchange/table/look';
import { NO_CHOICES } from '$lib/exchange/table/new-members';
import { proposeMapping } from '$lib/exchange/table/propose';
import { logBook } from '../log/log-book';

const layout = layOut(logBook);
function gridOf(text: string) {
	const read = readCsv(text, 'f.csv');
	if (!read.ok) throw new Error(read.message);
	return read.grid;
}

describe('a duration', () => {
	it.each([
		['1:30', 'h:min', 1.5, 'h'],
		['1:30', 'hh:mm', 1.5, 'h'],
		['1:30', 'min:s', 1.5, 'min'],
		['90:15', 'mm:ss', 90.25, 'min'],
		['26:06', 'h:mm', 26.1, 'h'],
		// 2 h 3 min 36 s = 7416 s.
		['2:03:36', '', 2.06, 'h'],
		['2:03:36', 'min', 2.06, 'h']
	])('%s in a column of "%s" is %s %s', (text, column, value, unit) => {
		expect(readDuration(text, column)).toEqual({ ok: true, value, unit });
	});

	it('of two parts is refused where the column does not say which they are', () => {
		for (const unit of ['', 'h', 'min'])
			expect(readDuration('1:30', unit)).toMatchObject({
				ok: false,
				message: expect.stringMatching(/^"1:30" may be hours and minutes, minutes and seconds, or/)
			});
	});

	it('is none with minutes above 59, and a plain number is none in its column', () => {
		expect(readDuration('1:75', '')).toBeNull();
		expect(readDuration('1.5', 'h')).toBeNull();
		expect(readDuration('1.5', 'h:min')).toMatchObject({ ok: false });
	});

	it('is counted in no other unit', () => {
		expect([durationUnit('h:min:s'), durationUnit('min:s'), durationUnit('m:1')]).toEqual([
			'h',
			'min',
			null
		]);
	});
});

describe('a table with durations', () => {
	const look = (text: string) => {
		const grid = gridOf(text);
		const looked = lookOver(grid, proposeMapping(grid, logBook), NO_CHOICES, layout);
		if (!looked.ok) throw new Error(looked.message);
		return looked.look;
	};

	it('is read by the unit in the heading, in the unit of the quantity', () => {
		const { changes, problems } = look('Line;Time to repair (h:min)\nL1;1:45\nL2;0:30\n');
		expect(problems).toEqual([]);
		expect(changes.map(({ at, after }) => [at[0], after])).toEqual([
			['L1', 1.75],
			['L2', 0.5]
		]);
	});

	it('says of each row that it has two readings where nothing tells which', () => {
		const { changes, problems } = look('Line;Time to repair\nL1;1:45\nL2;0:30:00\n');
		expect(changes.map(({ at, after }) => [at[0], after])).toEqual([['L2', 0.5]]);
		expect(problems.map(({ line, message }) => [line, message])).toEqual([
			[2, expect.stringMatching(/"1:45" may be hours and minutes/)]
		]);
	});
});

describe('a log with durations', () => {
	const text = 'Line;Date;Stopped\nL1;2027-02-01;0:45\nL1;2027-02-02;1:15\nL2;2027-02-02;0:20\n';
	const grid = gridOf(text);
	const { log: proposed, ...file } = proposeLog(grid, logBook);
	const summed = (unit: string): Log => ({
		...proposed,
		columns: proposed.columns.map((column) =>
			column.is === 'number' ? { ...column, unit } : column
		),
		sums: [{ quantity: 'repair', take: 'average', column: 2 }]
	});

	it('asks whether they are hours or minutes, and sums them by the answer', () => {
		expect(askedOf(summed(''), { head: grid.head, ...file }, logBook)).toBe(
			'Say of Stopped whether 1:30 is h:min or min:s, as its unit; where it is a time of day, sum another column.'
		);
		const after = (unit: string) => {
			expect(askedOf(summed(unit), { head: grid.head, ...file }, logBook)).toBeNull();
			return lookOverLog(grid, summed(unit), layout).changes.map(({ after }) => Number(after));
		};
		// (45 + 75) / 2 = 60 min, and 20 min; or seconds of a minute.
		expect(after('h:min')).toEqual([1, expect.closeTo(1 / 3, 12)]);
		expect(after('min:s')).toEqual([expect.closeTo(1 / 60, 12), expect.closeTo(1 / 180, 12)]);
	});

	it('takes the unit that the heading marks', () => {
		const marked = text.replace('Stopped', 'Stopped (h:min)');
		expect(proposeLog(gridOf(marked), logBook).log.columns[2]).toMatchObject({ unit: 'h:min' });
	});
});
