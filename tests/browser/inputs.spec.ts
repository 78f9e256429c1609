/** One whole job by keys alone: a figure found by a word of the trade, and a product's own page. */
import { active, expect, find, open, rowOf, undo } from './app';
import { test } from './shop';

test('with the keyboard alone, a price is found by what people call it and raised, a product’s own page takes an entry, and undo leads back', async ({
	page
}) => {
	await open(page);
	// The label says "Resin price", and the name nothing of a polymer.
	await page.keyboard.press('Control+k');
	await page.keyboard.type('raw material price');
	await expect(page.getByRole('option', { name: 'also: raw material price' })).toBeVisible();
	await page.keyboard.press('Escape');
	await find(page, 'polymer price');
	await expect(rowOf(active(page))).toContainText('Resin price');
	const price = await active(page).textContent();
	await page.keyboard.type('+9%');
	await page.keyboard.press('Enter');
	await expect(page.getByRole('button', { name: 'Undo' })).toBeEnabled();

	const product = page.locator('a[href="/product"]').first();
	await product.focus();
	await page.keyboard.press('Enter');
	const grid = page.getByRole('grid', { name: 'All that is entered for R16' });
	await expect(grid).toBeVisible();
	// R16 alone, by sheet, and no result.
	await expect(grid.getByRole('rowheader', { name: 'Wall set-point' })).toHaveCount(0);
	await expect(grid.getByRole('rowheader', { name: 'R20' })).toHaveCount(0);
	await active(page).focus();
	await expect(rowOf(active(page))).toContainText('Outside diameter');
	await page.keyboard.press('ArrowDown');
	await expect(rowOf(active(page))).toContainText('Minimum wall');
	await page.keyboard.type('2.5 kg');
	await expect(active(page).locator('input')).toHaveAttribute('aria-invalid', 'true');
	await page.keyboard.press('Escape');
	await expect(active(page)).toHaveText(/^\s*1\.8\b/);
	await page.keyboard.type('2.5');
	await page.keyboard.press('Enter');
	await page.keyboard.press('ArrowUp');
	await expect(active(page)).toHaveText(/^\s*2\.5\b/);

	await undo(page);
	await expect(active(page)).toHaveText(/^\s*1\.8\b/);
	await undo(page);
	await find(page, 'polymer price');
	await expect(active(page)).toHaveText(price ?? '');
});
