import { active, expect, fact, find, findMember, open, strip } from './app';
import { figure } from './figures';
import { test } from './plant';
import type { Page } from 'playwright/test';

const why = (page: Page) => page.getByRole('region', { name: 'Why this number' });

test('a figure of the strip explains itself: formula, numbers, what feeds it, what it feeds', async ({
	page
}) => {
	const variable = figure('variable_cost_per_metre', ['PX15B']);
	await open(page);
	await fact(page, 0).click();
	await expect(why(page)).toContainText('Factory cost per metre, PX15B, Base');
	await expect(why(page)).toContainText('variable_cost_per_metre');
	await expect(why(page)).toContainText(variable);
	const feeds = why(page).getByRole('list', { name: 'What feeds it' });
	await expect(feeds.getByRole('listitem').first()).toContainText(
		new RegExp(`Variable cost.*${variable} EUR/m`)
	);
	const fed = why(page).getByRole('list', { name: 'What it feeds' });
	await expect(fed.getByRole('button', { name: 'Factory cost per coil' })).toBeVisible();
	await page.keyboard.press('Escape');
	await expect(why(page)).toBeHidden();
});

test('from a cost one asks down to the input behind it, and sees who entered it', async ({
	page
}) => {
	await open(page);
	await fact(page, 0).click();
	const feeds = why(page).getByRole('list', { name: 'What feeds it' });
	await feeds.getByRole('button', { name: 'Variable cost' }).click();
	await expect(why(page)).toContainText('Variable cost, PX15B, Base');
	await expect(active(page)).toBeFocused();

	// By keys alone: into the reasons, to an input far behind, and back along the way.
	await page.keyboard.press('?');
	await expect(why(page).getByRole('heading')).toBeFocused();
	await why(page)
		.getByRole('button', { name: /^All \d+ inputs$/ })
		.press('Enter');
	await why(page).getByLabel('Find among the inputs').fill('resin or compound');
	await why(page)
		.getByRole('button', { name: /^PEXB|PEXB$/ })
		.press('Enter');
	await expect(why(page)).toContainText('Resin or compound price, PEXB, Base');
	await expect(why(page).getByRole('heading')).toBeFocused();
	const way = why(page).getByRole('navigation', { name: 'The way here' });
	await expect(way.getByRole('listitem').nth(2)).toBeVisible();
	await way.getByRole('button').first().press('Enter');
	await expect(why(page)).toContainText('Factory cost per metre, PX15B, Base');
	await expect(way).toBeHidden();
	await findMember(page, 'main_price', 1);
	await expect(why(page)).toContainText('Resin or compound price, PEXB, Base');
	await expect(why(page)).toContainText('2.02 EUR/kg is an entered value');
	await expect(why(page)).toContainText('Source: invented price list');
	await expect(feeds).toContainText('nothing feeds it: it is entered');
	await page.keyboard.press('Escape');
	await expect(why(page)).toBeHidden();
});

test('a result asked with Enter is set beside the base, with what changed it', async ({ page }) => {
	await open(page);
	await strip(page)
		.getByRole('combobox', { name: 'Scenario shown' })
		.selectOption('better_gauging');
	await findMember(page, 'wall_set_point', 3);
	await page.keyboard.press('End');
	await page.keyboard.press('Enter');
	await expect(why(page)).toContainText('Wall set-point, PX15B, Better gauging');
	await expect(why(page)).toContainText('eccentricity_in_use');
	await expect(why(page)).toContainText('in names');
	await expect(why(page).getByText('1.650 mm')).not.toHaveCount(0);
});

test('an error is traced to its cause, and the reader is led there', async ({ page }) => {
	await open(page);
	await findMember(page, 'main_price', 1);
	await page.keyboard.press('Delete');
	await expect(fact(page, 0)).toContainText('No value');
	await fact(page, 0).click();
	await expect(why(page)).toContainText('No value');
	await why(page).getByRole('button', { name: 'Go to Resin or compound price' }).click();
	await expect(why(page)).toContainText('Resin or compound price, PEXB, Base');
	await expect(active(page)).toBeFocused();
});

for (const path of ['/product', '/investment'])
	test(`the strip explains its figures on ${path} as well`, async ({ page }) => {
		await open(page, path);
		await fact(page, 0).click();
		await expect(why(page)).toContainText('Factory cost per metre, PX15B, Base');
		await page.keyboard.press('Escape');
		await expect(why(page)).toBeHidden();
	});

test('every fact of the strip has its reasons', async ({ page }) => {
	await open(page);
	await fact(page, 1).click();
	await expect(why(page)).toContainText('Good metres a year, Base');
	await fact(page, 2).click();
	await expect(why(page)).toContainText('Payback, New line');
	await find(page, 'ebit');
	await page.keyboard.press('Enter');
	await expect(why(page)).toContainText('EBIT, Base');
});
