/** Logs that are summed: by members and dates, with units, periods and what is left out; aggregates by an outside library. */
import { createHash } from 'node:crypto';
import { max, mean, min, sampleStandardDeviation, sum } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { layOut } from '$lib/engine/layout';
import { readCsv } from '$lib/exchange/csv/rows';
import { askedOf } from '$lib/exchange/log/asked';
import { keptLogOf, reuseLog } from '$lib/exchange/log/kept-log';
import type { Log, OpenSum } from '$lib/exchange/log/log';
import { lookOverLog, type LogLook } from '$lib/exchange/log/look';
import { readMoment } from '$lib/exchange/log/moment';
import { proposeLog } from '$lib/exchange/log/propose-log';
import { sha256 } from '$lib/exchange/log/sha256';
import { logCommands, sourceChanges } from '$lib/exchange/log/source';
import { waysFor } from '$lib/exchange/log/ways';
import { applyCommand } from '$lib/workbook/commands';
import { readDate } from '$lib/workbook/date-text';
import { findQuantity, findSet } from '$lib/workbook/lookup';
import { loadWorkbook } from '$lib/workbook/load';
import { saveWorkbook } from '$lib/workbook/save';
import type { Workbook } from '$lib/workbook/schema';
import { logBook } from './log-book';

const layout = layOut(logBook);

const TEXT = `Line;Reason;Start;Stopped (min)
L1;changeover;2026-01-05 06:10;90
L1;fault;2026-01-06 22:00;30
line one;Fault;2026-02-10 01:00;60
L2;changeover;2026-02-11;120
L2;changeover;2026-03-31 23:59;60
`;

function gridOf(text: string) {
	const read = readCsv(text, 'f.csv');
	if (!read.ok) throw new Error(read.message);
	return read.grid;
}
function logOf(text: string, change: Partial<Log>): Log {
	return { ...proposeLog(gridOf(text), logBook).log, ...change };
}
const fileOf = (text: string) => {
	const grid = gridOf(text);
	return { head: grid.head, ...proposeLog(grid, logBook) };
};
const asked = (text: string, log: Log) => askedOf(log, fileOf(text), logBook);
function look(text: string, change: Partial<Log>): LogLook {
	const log = logOf(text, change);
	expect(asked(text, log)).toBeNull();
	return lookOverLog(gridOf(text), log, layout);
}
const values = ({ changes }: LogLook) =>
	Object.fromEntries(changes.map(({ at, after }) => [at.join(' '), after]));
const byMonth = [{ of: 'month', by: 'month' }] as const;
const total: OpenSum = { quantity: 'lost', take: 'sum', column: 3 };

describe('the columns of a log', () => {
	it('are read as members, a date and numbers with the unit of their heading', () => {
		expect(proposeLog(gridOf(TEXT), logBook).log.columns).toEqual([
			{ is: 'member', of: 'line' },
			{ is: 'member', of: 'reason' },
			{ is: 'date', dayFirst: null },
			{ is: 'number', unit: 'min', decimal: null }
		]);
	});

	it('list the texts that rows can be chosen by', () => {
		const { texts } = proposeLog(gridOf(TEXT), logBook);
		expect(texts[1]).toEqual([
			{ text: 'changeover', rows: 3 },
			{ text: 'fault', rows: 2 }
		]);
	});

	it('hold dates with a time of day in whatever way it is written', () => {
		const date = readDate('2026-03-04')!;
		for (const [text, hour] of [
			['2026-03-04 06:12', 6],
			['2026-03-04T18:12:33.5Z', 18],
			['04.03.2026 6:12 pm', 18],
			['04.03.2026 12:05 am', 0],
			['2026-03-04', null]
		] as const)
			expect(readMoment(text, null), text).toEqual({ ok: true, date, hour });
		for (const text of ['2026-02-30 06:00', '2026-03-04 25:00', 'soon', 46085])
			expect(readMoment(text, null).ok, String(text)).toBe(false);
	});

	it('are asked which comes first, day or month, where no date says it', () => {
		const text = 'Line;Reason;Start;min\nL1;fault;05/06/2026 14:30;5\n';
		const log = logOf(text, { dates: [...byMonth], sums: [total] });
		expect(asked(text, log)).toMatch(/whether the day or the month comes first/);
		expect(proposeLog(gridOf(text.replace('05/06', '25/06')), logBook).log.columns[2]).toEqual({
			is: 'date',
			dayFirst: true
		});
	});
});

describe('a set that a date chooses from', () => {
	it('is one by the numbers of its members, or by their places where they have none', () => {
		expect(waysFor(findSet(logBook, 'month')!).sure).toBe('month');
		expect(waysFor(findSet(logBook, 'weekday')!).sure).toBe('weekday');
		expect(waysFor(findSet(logBook, 'line')!)).toEqual({ ways: [], sure: null });
		const years = { name: 'y', label: 'Y', members: [{ id: '2025' }, { id: '2026' }] };
		expect(waysFor(years).sure).toBe('year');
	});

	it('is chosen from by the weekday of ISO 8601, where Monday is the first', () => {
		// 2026-01-05 was a Monday.
		const at = look(TEXT, {
			dates: [{ of: 'weekday', by: 'weekday' }],
			sums: [{ quantity: 'lost_by_day', take: 'sum', column: 3 }]
		});
		expect(values(at)).toEqual({ Mo: 90, Tu: 30 + 60 + 60, We: 120 });
	});
});

describe('rows of a log', () => {
	it('are summed by line, reason and month, in the unit of the quantity', () => {
		const at = look(TEXT, { dates: [...byMonth], sums: [total] });
		expect(values(at)).toEqual({
			'L1 changeover Jan': 1.5,
			'L1 fault Jan': 0.5,
			'L1 fault Feb': 1,
			'L2 changeover Feb': 2,
			'L2 changeover Mar': 1
		});
		expect([at.rows, at.used, at.left.length]).toEqual([5, 5, 0]);
	});

	it('are left out where a filter says so, and counted', () => {
		const at = look(TEXT, {
			dates: [...byMonth],
			sums: [total],
			only: { column: 1, values: ['Changeover'] }
		});
		expect([at.used, at.filtered]).toEqual([3, 2]);
		expect(Object.keys(values(at)).every((key) => key.includes('changeover'))).toBe(true);
	});

	it('are told with their lines where they name nothing, have no date or no number', () => {
		const text = `${TEXT}L9;fault;2026-03-01;5\nL9;fault;2026-03-02;5\nL1;fault;;5\nL1;fault;2026-03-03;a while\nL1;fault;2026-03-03;\n`;
		const at = look(text, { dates: [...byMonth], sums: [total] });
		expect(at.used).toBe(5);
		expect(at.left.map(({ column, rows, lines }) => [column, rows, lines])).toEqual([
			[null, 2, [7, 8]],
			['"Start"', 1, [9]],
			['"Stopped (min)"', 1, [10]],
			['"Stopped (min)"', 1, [11]]
		]);
		expect(at.left[0]!.message).toMatch(/There is no line "L9"/);
	});

	it('of a member that holds for all are of no other member', () => {
		const text = 'Reason;Start;min\nfault;2026-01-05;30\n';
		const log = logOf(text, {
			columns: [
				{ is: 'member', of: 'reason' },
				{ is: 'date', dayFirst: null },
				{ is: 'number', unit: 'min', decimal: null }
			],
			dates: [...byMonth],
			sums: [{ ...total, column: 2 }]
		});
		expect(asked(text, log)).toMatch(/Lost is per line: say which column/);
		const at = look(text, {
			...log,
			always: [{ of: 'line', id: 'L2' }],
			zeroWithoutRows: true,
			covers: 'months'
		});
		// Three reasons of one line in the one month that is covered; the other eleven months stay.
		expect(values(at)).toEqual({
			'L2 fault Jan': 0.5,
			'L2 changeover Jan': 0,
			'L2 clean Jan': 0
		});
		expect(at.silent).toBe(35);
	});
});

describe('what is taken of a cell', () => {
	/** Drawn by a fixed rule, so that the test is the same each time. */
	const numbers = Array.from({ length: 400 }, (_, i) => 1e6 + ((i * 7919) % 997) / 7);
	const text = `Line;Start;x\n${numbers.map((x, i) => `L${1 + (i % 2)};2026-01-0${1 + (i % 9)};${x}`).join('\n')}\n`;
	const columns: Log['columns'] = [
		{ is: 'member', of: 'line' },
		{ is: 'date', dayFirst: null },
		{ is: 'number', unit: 'h', decimal: '.' }
	];
	const of = (line: number) => numbers.filter((_, i) => 1 + (i % 2) === line);

	it.each([
		['sum', sum],
		['average', mean],
		['least', min],
		['most', max],
		['deviation', sampleStandardDeviation]
	] as const)('is its %s, as the library simple-statistics finds it', (take, outside) => {
		const at = look(text, { columns, sums: [{ quantity: 'repair', take, column: 2 }] });
		const found = values(at);
		for (const line of [1, 2])
			expect((found[`L${line}`] as number) / outside(of(line))).toBeCloseTo(1, 11);
	});

	it('is their number, divided by the years that the log covers: a whole month is a twelfth only by months', () => {
		const at = look(TEXT, {
			sums: [{ quantity: 'stops', take: 'count', per: 'year' }],
			covers: 'months'
		});
		// January to March 2026: 90 of 365 days; 3 and 2 rows.
		expect(values(at)['L1']).toBeCloseTo((3 * 365) / 90, 9);
		expect(values(at)['L2']).toBeCloseTo((2 * 365) / 90, 9);
		const whole = look(TEXT, {
			sums: [{ quantity: 'stops', take: 'count', per: 'year' }],
			covers: 'years'
		});
		expect(values(whole)).toEqual({ L1: 3, L2: 2 });
	});

	it('is a share of all reasons of the line', () => {
		const at = look(TEXT, {
			sums: [{ quantity: 'reason_share', take: 'share', column: 3, share_of: 'reason' }]
		});
		expect(values(at)).toEqual({ 'L1 changeover': 50, 'L1 fault': 50, 'L2 changeover': 100 });
	});

	it('is a sum divided by that of another column', () => {
		const lots = 'Line;min;lots\nL1;90;2\nL1;30;2\n';
		const at = look(lots, {
			columns: [
				columns[0]!,
				{ is: 'number', unit: 'min', decimal: null },
				{ is: 'number', unit: '1', decimal: null }
			],
			sums: [{ quantity: 'repair', take: 'sum', column: 1, by_column: 2 }]
		});
		expect(values(at)).toEqual({ L1: 0.5 });
	});

	it('is divided by the months of its own that are covered, where the date chooses the cell', () => {
		const two = 'Line;Reason;Start;min\nL1;fault;2025-01-10;60\nL1;fault;2026-01-10;120\n';
		const at = look(two, {
			columns: [
				{ is: 'member', of: 'line' },
				{ is: 'member', of: 'reason' },
				{ is: 'date', dayFirst: null },
				{ is: 'number', unit: 'min', decimal: null }
			],
			dates: [...byMonth],
			covers: 'months',
			sums: [{ ...total, per: 'month' }]
		});
		// Two Januaries, 3 hours in all.
		expect(values(at)).toEqual({ 'L1 fault Jan': 1.5 });
	});

	it('is refused where a single row has no deviation, or the range says no', () => {
		const at = look('Line;x\nL1;-5\n', {
			columns: [columns[0]!, { is: 'number', unit: 'h', decimal: null }],
			sums: [{ quantity: 'repair', take: 'deviation', column: 1 }]
		});
		expect(at.refused).toEqual([
			{ label: 'Time to repair, L1', message: 'One row alone has no standard deviation.' }
		]);
		const low = look('Line;x\nL1;-5\n', {
			columns: [columns[0]!, { is: 'number', unit: 'h', decimal: null }],
			sums: [{ quantity: 'repair', take: 'sum', column: 1 }]
		});
		expect(low.refused[0]!.message).toMatch(/outside what is permitted/);
	});
});

describe('nothing is guessed', () => {
	it.each<[string, Partial<Log>, RegExp]>([
		['what is summed', { sums: [] }, /what is summed/],
		['the quantity', { sums: [{ ...total, quantity: null }] }, /the quantity/],
		[
			'the unit',
			{
				columns: [
					{ is: 'member', of: 'line' },
					{ is: 'member', of: 'reason' },
					{ is: 'date', dayFirst: null },
					{ is: 'number', unit: '', decimal: null }
				],
				sums: [total]
			},
			/Say the unit of Stopped/
		],
		[
			'a unit that fits',
			{ sums: [{ quantity: 'reason_share', take: 'sum', column: 3 }] },
			/min cannot become/
		],
		['how the date chooses', { sums: [total] }, /say which column gives the month/],
		[
			'the period',
			{ sums: [{ quantity: 'stops', take: 'count', per: 'year' }] },
			/which period the log covers/
		],
		[
			'over what shares add up',
			{ sums: [{ quantity: 'reason_share', take: 'share' }] },
			/add up to 100/
		],
		[
			'which rows',
			{ sums: [total], dates: [...byMonth], only: { column: 1, values: [] } },
			/which rows are taken/
		],
		['one place twice', { sums: [total, total], dates: [...byMonth] }, /Two sums go into Lost/],
		[
			'from which day',
			{ sums: [total], dates: [...byMonth], covers: { from: NaN, to: 46_000 } },
			/from which day to which/
		],
		[
			'a period the right way round',
			{ sums: [total], dates: [...byMonth], covers: { from: 46_001, to: 46_000 } },
			/ends before it begins/
		]
	])('%s is asked', (_, change, words) => {
		expect(asked(TEXT, logOf(TEXT, change))).toMatch(words);
	});
});

describe('the look', () => {
	it('tells the period, the days without a row and the longest gaps', () => {
		const at = look(TEXT, { dates: [...byMonth], sums: [total], covers: 'months' });
		const day = (text: string) => readDate(text)!;
		expect(at.period).toEqual({ from: day('2026-01-05'), to: day('2026-03-31') });
		expect(at.covered).toEqual({ from: day('2026-01-01'), to: day('2026-03-31') });
		expect(at.gaps!.days).toBe(85);
		expect(at.gaps!.longest[0]).toEqual({ from: day('2026-02-12'), to: day('2026-03-30') });
	});

	it('leaves out rows outside of a period that is named by its days', () => {
		const covers = { from: readDate('2026-02-01')!, to: readDate('2026-02-28')! };
		const at = look(TEXT, { dates: [...byMonth], sums: [total], covers });
		expect([at.used, at.outside]).toEqual([2, 3]);
	});

	it('takes a hundred thousand rows', () => {
		const rows = Array.from(
			{ length: 100_000 },
			(_, i) => `L${1 + (i % 2)};fault;2026-0${1 + (i % 9)}-1${i % 9};${i % 60}`
		);
		const text = `Line;Reason;Start;Stopped (min)\n${rows.join('\n')}\n`;
		const told: number[] = [];
		const log = logOf(text, { dates: [...byMonth], sums: [total] });
		const at = lookOverLog(gridOf(text), log, layout, (share) => told.push(share));
		expect(at.used).toBe(100_000);
		expect(told.length).toBe(20);
		const hours = at.changes.reduce((all, { after }) => all + (after as number), 0);
		expect(hours).toBeCloseTo(rows.reduce((all, _, i) => all + (i % 60), 0) / 60, 6);
	});
});

describe('the source', () => {
	const source = { file: 'stops.csv', digest: 'ab12' };
	const entered = (scenario: string, book: Workbook = logBook, from = source) => {
		const log = logOf(TEXT, {
			scenario,
			covers: 'months',
			sums: [{ quantity: 'stops', take: 'count', per: 'year' }]
		});
		const at = lookOverLog(gridOf(TEXT), log, layOut(book));
		const sources = sourceChanges(from, at, at.changes, () => 2, book);
		const made = applyCommand(book, {
			kind: 'several',
			commands: logCommands(at.changes, sources, at, book)
		});
		if (!made.ok) throw new Error(made.problem.message);
		return made;
	};

	it('says file, digest, dates and rows, and the day until which the log goes, in one step of undo', () => {
		const { workbook, inverse } = entered('base');
		const stops = findQuantity(workbook, 'stops')!;
		expect(stops.source).toBe(
			'stops.csv, SHA-256 ab12, rows of 2026-01-05 to 2026-03-31, covering 2026-01-01 to 2026-03-31, 5 of 5 rows used'
		);
		expect(stops.date).toBe('2026-03-31');
		expect((stops.value as { L1: number }).L1).toBeCloseTo(12.1667, 3);
		const back = applyCommand(workbook, inverse);
		expect(back.ok && back.workbook).toEqual(logBook);
	});

	it('is the note of the change in a scenario', () => {
		const { workbook, inverse } = entered('next');
		expect(findQuantity(workbook, 'stops')!.source).toBeUndefined();
		expect(workbook.scenarios[1]!.changes[0]!.note).toMatch(/^stops.csv, SHA-256 ab12/);
		const back = applyCommand(workbook, inverse);
		expect(back.ok && back.workbook).toEqual(logBook);
	});

	it('keeps what was said of values that stay', () => {
		const at = look(TEXT, {
			columns: logOf(TEXT, {}).columns,
			only: { column: 0, values: ['L1'] },
			covers: 'rows',
			sums: [{ quantity: 'stops', take: 'count', per: 'year' }]
		});
		const book: Workbook = {
			...logBook,
			sheets: logBook.sheets.map((sheet) => ({
				...sheet,
				quantities: sheet.quantities.map((one) =>
					one.name === 'stops' ? { ...one, source: 'counted by hand' } : one
				)
			}))
		};
		const [change] = sourceChanges(source, at, at.changes, () => 2, book);
		expect(change!.before).toBe('counted by hand');
		expect(change!.after).toMatch(/1 of 2 values; other values: counted by hand$/);
	});

	it('is told by a digest as the cryptography of Node finds it', () => {
		for (const length of [0, 1, 55, 56, 63, 64, 65, 1000, 100_003]) {
			const bytes = Uint8Array.from({ length }, (_, i) => (i * 31 + 7) % 256);
			expect(sha256(bytes), `${length} bytes`).toBe(
				createHash('sha256').update(bytes).digest('hex')
			);
		}
	});
});

describe('a log that is kept', () => {
	const log = logOf(TEXT, {
		dates: [...byMonth],
		only: { column: 1, values: ['fault'] },
		covers: 'months',
		zeroWithoutRows: true,
		sums: [total]
	});
	const table = keptLogOf('Stops', gridOf(TEXT).head, log)!;
	const reuse = (text: string, book = logBook) => {
		const grid = gridOf(text);
		const { log: proposed } = proposeLog(grid, book);
		return reuseLog(
			table,
			grid.head,
			proposed,
			grid.head.map(() => false),
			book
		);
	};

	it('is summed the same in the next file, whatever the order of its columns', () => {
		expect(reuse(TEXT).log).toEqual(log);
		const moved = 'Stopped (min);Start;Note;reason;LINE\n30;2026-02-01;x;fault;L1\n';
		const { log: next, fresh, gone } = reuse(moved);
		expect([fresh, gone]).toEqual([['Note'], []]);
		expect(next.only).toEqual({ column: 3, values: ['fault'] });
		expect(next.sums).toEqual([{ ...total, column: 0 }]);
		expect(next.columns.map(({ is }) => is)).toEqual([
			'number',
			'date',
			'nothing',
			'member',
			'member'
		]);
	});

	it('asks for what the file or the workbook has no more', () => {
		const short = 'Line;Start;Stopped (min)\nL1;2026-02-01;30\n';
		const { log: next, gone } = reuse(short);
		expect(gone).toEqual(['Reason']);
		expect(asked(short, next)).toMatch(/Lost is per reason/);
		const without = applyCommand(logBook, { kind: 'remove_quantity', name: 'lost', also: true });
		if (!without.ok) throw new Error(without.problem.message);
		expect(reuse(TEXT, without.workbook).log.sums[0]!.quantity).toBeNull();
	});

	it('is written to the file and read back, and follows new names', () => {
		const put = applyCommand(logBook, { kind: 'put_table', table });
		if (!put.ok) throw new Error(put.problem.message);
		const loaded = loadWorkbook(saveWorkbook(put.workbook), 'f.json');
		expect(loaded.ok && loaded.workbook.tables).toEqual([table]);
		const lost = findQuantity(logBook, 'lost')!;
		const renamed = applyCommand(put.workbook, {
			kind: 'replace_quantity',
			name: 'lost',
			quantity: { ...lost, name: 'gone_hours', formula: undefined } as never
		});
		if (!renamed.ok) throw new Error(renamed.problem.message);
		expect(renamed.workbook.tables![0]!.log!.sums[0]!.quantity).toBe('gone_hours');
		expect(
			applyCommand(logBook, {
				kind: 'put_table',
				table: { ...table, columns: [table.columns[0]!] }
			})
		).toMatchObject({ ok: false, problem: { code: 'no-column' } });
	});
});
