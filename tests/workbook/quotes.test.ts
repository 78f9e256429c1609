/** Quotes stand on one scenario of the workbook: the base, until somebody chooses another. */
import { describe, expect, it } from 'vitest';
import { applyCommand } from '$lib/workbook/commands';
import { loadWorkbook } from '$lib/workbook/load';
import { quotesStandOn } from '$lib/workbook/lookup';
import { isOfQuoteElsewhere } from '$lib/workbook/quote-cautions';
import { saveWorkbook } from '$lib/workbook/save';
import type { Workbook } from '$lib/workbook/schema';
import { openShipped } from '../reference/shipped';
import { after, plant, refusal } from './plant';

const { workbook: shipped } = openShipped('marram');
const onLine = after(shipped, { kind: 'quote_on', id: 'new_line' });
const quoteIn = ({ pictures }: Workbook) => pictures!.find(({ kind }) => kind === 'quote')!;

describe('the scenario that quotes stand on', () => {
	it('is the base of a fresh workbook, and of one without a quote', () => {
		expect(quotesStandOn(shipped)).toBe('base');
		expect(quotesStandOn(plant)).toBe('base');
		expect(after(plant, { kind: 'quote_on', id: 'weekend' })).toEqual(plant);
	});

	it('is kept with the workbook once it is chosen, and taken back', () => {
		expect(quotesStandOn(onLine)).toBe('new_line');
		const opened = loadWorkbook(saveWorkbook(onLine), 'plant.json');
		expect(opened.ok && quotesStandOn(opened.workbook)).toBe('new_line');
		const done = applyCommand(shipped, { kind: 'quote_on', id: 'new_line' });
		const undone = done.ok && applyCommand(done.workbook, done.inverse);
		expect(undone && undone.ok && undone.workbook).toEqual(shipped);
		expect('scenario' in quoteIn(after(onLine, { kind: 'quote_on', id: 'base' }))).toBe(false);
	});

	it('is called by its new id, and is the base again once it is removed', () => {
		const { changes: _changes, ...line } = shipped.scenarios.find(({ id }) => id === 'new_line')!;
		const renamed = after(onLine, {
			kind: 'replace_scenario',
			id: 'new_line',
			scenario: { ...line, id: 'line_8' }
		});
		expect(quotesStandOn(renamed)).toBe('line_8');
		const { changes: _own, ...base } = shipped.scenarios[0]!;
		const first = {
			kind: 'replace_scenario',
			id: 'base',
			scenario: { ...base, id: 'now' }
		} as const;
		expect(quotesStandOn(after(shipped, first))).toBe('now');
		expect(quotesStandOn(after(onLine, { kind: 'remove_scenario', id: 'new_line' }))).toBe('base');
	});

	it('is the base where the one that is named is not there', () => {
		expect(refusal(shipped, { kind: 'quote_on', id: 'nowhere' }).code).toBe('unknown-scenario');
		const astray = {
			...shipped,
			pictures: [{ ...quoteIn(shipped), scenario: 'nowhere' }]
		} as Workbook;
		expect(quotesStandOn(astray)).toBe('base');
	});
});

describe('a caution about a quote', () => {
	it('speaks in the scenario that quotes stand on, and in no other', () => {
		expect(isOfQuoteElsewhere(shipped, 'quote_below_floor', 'base')).toBe(false);
		expect(isOfQuoteElsewhere(shipped, 'quote_below_floor', 'new_line')).toBe(true);
		expect(isOfQuoteElsewhere(onLine, 'quote_below_floor', 'base')).toBe(true);
		expect(isOfQuoteElsewhere(onLine, 'quote_below_floor', 'new_line')).toBe(false);
	});

	it('is one of the sheet of the order: others speak everywhere', () => {
		expect(isOfQuoteElsewhere(shipped, 'sunday_working', 'new_line')).toBe(false);
		expect(isOfQuoteElsewhere(plant, 'quote_below_floor', 'weekend')).toBe(false);
	});
});
