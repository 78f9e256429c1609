import { readFile } from 'node:fs/promises';
import { expect, fact, find, open, test, unfold } from './app';

test('work survives a closed tab', async ({ app: { page }, context }) => {
	await find(page, 'main_price');
	await unfold(page, 1);
	await page.keyboard.type('2.10');
	await page.keyboard.press('Enter');
	await expect(fact(page, 0)).toHaveText('0.3011');
	await page.close();
	const again = await context.newPage();
	await open(again);
	await expect(fact(again, 0)).toHaveText('0.3011');
});

test('a second tab can read, and writes only after taking over', async ({
	app: { page },
	context
}) => {
	await find(page, 'main_price');
	const second = await context.newPage();
	await open(second);
	await expect(second.getByText(/another tab/i).first()).toBeVisible();
	await second.getByRole('button', { name: /take over/i }).click();
	await find(second, 'main_price');
	await unfold(second, 1);
	await second.keyboard.type('2.10');
	await second.keyboard.press('Enter');
	await expect(fact(second, 0)).toHaveText('0.3011');
	await expect(page.getByText(/another tab/i).first()).toBeVisible();
});

test('a saved copy opens elsewhere with the work in it', async ({ app: { page }, browser }) => {
	await find(page, 'main_price');
	await unfold(page, 1);
	await page.keyboard.type('2.10');
	await page.keyboard.press('Enter');
	await expect(fact(page, 0)).toHaveText('0.3011');
	const download = page.waitForEvent('download');
	await page.getByRole('button', { name: 'Save a copy' }).click();
	const text = await readFile(await (await download).path(), 'utf8');
	expect(JSON.parse(text).title).toBe('Marram Coil Works');

	const elsewhere = await browser.newContext({ locale: 'en-GB' });
	const other = await elsewhere.newPage();
	await open(other, page.url());
	await choose(other, 'copy.json', text);
	await expect(fact(other, 0)).toHaveText('0.3011');
	await elsewhere.close();
});

for (const [name, text, words] of [
	['broken.json', '{"format": "metrewright",', /broken\.json.*line 1/],
	['newer.json', '{"format": "metrewright", "version": 99}', /newer\.json.*newer version/],
	['letter.txt', 'Dear Sir or Madam', /letter\.txt/]
] as const)
	test(`${name} is refused by name, and the open workbook stays`, async ({ app: { page } }) => {
		await choose(page, name, text);
		await expect(page.getByText(words).first()).toBeVisible();
		await page.keyboard.press('Escape');
		await expect(fact(page, 0)).toHaveText('0.2965');
	});

test('the small shop opens beside the plant', async ({ app: { page } }) => {
	await page.getByRole('button', { name: 'Open', exact: true }).click();
	await page.getByRole('button', { name: 'Open the small shop' }).click();
	await expect(page.getByText('One-line shop').first()).toBeVisible();
	await expect(fact(page, 0)).not.toHaveText('0.2965');
});

for (const [what, broken] of [
	['refuses', 'throw new Error("refused")'],
	['never answers', 'return new EventTarget()']
] as const)
	test(`a browser whose store ${what} shows the plant and says that nothing is kept`, async ({
		browser
	}) => {
		const context = await browser.newContext({ locale: 'en-GB' });
		const page = await context.newPage();
		await page.addInitScript(`IDBFactory.prototype.open = function () { ${broken} };`);
		await open(page);
		await expect(fact(page, 0)).toHaveText('0.2965');
		await expect(page.getByText(/not being kept in this browser/).first()).toBeVisible();
		await context.close();
	});

test('without a connection the other pages open and a copy is saved', async ({
	app: { page },
	context
}) => {
	const fetched = page.waitForResponse(/nodes\/.*\.js/);
	await fetched;
	await page.waitForLoadState('networkidle');
	await context.setOffline(true);
	await page.getByRole('link', { name: 'Product', exact: true }).click();
	await expect(page.getByRole('main')).toContainText('wall set-point');
	const download = page.waitForEvent('download');
	await page.getByRole('button', { name: 'Save a copy' }).click();
	await download;
	await context.setOffline(false);
});

async function choose(page: import('@playwright/test').Page, name: string, text: string) {
	await page.getByRole('button', { name: 'Open', exact: true }).click();
	await page
		.getByRole('dialog')
		.locator('input[type=file]')
		.setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
}
