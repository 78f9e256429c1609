/** A small workbook with one of each thing that a review speaks of; all figures are made up. */
import { VERSION, type Quantity, type Scenario, type Workbook } from '$lib/workbook/schema';

export const book = (
	quantities: readonly Quantity[],
	scenarios: readonly Scenario[] = []
): Workbook => ({
	format: 'metrewright',
	version: VERSION,
	title: 'To review',
	sets: [
		{
			name: 'line',
			label: 'Line',
			members: ['L1', 'L2', 'L3', 'L4', 'L5'].map((id) => ({ id }))
		}
	],
	sheets: [{ title: 'One', quantities: [...quantities] }],
	scenarios: [{ id: 'base', title: 'Base', parent: null, changes: [] }, ...scenarios],
	front: { facts: [{ quantity: 'result', title: 'Result, {below} below' }] }
});

/** A quantity per line with these values, in their order. */
export const perLine = (name: string, ...values: readonly number[]): Quantity => ({
	...{ name, label: `Label of ${name}`, unit: 'EUR/h', per: ['line'] },
	value: Object.fromEntries(values.map((value, i) => [`L${i + 1}`, value]))
});

export const formula = (name: string, text: string, more: Partial<Quantity> = {}): Quantity => ({
	...{ name, label: `Label of ${name}`, unit: 'EUR/h', formula: text },
	...more
});

export const entered = (name: string, value: number, more: Partial<Quantity> = {}): Quantity => ({
	...{ name, label: `Label of ${name}`, unit: 'EUR/h', value },
	...more
});
