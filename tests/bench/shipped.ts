/** The workbook that everything is measured on, and the edits that are made in it. */
import { readFileSync } from 'node:fs';
import type { Command } from '$lib/workbook/commands';
import { loadWorkbook } from '$lib/workbook/load';
import type { Workbook } from '$lib/workbook/schema';
import { copyId, grow } from './grow';

/** From the folder of the project, where the bench is run. */
const FILE = 'scenarios/marram-coil-works.json';

export function openShipped(): Workbook {
	const opened = loadWorkbook(readFileSync(FILE, 'utf8'), FILE);
	if (!opened.ok) throw new Error(opened.problem.line);
	return opened.workbook;
}

const SHARED_OUT = ['contract_minimum', 'stock_max', 'made', 'sold', 'stock'];

/** So many times the pipes on the same lines, each with its items, and no more metres than before. */
export function grownPlant(times: number): Workbook {
	const pipes = grow(openShipped(), 'product', times, SHARED_OUT);
	const grown = grow(pipes, 'item', times, ['item_demand']);
	const copyOf = (item: string) => Number(/_(\d+)$/.exec(item)?.[1] ?? 1);
	return {
		...grown,
		sheets: grown.sheets.map((sheet) => ({
			...sheet,
			quantities: sheet.quantities.map((quantity) =>
				quantity.name === 'pipe_of_item'
					? {
							...quantity,
							value: Object.fromEntries(
								Object.entries(quantity.value as Record<string, string>).map(([item, pipe]) => [
									item,
									copyId(pipe, copyOf(item))
								])
							)
						}
					: quantity
			)
		}))
	};
}

export interface Edit {
	readonly title: string;
	readonly quantity: string;
	readonly at: readonly string[];
	/** Another value each time, close to the shipped one. */
	value(turn: number): number;
}

export const EDITS: readonly Edit[] = [
	{
		title: 'price of a resin',
		quantity: 'main_price',
		at: ['PEXB'],
		value: (turn) => 2.02 + 0.001 * (1 + (turn % 97))
	},
	{
		title: 'speed ratio',
		quantity: 'speed_ratio',
		at: [],
		value: (turn) => 93 - 0.01 * (1 + (turn % 97))
	}
];

export const commandOf = (edit: Edit, turn: number): Command => ({
	kind: 'set_inputs',
	scenario: 'base',
	entries: [{ quantity: edit.quantity, at: edit.at, value: edit.value(turn) }]
});
