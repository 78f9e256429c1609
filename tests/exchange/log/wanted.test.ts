/** Totals that a step of the first hour asks for, found in a log: by heading, by unit, and never by guess. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { layOut } from '$lib/engine/layout';
import { readCsv } from '$lib/exchange/csv/rows';
import { askedOf } from '$lib/exchange/log/asked';
import { lookOverLog } from '$lib/exchange/log/look';
import { proposeLog } from '$lib/exchange/log/propose-log';
import type { Log } from '$lib/exchange/log/log';
import { yearOfLog } from '../../begin/second-plant';
import { openShipped } from '../../reference/shipped';
import { logBook } from './log-book';

const { workbook } = openShipped('marram');
const asked = workbook.steps!.find(({ title }) => title === 'Last year in all')!.quantities!;

function gridOf(text: string) {
	const read = readCsv(text, 'log.csv');
	if (!read.ok) throw new Error(read.message);
	return read.grid;
}
const sumsOf = (text: string, wanted = asked, book = workbook) =>
	proposeLog(gridOf(text), book, wanted).log.sums;

describe('totals that a step asks for', () => {
	/** A row a month: good metres, kilograms dosed, kWh, line hours, of the invented second plant. */
	const text = readFileSync('tests/begin/plant/log.csv', 'utf8');
	const grid = gridOf(text);
	const { log, ...file } = proposeLog(grid, workbook, asked);

	it('are found by heading, and by the unit that only one column and one total have', () => {
		expect(log.columns[0]).toEqual({ is: 'date', dayFirst: null });
		expect(log.sums).toEqual([
			{ quantity: 'ledger_metres', take: 'sum', column: 1, per: 'year' },
			{ quantity: 'ledger_dosed', take: 'sum', column: 2, per: 'year' },
			{ quantity: 'ledger_line_hours', take: 'sum', column: 4, per: 'year' },
			{ quantity: 'ledger_electricity', take: 'sum', column: 3, per: 'year' }
		]);
		expect(log.columns[2]).toMatchObject({ unit: 'kg' });
		expect(log.columns[3]).toMatchObject({ unit: 'kWh' });
	});

	it('are asked the units that no heading says, and then are what a pencil makes of the twelve months', () => {
		expect(askedOf(log, { head: grid.head, ...file }, workbook)).toBe(
			'Say the unit of good metres; 1 for a plain number.'
		);
		const said: Log = {
			...log,
			columns: log.columns.map((column, at) =>
				column.is !== 'number' || column.unit !== ''
					? column
					: { ...column, unit: at === 1 ? 'm' : 'h' }
			)
		};
		expect(askedOf(said, { head: grid.head, ...file }, workbook)).toBeNull();
		const look = lookOverLog(grid, said, layOut(workbook));
		const year = yearOfLog();
		const after = Object.fromEntries(
			look.changes.map(({ quantity, after }) => [quantity.name, after])
		);
		// A row a month, January to December: a whole year, and no day without a row.
		expect(after.ledger_metres).toBeCloseTo(year.metres / 1e6, 9);
		expect(after.ledger_dosed).toBeCloseTo(year.dosed / 1000, 9);
		expect(after.ledger_electricity).toBeCloseTo(year.electricity / 1000, 9);
		expect(after.ledger_line_hours).toBeCloseTo(year.hours, 9);
		expect(look.gaps?.days).toBe(0);
	});

	it('are left to say where two columns may be meant, or where only a mean would fit', () => {
		// Two columns of kWh: which of them, nothing says.
		expect(sumsOf('Date;Hall (kWh);Lines (kWh)\n2027-01-31;5;6\n')).toEqual([]);
		// Minutes of stops are no time to repair before somebody says that they are averaged.
		expect(sumsOf('Date;Line;Stopped (min)\n2027-01-31;L1;5\n', ['repair'], logBook)).toEqual([]);
	});

	it('are not asked of a file that no step is open for', () => {
		expect(proposeLog(grid, workbook).log.sums).toEqual([]);
	});
});

describe('the date of a row that is of a month', () => {
	it('is read as the month, and the log covers whole months', () => {
		expect(proposeLog(gridOf('month;kWh\n2026-01;5\n2026-02;6\n'), workbook).log).toMatchObject({
			columns: [{ is: 'date' }, { is: 'number' }],
			covers: 'months'
		});
		expect(proposeLog(gridOf('day;kWh\n2026-01-01;5\n'), workbook).log.covers).toBeNull();
	});

	it('chooses no weekday, and the row says so', () => {
		const text = 'month;Stopped (min)\n2027-02;30\n';
		const log: Log = {
			...proposeLog(gridOf(text), logBook).log,
			dates: [{ of: 'weekday', by: 'weekday' }],
			sums: [{ quantity: 'lost_by_day', take: 'sum', column: 1 }]
		};
		const { changes, left, period } = lookOverLog(gridOf(text), log, layOut(logBook));
		expect([changes, left.map(({ column, rows }) => [column, rows])]).toEqual([
			[],
			[['"month"', 1]]
		]);
		// February 2027 has 28 days.
		expect(period && period.to - period.from).toBe(27);
	});

	it('is no month where there is none', () => {
		const { columns } = proposeLog(gridOf('when;kWh\n2026-13;5\n2026-00;6\n'), workbook).log;
		expect(columns[0]!.is).not.toBe('date');
	});
});
