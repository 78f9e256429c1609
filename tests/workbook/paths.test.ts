/** Paths in time: what belongs together, what is refused of it, and how its steps are told. Months as ISO 8601 writes them. */
import { describe, expect, it } from 'vitest';
import { applyCommand, type Command } from '$lib/workbook/commands';
import { compareWorkbooks } from '$lib/workbook/compare';
import { findProblems } from '$lib/workbook/consistency';
import { problemLine } from '$lib/workbook/consistency/findings';
import { describeCommand } from '$lib/workbook/describe';
import { loadWorkbook } from '$lib/workbook/load';
import { changeWords } from '$lib/workbook/compare/change-words';
import { mergeWorkbooks } from '$lib/workbook/merge';
import { monthId, monthNumber } from '$lib/workbook/months';
import { pathsOf, stepAt, stepEntries, stepsOf } from '$lib/workbook/paths';
import { saveWorkbook } from '$lib/workbook/save';
import type { Quantity, SetDefinition, Workbook } from '$lib/workbook/schema';
import { after, plant, quantityOf } from './plant';

const months: SetDefinition = {
	name: 'period',
	label: 'Dated month',
	time: 'month',
	members: [
		{ id: '2027-11' },
		{ id: '2027-12', label: 'December 2027' },
		{ id: '2028-01', label: 'January 2028' }
	]
};
const per = ['line', 'period'];
const quantities: Quantity[] = [
	{ name: 'rent', label: 'Rent', unit: 'EUR/month', per: ['line'], value: { L1: 100, L2: 80 } },
	{
		name: 'rent_in_month',
		label: 'Rent in the month',
		unit: 'EUR/month',
		per,
		formula:
			'IFERROR(rent_set; rent_in_month[period - 1 else rent]) * (1 + IFERROR(rent_raised; 0 %))',
		path: { set_by: 'rent_set', moved_by: 'rent_raised' }
	},
	{ name: 'rent_set', label: 'Rent set', unit: 'EUR/month', per },
	{ name: 'rent_raised', label: 'Rent raised', unit: '%', per, value: { L1: { '2027-12': 3 } } }
];
const workbook: Workbook = {
	...plant,
	sets: [...plant.sets, months],
	sheets: [...plant.sheets, { title: 'Rents', quantities }]
};
const path = pathsOf(workbook).byPath.get('rent_in_month')!;
const lines = (of: Workbook) => findProblems(of).map(problemLine);
const withPart = (name: string, change: Partial<Quantity>): Workbook => ({
	...workbook,
	sheets: workbook.sheets.map((sheet) => ({
		...sheet,
		quantities: sheet.quantities.map((one) => (one.name === name ? { ...one, ...change } : one))
	}))
});
const withMonths = (...ids: string[]): Workbook => ({
	...plant,
	sets: [...plant.sets, { ...months, members: ids.map((id) => ({ id })) }]
});
const set = (scenario: string, quantity: string, at: string[], value: number | null): Command => ({
	...{ kind: 'set_inputs', scenario, entries: [{ quantity, at, value }] }
});

describe('months', () => {
	it('are counted and written', () => {
		expect(monthNumber('2027-12')! + 1).toBe(monthNumber('2028-01'));
		expect(monthId(monthNumber('2028-01')!)).toBe('2028-01');
		for (const none of ['2027-13', '2027-00', '27-01', 'May', '2027-1'])
			expect(monthNumber(none)).toBeNull();
	});

	it('follow one another where a set is marked as months', () => {
		expect(lines(withMonths('2027-12', '2028-01'))).toEqual([]);
		expect(lines(withMonths('2027-12', 'Jan')).join()).toContain(
			'Jan is no month, and period is marked as months. Write year and month, like "2027-04"'
		);
		expect(lines(withMonths('2027-11', '2028-01')).join()).toContain(
			'2028-01 does not follow 2027-11. After 2027-11 comes 2027-12: put the months in order, without gaps.'
		);
		expect(lines(withMonths('2028-01', '2027-12')).join()).toContain('does not follow');
	});
});

describe('a path in time', () => {
	it('is sound with inputs that fit it, and comes back from its file', () => {
		expect(lines(workbook)).toEqual([]);
		const loaded = loadWorkbook(saveWorkbook(workbook), 'rents.json');
		expect(loaded.ok && loaded.workbook).toEqual(workbook);
	});

	it.each([
		['is entered', { formula: undefined }, 'only a number with one formula can be a path'],
		['runs along no months', { per: ['line'] }, 'a path runs along months'],
		[
			'has one input for both',
			{ path: { set_by: 'rent_set', moved_by: 'rent_set' } },
			'holds both kinds of steps'
		],
		[
			'names what is not there',
			{ path: { set_by: 'rent_set', moved_by: 'rent_up' } },
			'there is no quantity named "rent_up"'
		],
		[
			'does not read its input',
			{ formula: 'IFERROR(rent_set; rent_in_month[period - 1 else rent])' },
			'the formula of rent_in_month does not read rent_raised'
		]
	])('is refused where it %s', (_, change, message) => {
		expect(lines(withPart('rent_in_month', change as Partial<Quantity>)).join()).toContain(message);
	});

	it.each([
		['rent_set', { unit: 'EUR' }, 'rent_set is not in EUR/month'],
		['rent_raised', { unit: '1' }, 'rent_raised is not in %'],
		['rent_set', { per: ['period'] }, 'rent_set is not per the same sets as rent_in_month'],
		['rent_set', { fixed: true }, 'rent_set is no number that is entered'],
		['rent_set', { type: 'yes_no', unit: undefined }, 'rent_set is no number that is entered']
	])('is refused where %s does not fit it', (name, change, message) => {
		expect(lines(withPart(name, change as Partial<Quantity>)).join()).toContain(message);
	});

	it('follows new names, and is an ordinary formula once an input is gone', () => {
		const input = quantityOf(workbook, 'rent_set');
		const renamed = after(workbook, {
			...{ kind: 'replace_quantity', name: 'rent_set', quantity: { ...input, name: 'rent_is' } }
		});
		expect(quantityOf(renamed, 'rent_in_month').path?.set_by).toBe('rent_is');
		const removal = { kind: 'remove_quantity', name: 'rent_raised', also: true } as const;
		const removed = applyCommand(workbook, removal);
		if (!removed.ok) throw new Error(removed.problem.message);
		expect(quantityOf(removed.workbook, 'rent_in_month').path).toBeUndefined();
		expect(after(removed.workbook, removed.inverse)).toEqual(workbook);
	});
});

describe('steps', () => {
	const later = after(workbook, set('dear_resin', 'rent_set', ['L1', '2028-01'], 120));

	it('are what is entered by month, of parents too', () => {
		expect(stepsOf(later, 'base', path, ['L1'])).toEqual([
			{ member: months.members[1], set: null, moved: 3 }
		]);
		expect(stepsOf(later, 'dear_resin', path, ['L1'])).toEqual([
			{ member: months.members[1], set: null, moved: 3 },
			{ member: months.members[2], set: 120, moved: null }
		]);
		expect(stepsOf(later, 'dear_resin', path, ['L2'])).toEqual([]);
		expect(stepAt(later, 'base', 'rent_in_month', ['L1', '2028-01'])).toBeNull();
	});

	it('of a month take the place of what it had, and follow the parent where they say the same', () => {
		const at = ['L1', '2027-12'];
		expect(stepEntries(workbook, 'base', path, at, { set: 90, moved: null })).toEqual([
			{ quantity: 'rent_set', at, value: 90 },
			{ quantity: 'rent_raised', at, value: null }
		]);
		expect(stepEntries(workbook, 'base', path, at, { set: null, moved: 3 })).toEqual([]);
		const away = after(workbook, set('weekend', 'rent_raised', at, null));
		expect(stepsOf(away, 'weekend', path, ['L1'])).toEqual([]);
		expect(stepEntries(away, 'weekend', path, at, { set: null, moved: 3 })).toEqual([
			{ quantity: 'rent_raised', at, value: undefined }
		]);
	});

	it('are told as steps, by undo and in change lists', () => {
		const at = ['L1', '2028-01'];
		const told = (command: Command, of = workbook) => describeCommand(of, command);
		expect(told(set('base', 'rent_raised', at, -2.5))).toBe(
			'Rent in the month of L1: from January 2028 -2.5 %'
		);
		expect(told(set('weekend', 'rent_raised', ['L1', '2027-12'], 4))).toBe(
			'Rent in the month of L1 (Weekend crew): from December 2027 +4 % instead of +3 %'
		);
		expect(told(set('base', 'rent_set', at, 90))).toBe(
			'Rent in the month of L1: from January 2028 90 EUR/month'
		);
		expect(told(set('base', 'rent_raised', ['L1', '2027-12'], null))).toBe(
			'Rent in the month of L1: no step from December 2027 any more, it was +3 %'
		);
		const lines = compareWorkbooks(workbook, later).lines.map((change) => changeWords(change));
		expect(lines).toEqual([
			'Rent in the month of L1 (Dearer resin): from January 2028 120 EUR/month'
		]);
	});

	it('of two people go together', () => {
		const mine = after(workbook, set('base', 'rent_raised', ['L2', '2027-12'], 2));
		const merged = mergeWorkbooks({ base: workbook, mine, theirs: later });
		expect(stepsOf(merged.workbook, 'dear_resin', path, ['L2'])).toHaveLength(1);
		expect(stepsOf(merged.workbook, 'dear_resin', path, ['L1'])).toHaveLength(2);
	});
});
