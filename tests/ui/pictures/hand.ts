/**
 * Workbooks small enough to work by hand, with results written down instead of computed: the pictures
 * read results, whoever made them.
 */
import { layOut, membersOf, type Layout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { ABSENT, OK } from '$lib/engine/state';
import type { Open } from '$lib/ui/figure/open';
import { UnitSystem } from '$lib/units/system';
import { VERSION, type Picture, type Quantity, type Workbook } from '$lib/workbook/schema';

/** A number, or a state in its place. */
export type Entry = number | { readonly state: number };
/** By member ids joined with a space; '' for a quantity without axes. Left out: absent. */
export type Written = Readonly<Record<string, Readonly<Record<string, Entry>> | Entry>>;

export function resultsOf(layout: Layout, scenario: string, written: Written): Results {
	const values = new Float64Array(layout.cells).fill(NaN);
	const states = new Uint8Array(layout.cells).fill(ABSENT);
	for (let cell = 0; cell < layout.cells; cell++) {
		const { quantity } = layout.quantities[layout.quantityOfCell[cell] ?? -1]!;
		const own = written[quantity.name];
		const isEntry = typeof own === 'number' || (own !== undefined && 'state' in own);
		const entry = isEntry
			? (own as Entry)
			: (own as Record<string, Entry> | undefined)?.[membersOf(layout, cell).join(' ')];
		if (entry === undefined) continue;
		if (typeof entry === 'number') {
			values[cell] = entry;
			states[cell] = OK;
		} else states[cell] = entry.state;
	}
	return { scenario, values, states };
}

export function openWith(
	workbook: Workbook,
	written: Readonly<Record<string, Written>>,
	selectedScenario = 'base'
): Open {
	const layout = layOut(workbook);
	const results = new Map(
		Object.entries(written).map(([id, own]) => [id, resultsOf(layout, id, own)])
	);
	return {
		...{ layout, results, faults: new Map(), locale: 'en', base: 'base', selectedScenario },
		units: UnitSystem.create([]).system
	};
}

const number = (name: string, unit: string, per: string[] = [], more: Partial<Quantity> = {}) => ({
	...{ name, label: name.replaceAll('_', ' '), unit, per, value: null },
	...more
});

const base = { id: 'base', title: 'Base', parent: null, changes: [] };
const scenario = (id: string, title: string, parent = 'base') => ({
	id,
	title,
	parent,
	changes: []
});

/** Two products; the pipe of one has three layers, that of the other a single one. */
export const pipes: Workbook = {
	format: 'metrewright',
	version: VERSION,
	title: 'Two pipes',
	sets: [
		{
			name: 'product',
			label: 'Product',
			members: [{ id: 'A15', label: 'barrier pipe 15 mm' }, { id: 'B30' }]
		},
		{
			name: 'layer',
			label: 'Layer',
			members: [{ id: 'inner', label: 'inner pipe' }, { id: 'barrier' }, { id: 'cover' }]
		},
		{ name: 'material', label: 'Material', members: [{ id: 'PE' }, { id: 'EVOH' }] },
		{
			name: 'part',
			label: 'Part',
			members: [{ id: 'resin' }, { id: 'scrap' }, { id: 'people' }]
		}
	],
	sheets: [
		{
			title: 'Pipe',
			quantities: [
				number('outside', 'mm', ['product']),
				number('thickness', 'mm', ['product', 'layer']),
				number('mass', 'g/m', ['product', 'layer']),
				number('cost', 'EUR/m', ['product', 'layer']),
				{ ...number('material_of', '1', ['product', 'layer']), type: { member_of: 'material' } },
				number('wall', 'mm', ['product'], { label: 'Wall set-point' }),
				number('minimum', 'mm', ['product'], { label: 'Minimum wall' }),
				number('eccentricity', 'mm', ['product']),
				number('spread', 'mm', ['product']),
				number('part_cost', 'EUR/m', ['product', 'part']),
				number('total', 'EUR/m', ['product'], { label: 'Factory cost per metre' }),
				number('per_coil', 'EUR/coil', ['product'])
			]
		}
	],
	scenarios: [base, scenario('gauged', 'Better gauging')]
};

export const sectionPicture: Extract<Picture, { kind: 'cross_section' }> = {
	kind: 'cross_section',
	title: 'Product',
	subject: 'product',
	layer: 'layer',
	outside_diameter: 'outside',
	thickness: 'thickness',
	mass: 'mass',
	cost: 'cost',
	material: 'material_of',
	wall: 'wall',
	wall_minimum: 'minimum',
	eccentricity: 'eccentricity',
	spread: 'spread',
	roles: { PE: 'resin', EVOH: 'barrier' }
};

export const buildUpPicture: Extract<Picture, { kind: 'build_up' }> = {
	kind: 'build_up',
	title: 'Cost',
	subject: 'product',
	part: 'part',
	quantity: 'part_cost',
	total: 'total',
	per_unit: 'per_coil',
	roles: { resin: 'resin', scrap: 'scrap', people: 'people' }
};

/** A15: 1.3 + 0.1 + 0.2 = 1.6 mm of wall; B30: one layer of 3 mm. */
export const pipeValues: Written = {
	outside: { A15: 15, B30: 30 },
	thickness: { 'A15 inner': 1.3, 'A15 barrier': 0.1, 'A15 cover': 0.2, 'B30 inner': 3 },
	mass: { 'A15 inner': 50, 'A15 barrier': 5, 'A15 cover': 10, 'B30 inner': 240 },
	cost: { 'A15 inner': 0.1, 'A15 barrier': 0.04, 'A15 cover': 0.02, 'B30 inner': 0.48 },
	material_of: { 'A15 inner': 0, 'A15 barrier': 1, 'A15 cover': 0, 'B30 inner': 0 },
	wall: { A15: 1.6, B30: 3 },
	minimum: { A15: 1.5, B30: 2.8 },
	eccentricity: { A15: 0.04, B30: 0.1 },
	spread: { A15: 0.06, B30: 0.1 },
	part_cost: {
		'A15 resin': 0.12,
		'A15 scrap': 0.02,
		'A15 people': 0.06,
		'B30 resin': 0.6,
		'B30 scrap': 0.05,
		'B30 people': 0.15
	},
	total: { A15: 0.2, B30: 0.8 },
	per_coil: { A15: 10, B30: 20 }
};

/** Four years and a case in each of three scenarios. */
export const cases: Workbook = {
	format: 'metrewright',
	version: VERSION,
	title: 'Cases',
	sets: [
		{
			name: 'year',
			label: 'Year of the case',
			number_unit: 'year',
			members: [0, 1, 2, 3, 4].map((at) => ({ id: `y${at}`, label: `year ${at}`, number: at }))
		}
	],
	sheets: [
		{
			title: 'Investment',
			quantities: [
				number('cash', 'EUR', ['year'], { label: 'Cumulative cash' }),
				number('cash_discounted', 'EUR', ['year']),
				number('payback', 'year'),
				number('discounted_payback', 'year'),
				number('outlay', 'EUR'),
				number('npv', 'EUR'),
				number('irr', '%'),
				number('annual', 'EUR/year'),
				number('life', 'year'),
				{
					...{ name: 'small', label: 'Small', type: 'yes_no', formula: 'outlay < 1[EUR]' },
					caution: { message: 'A small outlay says little.' }
				},
				{
					...{ name: 'unlike', label: 'Demand is not the same', type: 'yes_no', per: ['year'] },
					formula: 'demand < 1[m]',
					caution: {
						message: 'No comparison.',
						beside: ['payback', 'npv'],
						mended_by: ['demand', 'outlay', 'unlike']
					}
				},
				number('demand', 'm', ['year'], { label: 'Demand of the year' })
			]
		}
	],
	scenarios: [
		base,
		scenario('line', 'New line'),
		scenario('both', 'Line and rewinder', 'line'),
		scenario('rewinder', 'New rewinder')
	]
};

export const paybackPicture: Extract<Picture, { kind: 'payback' }> = {
	kind: 'payback',
	title: 'Investment',
	year: 'year',
	cumulative: 'cash',
	cumulative_discounted: 'cash_discounted',
	payback: 'payback',
	discounted_payback: 'discounted_payback',
	outlay: 'outlay',
	npv: 'npv',
	irr: 'irr',
	annual_value: 'annual',
	life: 'life'
};
