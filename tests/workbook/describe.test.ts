import { describe, expect, it } from 'vitest';
import type { Command, InputEntry } from '$lib/workbook/commands';
import { changeWords } from '$lib/workbook/compare/change-words';
import type { Calibration } from '$lib/workbook/calibration-schema';
import { describeCommand, entriesChange } from '$lib/workbook/describe';
import type { Frozen, KeptQuote, KeptTable } from '$lib/workbook/schema';
import type { Study } from '$lib/workbook/study-schema';
import { plant as bare, quantityOf } from './plant';
import { KINDS } from './arbitrary';

const spread: Study = {
	name: 'sure',
	title: 'How sure',
	kind: 'risk',
	quantity: 'resin_price',
	scenario: 'base',
	inputs: [],
	draws: 100,
	seed: 1
};
const plant = { ...bare, studies: [spread] };

const inputs = (scenario: string, ...entries: InputEntry[]): Command => ({
	kind: 'set_inputs',
	scenario,
	entries
});
const items: KeptTable = {
	title: 'Items',
	columns: [{ heading: 'Item', is: 'member', of: 'product' }]
};
const { changes: _changes, ...weekend } = plant.scenarios[1]!;

const frozen: Frozen = {
	...{ id: 'standard_2028', title: 'Standard 2028', of: 'Base', date: '2027-11-30' },
	quantities: [{ name: 'resin_price', label: 'Resin price', unit: 'EUR/kg', value: 1.95 }]
};
const fit: Calibration = {
	name: 'load',
	title: 'Base load',
	form: 'mean',
	y: { label: 'Meter', unit: 'kWh' },
	gives: [{ parameter: 'mean' }]
};

const quote: KeptQuote = {
	...{ id: 'quote_a', number: '27-AB-001', version: 2, state: 'asked', date: '2027-11-30' },
	items: [{ id: 'one', entries: [] }]
};

const cases: [Command, string][] = [
	[
		inputs('base', { quantity: 'resin_price', at: [], value: 2.1 }),
		'Resin price: 1.95 to 2.1 EUR/kg'
	],
	[
		inputs('base', { quantity: 'resin_price', at: [], value: null }),
		'Resin price: 1.95 EUR/kg to nothing entered'
	],
	[
		inputs('weekend', { quantity: 'top_speed', at: ['PX15B', 'L2'], value: 27 }),
		'Top speed of PX15B, L2 (Weekend crew): 25 to 27 m/min'
	],
	[
		inputs('weekend', { quantity: 'shift_pattern', at: ['L1'] }),
		'Pattern of the line of L1 (Weekend crew): 7x24 back to that of the parent'
	],
	[
		inputs('base', { quantity: 'installed', at: ['L1'], value: false }),
		'Installed of L1: yes to no'
	],
	[
		inputs(
			'base',
			{ quantity: 'resin_price', at: [], value: 2 },
			{ quantity: 'lot_size', at: [], value: 1 }
		),
		'Resin price and Lot size: 2 values'
	],
	[
		{ kind: 'add_quantity', sheet: 0, index: 0, quantity: { name: 'x', label: 'Wall' } },
		'add Wall to Material'
	],
	[
		{
			kind: 'replace_quantity',
			name: 'lot_size',
			quantity: { ...quantityOf(plant, 'lot_size'), name: 'lot' }
		},
		'lot_size: renamed to lot'
	],
	[
		{
			kind: 'replace_quantity',
			name: 'material_cost',
			quantity: { ...quantityOf(plant, 'material_cost'), formula: '1', note: 'x' }
		},
		'Material cost: formula and note changed'
	],
	[{ kind: 'remove_quantity', name: 'lot_size' }, 'remove Lot size'],
	[{ kind: 'move_quantity', name: 'lot_size', sheet: 0, index: 0 }, 'move Lot size'],
	[
		{ kind: 'add_set', index: 0, set: { name: 'colour', label: 'Colour', members: [] } },
		'add list Colour'
	],
	[{ kind: 'describe_set', set: 'product', label: 'Pipe' }, 'list Product: renamed to Pipe'],
	[
		{ kind: 'describe_set', set: 'product', label: 'Product', plural: 'Products' },
		'describe list Products'
	],
	[{ kind: 'remove_set', set: 'product' }, 'remove list Product'],
	[{ kind: 'add_sheet', index: 0, sheet: { title: 'Time', quantities: [] } }, 'add sheet Time'],
	[{ kind: 'rename_sheet', sheet: 0, title: 'Resin' }, 'sheet Material: renamed to Resin'],
	[{ kind: 'remove_sheet', sheet: 0 }, 'remove sheet Material'],
	[{ kind: 'move_sheet', sheet: 0, index: 1 }, 'move sheet Material'],
	[
		{ kind: 'add_member', set: 'line', index: 0, member: { id: 'L3' }, like: 'L2' },
		'add Line L3 as a copy of L2'
	],
	[{ kind: 'remove_member', set: 'line', id: 'L2' }, 'remove Line L2'],
	[
		{ kind: 'replace_member', set: 'line', id: 'L2', member: { id: 'L3' } },
		'Line L2: renamed to L3'
	],
	[{ kind: 'move_member', set: 'line', id: 'L2', index: 0 }, 'move Line L2'],
	[
		{ kind: 'set_relation_pair', relation: 'runs', pair: ['PX20', 'L2'], exists: true },
		'runs: PX20, L2 added'
	],
	[
		{
			kind: 'add_scenario',
			index: 1,
			scenario: { id: 'x', title: 'New line', parent: 'base', changes: [] }
		},
		'add scenario New line'
	],
	[
		{ kind: 'replace_scenario', id: 'weekend', scenario: { ...weekend, title: 'Crew' } },
		'scenario Weekend crew: renamed to Crew'
	],
	[{ kind: 'remove_scenario', id: 'weekend' }, 'remove scenario Weekend crew'],
	[{ kind: 'move_scenario', id: 'weekend', index: 2 }, 'move scenario Weekend crew'],
	[{ kind: 'promote_scenario', id: 'weekend' }, 'make Weekend crew the Base'],
	[{ kind: 'quote_on', id: 'weekend' }, 'quotes stand on Weekend crew'],
	[{ kind: 'put_study', study: { ...spread, name: 'other' } }, 'add study How sure'],
	[{ kind: 'put_study', study: spread, name: 'sure' }, 'change study How sure'],
	[
		{ kind: 'put_study', study: { ...spread, title: 'Doubt' }, name: 'sure' },
		'study How sure: renamed to Doubt'
	],
	[{ kind: 'remove_study', name: 'sure' }, 'remove study How sure'],
	[{ kind: 'set_ran', name: 'sure' }, 'run study How sure'],
	[{ kind: 'set_title', title: 'Shop' }, 'title: Two-line shop to Shop'],
	[{ kind: 'set_about', about: 'x' }, 'describe the workbook'],
	[{ kind: 'set_invented', invented: true }, 'figures are invented'],
	[{ kind: 'set_invented', invented: false }, 'figures are no longer invented'],
	[
		{
			kind: 'put_programme',
			programme: {
				name: 'allocation',
				title: 'Who makes what',
				maximise: 'ebit',
				decisions: ['made'],
				constraints: []
			}
		},
		'add programme Who makes what'
	],
	[{ kind: 'remove_programme', name: 'allocation' }, 'remove programme allocation'],
	[{ kind: 'set_plans', plans: [{ programme: 'allocation', scenario: 'base' }] }, 'plan Base'],
	[
		{
			kind: 'set_plans',
			plans: [
				{
					...{ programme: 'allocation', scenario: 'base', digest: 'a', objective: 1, values: [] },
					kept: '2027-05-06'
				}
			]
		},
		'keep the plan of Base'
	],
	[{ kind: 'patch', patch: { fields: [] } }, 'take a change back'],
	[
		{ kind: 'set_ticks', ticks: [{ id: 'literal a', of: 'f', by: 'Ada', reason: 'so' }] },
		'tick off a line to review'
	],
	[
		{ kind: 'set_ticks', ticks: [{ id: 'literal a' }, { id: 'copy b' }] },
		'open again 2 lines to review'
	],
	[
		{ kind: 'note_change', scenario: 'base', quantity: 'mass_per_metre', note: 'weighed' },
		'Mass per metre, Base: note'
	],
	[{ kind: 'put_calibration', calibration: fit }, 'add the fit Base load'],
	[{ kind: 'put_calibration', calibration: fit, name: 'load' }, 'change the fit Base load'],
	[
		{
			kind: 'put_calibration',
			calibration: { ...fit, data: [{ source: 'meter', points: [{ y: 1 }, { y: 2 }] }] },
			name: 'load'
		},
		'Base load: 2 points added'
	],
	[{ kind: 'remove_calibration', name: 'load' }, 'remove the fit load'],
	[{ kind: 'add_frozen', frozen }, 'freeze Base as Standard 2028'],
	[
		{ kind: 'describe_frozen', id: 'standard_2028', title: 'Standard' },
		'frozen copy standard_2028: renamed to Standard'
	],
	[{ kind: 'remove_frozen', id: 'standard_2028' }, 'remove the frozen copy standard_2028'],
	[{ kind: 'put_quote', quote }, 'add quote 27-AB-001, version 2'],
	[{ kind: 'remove_quote', id: 'quote_a' }, 'remove quote quote_a'],
	[{ kind: 'set_letterhead', letterhead: {} }, 'change the letterhead of offers'],
	[{ kind: 'put_table', table: items }, 'keep the matches of Items'],
	[{ kind: 'put_table', table: items, title: 'Items' }, 'change the matches of Items'],
	[
		{ kind: 'put_table', table: { ...items, title: 'Price list' }, title: 'Items' },
		'matches of Items: renamed to Price list'
	],
	[{ kind: 'remove_table', title: 'Items' }, 'remove the matches of Items'],
	[
		{ kind: 'several', commands: [{ kind: 'set_title', title: 'A' }, { kind: 'set_about' }] },
		`title: ${plant.title} to A; describe the workbook`
	]
];

describe('an edit of a quote in words', () => {
	const holding = { ...plant, quotes: [quote] };
	it.each<[Partial<KeptQuote>, string]>([
		[{ state: 'won' }, 'quote 27-AB-001, version 2: won'],
		[{ filed: true }, 'put away quote 27-AB-001, version 2'],
		[{ note: 'by mail' }, 'change quote 27-AB-001, version 2']
	])('%o', (change, words) => {
		const command: Command = { kind: 'put_quote', quote: { ...quote, ...change } };
		expect(describeCommand(holding, command)).toBe(words);
	});
});

describe('a command in words', () => {
	it('tells a few pairs one by one, and many by their number', () => {
		const pair = (line: string): Command => ({
			kind: 'set_relation_pair',
			relation: 'runs',
			pair: ['PX20', line],
			exists: true
		});
		const words = (...lines: string[]) =>
			describeCommand(plant, { kind: 'several', commands: lines.map(pair) });
		const label = plant.relations![0]!.label ?? 'runs';
		expect(words('L1', 'L2')).toBe(`${label}: PX20, L1 added; ${label}: PX20, L2 added`);
		expect(words('L1', 'L2', 'L3', 'L4', 'L5')).toBe(`${label}: 5 pairs`);
	});

	it('says that a programme is switched off, and on again', () => {
		const on = {
			name: 'mix',
			title: 'Mix',
			maximise: 'ebit',
			decisions: ['made'],
			constraints: []
		};
		const off = { ...on, off: true };
		const put = (programme: typeof on): Command => ({
			kind: 'put_programme',
			name: 'mix',
			programme
		});
		const words = (before: typeof on, after: typeof on) =>
			describeCommand({ ...plant, programmes: [before] }, put(after));
		expect(words(on, off)).toBe('switch off Mix');
		expect(words(off, on)).toBe('switch on Mix');
		expect(words(off, { ...off, title: 'Blend' })).toBe('change programme Blend');
	});

	it.each(cases.map(([command, words]) => [words, command] as const))('%s', (words, command) => {
		expect(describeCommand(plant, command)).toBe(words);
	});

	it.each([
		[195, 'Resin price: 1.95 to 195 EUR/kg, times 100'],
		[3.9, 'Resin price: 1.95 to 3.9 EUR/kg, times 2'],
		[0.00195, 'Resin price: 1.95 to 0.00195 EUR/kg, divided by 1000'],
		[-1.95, 'Resin price: 1.95 to -1.95 EUR/kg, sign turned'],
		[3.8, 'Resin price: 1.95 to 3.8 EUR/kg'],
		[0, 'Resin price: 1.95 to 0 EUR/kg']
	])('marks what doubled, halved or turned in sign: %d', (value, words) => {
		const command = inputs('base', { quantity: 'resin_price', at: [], value });
		const [entry] = command.kind === 'set_inputs' ? command.entries : [];
		expect(changeWords(entriesChange(plant, 'base', [entry!]))).toBe(words);
	});

	it('exists for every kind', () => {
		expect(new Set(cases.map(([{ kind }]) => kind))).toEqual(new Set(KINDS));
	});

	it('keeps its value for whoever writes numbers otherwise', () => {
		const [command] = cases[0]!;
		if (command.kind !== 'set_inputs') throw new Error('The first case enters a value.');
		const comma = (value: number) => value.toFixed(2).replace('.', ',');
		const change = entriesChange(plant, command.scenario, command.entries);
		expect(changeWords(change, comma)).toBe('Resin price: 1,95 to 2,10 EUR/kg');
	});
});
