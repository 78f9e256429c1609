/** The page of plans, on two lines and two months that are solved by hand in tests/programmes/planning.test.ts. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright/test';
import { agreement, expect, fact, follow, open, test, undo } from './app';

const file = readFileSync(new URL('two-lines.json', import.meta.url));

/** The small workbook open, on its page of plans, in its base. */
async function openPlan(page: Page) {
	await open(page);
	await page.getByRole('button', { name: 'Open', exact: true }).click();
	await page
		.getByLabel('Choose a file')
		.setInputFiles({ name: 'two-lines.json', mimeType: 'application/json', buffer: file });
	await expect(fact(page, 0)).toHaveText('7,270');
	await follow(page, '/plan');
	await page.getByRole('main').getByLabel('Scenario').selectOption('Base');
	await expect(finding(page)).toHaveText('Base: the best plan brings 7,270 EUR');
}
const finding = (page: Page) => page.getByRole('heading', { level: 2 });
const board = (page: Page) => page.getByRole('table', { name: 'What runs where' });
const made = (page: Page, name: string) => board(page).getByRole('textbox', { name });
const panel = (page: Page) => page.getByRole('complementary', { name: 'Why not more' });

test('a plan says what runs where and how full it is, what is left out, and that it is proven', async ({
	page
}) => {
	await openPlan(page);
	// 1,000 m at 10 m/h: 900 of A and 100 of B in January.
	await expect(made(page, 'A, L1, January')).toHaveValue('900');
	await expect(board(page).getByRole('button', { name: 'L1, January: 100 % used' })).toBeVisible();
	await expect(page.getByText('Sold: 100 m short of what would pay')).toContainText('200 EUR');
	await agreement(page);
	await expect(page.getByRole('main')).toContainText(
		/Proven best; \d+ of \d+ values agree, computed twice/
	);
});

test('a figure that is typed is held, its cost is told, and it is let go again', async ({
	page
}) => {
	await openPlan(page);
	await made(page, 'B, L2, January').fill('0');
	await page.keyboard.press('Enter');
	// Without L2 in January: 6,300 of 7,270.
	await expect(finding(page)).toHaveText('Base: the best plan brings 6,300 EUR');
	const held = page.getByRole('listitem').filter({ hasText: 'Made: B, L2, January' });
	await expect(held).toContainText('costs 970 EUR');
	await held.getByRole('button', { name: 'Let go' }).click();
	await expect(finding(page)).toHaveText('Base: the best plan brings 7,270 EUR');
	await undo(page);
	await expect(finding(page)).toHaveText('Base: the best plan brings 6,300 EUR');
});

test('a figure outside its range is refused with what is permitted, and nothing is held', async ({
	page
}) => {
	await openPlan(page);
	await made(page, 'A, L1, January').fill('6000');
	await page.keyboard.press('Enter');
	await expect(page.getByRole('alert')).toContainText('6,000 m is outside what is permitted');
	await expect(made(page, 'A, L1, January')).toHaveValue('900');
});

test('why not more is one step from any figure, with the keyboard alone', async ({ page }) => {
	await openPlan(page);
	await made(page, 'B, L1, February').focus();
	await page.keyboard.press('ArrowDown');
	// The load of L2 in February: full, ten euros an hour, and what more would bring.
	await page.keyboard.press('Enter');
	await expect(panel(page)).toContainText('All 100 h are used: one more would be worth 10 EUR/h.');
	await expect(panel(page)).toContainText('for up to 20 h more');
	await expect(panel(page).getByRole('row').filter({ hasText: '50 h' })).toContainText('200');
	await page.keyboard.press('Escape');
	await expect(panel(page)).toBeHidden();
	await page.getByRole('button', { name: /^Sold: 100 m short/ }).click();
	await expect(panel(page)).toContainText('nothing is left over');
	await panel(page).getByRole('button', { name: 'Made: B, L2, February' }).click();
	await expect(panel(page).getByRole('heading', { level: 3 })).toHaveText(
		'Why not more: Made: B, L2, February'
	);
});

test('a plan that is kept does not follow, and says what keeping it costs', async ({ page }) => {
	await openPlan(page);
	await page.getByRole('button', { name: 'Keep this plan as it stands' }).click();
	await expect(page.getByText('The plan is kept as it stood on')).toContainText(
		'It is still the best there is.'
	);
	await made(page, 'B, L2, January').fill('0');
	await page.keyboard.press('Enter');
	await page.getByRole('button', { name: 'Let the plan follow again' }).click();
	await expect(finding(page)).toHaveText('Base: the best plan brings 6,300 EUR');
});
