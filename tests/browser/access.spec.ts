import { findings, sideways } from './access';
import { expect, fact, find, open, test as fresh } from './app';
import { test } from './plant';

const PAGES = ['/', '/product', '/investment', '/scenarios', '/members', '/calibrate', '/begin'];

for (const path of PAGES)
	test(`${path} has no finding of axe, light, dark or at 390 pixels, and nothing runs sideways from 1024 down`, async ({
		page
	}) => {
		await open(page, path);
		for (const colorScheme of ['light', 'dark'] as const) {
			await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
			expect(await findings(page), colorScheme).toEqual([]);
		}
		for (const width of [1024, 390]) {
			await page.setViewportSize({ width, height: 844 });
			await expect.poll(() => sideways(page), `at ${width}`).toBeLessThanOrEqual(0);
		}
		expect(await findings(page), 'at 390').toEqual([]);
	});

test('a quantity’s leaf, a reason and the opening of files have no finding either', async ({
	page
}) => {
	await open(page);
	await fact(page, 0).click();
	await expect(page.getByRole('region', { name: 'Why this number' })).toContainText('PX15B');
	expect(await findings(page)).toEqual([]);
	await page.keyboard.press('Escape');
	await find(page, 'cost_per_metre');
	await page.keyboard.press('Home');
	await page.keyboard.press('F2');
	await expect(page.getByRole('dialog')).toContainText('gives EUR/m');
	expect(await findings(page)).toEqual([]);
	await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
	await page.keyboard.press('Control+o');
	await expect(page.getByRole('dialog')).toContainText('Kept in this browser');
	expect(await findings(page)).toEqual([]);
	await page.keyboard.press('Escape');
	await open(page, '/members');
	const list = page.getByRole('combobox', { name: 'Set shown' });
	await list.press('ArrowDown');
	await expect(page.getByRole('listbox', { name: 'Choices' })).toBeVisible();
	expect(await findings(page)).toEqual([]);
	await list.fill('line');
	expect(await findings(page)).toEqual([]);
});

test('an error, its message and its dependents have no finding in the dark', async ({ page }) => {
	await page.emulateMedia({ colorScheme: 'dark', reducedMotion: 'reduce' });
	await open(page);
	await find(page, 'speed_ratio');
	await page.keyboard.press('Delete');
	await expect(fact(page, 0)).toContainText('No value');
	expect(await findings(page)).toEqual([]);
});

for (const path of ['/', '/members']) {
	fresh(
		`${path}: the first Tab offers to pass the head and the contents, seen only while it is focused`,
		async ({ page }) => {
			await open(page, path);
			const skip = page.getByRole('link', { name: 'Go to the page' });
			const clip = () => skip.evaluate((link) => getComputedStyle(link).clipPath);
			expect(await clip()).toBe('inset(50%)');
			await page.keyboard.press('Tab');
			await expect(skip).toBeFocused();
			await expect(skip).toBeInViewport();
			expect(await clip()).toBe('none');
			expect(await findings(page)).toEqual([]);
			await page.keyboard.press('Enter');
			await expect(page.getByRole('main')).toBeFocused();
			expect(await clip()).toBe('inset(50%)');
			await page.keyboard.press('Tab');
			await expect(page.locator('main :focus')).toHaveCount(1);
			await page.keyboard.press('Shift+Tab');
			await expect(
				page.getByRole('navigation', { name: 'Contents' }).locator(':focus')
			).toHaveCount(1);
		}
	);
}
