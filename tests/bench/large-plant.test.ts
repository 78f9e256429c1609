import { expect, it } from 'vitest';
import { findProblems } from '$lib/workbook/consistency';
import { findQuantity, findSet } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';
import { itemTable } from './item-table';
import { largePlant } from './large-plant';
import { openShipped } from './shipped';

const large = largePlant();
const members = (set: string) => (findSet(large, set)?.members ?? []).map(({ id }) => id);
const entries = (workbook: Workbook, name: string) =>
	flatten(findQuantity(workbook, name)?.value).map(({ at, value }) => ({ at, value }));
const sum = (workbook: Workbook, name: string) =>
	entries(workbook, name).reduce((all, { value }) => all + Number(value), 0);

it('has 60 pipes, 300 items, 12 lines and the shipped scenarios, without a fault', () => {
	expect([members('product').length, members('item').length, members('line').length]).toEqual([
		60, 300, 12
	]);
	expect(large.scenarios.map(({ id }) => id)).toEqual(openShipped().scenarios.map(({ id }) => id));
	expect(findProblems(large)).toEqual([]);
});

it('sells five items of each pipe, and 1.4 times the metres in all', () => {
	const items = entries(large, 'pipe_of_item');
	for (const pipe of members('product'))
		expect(items.filter(({ value }) => value === pipe)).toHaveLength(5);
	expect(sum(large, 'item_demand') / sum(openShipped(), 'item_demand')).toBeCloseTo(1.4, 2);
});

it('gives each pipe on a line a place of its own in the round', () => {
	const places = entries(large, 'campaign_order').map(({ at, value }) => `${at[1]} ${value}`);
	expect(new Set(places).size).toBe(places.length);
});

it('comes out the same for the same seed, and otherwise for another', () => {
	expect(largePlant()).toEqual(large);
	expect(entries(largePlant(2), 'item_demand')).not.toEqual(entries(large, 'item_demand'));
});

it('writes its items out as a table of twelve columns', () => {
	const lines = itemTable(large).split('\n');
	expect(lines).toHaveLength(301);
	for (const line of lines) expect(line.split(';')).toHaveLength(12);
});
