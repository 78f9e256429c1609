/** A seller keeps a quote, sends it, and finds it as it was: entries go to the quote, the offer holds nothing of ours. */
import { expect, find, goTo, open } from './app';
import { test } from './plant';

test('a quote is begun by keys, sent, offered without our figures, and stands while the plant moves', async ({
	page
}) => {
	await open(page);
	await goTo(page, /^Quotes$/);
	const main = page.getByRole('main');
	await expect(main.getByRole('link', { name: '27-AQ-002' })).toBeVisible();
	await main.getByLabel('Search').fill('competitor');
	await expect(main.getByRole('status').first()).toHaveText('1 of 3 quotes');
	await main.getByLabel('Search').fill('');

	await main.getByLabel('Made by').fill('Cy Dent');
	await main.getByLabel('Made by').press('Enter');
	await expect(page.getByRole('heading', { level: 1 })).toHaveText(
		/^Quote \d\d-CD-001, asked for$/
	);
	const fields = page.getByRole('region', { name: 'What is quoted' });
	const quantity = fields.getByRole('textbox', { name: /^Quantity/ });
	await quantity.fill('12,345');
	await quantity.press('Enter');
	const length = fields.getByRole('textbox', { name: /^Coil length/ });
	await length.fill('33');
	await length.press('Enter');
	const days = fields.getByRole('textbox', { name: /^Payment terms/ });
	await days.fill('45');
	await days.press('Enter');
	const finding = main.getByRole('heading', { level: 2, name: /of PX15B in October/ });
	await expect(finding).toHaveText(/^12,345\sm of PX15B in October: /);

	// A tender list beside it: what is known is taken in, what is not stays under the customer's own words.
	await main.getByRole('button', { name: 'Paste a tender list' }).press('Enter');
	await page.keyboard.insertText('Item;Metres;Month\nPB22B-50;20000;Mar\nFoo 16x2;500;Apr');
	await expect(main).toContainText('No item or pipe is called “Foo 16x2”');
	await main.getByRole('checkbox', { name: 'In place of the items that stand' }).uncheck();
	await main.getByRole('button', { name: 'Take in 2 items' }).press('Enter');
	const items = main.getByRole('region', { name: 'Items' });
	await expect(items).toContainText('One item has no figures and is in no sum.');
	await items.getByRole('button', { name: 'Item 3, Foo 16x2' }).press('Enter');
	await items.getByRole('button', { name: 'Remove' }).press('Enter');
	await items.getByRole('button', { name: /^Item 2, / }).press('Enter');
	await items.getByRole('button', { name: 'Remove' }).press('Enter');
	await expect(items.getByRole('button', { name: /^Item \d, / })).toHaveCount(1);
	// 12,345 m in coils of 33 m: the whole numbers on either side are offered, and nothing is entered unasked.
	await expect(items).toContainText('374.09 coils');
	await expect(items.getByRole('button', { name: /^375 coils/ })).toBeVisible();

	await main.getByLabel('State').selectOption('sent');
	await expect(page.getByRole('heading', { level: 1 })).toHaveText(/, sent$/);
	await expect(main.getByLabel('Valid until')).toHaveValue(/^\d{4}-\d\d-\d\d$/);
	await expect(main).toContainText('Today it would be the same, to the digit.');
	const said = await finding.textContent();

	await main.getByRole('button', { name: 'Offer for the customer' }).press('Enter');
	const offer = page.frameLocator('iframe');
	await expect(offer.getByRole('heading', { level: 1 })).toHaveText(/^Offer \d\d-CD-001$/);
	await expect(offer.locator('body')).toContainText('in whole coils that is 12,375');
	await expect(offer.locator('body')).toContainText(/45\sdays/);
	const whole = await offer.locator('html').evaluate((root) => root.outerHTML);
	expect(whole).not.toMatch(/floor|margin|target|net-net|hour|<script/i);
	await main.getByRole('button', { name: 'Back to the quote' }).press('Enter');

	// The plant and the customer have what they had; the quote has its own.
	await find(page, 'payment_days');
	await expect(page.getByRole('grid')).toContainText('58');
	await find(page, 'main_price');
	await page.keyboard.type('2.6');
	await page.keyboard.press('Enter');
	await goTo(page, /^Quotes$/);
	await main.getByRole('link', { name: /CD-001$/ }).press('Enter');
	await expect(finding).toHaveText(said!);
	const moved = main.getByRole('table').last();
	await expect(moved.getByRole('row', { name: /compound price, PEXB/ })).toContainText('2.60');
});
