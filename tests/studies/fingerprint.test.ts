import { describe, expect, it } from 'vitest';
import { freshnessOf, fingerprintOf } from '$lib/studies/fingerprint';
import { applyCommand, type Command } from '$lib/workbook/commands';
import { VERSION, type Quantity, type Workbook } from '$lib/workbook/schema';
import type { Study } from '$lib/workbook/study-schema';

const quantities: Quantity[] = [
	{ name: 'price', label: 'Price', value: 2 },
	{ name: 'mass', label: 'Mass', per: ['layer'], value: { inner: 1, outer: 2 } },
	{
		name: 'fitted',
		label: 'Fitted',
		type: 'yes_no',
		per: ['layer'],
		value: { inner: true, outer: true }
	},
	{ name: 'cost', label: 'Cost', formula: 'price * SUM(mass over layer)' },
	{ name: 'rent', label: 'Rent', value: 100 }
];
const study: Study = {
	name: 'why',
	title: 'Why',
	kind: 'bridge',
	quantity: 'cost',
	from: 'base',
	to: 'dear'
};
const workbook: Workbook = {
	format: 'metrewright',
	version: VERSION,
	title: 'Pipe',
	sets: [
		{
			name: 'layer',
			label: 'Layer',
			members: [{ id: 'inner' }, { id: 'outer' }],
			present: 'fitted'
		}
	],
	sheets: [{ title: 'One', quantities }],
	scenarios: [
		{ id: 'base', title: 'Base', parent: null, changes: [] },
		{ id: 'dear', title: 'Dear', parent: 'base', changes: [{ quantity: 'price', value: 3 }] },
		{ id: 'other', title: 'Other', parent: 'base', changes: [] }
	],
	studies: [study]
};
function after(...commands: Command[]): Workbook {
	return commands.reduce((book, command) => {
		const result = applyCommand(book, command);
		if (!result.ok) throw new Error(result.problem.message);
		return result.workbook;
	}, workbook);
}
const enter = (
	scenario: string,
	quantity: string,
	value: number | boolean,
	...at: string[]
): Command => ({
	kind: 'set_inputs',
	scenario,
	entries: [{ quantity, at, value }]
});
const isSame = (book: Workbook, of: Study | undefined = study) =>
	fingerprintOf(book, of) === fingerprintOf(workbook, study);

describe('what a study stood on', () => {
	it.each<[string, Command]>([
		['an input behind its result', enter('base', 'price', 2.1)],
		['an input in its scenario', enter('dear', 'price', 3.1)],
		['which members are present', enter('base', 'fitted', false, 'outer')],
		[
			'a formula',
			{
				kind: 'replace_quantity',
				name: 'cost',
				quantity: { ...quantities[3]!, formula: 'price + SUM(mass over layer)' }
			}
		]
	])('changes with %s', (_what, command) => {
		expect(isSame(after(command))).toBe(false);
	});

	it.each<[string, Command]>([
		['an input that its result does not read', enter('base', 'rent', 120)],
		['a scenario that it does not ask about', enter('other', 'price', 9)],
		[
			'a title or a note',
			{ kind: 'replace_quantity', name: 'price', quantity: { ...quantities[0]!, label: 'Resin' } }
		],
		['its own run', { kind: 'set_ran', name: 'why', ran: { stood_on: 'x', headline: [] } }]
	])('stays with %s', (_what, command) => {
		const book = after(command);
		expect(isSame(book, book.studies![0])).toBe(true);
	});

	it('is the same again when an edit is taken back, whatever order the values came in', () => {
		const back = after(
			enter('base', 'mass', 5, 'inner'),
			enter('base', 'mass', 9, 'outer'),
			enter('base', 'mass', 2, 'outer'),
			enter('base', 'mass', 1, 'inner')
		);
		expect(isSame(back)).toBe(true);
		const { value: _value, ...mass } = quantities[1]!;
		const turned: Quantity = { ...mass, value: { outer: 2, inner: 1 } };
		const sheets = [
			{
				title: 'One',
				quantities: quantities.map((quantity) => (quantity.name === 'mass' ? turned : quantity))
			}
		];
		expect(isSame({ ...workbook, sheets })).toBe(true);
	});

	it('changes with the settings of the study, and not with its title', () => {
		expect(isSame(workbook, { ...study, to: 'other' })).toBe(false);
		expect(isSame(workbook, { ...study, title: 'Why not', note: 'x' })).toBe(true);
	});

	it('tells a study that never ran from one that is up to date and one that is not', () => {
		const ran = { stood_on: fingerprintOf(workbook, study), headline: [] };
		expect(freshnessOf(workbook, study)).toBe('never-run');
		expect(freshnessOf(workbook, { ...study, ran })).toBe('up-to-date');
		expect(freshnessOf(after(enter('base', 'price', 7)), { ...study, ran })).toBe('out-of-date');
	});
});
