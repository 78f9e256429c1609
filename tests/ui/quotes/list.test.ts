/** All quotes: found, counted, and what they come to. */
import { describe, expect, it } from 'vitest';
import type { QuotePicture } from '$lib/workbook/quote-schema';
import type { KeptQuote } from '$lib/workbook/schema';
import {
	hitRates,
	hoursByMonth,
	lastVersions,
	openValue,
	rowOf,
	rowsShown
} from '$lib/ui/quotes/list';

const picture = {
	margin: 'margin',
	hours: 'hours',
	hour_value: { value: 'v', cost: 'c', chosen: 'month' },
	offer: {
		...{ customer: 'customer', goods: ['item'], counts: [], prices: [] },
		total: { title: 'Value', quantity: 'value' }
	}
} as unknown as QuotePicture;

const quote = (
	id: string,
	head: Partial<KeptQuote>,
	figures: Record<string, number | string>
): KeptQuote => ({
	...{ id, number: `28-AB-${id}`, version: 1, state: 'sent', date: '2028-03-01' },
	...head,
	items: [
		{
			id: 'one',
			entries: [],
			grounds: {
				...{ date: '2028-03-01', of: 'Base' },
				sets: [{ name: 'buyers', members: [{ id: 'Sk', label: 'Skerrow' }] }],
				figures: Object.entries(figures).map(([name, value]) => ({
					...{ name, label: name, value },
					...(name === 'value' && { unit: 'EUR' }),
					...(name === 'customer' && { member_of: 'buyers' })
				}))
			}
		}
	]
});
const TODAY = '2028-03-20';
const rows = [
	quote(
		'001',
		{ state: 'won' },
		{ value: 100, margin: 4, hours: 10, month: 'Mar', customer: 'Sk' }
	),
	quote(
		'002',
		{ state: 'lost', reason: 'price' },
		{ value: 50, margin: 4.9, hours: 5, month: 'Mar' }
	),
	quote('003', { valid_until: '2028-03-19' }, { value: 70, margin: 22, hours: 7, month: 'Mar' }),
	quote('004', { date: '2028-03-04' }, { value: 80.5, margin: -1, hours: 8, month: 'Apr' }),
	quote(
		'004',
		{ version: 2, date: '2028-03-09' },
		{ value: 90.5, margin: 1, hours: 9, month: 'Apr' }
	),
	quote('005', { filed: true, state: 'lost' }, { value: 9, margin: 12, hours: 1, month: 'Apr' })
].map((one, i) => rowOf({ ...one, id: `q${i}` }, picture, undefined, TODAY));

describe('the list of quotes', () => {
	it('reads value, margin, hours, month and customer from what stands', () => {
		expect(rows[0]).toMatchObject({ value: 100, money: 'EUR', margin: 4, customer: 'Skerrow' });
		expect(rows[2]!.isExpired).toBe(true);
	});

	it.each([
		['', 'all', ['28-AB-004, version 2', '28-AB-004', '28-AB-003', '28-AB-002', '28-AB-001']],
		['skerrow', 'all', ['28-AB-001']],
		['price', 'lost', ['28-AB-002']],
		['', 'open', ['28-AB-004, version 2', '28-AB-004']],
		['', 'expired', ['28-AB-003']],
		['', 'filed', ['28-AB-005']],
		['ab-004 version', 'all', ['28-AB-004, version 2']],
		['nobody', 'all', []]
	] as const)('shows for "%s" and %s: %j', (search, shown, names) =>
		expect(rowsShown(rows, search, shown).map(({ name }) => name)).toEqual(names)
	);

	it('counts each number once, by its last version', () => {
		expect(lastVersions(rows)).toHaveLength(5);
		// Run out, put away and decided ones are not open.
		expect(openValue(rows)).toEqual({
			sums: [{ money: 'EUR', value: 90.5, count: 1 }],
			without: 0
		});
	});

	it('does not add one currency to another, and says how many have no value', () => {
		const pounds = { ...rows[4]!, number: 'p', money: 'GBP', value: 20 };
		const unknown = { ...rows[4]!, number: 'u', money: '', value: null };
		expect(openValue([...rows, pounds, unknown])).toEqual({
			sums: [
				{ money: 'EUR', value: 90.5, count: 1 },
				{ money: 'GBP', value: 20, count: 1 }
			],
			without: 1
		});
	});

	it('tells won out of won and lost by margin, put away ones included', () => {
		expect(hitRates(rows).filter(({ won, lost }) => won + lost > 0)).toEqual([
			{ from: 0, to: 5, won: 1, lost: 1 },
			{ from: 10, to: 15, won: 0, lost: 1 }
		]);
	});

	it('adds the hours of open and won quotes by month, in the order of the months', () => {
		expect(hoursByMonth(rows, ['Jan', 'Mar', 'Apr'])).toEqual([
			{ month: 'Mar', open: 0, won: 10 },
			{ month: 'Apr', open: 9, won: 0 }
		]);
	});
});

describe('a quote of several items', () => {
	const own = { ...picture, tender: { result: 'result', net: 'net' } } as unknown as QuotePicture;
	const one = quote(
		'009',
		{},
		{ value: 100, hours: 10, month: 'Mar', result: 10, net: 90, item: 'A' }
	);
	const two = quote(
		'010',
		{},
		{ value: 50, hours: 6, month: 'Apr', result: -1, net: 45, item: 'B' }
	);
	const both: KeptQuote = {
		...one,
		items: [
			one.items[0]!,
			{
				...two.items[0]!,
				id: 'two',
				calls: [
					{ month: '2028-03', amount: 100 },
					{ month: '2028-05', amount: 200 }
				]
			}
		]
	};
	const row = rowOf(both, own, undefined, TODAY, ['Jan', 'Feb', 'Mar', 'Apr', 'May']);

	it('comes to the sum of its items, by the margin of what stays', () => {
		expect(row).toMatchObject({ value: 150, hours: 16, goods: 'A +1' });
		expect(row.margin).toBeCloseTo((100 * 9) / 135, 9);
		expect(row.found).toContain('b');
	});

	it('takes its hours in the months in which it is called off', () => {
		expect(hoursByMonth([row], ['Jan', 'Mar', 'May'])).toEqual([
			{ month: 'Mar', open: 12, won: 0 },
			{ month: 'May', open: 4, won: 0 }
		]);
	});
});
