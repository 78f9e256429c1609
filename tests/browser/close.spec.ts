/** Closing two months of the plant from their files: with the mouse, then with keys alone. */
import { readdirSync } from 'node:fs';
import type { Page } from 'playwright/test';
import { findings, sideways } from './access';
import { expect, open } from './app';
import { test } from './plant';

const FOLDER = 'tests/exchange/close';
const filesOf = (folder: string) =>
	readdirSync(`${FOLDER}/${folder}`)
		.filter((name) => name.endsWith('.csv'))
		.map((name) => `${FOLDER}/${folder}/${name}`);
const picker = (page: Page) => page.locator('input[type="file"][multiple]');

test('a controller closes May with the mouse and June with keys, reads both, and opens one again', async ({
	page
}) => {
	await open(page, '/close');
	await expect(page.getByRole('heading', { level: 1, name: /^April 2027:/ })).toBeVisible();
	await expect(page.getByText('Nothing of May 2027 is entered yet.')).toBeVisible();
	await expect(page.getByRole('button', { name: 'Close May 2027' })).toBeDisabled();

	await picker(page).setInputFiles(filesOf('may-2027'));
	await expect(page.getByText('as Production bookings')).toBeVisible();
	await page.getByRole('button', { name: 'Enter 8 files' }).click();
	await expect(page.getByText('values entered')).toHaveCount(8);
	await page.getByRole('button', { name: 'Close May 2027' }).click();
	await expect(page.getByRole('heading', { level: 1, name: /^May 2027:.*adverse$/ })).toBeVisible();
	await expect(page.getByRole('list', { name: 'What lies behind the largest' })).toContainText(
		'Material price took'
	);

	const month = page.getByLabel('Month to close');
	await month.focus();
	await page.keyboard.type('June');
	await expect(page.getByRole('button', { name: 'Close June 2027' })).toBeVisible();
	await picker(page).setInputFiles(filesOf('june-2027'));
	const enter = page.getByRole('button', { name: 'Enter 8 files' });
	await expect(enter).toBeEnabled();
	await enter.focus();
	await page.keyboard.press('Enter');
	await expect(page.getByText('values entered')).toHaveCount(8);
	// What is entered counts once it is computed.
	const close = page.getByRole('button', { name: 'Close June 2027' });
	await expect(close).toBeEnabled();
	await close.focus();
	await page.keyboard.press('Enter');
	await expect(page.getByRole('heading', { level: 1, name: /^June 2027:/ })).toBeVisible();
	await page.getByLabel('Of', { exact: true }).focus();
	await page.keyboard.type('the year');
	await expect(
		page.getByRole('heading', { level: 1, name: /^Year to date, June 2027:.*adverse$/ })
	).toBeVisible();

	for (const width of [1280, 390]) {
		await page.setViewportSize({ width, height: 720 });
		await expect.poll(() => sideways(page), `at ${width}`).toBeLessThanOrEqual(0);
		expect(await findings(page), `at ${width}`).toEqual([]);
	}
	await page.setViewportSize({ width: 1280, height: 720 });

	// A closed month is opened again only once that is answered; what was entered stays.
	await page.getByRole('button', { name: 'Open June 2027 again' }).click();
	const dialog = page.getByRole('dialog', { name: 'Open June 2027 again?' });
	await dialog.getByRole('button', { name: 'Cancel' }).click();
	await expect(page.getByRole('heading', { level: 1, name: /June 2027/ })).toBeVisible();
	await page.getByRole('button', { name: 'Open June 2027 again' }).click();
	await dialog.getByRole('button', { name: 'Open June 2027 again' }).click();
	await expect(
		page.getByRole('heading', { level: 1, name: /^Year to date, May 2027/ })
	).toBeVisible();
	await expect(page.getByRole('button', { name: 'Close June 2027' })).toBeEnabled();
});
