import { readFile } from 'node:fs/promises';
import { expect, findMember, open, strip } from './app';
import { metre, payback } from './figures';
import { test } from './plant';
import type { Page } from 'playwright/test';

/** The words that a picture's own description gives, and its table's rows. */
async function told(page: Page, figure: number) {
	const locator = page.getByRole('figure').nth(figure);
	await locator.getByText('All figures as a table').click();
	const table = locator.getByRole('region', { name: 'all figures' }).getByRole('table');
	await expect(table).toBeVisible();
	return { one: locator, table };
}

async function take(page: Page, figure: number, what: 'Export table' | 'Save picture') {
	const [download] = await Promise.all([
		page.waitForEvent('download'),
		page.getByRole('figure').nth(figure).getByRole('button', { name: what }).click()
	]);
	return { name: download.suggestedFilename(), bytes: await readFile(await download.path()) };
}

const isPng = (bytes: Buffer) => bytes.subarray(0, 8).toString('latin1') === '\x89PNG\r\n\x1a\n';

test('the investment page shows when each scenario pays, as a chart, as rows, in words and in full', async ({
	page
}) => {
	await open(page, '/investment');
	await expect(
		page.getByRole('heading', { level: 1, name: `pay back in ${payback('new_line')} years` })
	).toBeVisible();
	const chart = page.getByRole('figure').getByRole('img').first();
	await expect(chart).toBeVisible();
	await expect(chart).toHaveAccessibleName(/pay back/);
	await expect(chart).toHaveAccessibleDescription(new RegExp(`New line.*${payback('new_line')}`));
	const main = page.getByRole('main');
	const rows = main.getByRole('table').first().getByRole('row');
	await expect(rows.filter({ hasText: /^Better gauging/ })).toContainText(
		payback('better_gauging')
	);
	await expect(rows.filter({ hasText: /^New rewinder/ })).toBeVisible();
	await expect(main).toContainText('not investment advice');
	const { table } = await told(page, 0);
	await expect(table.getByRole('row')).not.toHaveCount(1);
	await main.getByRole('button', { name: 'Better gauging' }).click();
	await expect(page.getByRole('heading', { level: 1 })).toContainText(
		`${payback('better_gauging')} years`
	);
	await expect(strip(page).getByRole('combobox', { name: 'Scenario shown' })).toHaveValue(
		'better_gauging'
	);
});

test('the product page draws the wall to scale and builds up the cost, each told in words and in full', async ({
	page
}) => {
	await open(page, '/product');
	const section = page.getByRole('img', { name: /Cross-section of .*PX15B/ });
	await expect(section).toBeVisible();
	await expect(section).toHaveAccessibleDescription(/1\.650 mm/);
	const main = page.getByRole('main');
	await expect(main.getByRole('row', { name: /EVOH/ }).first()).toBeVisible();
	const { table: layers } = await told(page, 0);
	await expect(layers.getByRole('row')).not.toHaveCount(1);

	const chart = page.getByRole('figure').nth(2).getByRole('img');
	await expect(chart).toBeVisible();
	await expect(chart).toHaveAccessibleDescription(/PX15B/);
	await expect(page.getByRole('figure').nth(2)).toContainText(metre());
	const { table: parts } = await told(page, 2);
	await expect(parts.getByRole('row')).not.toHaveCount(1);

	await page.getByRole('radio', { name: 'PX28B' }).check({ force: true });
	await expect(page.getByRole('img', { name: /Cross-section of .*PX28B/ })).toBeVisible();
	await expect(strip(page)).toContainText('PX28B');
});

test('each picture is taken along as a table and as an image', async ({ page }) => {
	await open(page, '/investment');
	await expect(page.getByRole('figure').getByRole('img').first()).toBeVisible();
	const table = await take(page, 0, 'Export table');
	expect(table.name).toMatch(/\.csv$/);
	expect(table.bytes.toString()).toContain('New line');
	const image = await take(page, 0, 'Save picture');
	expect(image.name).toMatch(/\.png$/);
	expect(isPng(image.bytes)).toBe(true);

	await open(page, '/product');
	await expect(page.getByRole('figure').nth(2).getByRole('img')).toBeVisible();
	expect((await take(page, 0, 'Export table')).bytes.toString()).toContain('EVOH');
	expect((await take(page, 1, 'Export table')).bytes.toString()).toContain('PX15B-100');
	expect((await take(page, 2, 'Export table')).bytes.toString()).toContain('PX15B');
	for (const figure of [0, 2])
		expect(isPng((await take(page, figure, 'Save picture')).bytes)).toBe(true);
});

test('a picture without values says whose error it is', async ({ page }) => {
	await open(page);
	await findMember(page, 'Resin or compound price', 1);
	await page.keyboard.press('Delete');
	await expect(strip(page)).toContainText('No value');
	await page.getByRole('link', { name: 'Product', exact: true }).click();
	await expect(page.getByRole('main')).toContainText(/resin or compound price/i);
});
