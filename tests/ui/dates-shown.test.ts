/** Dates and years on screen: written as such, read back as such, and their differences in days. */
import { describe, expect, it } from 'vitest';
import { dateText, readDate } from '$lib/workbook/date-text';
import { Model } from '$lib/engine/model';
import { UnitSystem } from '$lib/units/system';
import { viewCell, viewSpan } from '$lib/ui/cells';
import { readEntry } from '$lib/ui/entry';
import { fieldSpec } from '$lib/ui/field';
import { unitShown } from '$lib/ui/format';
import { fill } from '$lib/ui/show';
import { workbookOf } from '../engine/plan-builder';

const workbook = workbookOf({
	sets: { stop: ['a', 'b'] },
	quantities: {
		from: { unit: 'day', shown: 'date', per: ['stop'], value: { a: 46513, b: 46524 } },
		year: { shown: 'year', value: 2027 },
		last: { unit: 'day', shown: 'date', formula: 'MAX(from over stop)' }
	}
});
const later = {
	id: 'later',
	title: 'Later',
	parent: 'base',
	changes: [{ quantity: 'from', value: { b: 46530 } }]
};
const model = Model.open({ ...workbook, scenarios: [...workbook.scenarios, later] });
const { layout } = model;
const base = model.results('base');
const changed = model.results('later');
const contextOf = (name: string) => ({
	layout,
	quantity: layout.byName.get(name)!,
	locale: 'en',
	base
});
const specOf = (name: string) =>
	fieldSpec(layout, layout.byName.get(name)!, UnitSystem.create([]).system, 'en');

describe('dates and years on screen', () => {
	it('a date stands as a date, without a unit; what it was stands beside it', () => {
		const view = viewCell(contextOf('last'), changed, layout.byName.get('last')!.base);
		expect(view).toMatchObject({
			kind: 'words',
			text: '2027-05-23',
			instead: 'instead of 2027-05-17'
		});
		expect(unitShown({ unit: 'day', shown: 'date' })).toBe('');
		expect(unitShown({ unit: 'day' })).toBe('day');
	});

	it('folded dates say from when to when', () => {
		const { base: from, count } = layout.byName.get('from')!;
		expect(viewSpan(contextOf('from'), base, from, from + count).text).toBe(
			'2027-05-06 to 2027-05-17'
		);
	});

	it('a year has no mark between thousands', () => {
		expect(viewCell(contextOf('year'), base, layout.byName.get('year')!.base).text).toBe('2027');
		const of = { layout, results: base, subject: null, locale: 'en' };
		expect(fill(of, '{year}, until {last}')).toBe('2027, until 2027-05-17');
	});

	it('a date is entered as one, or as its number', () => {
		expect(readEntry('2027-05-06', specOf('from'))).toMatchObject({ ok: true, value: 46513 });
		expect(readEntry('46513', specOf('from'))).toMatchObject({ ok: true, value: 46513 });
		expect(readEntry('2027-02-29', specOf('from'))).toEqual({
			ok: false,
			message: '"2027-02-29" is no date. Write one as in 2027-05-06.'
		});
		for (const text of ['31-Jun-2027', '5 Mai 2027', 'soon'])
			expect(readEntry(text, specOf('from'))).toEqual({
				ok: false,
				message: `"${text}" is no date. Write one as in 2027-05-06.`
			});
		expect(readEntry('46513 day', specOf('from'))).toMatchObject({ ok: true, value: 46513 });
	});

	it('what is written is read back, and what is no date is left as it is', () => {
		for (const date of [61, 36584, 46388, 2958465]) expect(readDate(dateText(date))).toBe(date);
		expect(dateText(12)).toBe('12');
		expect(readDate('6 May')).toBeNull();
	});
});
