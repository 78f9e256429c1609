/** A small plant with lines, reasons and months, for logs that are summed into it. All figures are made up. */
import { VERSION, type Workbook } from '$lib/workbook/schema';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

export const logBook: Workbook = {
	format: 'metrewright',
	version: VERSION,
	title: 'Logs',
	invented: true,
	sets: [
		{ name: 'line', label: 'Line', members: [{ id: 'L1', label: 'Line one' }, { id: 'L2' }] },
		{
			name: 'reason',
			label: 'Reason',
			members: [{ id: 'changeover' }, { id: 'fault' }, { id: 'clean' }]
		},
		{
			name: 'month',
			label: 'Month',
			spans: '1 year',
			members: MONTHS.map((id, at) => ({ id, number: at + 1 }))
		},
		{
			name: 'weekday',
			label: 'Weekday',
			members: ['Mo', 'Tu', 'We', 'Th', 'Fr', 'Sa', 'Su'].map((id) => ({ id }))
		}
	],
	sheets: [
		{
			title: 'Lost time',
			quantities: [
				{ name: 'lost', label: 'Lost', unit: 'h', per: ['line', 'reason', 'month'] },
				{ name: 'lost_rate', label: 'Lost a year', unit: 'h/year', per: ['line', 'reason'] },
				{ name: 'stops', label: 'Stops', unit: '1/year', per: ['line'], value: { L1: 10, L2: 20 } },
				{ name: 'repair', label: 'Time to repair', unit: 'h', per: ['line'], range: { min: 0 } },
				{ name: 'reason_share', label: 'Share of the reason', unit: '%', per: ['line', 'reason'] },
				{ name: 'lost_by_day', label: 'Lost by weekday', unit: 'min', per: ['weekday'] },
				{ name: 'all', label: 'All lost', unit: 'h', formula: 'SUM(lost)' }
			]
		}
	],
	scenarios: [
		{ id: 'base', title: 'Today', parent: null, changes: [] },
		{ id: 'next', title: 'Next', parent: 'base', changes: [] }
	]
};
