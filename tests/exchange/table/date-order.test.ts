/** Dates that can be read in two ways: asked about for the whole column, kept with its matches, and never guessed. */
import { describe, expect, it } from 'vitest';
import { orderAsked, takesOrder } from '$lib/exchange/table/date-order';
import { TableDesk } from '$lib/exchange/table/desk';
import { keptOf, reuse } from '$lib/exchange/table/kept';
import { NO_CHOICES } from '$lib/exchange/table/new-members';
import { dateText } from '$lib/workbook/date-text';
import { plant } from '../../workbook/plant';
import type { Workbook } from '$lib/workbook/schema';

const workbook: Workbook = {
	...plant,
	sheets: [
		{
			title: 'Dates',
			quantities: [
				{ name: 'bought', label: 'Bought', unit: 'day', per: ['line'], shown: 'date' },
				{ name: 'spent', label: 'Spent', unit: 'EUR', per: ['line'] }
			]
		},
		...plant.sheets
	]
};

async function desk(text: string) {
	const one = new TableDesk();
	const held = await one.read(new TextEncoder().encode(text), 'f.csv');
	if (!held.ok) throw new Error(held.message);
	const sheet = held.sheets[0]!;
	const mapping = one.propose(0, workbook);
	const values = (taken = mapping) => {
		const looked = one.look(0, taken, NO_CHOICES, workbook);
		if (!looked.ok) throw new Error(looked.message);
		const { changes, refused, problems } = looked.look;
		return {
			problems: problems.map(({ message }) => message),
			refused,
			dates: changes.map(({ after }) => dateText(after as number))
		};
	};
	return { sheet, mapping, values };
}

describe('a column of dates', () => {
	it('is asked about where each can be read in two ways, and none is taken before', async () => {
		const { sheet, mapping, values } = await desk('Line;Bought\nL1;05/06/2027\nL2;7/6/2027\n');
		expect(orderAsked(mapping, sheet.openDates, workbook)).toEqual([1]);
		expect(values()).toMatchObject({ refused: 2, dates: [] });
		const said = (dayFirst: boolean) => ({
			...mapping,
			columns: mapping.columns.map((column, at) => (at === 1 ? { ...column, dayFirst } : column))
		});
		expect(orderAsked(said(true), sheet.openDates, workbook)).toEqual([]);
		expect(values(said(true)).dates).toEqual(['2027-06-05', '2027-06-07']);
		expect(values(said(false)).dates).toEqual(['2027-05-06', '2027-07-06']);
	});

	it('is not asked about where one of its dates says it, but can be said otherwise', async () => {
		const { sheet, mapping, values } = await desk('Line;Bought\nL1;05/06/2027\nL2;27/6/2027\n');
		expect(orderAsked(mapping, sheet.openDates, workbook)).toEqual([]);
		expect(takesOrder(mapping, 1, sheet.openDates, workbook)).toBe(true);
		expect(values().dates).toEqual(['2027-06-05', '2027-06-27']);
	});

	it('tells a date that it cannot read from a number with a unit', async () => {
		const { values } = await desk('Line;Bought\nL1;5-Mai-2027\nL2;31-Jun-2027\n');
		expect(values().problems).toEqual([
			'Bought: "5-Mai-2027" is no date. Write one as in 2027-05-06.',
			'Bought: "31-Jun-2027" is no date. Write one as in 2027-05-06.'
		]);
	});

	it('is not asked about with points, with the year in front, or where the column holds no dates', async () => {
		for (const text of ['Line;Bought\nL1;05.06.2027\nL2;2027-06-07\n', 'Line;Spent\nL1;5\n']) {
			const { sheet, mapping } = await desk(text);
			expect(takesOrder(mapping, 1, sheet.openDates, workbook)).toBe(false);
		}
	});

	it('is read next month as it was said, unless the file shows another order', async () => {
		const first = await desk('Line;Bought\nL1;05/06/2027\n');
		const said = {
			...first.mapping,
			columns: first.mapping.columns.map((column) => ({ ...column, dayFirst: true }))
		};
		const kept = keptOf('Lines', first.sheet.head, said)!;
		expect(kept.columns[1]).toMatchObject({ is: 'value', day_first: true });
		const next = await desk('Line;Bought\nL1;07/08/2027\n');
		const { head, signs } = next.sheet;
		const again = reuse(kept, head, signs, next.mapping, workbook);
		expect(next.values(again.mapping).dates).toEqual(['2027-08-07']);
		const other = await desk('Line;Bought\nL1;07/28/2027\n');
		const shown = reuse(kept, head, signs, other.mapping, workbook);
		expect(shown.otherwise).toEqual(['Bought']);
		expect(other.values(shown.mapping).dates).toEqual(['2027-07-28']);
	});
});
