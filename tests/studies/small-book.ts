/** Workbooks of a few quantities for the tests of studies. */
import { VERSION, type Quantity, type Scenario, type Workbook } from '$lib/workbook/schema';

export function book(
	quantities: readonly Omit<Quantity, 'label'>[],
	more: { readonly sets?: Workbook['sets']; readonly scenarios?: readonly Scenario[] } = {}
): Workbook {
	return {
		format: 'metrewright',
		version: VERSION,
		title: 'A small book',
		sets: more.sets ?? [],
		sheets: [
			{
				title: 'One',
				quantities: quantities.map((quantity) => ({ label: quantity.name, ...quantity }))
			}
		],
		scenarios: [
			{ id: 'base', title: 'As it stands', parent: null, changes: [] },
			...(more.scenarios ?? [])
		]
	};
}

export const RESINS: Workbook['sets'] = [
	{ name: 'resin', label: 'Resin', plural: 'Resins', members: [{ id: 'PE' }, { id: 'PX' }] }
];

/** Material cost of a metre of two resins, and what is left of its price. */
export const metre = (scenarios: readonly Scenario[] = []): Workbook =>
	book(
		[
			{ name: 'price', unit: 'EUR/kg', per: ['resin'], value: { PE: 1.5, PX: 2 } },
			{
				name: 'mass',
				unit: 'kg/m',
				per: ['resin'],
				value: { PE: 0.1, PX: 0.05 },
				range: { min: 0, max: 1 }
			},
			{ name: 'cost', unit: 'EUR/m', formula: 'SUM(price * mass over resin)' },
			{ name: 'sales', unit: 'EUR/m', value: 0.4 },
			{ name: 'margin', unit: 'EUR/m', formula: 'sales - cost' },
			{ name: 'gain', unit: 'EUR/m', formula: 'margin - margin[reference]' }
		],
		{ sets: RESINS, scenarios }
	);
