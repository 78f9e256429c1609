/** The screens of sharing, judged by program in light and dark, and at the width of a phone. */
import type { Page } from 'playwright/test';
import { findings, sideways } from './access';
import { expect } from './app';
import { test } from './own-server';
import { disagree, join, ownerWithShop, toPage } from './sharing';

async function judge(page: Page, what: string) {
	for (const colorScheme of ['light', 'dark'] as const) {
		await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
		expect(await findings(page), `${what}, ${colorScheme}`).toEqual([]);
	}
	const before = page.viewportSize();
	await page.setViewportSize({ width: 390, height: 844 });
	await expect.poll(() => sideways(page), `${what} at 390`).toBeLessThanOrEqual(0);
	if (before) await page.setViewportSize(before);
}

test('a choice between two values and the revisions with all their forms', async ({ someone }) => {
	const [, berg] = await disagree(someone);
	await berg.getByRole('button', { name: 'Choose' }).click();
	await expect(berg.getByRole('dialog')).toBeVisible();
	await judge(berg, 'choice');
	await berg.getByRole('button', { name: 'Choose later' }).click();
	await toPage(berg, 'Revisions');
	await berg.getByRole('button', { name: 'Compare' }).click();
	await expect(berg.getByText('From revision 1 to 2, one change:')).toBeVisible();
	await berg.getByRole('button', { name: 'Restore revision 1' }).click();
	await berg.getByRole('button', { name: 'Name revision 2' }).click();
	await expect(berg.getByLabel('Name of revision 2')).toBeVisible();
	await judge(berg, 'revisions');
});

test('sharing with people: invited, joined, asked to confirm; open values; signing in', async ({
	someone,
	server
}) => {
	const [anna, berg] = [await someone(), await someone()];
	await ownerWithShop(anna, server);
	await join(anna, berg, 'berg', 'viewer without confidential values');
	await anna.getByRole('button', { name: 'Take out anna' }).click();
	await anna.getByRole('button', { name: 'Remove One-line shop' }).click();
	await anna.getByRole('button', { name: 'Change the password' }).click();
	await judge(anna, 'people');
	await berg.getByRole('button', { name: /^See the values that are not confidential/ }).click();
	await expect(berg.getByText('No value of this workbook is marked open.')).toBeVisible();
	await judge(berg, 'open');
	await berg.getByRole('button', { name: 'Sign out', exact: true }).click();
	await expect(berg.getByRole('heading', { name: 'Sign in' })).toBeVisible();
	await judge(berg, 'sign-in');
});
