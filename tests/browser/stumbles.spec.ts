/** Where a first reader stumbled: forms, links to sheets, choices, where the keyboard goes, the phone. */
import type { Page } from 'playwright/test';
import { active, expect, fact, findMember, open } from './app';
import { test } from './plant';

const focused = (page: Page) => page.locator(':focus');
const notices = (page: Page) => page.locator('.notices');
const contents = (page: Page) => page.getByRole('navigation', { name: 'Contents' });

test('the title of a new scenario is selected, so that typing replaces it', async ({
	app: { page }
}) => {
	await open(page, '/scenarios');
	await page.getByRole('button', { name: 'New scenario' }).click();
	await page.keyboard.type('Weekend crews');
	await expect(page.getByRole('textbox', { name: 'Title' })).toHaveValue('Weekend crews');
	await page.keyboard.press('Enter');
	await expect(focused(page)).toHaveText('Weekend crews');
	await page.getByRole('button', { name: 'New scenario' }).click();
	await page.getByRole('button', { name: 'Cancel', exact: true }).click();
	await expect(focused(page)).toHaveText('New scenario');
});

for (const path of ['/scenarios', '/members', '/product', '/investment'])
	test(`from ${path} one click in the contents goes to the sheet`, async ({ app: { page } }) => {
		await open(page, path);
		for (const sheet of ['People', 'Time']) {
			await contents(page)
				.getByRole('link', { name: new RegExp(`^${sheet}\\b`) })
				.click();
			const here = contents(page).locator('[aria-current=location]');
			await expect(here).toContainText(sheet);
			await expect(page.getByRole('heading', { name: sheet, exact: true })).toBeInViewport();
		}
	});

test('typing on a choice opens its list at what begins so', async ({ app: { page } }) => {
	await findMember(page, 'pattern_of_line', 5);
	const before = (await active(page).textContent()) ?? '';
	await page.keyboard.type('7x');
	const list = page.getByRole('gridcell').getByRole('listbox');
	await expect(list).toBeFocused();
	await expect(list).toHaveValue('7x24');
	await page.keyboard.press('Escape');
	await expect(list).toBeHidden();
	await expect(active(page)).toBeFocused();
	expect(await active(page).textContent()).toBe(before);

	await page.keyboard.type('zz');
	await expect(page.getByText('No choice begins with "zz".')).toBeVisible();
	await page.keyboard.press('Enter');
	await expect(list).toBeFocused();
	await page.keyboard.press('Escape');
	await page.keyboard.type('7zz');
	await page.keyboard.press('Backspace');
	await page.keyboard.press('Backspace');
	await page.keyboard.press('Enter');
	await page.keyboard.press('ArrowUp');
	await expect(active(page)).toContainText('7x24');

	await page.keyboard.type('5');
	await page.keyboard.press('ArrowDown');
	await expect(list).not.toHaveValue('7x24');
	const chosen = await list.inputValue();
	await page.keyboard.press('Enter');
	await page.keyboard.press('ArrowUp');
	await expect(active(page)).toContainText(chosen);
});

test('a page that is gone to has the focus on its heading', async ({ app: { page } }) => {
	await contents(page).getByRole('link', { name: 'Scenarios' }).focus();
	await page.keyboard.press('Enter');
	await expect(page.getByRole('heading', { name: 'Scenarios', exact: true })).toBeFocused();
	await contents(page).getByRole('link', { name: 'Lists', exact: true }).focus();
	await page.keyboard.press('Enter');
	await expect(page.getByRole('heading', { level: 1, name: /Lists/ })).toBeFocused();
});

test('a removed member is told of and comes back', async ({ app: { page } }) => {
	await open(page, '/members');
	const row = (name: string) =>
		page.getByRole('row').filter({ has: page.getByRole('cell', { name, exact: true }) });
	await row('PX15B').getByRole('button', { name: 'Duplicate' }).click();
	await page.keyboard.type('PX15B copy');
	await page.keyboard.press('Enter');
	await expect(focused(page)).toHaveText('PX15B copy');
	await row('PX15B copy').getByRole('button', { name: 'Remove', exact: true }).click();
	await expect(notices(page)).toContainText('PX15B copy removed.');
	await expect(notices(page)).toHaveAttribute('aria-live', 'polite');
	await expect(focused(page)).toHaveAttribute('data-item', /./);
	await notices(page).getByRole('button', { name: 'Undo' }).click();
	await expect(focused(page)).toHaveText('PX15B copy');
	await expect(notices(page)).toContainText('Undone');
	await expect(notices(page).getByRole('button', { name: 'Undo' })).toBeHidden();
});

test('a removed scenario is told of; a later edit withdraws the offer', async ({
	app: { page }
}) => {
	await open(page, '/scenarios');
	const titles = await page.locator('main [data-item]').allTextContents();
	const [, first = '', second = ''] = titles;
	await page.getByRole('button', { name: 'Delete', exact: true }).first().click();
	await page.getByRole('button', { name: 'Delete scenario' }).click();
	await expect(notices(page)).toContainText(`${first} removed.`);
	await expect(focused(page)).toHaveText(second);
	const undo = notices(page).getByRole('button', { name: 'Undo' });
	await expect(undo).toBeVisible();
	await page.getByRole('button', { name: 'Down', exact: true }).first().click();
	await expect(undo).toBeHidden();
});

test('a phone shows all facts of the strip', async ({ app: { page } }) => {
	await page.setViewportSize({ width: 390, height: 844 });
	const strip = page.getByRole('region', { name: 'At a glance' });
	for (const at of [0, 1, 2]) await expect(fact(page, at)).toBeInViewport();
	await expect(strip).toContainText('bottleneck');
	const wide = await page.evaluate(() => document.documentElement.scrollWidth);
	expect(wide).toBeLessThanOrEqual(390);
});

test('a clicked cell is boxed', async ({ app: { page } }) => {
	await findMember(page, 'main_price', 1);
	await page.keyboard.press('ArrowDown');
	await page.getByRole('gridcell').filter({ hasText: '2.02' }).first().click();
	await expect(active(page)).toContainText('2.02');
	await expect(active(page)).toHaveCSS('outline-style', 'solid');
	await expect(active(page)).toHaveCSS('outline-width', '2px');
});
