/** What changed, in words, as a list of changes shows it. */
import { describe, expect, it } from 'vitest';
import type { Command } from '$lib/workbook/commands';
import { compareWorkbooks as compare } from '$lib/workbook/compare';
import { changeWords } from '$lib/workbook/compare/change-words';
import { findQuantity } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import { after, plant } from './plant';

/** Its lines in words. */
const compareWorkbooks = (before: Workbook, now: Workbook) => {
	const { lines, values } = compare(before, now);
	return { lines: lines.map((line) => changeWords(line)), values };
};
const lines = (...commands: Command[]) =>
	compareWorkbooks(plant, commands.reduce(after, plant)).lines;
const base = plant.scenarios[0]!.id;
const other = plant.scenarios[1]!;
const enter = (quantity: string, at: string[], value?: number, scenario = base): Command => ({
	kind: 'set_inputs',
	scenario,
	entries: [{ quantity, at, value }]
});

describe('the change list', () => {
	it('names quantity, old and new value and unit', () => {
		expect(lines(enter('resin_price', [], 2.1))).toEqual(['Resin price: 1.95 to 2.1 EUR/kg']);
	});

	it('names the member and the scenario', () => {
		expect(lines(enter('mass_per_metre', ['PX20'], 0.14))).toEqual([
			'Mass per metre of PX20: 0.13 to 0.14 kg/m'
		]);
		expect(lines(enter('resin_price', [], 3, other.id))).toEqual([
			`Resin price (${other.title}): 1.95 to 3 EUR/kg`
		]);
	});

	it('says that nothing is entered any more', () => {
		expect(lines(enter('resin_price', []))).toEqual([
			'Resin price: 1.95 EUR/kg to nothing entered'
		]);
	});

	it('tells a value and a note of one quantity as two lines', () => {
		const quantity = { ...findQuantity(plant, 'resin_price')!, note: 'new contract' };
		const noted: Command = { kind: 'replace_quantity', name: 'resin_price', quantity };
		expect(lines(noted, enter('resin_price', [], 2))).toEqual([
			'Resin price: 1.95 to 2 EUR/kg',
			'Resin price: note changed'
		]);
	});

	it('tells what was added, removed, renamed and moved', () => {
		const told = lines(
			{
				kind: 'add_quantity',
				sheet: 1,
				index: 0,
				quantity: { name: 'dye', label: 'Dye', value: 1 }
			},
			{ kind: 'remove_quantity', name: 'mass_per_metre', also: true },
			{ kind: 'move_quantity', name: 'resin_price', sheet: 1, index: 0 },
			{ kind: 'rename_sheet', sheet: 0, title: 'Materials' },
			{ kind: 'add_member', set: 'product', index: 0, member: { id: 'PX32' } },
			{ kind: 'remove_scenario', id: other.id },
			{ kind: 'set_title', title: 'Three-line shop' }
		);
		expect(told).toEqual(
			expect.arrayContaining([
				'add Dye to ' + plant.sheets[1]!.title,
				'remove Mass per metre',
				'Resin price: moved to ' + plant.sheets[1]!.title,
				'sheet Material: renamed to Materials',
				'add Product PX32',
				`remove scenario ${other.title}`,
				'title: Two-line shop to Three-line shop'
			])
		);
	});

	it('tells many cells of one quantity as one line, and keeps each for its history', () => {
		const ids = Array.from({ length: 12 }, (_, i) => `PX4${i}`);
		const wide = ids.reduce(
			(workbook, id) =>
				after(workbook, { kind: 'add_member', set: 'product', index: 0, member: { id } }),
			plant
		);
		const filled = after(wide, {
			kind: 'set_inputs',
			scenario: base,
			entries: ids.map((id) => ({ quantity: 'mass_per_metre', at: [id], value: 1 }))
		});
		const { lines, values } = compareWorkbooks(wide, filled);
		expect(lines).toEqual(['Mass per metre: 12 values']);
		expect(values).toHaveLength(12);
		expect(values[0]).toMatchObject({ quantity: 'mass_per_metre', scenario: base, now: 1 });
	});

	it('keeps the values of a new quantity for their history, with nothing before', () => {
		const added: Command = {
			kind: 'add_quantity',
			sheet: 0,
			index: 0,
			quantity: { name: 'dye', label: 'Dye', value: 1 }
		};
		expect(compareWorkbooks(plant, after(plant, added)).values).toEqual([
			{ quantity: 'dye', scenario: base, at: [], was: undefined, now: 1 }
		]);
	});

	describe('of a workbook with a programme', () => {
		const programme = {
			name: 'mix',
			title: 'Who makes what',
			maximise: 'margin',
			decisions: ['metres'],
			constraints: []
		};
		const plan = { programme: 'mix', scenario: base, digest: '', objective: 1, values: [] };
		const planned = { ...plant, programmes: [programme], plans: [plan] };
		const kept = { ...planned, plans: [{ ...plan, kept: '2026-11-02' }] };

		it('names the programme, and says nothing of plans that follow from the rest', () => {
			expect(compareWorkbooks(plant, planned).lines).toEqual(['add programme Who makes what']);
			const anew = { ...planned, plans: [{ ...plan, digest: 'another', objective: 2 }] };
			expect(compareWorkbooks(planned, anew).lines).toEqual([]);
			expect(compareWorkbooks(planned, { ...planned, plans: undefined }).lines).toEqual([]);
		});

		it('says that somebody keeps a plan as it stands, or lets it follow again', () => {
			expect(compareWorkbooks(planned, kept).lines).toEqual([
				`plan of ${plant.scenarios[0]!.title}: kept as of 2026-11-02`
			]);
			expect(compareWorkbooks(kept, planned).lines).toEqual([
				`plan of ${plant.scenarios[0]!.title}: follows again`
			]);
		});
	});
});
