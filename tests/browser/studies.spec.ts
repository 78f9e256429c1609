import type { Page } from 'playwright/test';
import { expect, open } from './app';
import { test } from './plant';
import { shopText } from './shop';

/** The small shop with two studies: the second engine's look at an answer takes a moment there, and half a minute on the plant. */
const shopWithStudies = JSON.stringify({
	...(JSON.parse(shopText()) as object),
	studies: [
		{
			name: 'why_the_shift_pays',
			title: 'What a second shift does to the result',
			kind: 'bridge',
			quantity: 'ebit',
			from: 'base',
			to: 'second_shift'
		},
		{
			name: 'resin_at_no_margin',
			title: 'Resin price at which R16 earns nothing',
			kind: 'break_even',
			quantity: 'contribution_per_metre',
			members: ['R16'],
			scenario: 'base',
			input: { quantity: 'resin_price', label: 'Resin price', mode: 'set', from: 1.5, to: 4 },
			target: 0
		}
	]
});

async function openStudy(page: Page, title: string) {
	await open(page, '/studies');
	await page.getByRole('link', { name: title }).click();
	await expect(page.getByRole('button', { name: 'Export table' })).toBeVisible();
}

test.describe('of the small shop', () => {
	test.use({ opens: shopWithStudies });

	test('a bridge is answered on opening, with a sentence for each step, and is kept when asked', async ({
		page
	}) => {
		await openStudy(page, 'What a second shift does to the result');
		await expect(page.getByRole('heading', { level: 1 })).toContainText(/EBIT (falls|rises) by/);
		await expect(page.getByRole('listitem').filter({ hasText: 'Shifts' })).toContainText(
			/(raises|lowers) EBIT by [\d.,]+ kEUR/
		);
		await expect(page.getByText('No run kept yet')).toBeVisible();
		const onPaper = page.getByText(
			/^Bridge: What a second shift does to the result\. One-line shop/
		);
		await expect(onPaper).toBeHidden();
		await page.emulateMedia({ media: 'print' });
		await expect(onPaper).toBeVisible();
		await page.emulateMedia({ media: 'screen' });
		await page.getByRole('button', { name: 'Run and keep' }).click();
		await expect(page.getByText('Up to date')).toBeVisible();
		await page.getByRole('link', { name: 'All studies' }).click();
		const line = page.getByRole('row').filter({ hasText: 'What a second shift does' });
		await expect(line).toContainText(/Difference −?[\d,.]+ k?EUR\/year/);
		await page.keyboard.press('Control+z');
		await expect(line).toContainText('No run kept yet');
	});

	test('settings are changed by the keyboard, a range that is none is refused, and the answer follows', async ({
		page
	}) => {
		await openStudy(page, 'Resin price at which R16 earns nothing');
		await expect(page.getByRole('heading', { level: 1 })).toContainText(
			/meets 0.* EUR\/m at resin price/
		);
		const target = page.getByLabel('Target of the result');
		await target.fill('nothing');
		await target.press('Tab');
		await expect(page.getByText('"nothing" is not a number')).toBeVisible();
		const to = page.getByLabel('To', { exact: true });
		const kept = await to.inputValue();
		await to.fill('1.5');
		await to.press('Enter');
		await expect(page.getByText('both ends of the range are 1.5')).toBeVisible();
		await target.fill('0.02');
		await target.press('Enter');
		await expect(page.getByText('The picture is of an earlier state')).toBeVisible();
		// What was refused still stands in the form, is marked, and nothing is run on what is not seen.
		await expect(page.getByText('both ends of the range are 1.5')).toBeInViewport();
		await expect(to).toHaveAttribute('aria-invalid', 'true');
		await page.getByRole('button', { name: 'Run and keep' }).click();
		await expect(page.getByText('The study was not run')).toBeVisible();
		await expect(to).toBeFocused();
		await to.fill(kept);
		await to.press('Enter');
		await expect(to).toHaveAttribute('aria-invalid', 'false');
		await page.getByRole('button', { name: 'Run and keep' }).click();
		await expect(page.getByText('The picture is of an earlier state')).toBeHidden();
		await expect(page.getByRole('heading', { level: 1 })).toContainText('meets 0.02');
		await expect(page.getByRole('button', { name: 'Run and keep' })).toBeFocused();
	});

	test('a new study is made, answered and deleted, and undo brings it back', async ({ page }) => {
		await open(page, '/studies');
		await page.getByRole('button', { name: 'New study' }).click();
		const dialog = page.getByRole('dialog');
		await dialog.getByRole('radio', { name: /^Two-way table/ }).check();
		await dialog.getByLabel('Title').fill('Two prices');
		await dialog.getByLabel('Title').press('Enter');
		await expect(page).toHaveURL(/\/studies\/two_prices$/);
		await expect(page.getByRole('region', { name: 'Map of Two prices' })).toBeVisible();
		await page.getByRole('link', { name: 'All studies' }).click();
		await page.getByRole('button', { name: 'Delete Two prices' }).click();
		await expect(page.getByRole('link', { name: 'Two prices' })).toHaveCount(0);
		await page.keyboard.press('Control+z');
		await expect(page.getByRole('link', { name: 'Two prices' })).toBeVisible();
	});
});

test('what a study proposes becomes a scenario only when it is accepted', async ({ page }) => {
	await openStudy(page, 'Which options together');
	const before = await page.getByRole('table').first().getByRole('row').nth(1).textContent();
	expect(before).toContain('yes');
	await page.getByRole('button', { name: 'Make a scenario of the best' }).click();
	await expect(page.getByText('was made and is shown now')).toBeVisible();
	await open(page, '/scenarios');
	await expect(page.getByRole('table').first()).toContainText('New line: yes, New rewinder: yes');
});
