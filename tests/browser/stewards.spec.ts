/** Whoever manages the server: a new password by a link, workbooks handed over, and the trail that tells of both. */
import { findings, sideways } from './access';
import { expect, open } from './app';
import { test } from './own-server';
import { join, ownerWithShop, signIn, toPage } from './sharing';

test('a steward hands a leaver’s workbook over, and gives a new password by a link', async ({
	someone,
	server
}) => {
	const [anna, berg] = [await someone(), await someone()];
	await ownerWithShop(anna, server);
	await join(anna, berg, 'berg', 'editor');
	await toPage(anna, 'Share and people');
	await anna.getByRole('link', { name: 'Accounts of this server' }).press('Enter');
	await expect(anna.getByRole('heading', { level: 1, name: 'Accounts' })).toBeVisible();

	await anna.getByRole('button', { name: 'Manage anna' }).press('Enter');
	await anna.getByRole('button', { name: 'Hand over the workbooks' }).press('Enter');
	await expect(anna.getByText('anna owns one workbook: One-line shop.')).toBeVisible();
	await anna.getByRole('combobox', { name: 'To' }).selectOption('berg, berg@plant.example');
	await anna.getByRole('button', { name: 'Hand them over' }).press('Enter');
	await expect(anna.getByText('berg owns the workbook now.')).toBeVisible();

	await anna.getByRole('button', { name: 'Manage berg' }).press('Enter');
	await anna.getByRole('button', { name: 'Make a link for a new password' }).press('Enter');
	const address = await anna.locator('code').innerText();
	for (const colorScheme of ['light', 'dark'] as const) {
		await anna.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
		expect(await findings(anna), colorScheme).toEqual([]);
	}
	await anna.setViewportSize({ width: 390, height: 844 });
	await expect.poll(() => sideways(anna)).toBeLessThanOrEqual(0);

	await berg.goto('about:blank');
	await open(berg, address);
	await berg.getByLabel('The new password').fill('password1234');
	await berg.getByRole('button', { name: 'Set it' }).click();
	await expect(berg.getByRole('alert')).toContainText('is among the words that are tried first');
	await berg.getByLabel('The new password').fill('seven brown coils of pipe');
	await berg.getByRole('button', { name: 'Set it' }).click();
	await expect(berg.getByText('The new password is set. Sign in with it.')).toBeVisible();
	await signIn(berg, 'berg@plant.example', 'seven brown coils of pipe');
	await expect(berg.getByRole('region', { name: 'You', exact: true })).toContainText('berg');

	await anna.reload();
	const trail = anna.getByRole('region', { name: 'The trail' });
	await expect(trail).toContainText('handed a workbook over: One-line shop');
	await expect(trail).toContainText('has a new password by a link');
});
