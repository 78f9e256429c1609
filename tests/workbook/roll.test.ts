/** Months that move on by one: what steps in time said in the month that leaves holds on, in every scenario. By hand. */
import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { applyCommand, type Command } from '$lib/workbook/commands';
import { findProblems } from '$lib/workbook/consistency';
import { findSet } from '$lib/workbook/lookup';
import { pathsOf, stepsOf } from '$lib/workbook/paths';
import { rollForward } from '$lib/workbook/roll';
import { VERSION, type Values, type Workbook } from '$lib/workbook/schema';

const per = ['post', 'period'];
function workbookOf(
	set: Values,
	moved: Values,
	inDear: Values = {},
	closed: Values = { '2027-11': true }
): Workbook {
	return {
		format: 'metrewright',
		version: VERSION,
		title: 'Wages',
		sets: [
			{ name: 'post', label: 'Position', members: [{ id: 'lead' }, { id: 'fitter' }] },
			{
				...{ name: 'period', label: 'Dated month', time: 'month' },
				members: [
					{ id: '2027-11', label: 'November 2027', number: 10 },
					{ id: '2027-12', label: 'December 2027', number: 11 },
					{ id: '2028-01', label: 'January 2028', number: 12 }
				]
			}
		],
		sheets: [
			{
				title: 'People',
				quantities: [
					{
						name: 'wage',
						label: 'Wage',
						unit: 'EUR/h',
						per: ['post'],
						value: { lead: 20, fitter: 10 }
					},
					{
						...{ name: 'wage_in_month', label: 'Wage in the month', unit: 'EUR/h', per },
						formula:
							'IFERROR(wage_set; wage_in_month[period - 1 else wage]) * (1 + IFERROR(wage_raised; 0 %))',
						path: { set_by: 'wage_set', moved_by: 'wage_raised' }
					},
					{ name: 'wage_set', label: 'Wage set', unit: 'EUR/h', per, value: set },
					{ name: 'wage_raised', label: 'Wage raised', unit: '%', per, value: moved },
					{ name: 'closed', label: 'Closed', type: 'yes_no', per: ['period'], value: closed }
				]
			}
		],
		scenarios: [
			{ id: 'base', title: 'Base', parent: null, changes: [] },
			{
				...{ id: 'dear', title: 'Dear', parent: 'base' },
				changes: Object.keys(inDear as object).length
					? [{ quantity: 'wage_raised', value: inDear }]
					: []
			}
		]
	};
}
/** With what says which months are closed. */
const withPicture = (workbook: Workbook): Workbook => ({
	...workbook,
	sheets: [
		...workbook.sheets,
		{ title: 'Hours', quantities: [{ name: 'hours', label: 'Hours', per: ['period'] }] }
	],
	pictures: [
		{ kind: 'months', title: 'Wages', period: 'period', results: ['hours'], closed: 'closed' }
	]
});

function rolledOn(workbook: Workbook): Workbook {
	const rolled = rollForward(workbook, 'period');
	if (!rolled.ok) throw new Error(rolled.message);
	const applied = applyCommand(workbook, { kind: 'several', commands: rolled.commands });
	if (!applied.ok) throw new Error(applied.problem.message);
	expect(findProblems(applied.workbook)).toEqual([]);
	const back = applyCommand(applied.workbook, applied.inverse as Command);
	expect(back.ok && back.workbook).toEqual(workbook);
	return applied.workbook;
}
const wages = (workbook: Workbook, scenario = 'base') => {
	const model = Model.open(workbook);
	const place = model.layout.byName.get('wage_in_month')!;
	return [...model.results(scenario).values.slice(place.base, place.base + place.count)].map(
		(one) => Number(one.toPrecision(12))
	);
};

describe('months that move on', () => {
	it('drop the first, gain the next, and are called as before', () => {
		const after = rolledOn(workbookOf({}, {}));
		expect(findSet(after, 'period')?.members).toEqual([
			{ id: '2027-12', label: 'December 2027', number: 11 },
			{ id: '2028-01', label: 'January 2028', number: 12 },
			{ id: '2028-02', number: 13 }
		]);
	});

	it('are called by the same month of another year, where there is one', () => {
		const workbook = workbookOf({}, {});
		const [post, period] = workbook.sets;
		const labels = ['January 2027', 'February 2027', 'March 2027'];
		const members = labels.map((label, i) => ({ id: `2027-0${i + 1}`, label }));
		for (let month = 4; month <= 12; month++)
			members.push({ id: `2027-${String(month).padStart(2, '0')}`, label: `${month} of 2027` });
		const year = { ...workbook, sets: [post!, { ...period!, members }] };
		const empty = (one: (typeof year.sheets)[0]) => ({
			...one,
			quantities: one.quantities.map(({ value, ...rest }) =>
				rest.name === 'wage' ? { ...rest, value: value! } : rest
			)
		});
		const after = rolledOn({ ...year, sheets: year.sheets.map(empty) });
		expect(findSet(after, 'period')?.members.at(-1)).toEqual({
			...{ id: '2028-01', label: 'January 2028' }
		});
	});

	it.each([
		['a level', { lead: { '2027-11': 25 } }, {}, [25, 25, 25]],
		['a share', {}, { lead: { '2027-11': 10 } }, [22, 22, 22]],
		[
			'both, one after the other',
			{ lead: { '2027-11': 30 } },
			{ lead: { '2027-11': 10 } },
			[33, 33, 33]
		],
		[
			'a share and one of the month after',
			{},
			{ lead: { '2027-11': 10, '2027-12': 10 } },
			[24.2, 24.2, 24.2]
		],
		[
			'a share before a level',
			{ lead: { '2027-12': 28 } },
			{ lead: { '2027-11': 10 } },
			[28, 28, 28]
		],
		['none', {}, { lead: { '2028-01': 10 } }, [20, 22, 22]]
	])('hold on what the first said: %s', (_, set, moved, expected) => {
		const workbook = workbookOf(set as Values, moved as Values);
		const [before, after] = [wages(workbook), wages(rolledOn(workbook))];
		expect(after.slice(0, 3)).toEqual(expected);
		// The months that stay are what they were.
		expect(after.slice(0, 2)).toEqual(before.slice(1, 3));
		expect(after.slice(3)).toEqual([10, 10, 10]);
	});

	it('hold it on in a scenario that says otherwise, and follow the base where it says nothing', () => {
		const workbook = workbookOf({}, { lead: { '2027-11': 10 } }, { lead: { '2027-11': null } });
		const after = rolledOn(workbook);
		expect(wages(after, 'dear').slice(0, 3)).toEqual([20, 20, 20]);
		expect(wages(after).slice(0, 3)).toEqual([22, 22, 22]);
		const plain = rolledOn(workbookOf({}, { lead: { '2027-11': 10 } }));
		expect(plain.scenarios[1]!.changes).toEqual([]);
	});

	it('begin no step in the month that comes', () => {
		const after = rolledOn(workbookOf({}, { lead: { '2028-01': 10 } }));
		const path = pathsOf(after).byPath.get('wage_in_month')!;
		expect(stepsOf(after, 'base', path, ['lead']).map(({ member }) => member.id)).toEqual([
			'2028-01'
		]);
	});

	it('stay while the first is open', () => {
		const open = withPicture(workbookOf({}, {}, {}, { '2027-11': false }));
		expect(rollForward(open, 'period')).toEqual({
			ok: false,
			message: 'November 2027 is not closed. Close it first: a month leaves with what came in it.'
		});
		expect(rollForward(withPicture(workbookOf({}, {})), 'period').ok).toBe(true);
		expect(rollForward(open, 'post')).toMatchObject({ ok: false });
	});
});
