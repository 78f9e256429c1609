/** Two lines, three months, two patterns and two scenarios, with figures written down. All are made up. */
import { openWith, type Written } from './hand';
import type { Open } from '$lib/ui/figure/open';
import { VERSION, type Picture, type Quantity, type Workbook } from '$lib/workbook/schema';

const number = (name: string, unit: string, per: string[] = [], label = name): Quantity => ({
	...{ name, label, unit, per, value: null }
});

export const small: Workbook = {
	format: 'metrewright',
	version: VERSION,
	title: 'Two lines',
	sets: [
		{ name: 'line', label: 'Line', plural: 'Lines', members: [{ id: 'L1' }, { id: 'L2' }] },
		{ name: 'stage', label: 'Stage', plural: 'Stages', members: [{ id: 'rewind' }] },
		{
			name: 'month',
			label: 'Month',
			members: ['Jan', 'Feb', 'Mar'].map((id, i) => ({ id, number: i + 1 }))
		},
		{
			name: 'pattern',
			label: 'Shift pattern',
			members: [{ id: '5x24' }, { id: '7x24' }]
		},
		{
			name: 'hour',
			label: 'Hour',
			members: Array.from({ length: 48 }, (_, i) => ({ id: `h${i}` }))
		}
	],
	sheets: [
		{
			title: 'Loads',
			quantities: [
				number('line_load', '%', ['line', 'month']),
				number('line_year', '%', ['line']),
				number('line_short', 'h', ['line', 'month']),
				number('stage_load', '%', ['stage', 'month']),
				number('freed', 'h/year', [], 'Hours freed'),
				number('ebit_gained', 'EUR/year', [], 'EBIT'),
				{
					...{ name: 'unfair', label: 'Other demand', type: 'yes_no', formula: 'freed < 0[h]' },
					caution: { message: 'No comparison.', beside: ['ebit_gained'] }
				},
				number('price', 'EUR/h'),
				{ ...number('worked', '1', ['pattern', 'hour']), type: 'yes_no' },
				number('hours', 'h/year', ['pattern'], 'Scheduled hours'),
				number('metres', 'Mm/year', ['pattern'], 'Good metres'),
				number('cost', 'EUR/m', ['pattern'], 'Conversion cost'),
				{ ...number('limits', '1', ['pattern']), type: { member_of: 'stage' } },
				number('sales', 'EUR/year', [], 'Revenue'),
				number('labour', 'EUR/year', [], 'Shift labour'),
				number('rent', 'EUR/year', [], 'Rent'),
				number('ebit', 'EUR/year', [], 'EBIT')
			]
		}
	],
	scenarios: [
		{ id: 'base', title: 'Base', parent: null, changes: [] },
		{ id: 'weekends', title: 'Weekends', parent: 'base', note: 'Crews on L1.', changes: [] },
		{ id: 'line', title: 'New line', parent: 'base', changes: [] },
		{ id: 'buy', title: 'Buy in', parent: 'base', changes: [] },
		{ id: 'nothing', title: 'Paint the hall', parent: 'base', changes: [] }
	],
	pictures: [
		{
			kind: 'capacity',
			title: 'Capacity',
			month: 'month',
			loads: [
				{ load: 'line_load', load_of_year: 'line_year', hours_short: 'line_short' },
				{ load: 'stage_load' }
			]
		},
		{
			kind: 'ways_out',
			title: 'Ways out',
			hours_freed: 'freed',
			earned: 'ebit_gained',
			price_of_hour: 'price'
		},
		{
			kind: 'patterns',
			title: 'Shifts',
			pattern: 'pattern',
			hour: 'hour',
			worked: 'worked',
			metres: 'metres',
			cost: 'cost',
			rows: ['hours', 'metres', 'cost', 'limits'],
			by_scenario: ['ebit']
		},
		{
			kind: 'bridge',
			title: 'Bridge',
			total: 'ebit',
			added: ['sales'],
			taken_off: ['labour', 'rent']
		}
	]
};

export const pictureOf = <K extends Picture['kind']>(kind: K): Extract<Picture, { kind: K }> =>
	small.pictures!.find(
		(picture): picture is Extract<Picture, { kind: K }> => picture.kind === kind
	)!;

export const loads: Written = {
	line_load: {
		'L1 Jan': 80,
		'L1 Feb': 120,
		'L1 Mar': 130,
		'L2 Jan': 90,
		'L2 Feb': 110,
		'L2 Mar': 70
	},
	line_year: { L1: 110, L2: 90 },
	line_short: {
		'L1 Jan': 0,
		'L1 Feb': 40,
		'L1 Mar': 60,
		'L2 Jan': 0,
		'L2 Feb': 20,
		'L2 Mar': 0
	},
	stage_load: { 'rewind Jan': 95, 'rewind Feb': 105, 'rewind Mar': 60 }
};

export const way = (freed: number, ebit: number, price: number): Written => ({
	freed,
	ebit_gained: ebit,
	price
});

export const shifts: Written = {
	hours: { '5x24': 5800, '7x24': 8200 },
	metres: { '5x24': 50, '7x24': 65 },
	cost: { '5x24': 0.06, '7x24': 0.0585 },
	limits: { '5x24': 0, '7x24': 0 },
	// One day round the clock, then from hour 6 to 12 and from 18 on.
	worked: Object.fromEntries(
		['5x24', '7x24'].flatMap((id) =>
			Array.from({ length: 48 }, (_, i) => [
				`${id} h${i}`,
				i < 24 || (i >= 30 && i < 36) || i >= 42 ? 1 : 0
			])
		)
	)
};

/** 1,000 − 300 − 200 = 500 thousand. */
export const result = (
	sales: number,
	labour: number,
	ebit = sales - labour - 200_000
): Written => ({
	...{ sales, labour, rent: 200_000, ebit }
});

export const opened = (
	written: Readonly<Record<string, Written>>,
	selectedScenario = 'base'
): Open => openWith(small, written, selectedScenario);
