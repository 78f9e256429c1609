/** Dates in files: ISO text for whatever is shown as a date, numbers of days (from 1899-12-30) everywhere else. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadWorkbook } from '$lib/workbook/load';
import { mergeWorkbooks } from '$lib/workbook/merge';
import { saveWorkbook } from '$lib/workbook/save';
import { VERSION, type Workbook } from '$lib/workbook/schema';

/** 2024-02-29 and 1900-03-01, as OpenFormula counts them. */
const LEAP_DAY = 45351;

const book = (start: unknown, more: object = {}): Workbook =>
	({
		format: 'metrewright',
		version: VERSION,
		title: 'Dates',
		sets: [{ name: 'line', label: 'Line', members: [{ id: 'L1' }, { id: '__proto__' }] }],
		sheets: [
			{
				title: 'Only',
				quantities: [
					{
						name: 'start',
						label: 'Start',
						unit: 'day',
						per: ['line'],
						shown: 'date',
						value: start
					},
					{ name: 'days', label: 'Days', unit: 'day', value: 45351 },
					{
						name: 'next',
						label: 'Next',
						unit: 'day',
						per: ['line'],
						shown: 'date',
						formula: 'start + 1[day]'
					}
				]
			}
		],
		scenarios: [
			{ id: 'base', title: 'Base', parent: null, changes: [] },
			{
				id: 'late',
				title: 'Late',
				parent: 'base',
				changes: [{ quantity: 'start', value: { L1: '2025-01-31' } }]
			}
		],
		...more
	}) as unknown as Workbook;

const loaded = (workbook: unknown): Workbook => {
	const result = loadWorkbook(JSON.stringify(workbook), 'dates.json');
	if (!result.ok) throw new Error(result.problem.line);
	return result.workbook;
};
const refusal = (workbook: unknown) => {
	const result = loadWorkbook(JSON.stringify(workbook), 'dates.json');
	return result.ok ? 'it opened' : result.problem.line;
};
const startOf = (workbook: Workbook) => workbook.sheets[0]!.quantities[0]!.value;
const members = (text: string) => JSON.parse(`{"L1": ${text}, "__proto__": null}`) as object;

describe('dates in a file', () => {
	it('are read as numbers of days, in the base and in scenarios', () => {
		const workbook = loaded(book(members('"2024-02-29"')));
		expect(startOf(workbook)).toEqual(members(String(LEAP_DAY)));
		expect(workbook.scenarios[1]!.changes).toEqual([{ quantity: 'start', value: { L1: 45688 } }]);
	});

	it('may be numbers too, and are saved as text; what is not shown as a date stays a number', () => {
		const text = saveWorkbook(loaded(book({ L1: LEAP_DAY })));
		expect(text).toContain('"L1": "2024-02-29"');
		expect(text).toContain('"L1": "2025-01-31"');
		expect(text).toContain(`"value": ${LEAP_DAY}`);
		expect(saveWorkbook(loaded(JSON.parse(text)))).toBe(text);
	});

	it('are as the page reads them, once a shipped workbook was loaded by the build', () => {
		const workbook = loaded(book({ L1: '2024-02-29' }));
		expect(loaded(JSON.parse(JSON.stringify(workbook)))).toEqual(workbook);
	});

	it('that are parts of a day, or before 1900-03-01, stay numbers', () => {
		const workbook = loaded(book({ L1: 45351.25 }));
		expect(saveWorkbook(workbook)).toContain('"L1": 45351.25');
		expect(saveWorkbook(loaded(book({ L1: 60 })))).toContain('"L1": 60');
	});

	it('come back as they went, whatever day it is', () => {
		fc.assert(
			fc.property(fc.integer({ min: 61, max: 2958465 }), (day) => {
				const workbook = loaded(book({ L1: day }));
				expect(startOf(loaded(JSON.parse(saveWorkbook(workbook))))).toEqual({ L1: day });
			}),
			{ numRuns: 60 }
		);
	});

	it('stand in options of studies and in plans too', () => {
		const more = {
			studies: [
				{
					...{ name: 'when', title: 'When', kind: 'optimise', quantity: 'next', members: ['L1'] },
					...{ scenario: 'base', direction: 'lowest' },
					options: [
						{
							label: 'Start',
							alternatives: [
								{ label: 'leap', changes: [{ quantity: 'start', value: { L1: '2024-02-29' } }] }
							]
						}
					]
				}
			]
		};
		const workbook = loaded(book({ L1: 45000 }, more));
		expect(JSON.stringify(workbook.studies)).toContain(`{"L1":${LEAP_DAY}}`);
		expect(saveWorkbook(workbook)).toContain('"L1": "2024-02-29"');
	});

	it.each(['2024-02-30', '29.02.2024', '2024-2-29', '1899-12-31', ' 2024-02-29', 'soon'])(
		'"%s" is none: quantity, member and text are named',
		(text) => {
			expect(refusal(book({ L1: text }))).toBe(
				`"dates.json", sheet Only, quantity start, value, L1 (sheets[0].quantities[0].value.L1): it takes a date like "2024-02-29", not "${text}". Write a date like "2024-02-29", or null where nobody entered one.`
			);
		}
	);

	it('for what is no date are refused as ever', () => {
		const workbook = JSON.parse(JSON.stringify(book({ L1: LEAP_DAY })));
		workbook.sheets[0].quantities[1].value = '2024-02-29';
		expect(refusal(workbook)).toContain('quantity days, value');
		expect(refusal(workbook)).toContain('it takes a number, not "2024-02-29"');
	});

	it('of two people are merged as dates', () => {
		const base = loaded(book({ L1: '2024-02-29' }));
		const mine = loaded(book({ L1: '2024-03-01' }));
		const theirs = loaded({ ...book({ L1: LEAP_DAY }), title: 'Renamed' });
		const merged = mergeWorkbooks({ base, mine, theirs });
		expect(merged.conflicts).toEqual([]);
		expect(saveWorkbook(merged.workbook)).toContain('"L1": "2024-03-01"');
		expect(merged.workbook.title).toBe('Renamed');
	});
});
