/** From the shipped shop to one's own: what to replace first, how much is one's own, sheet by sheet, and back again. */
import { findings, sideways } from './access';
import { expect, find, open } from './app';
import { test } from './plant';
import { shopText } from './shop';

test.use({ opens: shopText() });

test('whoever begins with the shop is told what to replace first, goes there, and sees how much is theirs', async ({
	page
}) => {
	await open(page, '/yours');
	const main = page.getByRole('main');
	const count = main.getByText(/^\d+ of \d+ figures are yours$/);
	await expect(count).toHaveText(/^0 of/);
	await main.getByRole('button', { name: 'Title and “invented” …' }).click();
	const dialog = page.getByRole('dialog', { name: 'About this workbook' });
	await dialog.getByLabel('Title').fill('Our works');
	await dialog.getByLabel(/Its figures are invented/).uncheck();
	await page.keyboard.press('Enter');
	await expect(dialog).toBeHidden();

	const first = main.getByRole('region', { name: 'Replace these first' });
	await expect(first.getByRole('row')).toHaveCount(11);
	const resin = first.getByRole('row', { name: /^Resin price/ });
	await expect(resin).toContainText(/1\.9 EUR\/kg\s*\d+(\.\d+)?\s%/);
	// To the figure with the keyboard alone, and over it.
	await resin.getByRole('button', { name: 'Resin price' }).focus();
	await page.keyboard.press('Enter');
	await expect(
		page.getByRole('grid').getByRole('gridcell').and(page.locator(':focus'))
	).toContainText('1.9');
	await page.keyboard.type('2.3');
	await page.keyboard.press('Enter');
	await expect(page.getByRole('link', { name: /^1 of \d+ yours$/ }).first()).toBeVisible();

	await open(page, '/yours');
	await expect(count).toHaveText(/^1 of/);
	await expect(first.getByRole('row')).toHaveCount(11);
	await expect(first.getByRole('row', { name: /^Resin price/ })).toHaveCount(0);
	// What the plan alone decides no single figure moves.
	await first.getByRole('combobox', { name: 'Result' }).selectOption({ index: 1 });
	await expect(first).not.toContainText('Every figure is being tried');
	await expect(first.getByRole('status')).toContainText('it rests on the plan');
	await first.getByRole('combobox', { name: 'Result' }).selectOption({ index: 0 });
	await expect(first.getByRole('row')).toHaveCount(11);
	await expect(main.getByRole('region', { name: 'Sheet by sheet' })).toContainText(
		/1 of \d+ yours/
	);

	await page.keyboard.press('Control+z');
	await expect(count).toHaveText(/^0 of/);
	await first.getByRole('button', { name: /^Try again/ }).click();
	await expect(first.getByRole('button', { name: /^Try again/ })).toBeHidden();
	await find(page, 'resin_price');
	await expect(page.getByRole('link', { name: /^0 of \d+ yours$/ }).first()).toBeVisible();
});

test('the page of one’s own figures has no finding of axe, light, dark or at 390 pixels, and nothing runs sideways', async ({
	page
}) => {
	await open(page, '/yours');
	await expect(
		page.getByRole('region', { name: 'Replace these first' }).getByRole('row')
	).toHaveCount(11);
	for (const [colorScheme, width] of [
		['light', 1280],
		['dark', 1280],
		['light', 390]
	] as const) {
		await page.emulateMedia({ colorScheme });
		await page.setViewportSize({ width, height: 844 });
		expect(await findings(page)).toEqual([]);
		expect(await sideways(page)).toBeLessThanOrEqual(0);
	}
});
