/** Entered beside measured: a fitted value is taken over as one step, and points are brought in by pasting. */
import { expect, open, undo } from './app';
import { findings } from './access';
import { test } from './plant';

test('a base load is taken over as fitted, and repairs are pasted, looked at and entered, with the keyboard alone', async ({
	page
}) => {
	await open(page, '/calibrate');
	const table = page.getByRole('table', {
		name: 'Base load and energy per kilogram: entered and fitted'
	});
	await expect(table.getByRole('row', { name: /Base load of the site/ })).toContainText('112');
	await expect(table).toContainText('follows a formula');
	expect(await findings(page)).toEqual([]);
	await page.emulateMedia({ colorScheme: 'dark' });
	expect(await findings(page)).toEqual([]);
	await page.setViewportSize({ width: 390, height: 844 });
	expect(await findings(page)).toEqual([]);
	await page.setViewportSize({ width: 1280, height: 720 });
	await page.emulateMedia({ colorScheme: 'light' });
	await page.getByRole('button', { name: 'Use this value for Base load of the site' }).focus();
	await page.keyboard.press('Enter');
	await expect(page.getByText('Base load of the site is entered as fitted')).toBeVisible();
	await expect(table.getByRole('row', { name: /Base load of the site/ })).toContainText('in use');
	await undo(page);
	await expect(table.getByRole('row', { name: /Base load of the site/ })).toContainText('112');

	await page.getByRole('radio', { name: /^Time to repair/ }).focus();
	await page.keyboard.press('Space');
	await expect(page.getByText('There are no points yet')).toBeVisible();
	await page
		.getByLabel('Rows, pasted')
		.fill('Line\tHours\nL2\t1.2\nL2\t2.1\nL2\t1.8\nL2\t1.4\nL77\t3\n');
	await page.getByRole('button', { name: 'Read these rows' }).focus();
	await page.keyboard.press('Enter');
	await expect(page.getByText('There is no line "L77"')).toBeVisible();
	await page.getByLabel('Where they come from').fill('log of stops');
	await page.getByRole('button', { name: 'Add 4 points' }).focus();
	await page.keyboard.press('Enter');
	await expect(page.getByLabel('Line shown')).toHaveValue('L2');
	await expect(page.getByText('Only 4 points')).toBeVisible();
	const repair = page.getByRole('table', { name: 'Time to repair: entered and fitted' });
	await repair.getByRole('button', { name: 'Use this value for Time to repair, L2' }).focus();
	await page.keyboard.press('Enter');
	await expect(repair).toContainText('in use');
	await undo(page);
	await undo(page);
	await expect(page.getByText('There are no points yet')).toBeVisible();
	await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
});
