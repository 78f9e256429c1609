/** The files of a month as one edit. */
import { describe, expect, it } from 'vitest';
import type { Brought } from '$lib/exchange/table/settle';
import { logCommands, sourceChanges } from '$lib/exchange/log/source';
import { commandsOf } from '$lib/exchange/table/settle';
import { together, type Enters } from '$lib/ui/close/together';
import { applyCommand } from '$lib/workbook/commands';
import { findQuantity } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';

const MONTHS = ['2027-05', '2027-06'];
const workbook: Workbook = {
	format: 'metrewright',
	version: 16,
	title: 'A month',
	sets: [
		{
			name: 'period',
			label: 'Month',
			time: true,
			members: MONTHS.map((id) => ({ id, label: id }))
		}
	],
	sheets: [
		{
			title: 'Came',
			quantities: [
				{ name: 'metres', label: 'Metres', type: 'number', unit: 'm', per: ['period'] },
				{ name: 'hours', label: 'Hours', type: 'number', unit: 'h', per: ['period'] }
			]
		}
	],
	scenarios: [{ id: 'base', title: 'Base', changes: [] }]
} as unknown as Workbook;

const brought = (quantity: string, month: string, after: number): Brought => ({
	line: 2,
	scenario: 'base',
	quantity: findQuantity(workbook, quantity)!,
	at: [month],
	before: null,
	after,
	stays: false
});
const table = (name: string, ...changes: Brought[]): Enters => ({
	name,
	changes,
	isLog: false,
	commands: () => commandsOf(changes)
});
const log = (name: string, ...changes: Brought[]): Enters => ({
	name,
	changes,
	isLog: true,
	commands: (before) => {
		const look = { rows: 4, used: 4, period: null, covered: null, sameOf: new Map() } as never;
		const sources = sourceChanges({ file: name, digest: name }, look, changes, () => 2, before);
		return logCommands(changes, sources, look, before);
	}
});
function entered(...files: Enters[]): Workbook {
	const all = together(files, workbook);
	if (!all.ok) throw new Error(all.message);
	const made = applyCommand(workbook, { kind: 'several', commands: all.commands });
	if (!made.ok) throw new Error(made.problem.message);
	return made.workbook;
}

describe('the files of a month', () => {
	it('enter their values by one command', () => {
		const all = together(
			[
				table('a.csv', brought('metres', '2027-05', 10)),
				table('b.csv', brought('hours', '2027-05', 3))
			],
			workbook
		);
		expect(all.ok && all.commands.map(({ kind }) => kind)).toEqual(['set_inputs']);
	});

	it('keep what another of them enters where a log brings its quantity whole', () => {
		const made = entered(
			table('a.csv', brought('metres', '2027-05', 10)),
			log('b.csv', brought('metres', '2027-06', 20)),
			log('c.csv', brought('hours', '2027-05', 7))
		);
		expect(findQuantity(made, 'metres')?.value).toEqual({ '2027-05': 10, '2027-06': 20 });
		expect(findQuantity(made, 'hours')?.value).toEqual({ '2027-05': 7 });
	});

	it('keep what one log says of its source beside what the next says', () => {
		const made = entered(
			log('b.csv', brought('metres', '2027-05', 20)),
			log('c.csv', brought('metres', '2027-06', 7))
		);
		expect(findQuantity(made, 'metres')?.value).toEqual({ '2027-05': 20, '2027-06': 7 });
		expect(findQuantity(made, 'metres')?.source).toContain('b.csv');
		expect(findQuantity(made, 'metres')?.source).toContain('c.csv');
	});

	it('are refused, with both names, where two say different things of one value', () => {
		const all = together(
			[
				table('a.csv', brought('metres', '2027-05', 10)),
				table('b.csv', brought('metres', '2027-05', 11))
			],
			workbook
		);
		expect(all).toEqual({
			ok: false,
			message:
				'a.csv and b.csv say different things of "Metres, 2027-05". Nothing is entered. Put one of the two aside, or look closer at what they hold.'
		});
	});

	it('may be taken twice', () => {
		const file = table('a.csv', brought('metres', '2027-05', 10));
		const all = together([file, file], workbook);
		expect(all.ok && all.commands).toEqual([
			{
				kind: 'set_inputs',
				scenario: 'base',
				entries: [{ quantity: 'metres', at: ['2027-05'], value: 10 }]
			}
		]);
	});
});
