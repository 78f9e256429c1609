/** What can be chosen of a log, and what a choice makes of the rest. */
import { describe, expect, it } from 'vitest';
import type { Log } from '$lib/exchange/log/log';
import {
	askedAxes,
	divisorOptions,
	freshSum,
	withColumn,
	withDivisor,
	withQuantity,
	withTake
} from '$lib/ui/files/log-options';
import { keptSummary } from '$lib/ui/files/kept-words';
import { logBook } from '../../exchange/log/log-book';

const log: Log = {
	columns: [
		{ is: 'member', of: 'line' },
		{ is: 'date', dayFirst: null },
		{ is: 'number', unit: 'min', decimal: null },
		{ is: 'nothing' }
	],
	scenario: 'base',
	dates: [],
	always: [],
	only: null,
	covers: null,
	zeroWithoutRows: false,
	sums: [{ quantity: null, take: 'sum', column: 2 }]
};
const NOTHING = { is: 'nothing' } as const;

describe('a column', () => {
	it('dates the rows or names a member in place of the one that did', () => {
		const dated = withColumn(log, 3, 'date', NOTHING);
		expect(dated.columns.map(({ is }) => is)).toEqual(['member', 'nothing', 'number', 'date']);
		const named = withColumn(log, 3, 'member line', NOTHING);
		expect(named.columns.map(({ is }) => is)).toEqual(['nothing', 'date', 'number', 'member']);
	});
});

describe('a quantity that is chosen', () => {
	it('is told its month by the date, which leaves no doubt, and asks for the reason', () => {
		const next = withQuantity(log, 0, 'lost', logBook);
		expect(next.dates).toEqual([{ of: 'month', by: 'month' }]);
		const [reason, month] = askedAxes(next, logBook);
		expect([reason!.of, reason!.value, month!.value]).toEqual(['reason', '', 'by month']);
		expect(reason!.options.map(({ value }) => value)).toEqual([
			'',
			'always changeover',
			'always fault',
			'always clean'
		]);
	});
});

describe('a sum', () => {
	it('begins with the only column of numbers', () => {
		expect(freshSum(log)).toEqual({ quantity: null, take: 'sum', column: 2 });
		expect(freshSum({ ...log, columns: [NOTHING] })).toEqual({ quantity: null, take: 'count' });
	});

	it('loses what another way of taking has no use for', () => {
		const divided = withDivisor({ quantity: 'lost', take: 'sum', column: 2 }, '2');
		expect(divided.by_column).toBe(2);
		expect(withTake(divided, 'average')).toEqual({ quantity: 'lost', take: 'average', column: 2 });
		expect(withTake(divided, 'count')).toEqual({ quantity: 'lost', take: 'count', by_column: 2 });
		expect(withTake(withDivisor(divided, 'year'), 'share')).toEqual({
			quantity: 'lost',
			take: 'share',
			column: 2
		});
		expect(divisorOptions(log, withTake(divided, 'average'), []).map(({ value }) => value)).toEqual(
			['', 'hour', 'day', 'week', 'month', 'year']
		);
	});
});

it('a kept log is said by what it is summed into', () => {
	const table = {
		title: 'Stops',
		columns: [{ heading: 'x', is: 'number' as const }],
		log: { scenario: 'base', sums: [{ quantity: 'lost', take: 'sum' as const, column: 0 }] }
	};
	expect(keptSummary(table, logBook)).toBe('a log, summed into Lost');
});
