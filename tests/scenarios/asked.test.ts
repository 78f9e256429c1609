/**
 * Questions that are not the plant's own: half the demand, a product given up, a line out, other hours. The plans are made anew,
 * and then no scenario may hold an error or a check that fails, but for what is really wrong and is said.
 */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { Solver } from '$lib/programmes/highs';
import { Memory } from '$lib/programmes/memory';
import { planAll } from '$lib/programmes/plan-all';
import { findQuantity } from '$lib/workbook/lookup';
import type { Scalar } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';
import { enter, openShipped, type Entry } from '../reference/shipped';
import { switchCampaigns } from './campaign-switch';

let solver: Solver;
beforeAll(async () => {
	solver = await Solver.load();
});
afterAll(() => solver.dispose());
const memory = new Memory();

type Entered = (value: Scalar, at: readonly string[]) => Entry[2];

/** What fails after every entered value of a quantity has become another, with the plans made anew. */
function failing(name: string, entered: Entered, campaigns = false): string[] {
	const model = openShipped('marram');
	if (campaigns) switchCampaigns(model, false);
	const values = flatten(findQuantity(model.workbook, name)!.value!);
	enter(model, ...values.map(({ at, value }): Entry => [name, [...at], entered(value, at)]));
	for (const _ of planAll(solver, model, undefined, { staleOnly: true, memory }));
	const failing = model.workbook.scenarios.flatMap(({ id }) => [
		...model.faults(id).map(({ quantity }) => `${quantity} has an error`),
		...model.checks(id).fail.map(({ place }) => place.quantity)
	]);
	return [...new Set(failing)];
}

const times =
	(factor: number): Entered =>
	(value) =>
		Number(value) * factor;
const noneWhere =
	(is: (item: string) => boolean): Entered =>
	(value, [item = '']) =>
		is(item) ? 0 : Number(value);

it.each<readonly [string, string, Entered]>([
	['half the demand', 'item_demand', times(0.5)],
	['twice the demand', 'item_demand', times(2)],
	['a twentieth of the demand', 'item_demand', times(0.05)],
	['without its greatest product', 'item_demand', noneWhere((item) => item.startsWith('PX15B'))],
	['without a whole family', 'item_demand', noneWhere((item) => item.startsWith('PB'))],
	['with one product alone', 'item_demand', noneWhere((item) => !item.startsWith('PX15B'))],
	['two shifts on five days', 'pattern_of_line', () => '2x8x5'],
	['all hours of all days', 'pattern_of_line', () => '7x24'],
	['no scrap in running', 'running_scrap', () => 0],
	['no repairs', 'mttr', () => 0],
	['a list that rises before the prices do', 'list_price', times(1.1)]
])('%s: nothing fails', (_, name, entered) => {
	expect(failing(name, entered)).toEqual([]);
});

it('campaigns chosen, with half the demand: nothing fails', () => {
	expect(failing('item_demand', times(0.5), true)).toEqual([]);
});

it('a line out whose products others run as well: nothing fails', () => {
	expect(failing('line_installed', (value, [line]) => line !== 'L3' && value === true)).toEqual([]);
});

it('a line out that alone runs a product: that is said, and nothing else fails', () => {
	expect(failing('line_installed', (value, [line]) => line !== 'L1' && value === true)).toEqual([
		'has_line'
	]);
});

it('a pipe of the small shop sold below its variable cost is cautioned, and no check fails', () => {
	const model = openShipped('shop');
	enter(model, ['price', ['R16'], 0.05]);
	const { fail, cautions } = model.checks('base');
	expect(fail).toEqual([]);
	expect(cautions.map(({ place }) => [place.quantity, ...place.members])).toContainEqual([
		'sold_below_cost',
		'R16'
	]);
});
