import { findings, sideways } from './access';
import { expect, find, open } from './app';
import { test } from './plant';

test('functions and units are looked up by words, and from a formula at the function in hand', async ({
	page,
	context
}) => {
	await open(page, '/reference');
	const main = page.getByRole('main');
	await expect(main.getByRole('heading', { level: 1 })).toHaveText('Functions and units');
	const search = main.getByRole('searchbox', { name: 'Search functions and units' });
	await search.fill('present value');
	await expect(main.getByRole('status')).toHaveText(/^2 functions, 0 units$/);
	await expect(main).toContainText('NPV(rate; cash over set)');
	await search.fill('kilowatt');
	await expect(main.getByRole('status')).toHaveText('0 functions, 2 units');
	await expect(main.getByRole('row', { name: 'kWh kilowatt hour energy' })).toContainText(
		'3600000 kg*m²/s²'
	);
	await search.fill('no such thing');
	await expect(main.getByRole('status')).toHaveText('Nothing found. Fewer letters find more.');

	await find(page, 'cost_per_metre');
	await page.keyboard.press('Home');
	await page.keyboard.press('F2');
	const formula = page.getByRole('dialog').getByLabel('Formula', { exact: true });
	await formula.fill('ROUND(');
	await expect(page.getByRole('dialog')).toContainText('ROUND(x; digits)');
	const opening = context.waitForEvent('page');
	await page.getByRole('dialog').getByRole('link', { name: 'Functions and units' }).click();
	const beside = await opening;
	await expect(beside.getByRole('searchbox')).toHaveValue('ROUND');
	await expect(beside.getByRole('main')).toContainText('ROUND(1.005; 2) gives 1.01');
	await beside.close();
	await expect(formula).toHaveValue('ROUND(');
	await page.getByRole('dialog').getByRole('button', { name: 'Cancel' }).click();
});

test('the reference has no finding of axe, light, dark or at 390 pixels, and prints without its search', async ({
	page
}) => {
	await open(page, '/reference');
	for (const colorScheme of ['light', 'dark'] as const) {
		await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
		expect(await findings(page), colorScheme).toEqual([]);
	}
	for (const width of [1024, 390]) {
		await page.setViewportSize({ width, height: 844 });
		await expect.poll(() => sideways(page), `at ${width}`).toBeLessThanOrEqual(0);
	}
	expect(await findings(page), 'at 390').toEqual([]);
	await page.emulateMedia({ media: 'print' });
	await expect(page.getByRole('searchbox')).toBeHidden();
	await expect(page.getByRole('main')).toContainText('PAYBACK(cash over set)');
	await page.emulateMedia({ media: 'screen' });
});
