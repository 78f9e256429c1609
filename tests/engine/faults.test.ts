/** Which errors are named as arising: those that a value shows, not those that nobody would read. */
import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { loadWorkbook } from '$lib/workbook/load';

function opened(installed: boolean) {
	const text = JSON.stringify({
		format: 'metrewright',
		version: 1,
		title: 'Two lines',
		sets: [
			{ name: 'line', label: 'Line', members: [{ id: 'L1' }, { id: 'L2' }], present: 'installed' },
			{ name: 'month', label: 'Month', members: [{ id: 'Jan' }, { id: 'Feb' }] }
		],
		sheets: [
			{
				title: 'Hours',
				quantities: [
					{
						name: 'installed',
						label: 'Installed',
						type: 'yes_no',
						per: ['line'],
						value: { L1: true, L2: installed }
					},
					{ name: 'whole', label: 'Whole', per: ['line'], value: { L1: 4, L2: null } },
					{ name: 'hours', label: 'Hours', per: ['line', 'month'], formula: 'whole * 2' },
					{
						name: 'share',
						label: 'Share of the month',
						per: ['line', 'month'],
						formula: 'hours / SUM(hours over month)'
					}
				]
			}
		],
		scenarios: [{ id: 'base', title: 'Base', parent: null, changes: [] }]
	});
	const loaded = loadWorkbook(text, 'two-lines.json');
	if (!loaded.ok) throw new Error(loaded.problem.line);
	return Model.open(loaded.workbook);
}

describe('where errors arose', () => {
	it('is nowhere for a line that is not installed, whose sum over the months no value reads', () => {
		expect(opened(false).errorOrigins('base')).toEqual([]);
	});

	it('is the input of an installed line that nobody entered', () => {
		expect(opened(true).errorOrigins('base')).toMatchObject([{ quantity: 'whole' }]);
	});
});
