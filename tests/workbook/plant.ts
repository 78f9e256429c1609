/** A small invented plant: two pipes, two lines, enough of everything that a workbook can hold. */
import { VERSION, type Quantity, type Workbook } from '$lib/workbook/schema';
import { applyCommand, type Command } from '$lib/workbook/commands';
import { findQuantity } from '$lib/workbook/lookup';

export const plant: Workbook = {
	format: 'metrewright',
	version: VERSION,
	title: 'Two-line shop',
	invented: true,
	units: [{ symbol: 'bundle', label: 'Bundle of pipes' }],
	sets: [
		{
			name: 'product',
			label: 'Product',
			members: [{ id: 'PX15B', label: 'Pipe 15 with barrier' }, { id: 'PX20' }]
		},
		{
			name: 'line',
			label: 'Line',
			members: [{ id: 'L1' }, { id: 'L2' }],
			present: 'installed'
		},
		{ name: 'pattern', label: 'Shift pattern', members: [{ id: '5x24' }, { id: '7x24' }] },
		{ name: 'limit', label: 'Limit', members: [{ id: 'extruder' }, { id: 'cooling' }] },
		{
			name: 'year',
			label: 'Year',
			number_unit: 'year',
			spans: '2 year',
			members: [
				{ id: 'y0', number: 0 },
				{ id: 'y1', number: 1 }
			]
		}
	],
	relations: [
		{
			name: 'runs',
			sets: ['product', 'line'],
			pairs: [
				['PX15B', 'L1'],
				['PX15B', 'L2'],
				['PX20', 'L1']
			]
		}
	],
	sheets: [
		{
			title: 'Material',
			headline: 'resin_price',
			quantities: [
				{ name: 'resin_price', label: 'Resin price', unit: 'EUR/kg', value: 1.95 },
				{
					name: 'mass_per_metre',
					label: 'Mass per metre',
					unit: 'kg/m',
					per: ['product'],
					value: { PX15B: 0.08, PX20: 0.13 }
				},
				{
					name: 'material_cost',
					label: 'Material cost',
					unit: 'EUR/m',
					per: ['product'],
					formula: 'mass_per_metre * resin_price'
				}
			]
		},
		{
			title: 'Line',
			quantities: [
				{
					name: 'installed',
					label: 'Installed',
					type: 'yes_no',
					per: ['line'],
					value: { L1: true, L2: true }
				},
				{
					name: 'shift_pattern',
					label: 'Pattern of the line',
					type: { member_of: 'pattern' },
					per: ['line'],
					value: { L1: '5x24', L2: '7x24' }
				},
				{
					name: 'top_speed',
					label: 'Top speed',
					unit: 'm/min',
					per: ['product', 'line'],
					in: ['runs'],
					value: { PX15B: { L1: 23, L2: 25 }, PX20: { L1: 18 } },
					range: { above: 0, max: 60 }
				},
				{
					name: 'speed_limit',
					label: 'Speed limit',
					unit: 'm/min',
					per: ['limit', 'line'],
					formula: { by: 'limit', cases: { extruder: 'input', cooling: '20[m/min]' } },
					value: { extruder: { L1: 24, L2: 26 } }
				},
				{
					name: 'setup_time',
					label: 'Set-up time',
					unit: 'h',
					per: ['from: product', 'to: product'],
					value: { PX15B: { PX20: 2 }, PX20: { PX15B: 1.5 } }
				},
				{
					name: 'lot_size',
					label: 'Lot size',
					unit: 'm',
					fixed: true,
					value: 20000
				},
				{
					name: 'first_line_speed',
					label: 'Speed on the first line',
					unit: 'm/min',
					per: ['product'],
					formula: "MIN(top_speed[L1] * 1; speed_limit['cooling'; L1])"
				}
			]
		}
	],
	scenarios: [
		{ id: 'base', title: 'Base', parent: null, changes: [] },
		{
			id: 'weekend',
			title: 'Weekend crew',
			parent: 'base',
			changes: [
				{ quantity: 'shift_pattern', value: { L1: '7x24' }, note: 'agreed with the works council' }
			]
		},
		{
			id: 'dear_resin',
			title: 'Dearer resin',
			parent: 'weekend',
			against: 'weekend',
			changes: [
				{ quantity: 'resin_price', value: 2.1 },
				{ quantity: 'top_speed', value: { PX15B: { L1: 21 } } }
			]
		}
	],
	front: {
		subject: 'product',
		first_subject: 'PX15B',
		facts: [{ quantity: 'material_cost', title: 'A metre, at {resin_price}' }]
	},
	pictures: [
		{
			kind: 'build_up',
			title: 'Where the speed goes',
			subject: 'line',
			part: 'limit',
			quantity: 'speed_limit',
			total: 'material_cost',
			roles: { extruder: 'plant', cooling: 'energy' }
		}
	]
};

export const quantityOf = (workbook: Workbook, name: string): Quantity => {
	const quantity = findQuantity(workbook, name);
	if (!quantity) throw new Error(`no quantity ${name}`);
	return quantity;
};

/** The workbook after a command that must succeed. */
export function after(workbook: Workbook, command: Command): Workbook {
	const result = applyCommand(workbook, command);
	if (!result.ok) throw new Error(result.problem.message);
	return result.workbook;
}

/** Why a command is refused; it must be. */
export function refusal(workbook: Workbook, command: Command) {
	const result = applyCommand(workbook, command);
	if (result.ok) throw new Error(`${command.kind} was not refused`);
	return result.problem;
}

/** The plant with one quantity changed or added. */
export function withQuantity(quantity: Partial<Quantity> & { name: string }): Workbook {
	let found = false;
	const sheets = plant.sheets.map((sheet) => ({
		...sheet,
		quantities: sheet.quantities.map((one) => {
			if (one.name !== quantity.name) return one;
			found = true;
			return { ...one, ...quantity };
		})
	}));
	if (found) return { ...plant, sheets };
	const added = { title: 'Added', quantities: [{ label: quantity.name, ...quantity }] };
	return { ...plant, sheets: [...plant.sheets, added] };
}
