/** The order of dates is asked for on the page, for the whole column, before anything can be entered. */
import { flushSync, mount, unmount } from 'svelte';
import { expect, it } from 'vitest';
import type { TableClient } from '$lib/browser/table-client';
import { TableDesk } from '$lib/exchange/table/desk';
import { Bringing } from '$lib/ui/files/bringing.svelte';
import ColumnMeanings from '$lib/ui/files/ColumnMeanings.svelte';
import type { Session } from '$lib/ui/session.svelte';
import type { Workbook } from '$lib/workbook/schema';
import { plant } from '../../workbook/plant';

const workbook: Workbook = {
	...plant,
	sheets: [
		{
			title: 'Dates',
			quantities: [{ name: 'bought', label: 'Bought', unit: 'day', per: ['line'], shown: 'date' }]
		},
		...plant.sheets
	]
};

it('waits for the order, and is ready once it is chosen', async () => {
	const desk = new TableDesk();
	const held = await desk.read(
		new TextEncoder().encode('Line;Bought\nL1;05/06/2027\nL2;07/06/2027\n'),
		'f.csv'
	);
	if (!held.ok) throw new Error(held.message);
	const client = {
		propose: async (book: Workbook, sheet: number) => desk.propose(sheet, book),
		look: async (book: Workbook, asked: Parameters<TableClient['look']>[1]) =>
			desk.look(asked.sheet, asked.mapping, asked.choices, book)
	} as unknown as TableClient;
	const session = { workbook, readOnly: false, layout: null } as unknown as Session;
	const bringing = new Bringing(session, 'f.csv', held.sheets, client);
	await bringing.propose();
	await bringing.follow();
	const target = document.createElement('div');
	const page = mount(ColumnMeanings, { target, props: { bringing, workbook } });
	flushSync();
	expect(bringing.waitsFor).toBe(
		'Say first of the dates of Bought whether the day or the month comes first.'
	);
	expect(bringing.canEnter).toBe(false);

	const list = target.querySelector<HTMLSelectElement>(
		'select[aria-label="Order of the dates of Bought"]'
	)!;
	expect(list.value).toBe('');
	list.value = 'day';
	list.dispatchEvent(new Event('change', { bubbles: true }));
	await bringing.follow();
	flushSync();
	expect(bringing.waitsFor).toBe('');
	expect(bringing.count).toBe(2);
	expect(bringing.canEnter).toBe(true);
	await unmount(page);
});
