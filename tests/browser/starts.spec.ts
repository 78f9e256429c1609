import type { Page } from 'playwright/test';
import { expect, fact, open, strip, test as fresh } from './app';
import { test } from './plant';

const start = (page: Page, name: string) => page.getByRole('radio', { name, exact: true });
const view = (page: Page, who: string) => page.getByRole('region', { name: `For ${who}` });

fresh(
	'each of three readers sees first what they look for, a click apart, and it is kept',
	async ({ page }) => {
		await open(page);
		await expect(start(page, 'The grid alone')).toBeChecked();
		await start(page, 'Manager').check({ force: true });
		const manager = view(page, 'Manager');
		await expect(manager.getByRole('heading', { name: /^Bottleneck now: L6/ })).toBeVisible();
		await expect(strip(page)).toContainText('Unmet demand');
		await expect(manager.getByRole('heading', { name: /^L5 limits/ })).toBeVisible();
		await expect(manager.getByRole('heading', { name: /ways out/ })).toBeVisible();
		await expect(manager.getByRole('img', { name: /pay back/ })).toBeVisible();

		await start(page, 'Commercial').check({ force: true });
		const commercial = view(page, 'Commercial');
		await expect(
			commercial.getByRole('region', { name: 'Price ladder by order size' })
		).toContainText('60 km');
		await expect(strip(page)).toContainText('floor');

		await start(page, 'Finance').check({ force: true });
		await expect(
			view(page, 'Finance').getByRole('heading', { name: /more good metres/ })
		).toBeVisible();
		// Nothing is hidden: the grid stands below.
		await expect(page.getByRole('grid').getByRole('row').nth(3)).toBeAttached();
		await page.goto('/shifts');
		await expect(fact(page, 0)).toHaveText(/\d/);
		await page.goto('/');
		await expect(start(page, 'Finance')).toBeChecked();
		await expect(view(page, 'Finance')).toBeVisible();
	}
);

test('with the keyboard alone a manager goes from the first screen to why a month is short', async ({
	page
}) => {
	await open(page);
	await start(page, 'The grid alone').focus();
	await page.keyboard.press('ArrowRight');
	await expect(start(page, 'Manager')).toBeChecked();
	const loads = view(page, 'Manager').getByRole('figure').first();
	await expect(loads.getByRole('heading', { name: /^L5 limits/ })).toBeVisible();
	const first = loads.getByRole('button', { name: /^45/ }).first();
	for (
		let tabs = 0;
		tabs < 40 && !(await first.evaluate((one) => one === document.activeElement));
		tabs++
	)
		await page.keyboard.press('Tab');
	await expect(first).toBeFocused();
	for (let down = 0; down < 14; down++) await page.keyboard.press('ArrowDown');
	for (let right = 0; right < 7; right++) await page.keyboard.press('ArrowRight');
	await expect(loads.getByRole('button', { name: /^172 above/ }).first()).toBeFocused();
	await page.keyboard.press('Enter');
	const why = page.getByRole('region', { name: 'Why this number' });
	await expect(why).toContainText('L5');
	await expect(why).toContainText('Aug');
	await page.keyboard.press('Escape');
	await expect(why).toHaveCount(0);
	await expect(start(page, 'Manager')).toBeChecked();
});

test('an error shows in the starting view as one, with whose it is, and goes with its cause', async ({
	page
}) => {
	await open(page);
	await start(page, 'Manager').check({ force: true });
	const loads = view(page, 'Manager').getByRole('figure').first();
	await expect(loads.getByRole('heading', { name: /^L5 limits/ })).toBeVisible();
	await page.keyboard.press('Control+k');
	await page.keyboard.type('speed_ratio');
	await expect(
		page.getByRole('listbox', { name: 'Quantities found' }).getByRole('option').first()
	).toHaveAttribute('aria-selected', 'true');
	await page.keyboard.press('Enter');
	await expect(page.getByRole('grid').locator('[data-active=true]')).toBeFocused();
	await page.keyboard.press('Delete');
	await expect(view(page, 'Manager')).toContainText('No value');
	await expect(loads).toContainText(/running speed over technical limit/i);
	await page.keyboard.press('Control+z');
	await expect(loads.getByRole('heading', { name: /^L5 limits/ })).toBeVisible();
});
