import { readFile } from 'node:fs/promises';
import {
	active,
	agreement,
	expect,
	fact,
	find,
	findMember,
	open,
	strip,
	test as onPlant,
	undo,
	watch
} from './app';
import { holdSecondEngine } from './second-engine';
import { serveShop, test } from './shop';
import type { Page } from 'playwright/test';

/*
 * Keeping does not hang on the size of a workbook, so it is the small shop's. The wall of R16 is 1.8 + 0.06 + 3 × 0.035 =
 * 1.965 mm, a metre of it 3.1416 × 14.035 mm × 1.965 mm × 941 kg/m³ = 0.08153 kg. So 0.20 EUR/kg more, with 4 % scrap,
 * make 0.08153 × 0.20 / 0.96 = 0.0170 EUR/m.
 */
const BEFORE = '0.3151';
const DEARER = '0.3321';

async function makeDearer(page: Page) {
	await change(page, '2.10', DEARER);
}

async function change(page: Page, price: string, cost: string) {
	await find(page, 'resin_price');
	await page.keyboard.type(price);
	await page.keyboard.press('Enter');
	await expect(fact(page, 0)).toHaveText(cost);
}

const saved = (page: Page) =>
	expect(page.getByRole('status').first()).toHaveText(/^saved \d\d:\d\d$/);
const notice = (page: Page) => page.getByText('Read only here.');

/** Opens a file by the dialog. */
async function choose(page: Page, name: string, text: string) {
	await page.getByRole('button', { name: 'Open', exact: true }).click();
	await page
		.getByLabel('Choose a file')
		.setInputFiles({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(text) });
}

test('an edit that is called saved survives the page being closed at once', async ({
	page,
	context
}) => {
	await open(page);
	await makeDearer(page);
	await saved(page);
	await page.close();
	const again = await context.newPage();
	await open(again);
	await expect(fact(again, 0)).toHaveText(DEARER);
	await expect(notice(again)).toBeHidden();
});

test('an edit that is called saved survives a killed tab, and so do scenario and product in hand', async ({
	page,
	context
}) => {
	await open(page);
	await strip(page).getByRole('combobox', { name: 'Product shown' }).selectOption('R20');
	await strip(page).getByRole('combobox', { name: 'Scenario shown' }).selectOption('base');
	await change(page, '2.10', '0.4401');
	await saved(page);
	const gone = page.waitForEvent('crash');
	await Promise.all([gone, page.goto('chrome://crash').catch(() => undefined)]);
	const again = await context.newPage();
	await open(again);
	await expect(fact(again, 0)).toHaveText('0.4401');
	const box = (name: string) => strip(again).getByRole('combobox', { name });
	await expect(box('Product shown')).toHaveValue('R20');
	await expect(box('Scenario shown')).toHaveValue('base');
	await find(again, 'resin_price');
	await expect(active(again)).toContainText('2.1');
});

test('structure, too, is found again: a new scenario with its change', async ({
	page,
	context
}) => {
	await open(page, '/scenarios');
	await page.getByRole('button', { name: 'New scenario' }).click();
	await page.getByRole('dialog').getByLabel('Title').fill('Faster');
	await page.getByRole('dialog').getByRole('button', { name: 'Add scenario' }).click();
	await expect(page.getByRole('dialog')).toBeHidden();
	await page.getByRole('link', { name: 'Metrewright' }).click();
	await expect(page.getByRole('grid')).toBeVisible();
	await find(page, 'shifts');
	await page.keyboard.press('End');
	await page.keyboard.type('3');
	await page.keyboard.press('Enter');
	await saved(page);
	await page.close();
	const again = await context.newPage();
	await open(again);
	await strip(again).getByRole('combobox', { name: 'Scenario shown' }).selectOption('Faster');
	await find(again, 'shifts');
	await again.keyboard.press('End');
	await expect(active(again)).toContainText('3');
});

test('a second tab reads only, follows the first, and writes after taking over', async ({
	page,
	context
}) => {
	await open(page);
	const second = await context.newPage();
	await open(second);
	await expect(notice(second)).toBeVisible();
	await find(second, 'resin_price');
	await second.keyboard.press('Delete');
	await expect(active(second)).toContainText('1.9');
	await expect(second.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();

	await page.bringToFront();
	await makeDearer(page);
	await saved(page);
	await expect(fact(second, 0)).toHaveText(DEARER);

	await second.bringToFront();
	await second.getByRole('button', { name: 'Take over here' }).click();
	await expect(notice(second)).toBeHidden();
	await expect(notice(page)).toBeVisible();
	await expect(fact(second, 0)).toHaveText(DEARER);
	await change(second, '1.90', BEFORE);
	await saved(second);
	await expect(fact(page, 0)).toHaveText(BEFORE);
});

test('a saved copy opens elsewhere with the work in it', async ({ page, browser }) => {
	await open(page);
	await makeDearer(page);
	const [download] = await Promise.all([
		page.waitForEvent('download'),
		page.getByRole('button', { name: 'Save a copy' }).click()
	]);
	expect(download.suggestedFilename()).toBe('one-line-shop.json');
	const text = await readFile(await download.path(), 'utf8');
	expect(JSON.parse(text)).toMatchObject({ title: 'One-line shop', invented: true });

	const elsewhere = await browser.newContext({ locale: 'de-DE' });
	const seen = await watch(elsewhere);
	await holdSecondEngine(elsewhere);
	await serveShop(elsewhere);
	const other = await elsewhere.newPage();
	await open(other, page.url());
	await expect(fact(other, 0)).toHaveText('0,3151');
	await choose(other, 'from-a-colleague.json', text);
	await expect(fact(other, 0)).toHaveText('0,3321');
	await expect(other.getByRole('dialog')).toBeHidden();
	await find(other, 'resin_price');
	await expect(active(other)).toContainText('2,1');
	expect(seen).toEqual([]);
	await elsewhere.close();
});

for (const [name, text, words] of [
	['broken.json', '{"format": "metrewright",\n"version": 1,\n"title" "x"}', /broken\.json.*line 3/],
	['newer.json', '{"format": "metrewright", "version": 99}', /newer\.json.*newer version/],
	['letter.txt', 'Dear Sir or Madam', /letter\.txt/],
	['empty.json', '', /empty\.json/]
] as const)
	test(`${name} is refused by its name, and the open workbook with its work stays`, async ({
		page
	}) => {
		await open(page);
		await makeDearer(page);
		await choose(page, name, text);
		await expect(page.getByRole('dialog').getByRole('alert')).toContainText(words);
		await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
		await expect(page.getByRole('dialog')).toBeHidden();
		await expect(fact(page, 0)).toHaveText(DEARER);
		await undo(page);
		await expect(fact(page, 0)).toHaveText(BEFORE);
	});

onPlant(
	'the small shop opens beside the plant, and the plant is found again with its work',
	async ({ page }) => {
		await open(page);
		await findMember(page, 'main_price', 1);
		await page.keyboard.type('2.10');
		await page.keyboard.press('Enter');
		await expect(fact(page, 0)).toHaveText('0.3017');
		await page.getByRole('button', { name: 'Open', exact: true }).click();
		await page.getByRole('button', { name: 'Open the small shop' }).click();
		await expect(page.getByRole('banner')).toContainText('One-line shop');
		await expect(strip(page)).toContainText('the line is');
		await agreement(page);
		await page.getByRole('button', { name: 'Open', exact: true }).click();
		await page
			.getByRole('listitem')
			.filter({ hasText: /^\s*Marram Coil Works,?\s+saved/ })
			.getByRole('button', { name: 'Open' })
			.click();
		await expect(fact(page, 0)).toHaveText('0.3017');
	}
);

for (const [what, broken] of [
	['refuses', 'throw new Error("refused")'],
	['never answers', 'return new EventTarget()']
] as const)
	test(`a browser whose store ${what} shows the workbook and says that nothing is kept`, async ({
		browser
	}) => {
		const context = await browser.newContext({ locale: 'en-GB' });
		await holdSecondEngine(context);
		await serveShop(context);
		const page = await context.newPage();
		await page.addInitScript(`IDBFactory.prototype.open = function () { ${broken} };`);
		await open(page);
		await expect(fact(page, 0)).toHaveText(BEFORE);
		await expect(page.getByText(/not being kept in this browser/).first()).toBeVisible();
		await context.close();
	});

onPlant(
	'without a connection the other pages open and a copy is saved',
	async ({ page, context }) => {
		await open(page);
		// The other pages are fetched ahead, once the first numbers stand.
		await page.waitForFunction(() => performance.getEntriesByName('fetched-ahead').length > 0);
		// So is the solver, which makes the plans anew once all scenarios stand.
		await expect(page.getByText(/plans proven best/).first()).toBeVisible();
		await page.waitForLoadState('networkidle');
		await context.setOffline(true);
		await page.getByRole('link', { name: 'Product', exact: true }).click();
		await expect(page.getByRole('main')).toContainText('wall set-point');
		const download = page.waitForEvent('download');
		await page.getByRole('button', { name: 'Save a copy' }).click();
		await download;
		await context.setOffline(false);
	}
);
