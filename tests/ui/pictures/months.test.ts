/** A result by month: sums of a year and of the year so far, closed months, what it is measured against. Worked out by hand. */
import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { monthsOf, type MonthsPicture } from '$lib/ui/pictures/months/months';
import {
	monthsLine,
	monthsSummary,
	monthsTable,
	monthsTitle
} from '$lib/ui/pictures/months/months-words';
import { findProblems } from '$lib/workbook/consistency';
import { monthId, monthNumber } from '$lib/workbook/months';
import { VERSION, type Workbook } from '$lib/workbook/schema';

const first = monthNumber('2026-11')!;
const ids = Array.from({ length: 16 }, (_, i) => monthId(first + i));
const picture: MonthsPicture = {
	...{ kind: 'months', title: 'Months', period: 'period', closed: 'closed' },
	...{ results: ['ebit', 'stock'], added: ['ebit'], planned_on_close: 'anew' }
};
const byMonth = <T>(value: (i: number) => T) =>
	Object.fromEntries(ids.map((id, i) => [id, value(i)]));
const workbook: Workbook = {
	format: 'metrewright',
	version: VERSION,
	title: 'Months',
	sets: [
		{
			...{ name: 'period', label: 'Dated month', time: 'month' },
			members: ids.map((id) => ({ id, ...(id === '2027-02' && { label: 'February 2027' }) }))
		}
	],
	sheets: [
		{
			title: 'Result',
			quantities: [
				// 1 to 16 kEUR; from January to December 2027 stand 3 to 14.
				{
					name: 'ebit',
					label: 'EBIT',
					unit: 'EUR',
					per: ['period'],
					value: byMonth((i) => (i + 1) * 1000)
				},
				{
					name: 'stock',
					label: 'Stock',
					unit: 'm',
					per: ['period'],
					value: byMonth((i) => 10 * i)
				},
				{ name: 'anew', label: 'Planned anew', type: 'yes_no', value: false },
				{
					name: 'closed',
					label: 'Closed',
					type: 'yes_no',
					per: ['period'],
					value: byMonth((i) => i < 4)
				}
			]
		}
	],
	scenarios: [
		{ id: 'base', title: 'Base', parent: null, changes: [] },
		{
			...{ id: 'dear', title: 'Dear', parent: 'base' },
			changes: [
				{ quantity: 'ebit', value: { '2027-02': 3500, '2027-03': 6000 } },
				{ quantity: 'anew', value: true }
			]
		}
	],
	pictures: [picture]
};
const model = Model.open(workbook);
const source = (id: string) => ({ layout: model.layout, results: model.results(id), faults: [] });
const inBase = (result: string) =>
	monthsOf({ picture, hand: source('base'), reference: null, result });
const inDear = () =>
	monthsOf({
		...{ picture, hand: source('dear'), result: 'ebit' },
		reference: { title: 'Base', source: source('base') }
	});
/** With plain room before units. */
const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const told = (months: ReturnType<typeof inBase>) => ({
	months,
	...{ scale: { factor: 1, unit: 'EUR' }, locale: 'en' }
});

describe('the year by month', () => {
	it('adds up the year so far and whole years, of what adds up', () => {
		expect(inBase('ebit')).toMatchObject({
			// January and February 2027: 3,000 and 4,000.
			toDate: { here: 7000, there: null, month: 'February 2027' },
			years: [{ year: 2027, here: 102_000, there: null }]
		});
		expect(inBase('stock')).toMatchObject({ toDate: null, years: [] });
	});

	it('says which months are closed, and what stood a year before', () => {
		const { months } = inBase('ebit');
		expect(months.filter(({ isClosed }) => isClosed).map(({ id }) => id)).toEqual([
			...['2026-11', '2026-12', '2027-01', '2027-02']
		]);
		expect(months[12]!.before?.value).toBe(1000);
		expect(months[11]!.before).toBeNull();
	});

	it('is told against what it is measured against', () => {
		const dear = told(inDear());
		expect(plain(monthsTitle(dear))).toBe('EBIT. Full year 2027: 102,500 EUR, +500 against Base');
		expect(plain(monthsLine(dear))).toContain(
			'Year to date, February 2027: 6,500 EUR, −500 against Base'
		);
		expect(plain(monthsTitle(told(inBase('ebit'))))).toBe('EBIT. Full year 2027: 102,000 EUR');
		expect(plain(monthsTitle(told(inBase('stock'))))).toMatch(
			/^Stock\. Between 0 EUR in 2026-11 and 150/
		);
		expect(plain(monthsSummary(dear))).toContain('February 2027: 3,500 EUR.');
	});

	it('says from where on months are planned on the stock of the last close', () => {
		expect(plain(monthsLine(told(inDear())))).toContain(
			'2027-01 to February 2027 as closed, 2027-03 onward planned on the stock at the end of February 2027'
		);
		expect(inBase('ebit').onClose).toBeNull();
		const wrong = findProblems({
			...workbook,
			pictures: [{ ...picture, planned_on_close: 'closed' }]
		});
		expect(JSON.stringify(wrong)).toContain('closed does not say yes or no once for all months');
	});

	it('has all of it in its table', () => {
		const { columns, rows } = monthsTable({ months: inDear() });
		expect(columns).toEqual([
			...['Month', 'Closed', 'EBIT, EUR', 'Base, EUR', 'Difference, EUR', 'Year before, EUR']
		]);
		expect(rows[3]).toEqual(['February 2027', 'yes', 3500, 4000, -500, '']);
		expect(rows[12]).toEqual(['2027-11', 'no', 13000, 13000, 0, 1000]);
	});

	it('leaves out a sum of which a month has no value', () => {
		const gap = Model.open({
			...workbook,
			scenarios: [
				workbook.scenarios[0]!,
				{
					...{ id: 'gap', title: 'Gap', parent: 'base' },
					changes: [{ quantity: 'ebit', value: { '2027-06': null } }]
				}
			]
		});
		const hand = { layout: gap.layout, results: gap.results('gap'), faults: [] };
		const months = monthsOf({ picture, hand, reference: null, result: 'ebit' });
		expect(months.years).toEqual([]);
		expect(months.toDate?.here).toBe(7000);
	});
});

describe('a picture of months', () => {
	const problems = (change: Partial<MonthsPicture>) =>
		findProblems({ ...workbook, pictures: [{ ...picture, ...change }] }).map(
			({ message }) => message
		);
	it('is checked against what it names', () => {
		expect(problems({})).toEqual([]);
		expect(problems({ results: ['closed', 'nothing'], added: ['stock'] })).toEqual(
			expect.arrayContaining([expect.stringContaining('nothing'), 'stock is none of the results'])
		);
		expect(problems({ closed: 'stock' })).toEqual(['stock does not say yes or no for each period']);
	});
});
