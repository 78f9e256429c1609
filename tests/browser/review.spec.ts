import { findings, sideways } from './access';
import { expect, find, open } from './app';
import { test } from './plant';
import { shopText } from './shop';

test.use({ opens: shopText() });

test('a line to review is ticked off with a name and a reason by keys alone, and comes back when its formula changes', async ({
	page
}) => {
	await open(page, '/review');
	const main = page.getByRole('main');
	await expect(main.getByRole('heading', { level: 1 })).toHaveText('Review');
	await expect(main.getByRole('status')).toHaveText(/^\d+ lines to review, 0 ticked off$/);
	const numbers = main.getByRole('region', { name: 'Numbers standing in formulas' });
	const wall = numbers.getByRole('listitem').filter({ hasText: 'Wall set-point' });
	await expect(wall).toContainText('3 stands in the formula');
	await wall.getByRole('button', { name: 'Tick off Wall set-point' }).focus();
	await page.keyboard.press('Enter');
	await expect(wall.getByLabel('Your name')).toBeFocused();
	await page.keyboard.type('Ada');
	await page.keyboard.press('Tab');
	await page.keyboard.type('three spreads are common practice');
	await page.keyboard.press('Enter');
	await expect(main.getByRole('status')).toHaveText(/^\d+ lines to review, 1 ticked off$/);
	await numbers.getByText('1 ticked off').click();
	await expect(wall).toContainText('Ada: three spreads are common practice');

	await wall.getByRole('button', { name: 'Wall set-point', exact: true }).click();
	await expect(page).toHaveURL(/\/$/);
	await find(page, 'wall_set_point');
	await page.keyboard.press('Home');
	await page.keyboard.press('F2');
	const dialog = page.getByRole('dialog');
	await dialog
		.getByLabel('Formula', { exact: true })
		.fill('wall_minimum + eccentricity + 2.5 * spread_of_mean_wall');
	await dialog.getByRole('button', { name: 'Save' }).click();
	await expect(dialog).toBeHidden();
	await page
		.getByRole('navigation', { name: 'Contents' })
		.getByRole('link', { name: 'Review', exact: true })
		.click();
	await expect(wall).toContainText('changed since it was ticked off');
	await page.keyboard.press('Control+z');
	await expect(main.getByRole('status')).toHaveText(/^\d+ lines to review, 1 ticked off$/);
	await page.keyboard.press('Control+z');
	await expect(main.getByRole('status')).toHaveText(/^\d+ lines to review, 0 ticked off$/);
});

test('a shop made one’s own has its title, is no longer called invented, and lists what still stands as shipped', async ({
	page
}) => {
	await open(page);
	const head = page.getByRole('banner');
	await expect(head).toContainText('(invented)');
	await head.getByRole('button', { name: 'One-line shop' }).focus();
	await page.keyboard.press('Enter');
	const dialog = page.getByRole('dialog', { name: 'About this workbook' });
	await expect(
		dialog.getByText(/^0 of \d+ entered values are other than in One-line shop$/)
	).toBeVisible();
	await dialog.getByLabel('Title').fill('Our works');
	await dialog.getByLabel(/Its figures are invented/).uncheck();
	await page.keyboard.press('Enter');
	await expect(dialog).toBeHidden();
	await expect(head).toContainText('Our works');
	await expect(head).not.toContainText('(invented)');
	await find(page, 'resin_price');
	await page.keyboard.type('2.1');
	await page.keyboard.press('Enter');
	await page
		.getByRole('navigation', { name: 'Contents' })
		.getByRole('link', { name: 'Review', exact: true })
		.click();
	const shipped = page.getByRole('region', {
		name: 'Entries as in the workbook that this one was begun from'
	});
	await expect(shipped).toContainText('its value as in One-line shop');
	await expect(shipped).not.toContainText('Resin price');
});

test('an entry outside its usual range is taken, and cautioned about by name', async ({ page }) => {
	await open(page);
	await find(page, 'resin_price');
	await page.keyboard.type('190');
	await expect(page.getByRole('main')).toContainText(
		/Permitted above 0 EUR\/kg; usually 0\.63 to 5\.7/
	);
	await page.keyboard.press('Enter');
	await expect(page.getByRole('main')).toContainText(
		'Resin price is 190 EUR/kg, usual is at least 0.63 and at most 5.7 EUR/kg.'
	);
	await page
		.getByRole('navigation', { name: 'Contents' })
		.getByRole('link', { name: 'Review', exact: true })
		.click();
	await expect(
		page.getByRole('region', { name: 'Entries outside their usual range' })
	).toContainText('Resin price');
});

test('the review has no finding of axe, light, dark or at 390 pixels, and nothing runs sideways', async ({
	page
}) => {
	await open(page, '/review');
	const main = page.getByRole('main');
	await expect(main.getByRole('status')).toHaveText(/lines to review/);
	await main
		.getByRole('button', { name: /^Tick off / })
		.first()
		.click();
	for (const colorScheme of ['light', 'dark'] as const) {
		await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
		expect(await findings(page), colorScheme).toEqual([]);
	}
	await page.setViewportSize({ width: 390, height: 844 });
	await expect.poll(() => sideways(page)).toBeLessThanOrEqual(0);
	expect(await findings(page), 'at 390').toEqual([]);
});
