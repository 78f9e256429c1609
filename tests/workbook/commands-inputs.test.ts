import { describe, expect, it } from 'vitest';
import { hasSameStructure } from '$lib/engine/structure';
import { applyCommand, type Command } from '$lib/workbook/commands';
import { changedCells, inputAt } from '$lib/workbook/scenario';
import type { Scalar, Workbook } from '$lib/workbook/schema';
import { valueAt } from '$lib/workbook/values';
import { after, plant, quantityOf, refusal } from './plant';

const set = (
	scenario: string,
	quantity: string,
	at: readonly string[],
	value?: Scalar
): Command => ({
	kind: 'set_inputs',
	scenario,
	entries: [value === undefined ? { quantity, at } : { quantity, at, value }]
});

describe('a value entered', () => {
	it('in the base stands in the quantity, and every scenario that does not change it follows', () => {
		const next = after(plant, set('base', 'resin_price', [], 2.4));
		expect(quantityOf(next, 'resin_price').value).toBe(2.4);
		expect(inputAt(next, 'weekend', 'resin_price', []).value).toBe(2.4);
		expect(inputAt(next, 'dear_resin', 'resin_price', []).value).toBe(2.1);
	});

	it('in a scenario becomes a change of that cell alone', () => {
		const next = after(plant, set('weekend', 'top_speed', ['PX20', 'L1'], 20));
		expect(changedCells(next, 'weekend', 'top_speed')).toEqual([{ at: ['PX20', 'L1'], value: 20 }]);
		expect(quantityOf(next, 'top_speed')).toBe(quantityOf(plant, 'top_speed'));
	});

	it('as nothing lets the cell follow the parent again, and the empty change goes', () => {
		const next = after(plant, set('dear_resin', 'resin_price', []));
		expect(inputAt(next, 'dear_resin', 'resin_price', [])).toEqual({ value: 1.95, from: 'base' });
		expect(next.scenarios[2]?.changes.map(({ quantity }) => quantity)).toEqual(['top_speed']);
	});

	it('as null is cleared, in the base as in a scenario', () => {
		expect(
			quantityOf(after(plant, set('base', 'resin_price', [], null)), 'resin_price').value
		).toBeNull();
		const next = after(plant, set('weekend', 'resin_price', [], null));
		expect(inputAt(next, 'dear_resin', 'resin_price', []).value).toBe(2.1);
		expect(inputAt(next, 'weekend', 'resin_price', [])).toEqual({ value: null, from: 'weekend' });
	});

	it('as minus zero is zero, as its file would say', () => {
		expect(
			Object.is(
				quantityOf(after(plant, set('base', 'resin_price', [], -0)), 'resin_price').value,
				0
			)
		).toBe(true);
	});

	it('needs no new plan, unless it is fixed with the structure', () => {
		const structural = (command: Command) => {
			const result = applyCommand(plant, command);
			return result.ok && !hasSameStructure(plant, result.workbook);
		};
		expect(structural(set('base', 'resin_price', [], 2))).toBe(false);
		expect(structural(set('weekend', 'resin_price', [], 2))).toBe(false);
		expect(structural(set('base', 'lot_size', [], 2))).toBe(true);
	});

	it('taken back gives the note and the place of a change that had gone', () => {
		const result = applyCommand(plant, {
			kind: 'set_inputs',
			scenario: 'dear_resin',
			entries: [
				{ quantity: 'resin_price', at: [] },
				{ quantity: 'setup_time', at: ['PX15B', 'PX20'], value: 3 }
			]
		});
		expect(result.ok && after(result.workbook, result.inverse)).toEqual(plant);
		const noted = applyCommand(plant, set('weekend', 'shift_pattern', ['L1']));
		expect(noted.ok && after(noted.workbook, noted.inverse)).toEqual(plant);
	});

	it('twice for one cell holds as the last says, and is still taken back exactly', () => {
		const result = applyCommand(plant, {
			kind: 'set_inputs',
			scenario: 'base',
			entries: [
				{ quantity: 'resin_price', at: [], value: 3 },
				{ quantity: 'resin_price', at: [], value: 4 }
			]
		});
		expect(result.ok && quantityOf(result.workbook, 'resin_price').value).toBe(4);
		expect(result.ok && after(result.workbook, result.inverse)).toEqual(plant);
	});
});

describe('a value is refused, with the cell named,', () => {
	it.each<[string, Command, string]>([
		[
			'for a pair that does not exist',
			set('base', 'top_speed', ['PX20', 'L2'], 18),
			'Top speed of PX20, L2: the pair PX20, L2 does not exist in the relation runs. Add the pair to runs, or take the value out.'
		],
		[
			'where a formula stands',
			set('base', 'material_cost', ['PX20'], 1),
			'Material cost of PX20: this value follows a formula, so none can be entered. Take the value out, or make it an input.'
		],
		[
			'of the wrong kind',
			set('base', 'resin_price', [], 'cheap'),
			'Resin price: it takes a number, not "cheap". Write a number, or null where nobody entered one.'
		],
		[
			'that is no number',
			set('base', 'resin_price', [], Number.NaN),
			'Resin price: it takes a number, not NaN. Write a number, or null where nobody entered one.'
		],
		[
			'for a fixed input in a scenario',
			set('weekend', 'lot_size', [], 1),
			'Lot size is fixed with the structure, and no scenario changes it. Change it in Base.'
		],
		[
			'in a scenario that does not exist',
			set('nobody', 'resin_price', [], 1),
			`There is no scenario "nobody". Choose one of the workbook's scenarios.`
		],
		[
			'for a quantity that does not exist',
			set('base', 'constructor', [], 1),
			'There is no quantity "constructor" to enter a value for. Choose another cell.'
		]
	])('%s', (_when, command, message) => {
		expect(refusal(plant, command).message).toBe(message);
	});

	it('and then none of its block is entered', () => {
		const command: Command = {
			kind: 'set_inputs',
			scenario: 'base',
			entries: [
				{ quantity: 'resin_price', at: [], value: 5 },
				{ quantity: 'resin_price', at: ['L1'], value: 5 }
			]
		};
		expect(refusal(plant, command).code).toBe('wrong-nesting');
		expect(quantityOf(plant, 'resin_price').value).toBe(1.95);
	});
});

it('a block of 100,000 cells is entered and taken back', () => {
	const members = Array.from({ length: 10_000 }, (_, i) => ({ id: `P${i}` }));
	const names = Array.from({ length: 10 }, (_, i) => `weight_${i}`);
	const big: Workbook = {
		...plant,
		sets: [...plant.sets, { name: 'part', label: 'Part', members }],
		sheets: [
			...plant.sheets,
			{ title: 'Parts', quantities: names.map((name) => ({ name, label: name, per: ['part'] })) }
		]
	};
	const entries = names.flatMap((quantity) =>
		members.map(({ id }, i) => ({ quantity, at: [id], value: i }))
	);
	for (const scenario of ['base', 'weekend']) {
		const result = applyCommand(big, { kind: 'set_inputs', scenario, entries });
		if (!result.ok) throw new Error(result.problem.message);
		expect(inputAt(result.workbook, scenario, 'weight_9', ['P9999']).value).toBe(9999);
		const back = after(result.workbook, result.inverse);
		expect(valueAt(quantityOf(back, 'weight_9').value, ['P9999'])).toBeUndefined();
		expect(back).toEqual(big);
	}
});
