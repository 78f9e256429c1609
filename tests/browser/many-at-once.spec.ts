/** One entry for many values: on a folded row, and in what is marked; each reckoned from what stands there. */
import { active, expect, find, findMember, open } from './app';
import { test } from './plant';
import { shopText } from './shop';

test.use({ opens: shopText() });

test('prices rise by nine per cent on their folded row, and two marked cells take a number, by keys alone', async ({
	page
}) => {
	await open(page);
	const grid = page.getByRole('grid');
	await find(page, 'price');
	await page.keyboard.type('+9%');
	await expect(grid).toContainText('Enter keeps it in all 2 values.');
	await expect(grid).toContainText('first = 0.3597 EUR/m');
	await page.keyboard.press('Enter');
	await findMember(page, 'price', 1);
	await expect(active(page)).toContainText('0.3597');
	await page.keyboard.press('ArrowDown');
	await expect(active(page)).toContainText('0.4687');

	await page.keyboard.press('Shift+ArrowUp');
	await page.keyboard.type('-5');
	await page.keyboard.press('Enter');
	await expect(grid).toContainText(/Net-net price, R16: −5 EUR\/m is outside what is permitted/);
	// What was marked still is.
	await page.keyboard.press('Escape');
	await page.keyboard.type('0.3 * 1.5');
	await page.keyboard.press('Enter');
	await findMember(page, 'price', 1);
	await expect(active(page)).toContainText('0.45');
	await page.keyboard.press('Control+z');
	await expect(active(page)).toContainText('0.3597');
	await page.keyboard.press('Control+z');
	await expect(active(page)).toContainText('0.33');
});
