import { readFile } from 'node:fs/promises';
import { expect, open, test } from './app';

test('the investment page says in words what its curves show', async ({ app: { page } }) => {
	await open(page, '/investment');
	await page.getByRole('combobox', { name: 'Scenario in hand' }).selectOption('new_line');
	await expect(page.getByRole('heading', { name: /pay back in 7\.5 years/ })).toBeVisible();
	const main = page.getByRole('main');
	await expect(main).toContainText('never');
	await expect(main).toContainText('not investment advice');
});

test('the product page draws the wall and its layers to scale', async ({ app: { page } }) => {
	await open(page, '/product');
	const main = page.getByRole('main');
	await expect(main).toContainText('1.650 mm wall set-point');
	await expect(main).toContainText('EVOH barrier');
	await expect(main).toContainText('of the factory cost');
});

test('a chart leaves as a table and as a picture', async ({ app: { page } }) => {
	await open(page, '/investment');
	const table = page.waitForEvent('download');
	await page.getByRole('button', { name: 'Take table' }).first().click();
	const csv = await readFile(await (await table).path(), 'utf8');
	expect(csv).toContain('New line');
	const picture = page.waitForEvent('download');
	await page.getByRole('button', { name: 'Take picture' }).first().click();
	const png = await readFile(await (await picture).path());
	expect(png.subarray(1, 4).toString()).toBe('PNG');
});
