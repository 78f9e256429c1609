/** A small workbook for the tests of the screens, and results to go with it. All figures are made up. */
import { layOut, type Layout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { OK } from '$lib/engine/state';
import { VERSION, type Workbook } from '$lib/workbook/schema';

export const shop: Workbook = {
	format: 'metrewright',
	version: VERSION,
	title: 'Test shop',
	invented: true,
	sets: [
		{
			name: 'product',
			label: 'Product',
			plural: 'Products',
			members: [{ id: 'A15', label: 'Pipe of 15 mm' }, { id: 'B22' }]
		},
		{
			name: 'line',
			label: 'Line',
			plural: 'Lines',
			members: [{ id: 'L1' }, { id: 'L2' }]
		}
	],
	relations: [
		{
			name: 'runs',
			sets: ['product', 'line'],
			pairs: [
				['A15', 'L1'],
				['A15', 'L2'],
				['B22', 'L2']
			]
		}
	],
	sheets: [
		{
			title: 'Material',
			headline: 'cost',
			quantities: [
				{
					name: 'price',
					label: 'Resin price',
					unit: 'EUR/kg',
					range: { above: 0 },
					value: 2.02
				},
				{
					name: 'mass',
					label: 'Mass per metre',
					unit: 'kg/m',
					per: ['product'],
					value: { A15: 0.06, B22: 0.1 }
				},
				{
					name: 'cost',
					label: 'Resin cost',
					unit: 'EUR/m',
					per: ['product'],
					formula: 'price * mass'
				}
			]
		},
		{
			title: 'Line',
			quantities: [
				{
					name: 'speed',
					label: 'Line speed',
					unit: 'm/min',
					per: ['product', 'line'],
					in: ['runs'],
					value: { A15: { L1: 30, L2: 28 }, B22: { L2: 20 } }
				},
				{ name: 'night', label: 'Night shift', type: 'yes_no', value: false },
				{
					name: 'main_line',
					label: 'Main line',
					type: { member_of: 'line' },
					value: 'L1'
				},
				{
					name: 'too_cheap',
					label: 'Price is low',
					type: 'yes_no',
					formula: 'price < 1[EUR/kg]',
					caution: { message: 'A price this low has not been offered.' }
				}
			]
		}
	],
	scenarios: [
		{ id: 'base', title: 'Base', parent: null, changes: [] },
		{
			id: 'cheap',
			title: 'Cheap resin',
			parent: 'base',
			changes: [{ quantity: 'price', value: 0.95 }]
		}
	],
	front: {
		subject: 'product',
		first_subject: 'A15',
		facts: [
			{ quantity: 'cost', title: 'resin cost', below: '{mass} of resin' },
			{ quantity: 'price', title: 'Price', of: 'in_hand', beside: 'EUR a kilogram' }
		]
	}
};

export const layout: Layout = layOut(shop);

/** Results with the numbers in the order of the cells; a pair [value, state] is not OK. */
export function resultsOf(
	scenario: string,
	numbers: readonly (number | { readonly state: number })[]
): Results {
	const values = Float64Array.from(numbers, (number) =>
		typeof number === 'number' ? number : NaN
	);
	const states = Uint8Array.from(numbers, (number) =>
		typeof number === 'number' ? OK : number.state
	);
	return { scenario, values, states };
}

//               price  mass     cost, 2.02 €/kg × 0.06 and 0.1  speed  night line too cheap
export const base = resultsOf('base', [2.02, 0.06, 0.1, 0.1212, 0.202, 30, 28, 20, 0, 0, 0]);
//                                         0.95 × 0.06 and 0.1
export const cheap = resultsOf('cheap', [0.95, 0.06, 0.1, 0.057, 0.095, 30, 28, 20, 0, 0, 1]);
