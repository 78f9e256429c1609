/** Two lines, two products, two months: what is made on which line, sold and stocked; small enough to be solved by hand. */
import { VERSION, type Quantity, type Scenario, type Workbook } from '$lib/workbook/schema';

const quantity = (name: string, rest: Omit<Quantity, 'name' | 'label'>): Quantity => ({
	name,
	label: name,
	...rest
});

const PM = ['product', 'month'];
const LM = ['line', 'month'];

export function smallPlant(change: (workbook: Workbook) => Workbook = (book) => book): Workbook {
	const scenarios: Scenario[] = [
		{ id: 'base', title: 'Base', parent: null, changes: [] },
		{
			id: 'more_hours',
			title: 'More hours',
			parent: 'base',
			changes: [{ quantity: 'hours', value: { L1: { jan: 110 } } }]
		}
	];
	return change({
		format: 'metrewright',
		version: VERSION,
		title: 'Small plant',
		sets: [
			{ name: 'product', label: 'Product', members: [{ id: 'A' }, { id: 'B' }] },
			{ name: 'line', label: 'Line', members: [{ id: 'L1' }, { id: 'L2' }] },
			{ name: 'month', label: 'Month', members: [{ id: 'jan' }, { id: 'feb' }] }
		],
		relations: [
			{
				name: 'runs',
				sets: ['product', 'line'],
				pairs: [
					['A', 'L1'],
					['B', 'L1'],
					['B', 'L2']
				]
			}
		],
		sheets: [
			{
				title: 'Given',
				quantities: [
					quantity('speed', { unit: 'm/h', per: ['line'], value: { L1: 10, L2: 5 } }),
					quantity('hours', {
						unit: 'h',
						per: LM,
						value: { L1: { jan: 100, feb: 100 }, L2: { jan: 100, feb: 100 } }
					}),
					quantity('demand', {
						unit: 'm',
						per: PM,
						value: { A: { jan: 600, feb: 700 }, B: { jan: 600, feb: 1200 } }
					}),
					quantity('margin', { unit: 'EUR/m', per: ['product'], value: { A: 3, B: 2 } }),
					quantity('holding', { unit: 'EUR/m', value: 0.1 })
				]
			},
			{
				title: 'Decided',
				quantities: [
					quantity('made', {
						unit: 'm',
						per: ['product', 'line', 'month'],
						in: ['runs'],
						range: { min: 0 }
					}),
					quantity('sold', { unit: 'm', per: PM, range: { min: 0 } }),
					quantity('stock', { unit: 'm', per: PM, range: { min: 0 } }),
					quantity('hour_value', { unit: 'EUR/h', per: LM })
				]
			},
			{
				title: 'Required',
				quantities: [
					quantity('planned_hours', {
						unit: 'h',
						per: LM,
						formula: 'SUM(made over product) / speed'
					}),
					quantity('hours_hold', { type: 'yes_no', per: LM, formula: 'planned_hours <= hours' }),
					quantity('stock_holds', {
						type: 'yes_no',
						per: PM,
						formula: 'stock <= stock[month - 1 else 0] + SUM(made over line) - sold'
					}),
					quantity('sold_holds', { type: 'yes_no', per: PM, formula: 'sold <= demand' }),
					quantity('contribution', {
						unit: 'EUR',
						formula:
							'SUM(sold * margin over product × month) - SUM(stock * holding over product × month)'
					})
				]
			}
		],
		scenarios,
		programmes: [
			{
				name: 'allocation',
				title: 'Who makes what',
				maximise: 'contribution',
				decisions: ['made', 'sold', 'stock'],
				constraints: ['hours_hold', 'stock_holds', 'sold_holds'],
				shadow_prices: { hour_value: 'hours_hold' }
			}
		]
	});
}

/** The workbook with one quantity written otherwise. */
export const withQuantity =
	(name: string, rest: Partial<Quantity>) =>
	(workbook: Workbook): Workbook => ({
		...workbook,
		sheets: workbook.sheets.map((sheet) => ({
			...sheet,
			quantities: sheet.quantities.map((one) => (one.name === name ? { ...one, ...rest } : one))
		}))
	});
