/** The item list of a plant as its own programs write it out: a row an item, twelve columns, other prices and metres. */
import { findQuantity, findSet } from '$lib/workbook/lookup';
import type { Scalar, Workbook } from '$lib/workbook/schema';
import { valueAt } from '$lib/workbook/values';

/** Inputs by item, with the ratio to what stands there. */
const COLUMNS: readonly (readonly [quantity: string, ratio: number])[] = [
	['pipe_of_item', 1],
	['length_of_item', 1],
	['item_demand', 1.03],
	['own_packaging', 1.02],
	['own_coils_per_pallet', 1],
	['own_list_price', 1.02],
	['customer_print', 1],
	['customer_label', 1],
	['customer_of_item', 1]
];

export function itemTable(workbook: Workbook): string {
	const items = findSet(workbook, 'item')?.members ?? [];
	const columns = COLUMNS.flatMap(([name, ratio]) => {
		const quantity = findQuantity(workbook, name);
		return quantity ? [{ quantity, ratio }] : [];
	});
	const head = [
		...['Item', ...columns.map(({ quantity }) => heading(quantity.label, quantity.unit))],
		...['Drawing', 'Shelf']
	];
	const rows = items.map(({ id }, at) => [
		id,
		...columns.map(({ quantity, ratio }) => cell(valueAt(quantity.value, [id]), ratio)),
		...[`D-${1000 + at}`, `S${at % 40}`]
	]);
	return [head, ...rows].map((row) => row.join(';')).join('\n');
}

const heading = (label: string, unit: string | undefined): string =>
	unit === undefined || unit === '1' ? label : `${label} (${unit})`;

function cell(value: Scalar | undefined, ratio: number): string {
	if (typeof value === 'number') return String(Number((value * ratio).toPrecision(6)));
	return value === undefined || value === null ? '' : String(value);
}
