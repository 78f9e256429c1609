/** Two people's changes to one workbook: what merges by itself, what is asked, and that nothing is lost. */
import { describe, expect, it } from 'vitest';
import type { Command } from '$lib/workbook/commands';
import { findQuantity, findScenario, findSet } from '$lib/workbook/lookup';
import { mergeWorkbooks, type Side } from '$lib/workbook/merge';
import type { Workbook } from '$lib/workbook/schema';
import { after, plant } from './plant';

const edit = (...commands: Command[]): Workbook => commands.reduce(after, plant);
const enter = (
	quantity: string,
	value: number | null | undefined,
	at: string[] = [],
	scenario = plant.scenarios[0]!.id
): Command => ({ kind: 'set_inputs', scenario, entries: [{ quantity, at, value }] });
const merge = (mine: Workbook, theirs: Workbook, side?: Side, base = plant) =>
	mergeWorkbooks({ base, mine, theirs }, () => side);
const other = plant.scenarios[1]!.id;

describe('changes to different things', () => {
	it('stand side by side: two quantities', () => {
		const { workbook, conflicts } = merge(
			edit(enter('resin_price', 2.1)),
			edit(enter('mass_per_metre', 0.09, ['PX15B']))
		);
		expect(conflicts).toEqual([]);
		expect(workbook).toEqual(
			edit(enter('resin_price', 2.1), enter('mass_per_metre', 0.09, ['PX15B']))
		);
	});

	it('stand side by side: two members of one quantity, two scenarios of one value', () => {
		const { workbook, conflicts } = merge(
			edit(enter('mass_per_metre', 0.09, ['PX15B']), enter('resin_price', 3, [], other)),
			edit(enter('mass_per_metre', 0.14, ['PX20']), enter('resin_price', 2))
		);
		expect(conflicts).toEqual([]);
		expect(findQuantity(workbook, 'mass_per_metre')?.value).toEqual({ PX15B: 0.09, PX20: 0.14 });
		expect(findQuantity(workbook, 'resin_price')?.value).toBe(2);
		expect(
			findScenario(workbook, other)?.changes.find((change) => change.quantity === 'resin_price')
				?.value
		).toBe(3);
	});

	it('stand side by side: the value and the note of one quantity', () => {
		const quantity = findQuantity(plant, 'resin_price')!;
		const noted = edit({
			kind: 'replace_quantity',
			name: 'resin_price',
			quantity: { ...quantity, note: 'from the contract' }
		});
		const { workbook, conflicts } = merge(noted, edit(enter('resin_price', 2.1)));
		expect(conflicts).toEqual([]);
		expect(findQuantity(workbook, 'resin_price')).toMatchObject({
			value: 2.1,
			note: 'from the contract'
		});
	});

	it('put members that both added one after the other', () => {
		const add = (id: string): Command => ({
			kind: 'add_member',
			set: 'product',
			index: 2,
			member: { id }
		});
		const { workbook, conflicts } = merge(edit(add('PX25')), edit(add('PX32')));
		expect(conflicts).toEqual([]);
		expect(findSet(workbook, 'product')?.members.map(({ id }) => id)).toEqual([
			'PX15B',
			'PX20',
			'PX32',
			'PX25'
		]);
	});

	it('let a quantity move to another sheet while its value changes', () => {
		const moved = edit({ kind: 'move_quantity', name: 'resin_price', sheet: 1, index: 0 });
		const { workbook, conflicts } = merge(moved, edit(enter('resin_price', 2.1)));
		expect(conflicts).toEqual([]);
		expect(workbook.sheets[1]?.quantities[0]).toMatchObject({ name: 'resin_price', value: 2.1 });
		expect(workbook.sheets[0]?.quantities.some(({ name }) => name === 'resin_price')).toBe(false);
	});

	it('let a sheet be renamed while a quantity is added to it', () => {
		const renamed = edit({ kind: 'rename_sheet', sheet: 0, title: 'Materials' });
		const added = edit({
			kind: 'add_quantity',
			sheet: 0,
			index: 0,
			quantity: { name: 'dye_price', label: 'Dye price', value: 4 }
		});
		const { workbook, conflicts } = merge(renamed, added);
		expect(conflicts).toEqual([]);
		expect(workbook.sheets[0]).toMatchObject({ title: 'Materials' });
		expect(workbook.sheets[0]?.quantities[0]?.name).toBe('dye_price');
	});

	it('lose no quantity that one moves to a sheet which the other takes away', () => {
		const spare = { title: 'Spare', quantities: [] };
		const base = after(plant, { kind: 'add_sheet', index: 2, sheet: spare });
		const mine = after(base, { kind: 'remove_sheet', sheet: 2 });
		const move = { kind: 'move_quantity', name: 'lot_size', sheet: 2, index: 0 } as const;
		const theirs = after(base, move);
		for (const [one, two, side] of [
			[mine, theirs, 'mine'],
			[theirs, mine, 'theirs']
		] as const) {
			const { workbook } = merge(one, two, side, base);
			expect(workbook.sheets).toEqual(plant.sheets);
		}
		expect(merge(mine, theirs, 'theirs', base).workbook.sheets).toEqual(theirs.sheets);
	});
});

describe('changes to the same thing', () => {
	it('are asked about with both values, and theirs stands meanwhile', () => {
		const mine = edit(enter('resin_price', 2.1));
		const theirs = edit(enter('resin_price', 2.2));
		const { workbook, conflicts } = merge(mine, theirs);
		expect(conflicts).toEqual([
			{
				key: '["both_changed","quantities","resin_price","value"]',
				reason: 'both_changed',
				path: ['quantities', 'resin_price', 'value'],
				base: 1.95,
				mine: 2.1,
				theirs: 2.2
			}
		]);
		expect(findQuantity(workbook, 'resin_price')?.value).toBe(2.2);
		expect(merge(mine, theirs, 'mine')).toEqual({ workbook: mine, conflicts: [] });
	});

	it('are nothing to ask about where both did the same', () => {
		const same = edit(enter('resin_price', 2.1));
		expect(merge(same, edit(enter('resin_price', 2.1)))).toEqual({ workbook: same, conflicts: [] });
	});

	it('are asked about where one removed what the other changed', () => {
		const removed = edit({ kind: 'remove_quantity', name: 'mass_per_metre', also: true });
		const changed = edit(enter('mass_per_metre', 0.2, ['PX20']));
		const { conflicts } = merge(removed, changed);
		expect(conflicts.map(({ reason, path }) => [reason, path])).toContainEqual([
			'removed_and_changed',
			['quantities', 'mass_per_metre']
		]);
		const kept = merge(removed, changed, 'theirs').workbook;
		expect(findQuantity(kept, 'mass_per_metre')?.value).toEqual({ PX15B: 0.08, PX20: 0.2 });
	});

	it('are asked about where one changed the unit and the other a value in it', () => {
		const quantity = findQuantity(plant, 'mass_per_metre')!;
		const inGrams = edit({
			kind: 'replace_quantity',
			name: 'mass_per_metre',
			quantity: { ...quantity, unit: 'g/m', value: { PX15B: 80 } }
		});
		const entered = edit(enter('mass_per_metre', 0.2, ['PX20']));
		const { conflicts } = merge(inGrams, entered);
		expect(conflicts).toMatchObject([
			{ reason: 'meaning', path: ['quantities', 'mass_per_metre'] }
		]);
		expect(findQuantity(merge(inGrams, entered, 'mine').workbook, 'mass_per_metre')).toEqual(
			findQuantity(inGrams, 'mass_per_metre')
		);
		expect(findQuantity(merge(inGrams, entered, 'theirs').workbook, 'mass_per_metre')).toEqual(
			findQuantity(entered, 'mass_per_metre')
		);
	});

	it('are asked about where a value was entered for a member that the other removed', () => {
		const bare = edit(enter('mass_per_metre', undefined, ['PX20']));
		const removed = after(bare, { kind: 'remove_member', set: 'product', id: 'PX20', also: true });
		const entered = after(bare, enter('mass_per_metre', 0.2, ['PX20']));
		const { conflicts } = merge(removed, entered, undefined, bare);
		expect(conflicts).toMatchObject([{ reason: 'unsound' }]);
		expect(conflicts[0]?.message).toContain('PX20');
	});

	it('are asked about where another scenario became the base meanwhile', () => {
		const [base, ...rest] = plant.scenarios;
		const promoted = {
			...plant,
			scenarios: rest.map((one, i) => (i === 0 ? { ...one, parent: null, changes: [] } : one))
		};
		expect(base?.id).not.toBe(promoted.scenarios[0]?.id);
		const { conflicts } = merge(edit(enter('resin_price', 2.1)), promoted);
		expect(conflicts).toMatchObject([{ reason: 'meaning', path: ['scenarios'] }]);
	});

	it('are told apart from a field of the same name as a member or a quantity', () => {
		const named = after(plant, {
			kind: 'add_quantity',
			sheet: 0,
			index: 0,
			quantity: { name: 'ran', label: 'Ran', per: ['product'], value: { PX15B: 1, PX20: 1 } }
		});
		const mine = after(named, enter('ran', 2, ['PX15B']));
		const theirs = after(named, enter('ran', 3, ['PX20']));
		const { workbook, conflicts } = merge(mine, theirs, undefined, named);
		expect(conflicts).toEqual([]);
		expect(findQuantity(workbook, 'ran')?.value).toEqual({ PX15B: 2, PX20: 3 });
	});
});
