/** Steps of a path in time as they are typed, shown and pasted: its row stands for the inputs that hold them. */
import { describe, expect, it } from 'vitest';
import { layOut } from '$lib/engine/layout';
import { Model } from '$lib/engine/model';
import { enterText, specAt, targetsOf } from '$lib/ui/grid/entries';
import { Paste } from '$lib/ui/grid/paste-block';
import { cellsDown } from '$lib/ui/block';
import { readEntry } from '$lib/ui/entry';
import { fieldSpec } from '$lib/ui/field';
import { fieldText } from '$lib/ui/hint';
import * as paths from '$lib/ui/path/cells';
import { stairOf } from '$lib/ui/path/stair';
import { pathWords, stepText } from '$lib/ui/path/words';
import { buildRows, pathCell, type QuantityRow } from '$lib/ui/rows';
import type { Session } from '$lib/ui/session.svelte';
import { UnitSystem } from '$lib/units/system';
import { applyCommand, type Command } from '$lib/workbook/commands';
import { VERSION, type Workbook } from '$lib/workbook/schema';

const per = ['post', 'period'];
const workbook: Workbook = {
	format: 'metrewright',
	version: VERSION,
	title: 'Wages',
	sets: [
		{ name: 'post', label: 'Position', members: [{ id: 'lead' }, { id: 'fitter' }] },
		{
			name: 'period',
			label: 'Dated month',
			time: 'month',
			members: [
				{ id: '2027-03', label: 'March 2027' },
				{ id: '2027-04', label: 'April 2027' },
				{ id: '2027-05', label: 'May 2027' },
				{ id: '2027-06', label: 'June 2027' }
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
					value: { lead: 24, fitter: 20 }
				},
				{
					name: 'wage_in_month',
					label: 'Wage in the month',
					unit: 'EUR/h',
					per,
					formula:
						'IFERROR(wage_set; wage_in_month[period - 1 else wage]) * (1 + IFERROR(wage_raised; 0 %))',
					path: { set_by: 'wage_set', moved_by: 'wage_raised' }
				},
				{ name: 'wage_set', label: 'Wage set', unit: 'EUR/h', per, range: { min: 0, max: 90 } },
				{ name: 'wage_raised', label: 'Wage raised', unit: '%', per }
			]
		}
	],
	scenarios: [
		{ id: 'base', title: 'Base', parent: null, changes: [] },
		{ id: 'dear', title: 'Dear', parent: 'base', changes: [] }
	]
};

/** As much of a session as the grid's entries ask for, on a model of its own. */
function open(locale = 'en') {
	const model = Model.open(workbook);
	const state = { workbook, steps: 0 };
	const session = {
		get layout() {
			return { ...model.layout, workbook: state.workbook };
		},
		get workbook() {
			return state.workbook;
		},
		units: UnitSystem.create([]).system,
		locale,
		baseId: 'base',
		readOnly: false,
		paths,
		results: { get: (id: string) => model.results(id) },
		apply(...commands: Command[]) {
			state.steps++;
			for (const command of commands) {
				const applied = applyCommand(state.workbook, command);
				if (!applied.ok) return applied.problem.message;
				model.apply(command);
				state.workbook = applied.workbook;
			}
			return null;
		}
	} as unknown as Session;
	const place = model.layout.byName.get('wage_in_month')!;
	const values = (scenario: string, from = 0) => [
		...model.results(scenario).values.slice(place.base + from, place.base + from + 4)
	];
	const type = (scenario: string, month: string, text: string) =>
		enterText(session, [{ quantity: place, scenario, at: ['lead', month] }], text);
	return { session, place, values, type, model, state };
}

describe('a step that is typed', () => {
	it('sets a level, moves by a share, and is taken away where the cell is cleared', () => {
		const { type, values, state } = open();
		expect(type('base', '2027-04', '+2.5 %')).toBeNull();
		expect(values('base')).toEqual([
			24, 24.599999999999998, 24.599999999999998, 24.599999999999998
		]);
		expect(type('base', '2027-05', '30 EUR/h')).toBeNull();
		expect(values('base').slice(2)).toEqual([30, 30]);
		expect(type('base', '2027-05', '-10 %')).toBeNull();
		expect(values('base')[2]).toBeCloseTo(24.6 * 0.9, 12);
		expect(type('base', '2027-04', '')).toBeNull();
		expect(values('base')[2]).toBeCloseTo(24 * 0.9, 12);
		expect(state.steps).toBe(4);
	});

	it('is read by the reader’s locale, with its sign', () => {
		const { session, place } = open('de');
		const spec = specAt(session, { quantity: place, scenario: 'base', at: ['lead', '2027-04'] });
		expect(readEntry('-2,5 %', spec)).toMatchObject({ ok: true, value: -2.5, isMove: true });
		expect(readEntry('−2,5 %', spec)).toMatchObject({ ok: true, value: -2.5, isMove: true });
		expect(readEntry('+3%', spec)).toMatchObject({ ok: true, value: 3, isMove: true });
		expect(readEntry('19,5', spec)).toEqual({ ok: true, value: 19.5, from: null });
		expect(readEntry('3 %', spec)).toEqual({
			ok: false,
			message:
				'"3 %" can be read in two ways. Write +3 % for so much more from this month on, -3 % for less.'
		});
		expect(readEntry('* 1,5', spec)).toMatchObject({ ok: true, value: 36 });
		expect(readEntry('95', spec)).toMatchObject({ ok: false });
	});

	it('of a scenario leaves the base, follows it where it says the same, and takes its step away', () => {
		const { type, values, state } = open();
		type('base', '2027-04', '+3 %');
		type('dear', '2027-05', '+1 %');
		expect(values('base')[3]).toBeCloseTo(24 * 1.03, 12);
		expect(values('dear')[3]).toBeCloseTo(24 * 1.03 * 1.01, 12);
		type('dear', '2027-04', '');
		expect(values('dear')[1]).toBe(24);
		type('dear', '2027-04', '+3 %');
		const changes = state.workbook.scenarios[1]!.changes;
		expect(changes).toEqual([{ quantity: 'wage_raised', value: { lead: { '2027-05': 1 } } }]);
	});

	it('may be for all months of a folded row', () => {
		const { session, place } = open();
		const row = {
			kind: 'quantity',
			quantity: place,
			from: place.base,
			to: place.base + 4,
			open: false
		};
		expect(targetsOf(session, row as unknown as QuantityRow, 'base')).toHaveLength(4);
	});
});

describe('the row of a path', () => {
	it('stands for both inputs, whose rows are not there', () => {
		const { model } = open();
		const rows = buildRows({
			...{ layout: model.layout, open: new Set<string>(), results: [], only: null },
			messages: [
				{
					...{
						tone: 'caution',
						scenario: 'base',
						quantity: 'wage_raised',
						count: 1,
						text: 'Unusual'
					},
					cell: model.layout.byName.get('wage_raised')!.base + 1
				}
			]
		});
		expect(rows.map((row) => (row.kind === 'quantity' ? row.label : row.kind))).toEqual([
			...['sheet', 'Wage', 'Wage in the month', 'message']
		]);
		const input = model.layout.byName.get('wage_set')!;
		const place = model.layout.byName.get('wage_in_month')!;
		expect(pathCell(model.layout, input, input.base + 5)).toBe(place.base + 5);
		expect(pathCell(model.layout, place, place.base + 5)).toBe(place.base + 5);
	});

	it('is there where only its inputs are asked for, as between two scenarios', () => {
		const layout = layOut(workbook);
		const only = new Set(['wage_raised']);
		const rows = buildRows({ layout, open: new Set<string>(), results: [], messages: [], only });
		expect(rows.flatMap((row) => (row.kind === 'quantity' ? [row.label] : []))).toEqual([
			'Wage in the month'
		]);
	});

	it('says its steps in words', () => {
		const { session, place, type, model } = open();
		const words = (scenario: string) =>
			pathWords(
				session.layout!,
				model.results(scenario),
				scenario,
				place,
				{ first: place.base, at: ['lead'] },
				'en'
			);
		expect(words('base')).toBeNull();
		type('base', '2027-04', '+3 %');
		expect(words('base')!.short).toBe('24, 2027-04 +3 %');
		type('base', '2027-06', '26.5');
		expect(words('base')).toMatchObject({
			short: '24, 2 steps',
			full: '24 EUR/h, from April 2027 +3 %, from June 2027 26.5 EUR/h'
		});
		type('dear', '2027-03', '25');
		expect(words('dear')!.full).toMatch(/^from March 2027 25 EUR\/h, from April 2027/);
		expect(stepText({ set: 19, moved: -1.5 }, place.quantity, 'en')).toBe('19 EUR/h and −1.5 %');
	});

	it('opens its field with what was typed', () => {
		const { session, place, type } = open('de');
		type('base', '2027-04', '-2,5 %');
		const row = { quantity: place, from: place.base + 1 } as unknown as QuantityRow;
		const spec = fieldSpec(session.layout!, place, session.units, 'de');
		expect(fieldText(session, row, 'base', spec)).toBe('-2,5 %');
		const next = { quantity: place, from: place.base + 2 } as unknown as QuantityRow;
		expect(fieldText(session, next, 'base', spec)).toBe('');
	});
});

it('steps can be pasted, one a month', () => {
	const { session, place, model } = open();
	const layout = session.layout!;
	const rows = buildRows({
		...{ layout, results: [], messages: [], only: null },
		open: new Set(['wage_in_month', 'wage_in_month\u0001lead'])
	});
	const start = rows.findIndex((row) => row.kind === 'quantity' && row.ids[1] === '2027-04');
	const paste = new Paste({
		layout,
		block: [['+3 %'], ['30']],
		cells: cellsDown(rows, start, 2),
		scenarios: ['base'],
		base: 'base',
		specOf: (quantity) => fieldSpec(layout, quantity, session.units, 'en')
	});
	paste.read(10);
	expect(paste.result.badCount).toBe(0);
	session.apply(...paste.result.commands);
	expect([...model.results('base').values.slice(place.base, place.base + 4)]).toEqual([
		...[24, 24.72, 30, 30]
	]);
});

it('turns a pasted list of months into the fewest steps that say the same', () => {
	const pasted = (...block: string[]) => {
		const { session, model, place } = open();
		const layout = session.layout!;
		const rows = buildRows({
			...{ layout, results: [], messages: [], only: null },
			open: new Set(['wage_in_month', 'wage_in_month\u0001lead'])
		});
		const start = rows.findIndex((row) => row.kind === 'quantity' && row.ids[1] === '2027-03');
		const paste = new Paste({
			layout,
			block: block.map((text) => [text]),
			cells: cellsDown(rows, start, block.length),
			scenarios: ['base'],
			base: 'base',
			specOf: (quantity) => fieldSpec(layout, quantity, session.units, 'en')
		});
		paste.read(10);
		const { commands } = paste.result;
		expect(commands).toHaveLength(1);
		session.apply(...commands);
		const entries = commands.flatMap((one) => (one.kind === 'set_inputs' ? one.entries : []));
		return {
			values: [...model.results('base').values.slice(place.base, place.base + 4)],
			steps: entries.flatMap(({ at, value }) => (value === null ? [] : [`${at[1]} ${value}`]))
		};
	};
	expect(pasted('25', '25', '26', '26')).toEqual({
		values: [25, 25, 26, 26],
		steps: ['2027-03 25', '2027-05 26']
	});
	// An empty line holds what stood before it; after a share nothing is known to hold.
	expect(pasted('25', '', '25', '26').steps).toEqual(['2027-03 25', '2027-06 26']);
	expect(pasted('25', '+4 %', '25', '25').steps).toEqual(['2027-03 25', '2027-04 4', '2027-05 25']);
});

describe('the stair', () => {
	it('has a tread a month, and a riser where the level changes', () => {
		const { treads, line } = stairOf([1, 1, 2], [false, false, true], 30, 20);
		expect(treads.map((tread) => tread?.begins)).toEqual([false, false, true]);
		expect(treads[0]!.y).toBe(treads[1]!.y);
		expect(treads[2]!.y).toBeLessThan(treads[1]!.y);
		expect(line.startsWith('M0 ')).toBe(true);
	});
	it('is interrupted where there is no value', () => {
		expect(stairOf([1, null, 1], [], 30, 20).line.match(/M/g)).toHaveLength(2);
	});
});
