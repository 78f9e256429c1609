/** Lists as long as a plant's: found in by name, pairs by keys and by blocks, and a sheet of one's own. */
import type { Workbook } from '$lib/workbook/schema';
import { expect, open, paste, undo } from './app';
import { test } from './plant';
import { shopText } from './shop';

const many = (count: number, stem: string) =>
	Array.from({ length: count }, (_, i) => ({
		id: `${stem}${i + 1}`,
		label: `${stem === 'item' ? 'Coil' : 'Bare'} ${i + 1}`
	}));

/** The small shop with 300 items, 60 pipes and 12 lines beside what it has. */
function withLongLists(): string {
	const shop = JSON.parse(shopText()) as Workbook;
	const sets = [
		{ name: 'item', label: 'Item', plural: 'Items', members: many(300, 'item') },
		{ name: 'pipe', label: 'Pipe', plural: 'Pipes', members: many(60, 'pipe') },
		{ name: 'line', label: 'Line', plural: 'Lines', members: many(12, 'L') }
	];
	const runs = {
		name: 'runs',
		label: 'Which line runs which pipe',
		sets: ['line', 'pipe'],
		pairs: [['L1', 'pipe1']]
	};
	return JSON.stringify({ ...shop, sets: [...shop.sets, ...sets], relations: [runs] });
}
test.use({ opens: withLongLists() });

test('one of 300 items is found and renamed; the list goes on by a press', async ({ page }) => {
	await open(page, '/members');
	await page.getByRole('combobox', { name: 'Set shown' }).selectOption({ label: 'Items (300)' });
	const rows = page.getByRole('table').first().getByRole('row');
	await expect(rows).toHaveCount(200);
	await page.getByRole('button', { name: 'Show the other 100' }).click();
	await expect(rows).toHaveCount(300);
	await page.getByRole('searchbox', { name: 'Find in items' }).fill('item277');
	await expect(page.getByRole('status').filter({ hasText: '1 of 300' })).toBeVisible();
	await expect(rows).toHaveCount(1);
	await page.getByRole('button', { name: 'Rename' }).click();
	await page.getByRole('dialog').getByLabel('Name').fill('coil of 277');
	await page.keyboard.press('Enter');
	// What was looked for finds it no longer: it is seen all the same, and has the focus.
	await expect(page.getByRole('cell', { name: 'coil of 277', exact: true })).toBeFocused();
});

test('pairs are ticked with the keyboard alone, and by a block that one step takes back', async ({
	page
}) => {
	await open(page, '/members');
	await page.getByRole('combobox', { name: 'Set shown' }).selectOption({ label: 'Lines (12)' });
	const pair = (pipe: string, line: string) =>
		page.getByRole('checkbox', { name: `${pipe} with ${line}`, exact: true });
	// The longer list runs down, whichever comes first in the relation; one pair takes the Tab.
	await expect(page.locator('table.ruled tbody tr')).toHaveCount(60);
	await expect(page.locator('table.ruled input[tabindex="0"]')).toHaveCount(1);
	await expect(pair('pipe1', 'L1')).toBeChecked();
	await pair('pipe1', 'L1').focus();
	await page.keyboard.press('ArrowDown');
	await page.keyboard.press('ArrowRight');
	await expect(pair('pipe2', 'L2')).toBeFocused();
	await page.keyboard.press('Space');
	await expect(pair('pipe2', 'L2')).toBeChecked();

	await paste(page, 'x\t0\n1\tmaybe');
	await expect(page.getByRole('alert')).toContainText('“maybe” for pipe3 with L3 is no mark');
	await expect(pair('pipe3', 'L2')).not.toBeChecked();
	await paste(page, 'no\tx\nyes\t1\n');
	await expect(page.getByRole('alert')).toHaveCount(0);
	await expect(pair('pipe2', 'L2')).not.toBeChecked();
	for (const [pipe, line] of [
		['pipe2', 'L3'],
		['pipe3', 'L2'],
		['pipe3', 'L3']
	] as const)
		await expect(pair(pipe, line)).toBeChecked();
	await undo(page);
	await expect(pair('pipe2', 'L2')).toBeChecked();
	await expect(pair('pipe3', 'L3')).not.toBeChecked();

	await page.getByRole('searchbox', { name: 'Find in pipes' }).fill('bare 59');
	await expect(page.locator('table.ruled tbody tr')).toHaveCount(1);
	await expect(pair('pipe59', 'L1')).toBeVisible();
});

test('a sheet is added, moved, opened in the grid, and removed with what is on it only when that is meant; a list likewise', async ({
	page
}) => {
	await open(page, '/members');
	const chooser = page.getByRole('combobox', { name: 'Set shown' });
	await chooser.selectOption({ value: ':sheets' });
	await page.getByRole('button', { name: 'Add sheet' }).click();
	await page.keyboard.type('Rewinding');
	await page.keyboard.press('Enter');
	const rows = page.getByRole('table').getByRole('row');
	const last = rows.last();
	await expect(last).toContainText('Rewinding');
	await expect(last).toContainText('no quantities yet');
	await last.getByRole('button', { name: 'Up' }).click();
	await expect(rows.nth(-2)).toContainText('Rewinding');
	const contents = page.getByRole('navigation', { name: 'Contents' });
	await expect(contents).toContainText('Rewinding');
	await rows.nth(-2).getByRole('button', { name: 'Open' }).click();
	await expect(page.getByRole('grid').getByText('Rewinding')).toBeVisible();

	await open(page, '/members');
	await chooser.selectOption({ value: ':sheets' });
	const first = rows.first();
	const title = (await first.getByRole('cell').first().textContent())!.trim();
	await first.getByRole('button', { name: 'Remove' }).click();
	await expect(page.getByRole('alert')).toContainText(/which go with it/);
	await page.getByRole('button', { name: 'cancel' }).click();
	await expect(first).toContainText(title);

	// A list of one's own beside them, with its members; one that is needed stays.
	await page.getByRole('button', { name: 'Add list' }).click();
	await page.keyboard.type('Coil colour');
	await page.keyboard.press('Enter');
	await expect(chooser).toHaveValue('coil_colour');
	await page.getByRole('button', { name: 'Add coil colour' }).click();
	await page.keyboard.type('white');
	await page.keyboard.press('Enter');
	await expect(rows.last()).toContainText('white');
	await page.getByRole('button', { name: 'Remove list' }).click();
	await expect(page.getByText('The list Coil colour removed.')).toBeVisible();
	await chooser.selectOption('product');
	await page.getByRole('button', { name: 'Remove list' }).click();
	await expect(page.getByRole('alert')).toContainText(/cannot be removed while/);
});
