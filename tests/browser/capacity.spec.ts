import { readFile } from 'node:fs/promises';
import { expect, open, strip } from './app';
import { test } from './plant';

test('capacity says which resource limits which month, in a drawing, in words and in full; a scenario changes it', async ({
	page
}) => {
	await open(page, '/capacity');
	const loads = page.getByRole('figure').first();
	await expect(page.getByRole('heading', { level: 1 })).toHaveText(
		'L5 limits in March, May and from July to December; August is short on ten of ten resources'
	);
	// The plan keeps to the hours; demand, if every month made what it sells, would not.
	const [planned, five] = [0, 1].map((at) => loads.getByRole('row', { name: /^L5/ }).nth(at));
	await expect(planned!.getByRole('button', { name: /^95/ })).toHaveCount(12);
	await expect(
		five!.getByRole('button', { name: /172 above the hours on offer, fullest/ })
	).toBeVisible();
	await expect(loads.getByRole('table').first()).toHaveAccessibleDescription(/L5 above its hours/);
	await loads.getByText('All figures as a table').click();
	await expect(
		loads
			.getByRole('region', { name: 'all figures' })
			.getByRole('row', { name: /cross-linking .*planned/ })
	).toBeVisible();

	const ways = page.getByRole('figure').nth(1);
	await expect(ways.getByRole('heading')).toContainText('cheapest hours that pay come from');
	await ways.getByRole('button', { name: 'Weekend crews', exact: true }).click();
	await expect(strip(page).getByRole('combobox', { name: 'Scenario shown' })).toHaveValue(
		'weekend_crews'
	);
	await expect(loads.getByRole('combobox', { name: 'Scenario whose loads are shown' })).toHaveValue(
		'weekend_crews'
	);
	await expect(loads).toContainText('where the base stands');
	await expect(page.getByRole('heading', { level: 1 })).not.toHaveText(/^L5 limits/);

	const [download] = await Promise.all([
		page.waitForEvent('download'),
		ways.getByRole('button', { name: 'Export table' }).click()
	]);
	expect((await readFile(await download.path())).toString()).toContain('Better gauging');
});

test('shift patterns stand side by side against one that is chosen; another pattern is added and joins them', async ({
	page
}) => {
	await open(page, '/shifts');
	const shifts = page.getByRole('figure').first();
	const hours = shifts.getByRole('row', { name: /^Scheduled hours of the pattern/ }).first();
	await expect(hours).toContainText('+2,448');
	await shifts.getByRole('combobox', { name: 'Pattern compared with' }).selectOption('7x24');
	await expect(hours).toContainText('−2,448');
	await expect(page.getByRole('heading', { level: 1 })).toContainText('than 7x24');

	await shifts.getByRole('link', { name: /Add or remove/ }).click();
	const main = page.getByRole('main');
	await main.getByRole('row', { name: /^6x24/ }).getByRole('button', { name: 'Duplicate' }).click();
	await page.keyboard.press('Enter');
	await expect(main.getByRole('row', { name: /^6x24/ })).toHaveCount(2);
	await page.goBack();
	await expect(shifts.getByRole('columnheader', { name: /^6x24/ })).toHaveCount(2);
});
