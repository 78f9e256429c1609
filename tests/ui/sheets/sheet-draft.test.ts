import { describe, expect, it } from 'vitest';
import { draftOf, keepSheet } from '$lib/ui/sheets/sheet-draft';
import { after, plant } from '../../workbook/plant';
import type { Command } from '$lib/workbook/commands';

const first = plant.sheets[0]!;

describe('the form of a sheet', () => {
	it('adds a sheet after the others, without what was left empty', () => {
		const kept = keepSheet(plant, null, { title: ' Rewinding ', note: '  ', headline: '' });
		expect(kept).toEqual({
			kind: 'add_sheet',
			index: plant.sheets.length,
			sheet: { title: 'Rewinding', quantities: [] }
		});
		expect(after(plant, kept as Command).sheets.at(-1)).toEqual({
			title: 'Rewinding',
			quantities: []
		});
	});

	it('keeps title, note and figure of one that there is, and takes them away', () => {
		const name = first.quantities[0]!.name;
		const noted = keepSheet(plant, 0, { title: 'Pipe', note: 'By the metre', headline: name });
		const with_ = after(plant, noted as Command);
		expect(draftOf(with_.sheets[0]!)).toEqual({
			title: 'Pipe',
			note: 'By the metre',
			headline: name
		});
		const bare = after(
			with_,
			keepSheet(with_, 0, { title: 'Pipe', note: '', headline: '' }) as Command
		);
		expect(draftOf(bare.sheets[0]!)).toEqual({ title: 'Pipe', note: '', headline: '' });
	});

	it('refuses a sheet without a title, and a second one of the same title', () => {
		expect(keepSheet(plant, null, draftOf(null))).toMatch(/needs a title/);
		expect(keepSheet(plant, null, { ...draftOf(null), title: `${first.title} ` })).toBe(
			`There is a sheet “${first.title}” already. Choose another title.`
		);
		expect(keepSheet(plant, 0, draftOf(first))).toMatchObject({ kind: 'rename_sheet' });
	});
});
