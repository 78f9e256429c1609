import { readFile } from 'node:fs/promises';
import { expect, goTo, open, strip, undo } from './app';
import { test } from './plant';
import type { Page } from 'playwright/test';

const fields = (page: Page) => page.getByRole('region', { name: 'What is quoted' });
const finding = (page: Page) => page.getByRole('heading', { level: 1 });
const field = (page: Page, name: RegExp) => fields(page).getByRole('textbox', { name });

async function type(page: Page, name: RegExp, text: string) {
	await field(page, name).click();
	await field(page, name).fill(text);
	await page.keyboard.press('Enter');
}

test('a quote stands on the base whatever scenario is shown, and says so loudly where another is chosen', async ({
	page
}) => {
	await open(page);
	await strip(page).getByRole('combobox', { name: 'Scenario shown' }).selectOption('New line');
	await goTo(page, /^Quote$/);
	const main = page.getByRole('main');
	const standsOn = fields(page).getByRole('combobox', { name: 'Quotes stand on' });
	await expect(standsOn).toHaveValue('base');
	await expect(finding(page)).toHaveText(
		/^60,000\sm of PX15B in October: [\d.]+\sEUR per km over (the|the plan’s) floor, short of the target$/
	);
	await expect(main).toContainText(/on L[123]; EUR\/m throughout/);
	await expect(main).toContainText(
		/The order takes [\d.]+\sh of L[123] in October; the plan leaves none free/
	);
	const invoice = main.getByRole('region', { name: 'On the invoice' });
	await expect(invoice.getByRole('row', { name: /^target/ })).toContainText(/19\.\d\d/);
	// Entries go where the quote stands: every scenario that follows the base has them too.
	await type(page, /^Quantity/, '80 km');
	await expect(page.getByRole('button', { name: /^Undo/ })).toHaveAccessibleDescription(
		'Quantity: 60000 to 80000 m'
	);
	await standsOn.selectOption('New line');
	await expect(finding(page)).toHaveText(/^80,000\sm of PX15B in October, on New line: /);
	await expect(main).toContainText('This quote stands on New line, not on Base');
	await main.getByText('All figures as a table').click();
	await expect(main.getByRole('region', { name: 'Quote, all figures' })).toContainText(
		'Stands on, which is not the base'
	);
	await page.emulateMedia({ media: 'print' });
	await expect(main.getByText('This quote stands on New line, not on Base')).toBeVisible();
	await page.emulateMedia({ media: null });
	await standsOn.selectOption('Base');
	await expect(main).not.toContainText('not on Base');
});

test('a quote follows its quantity, month and product as they are changed', async ({ page }) => {
	await open(page);
	await goTo(page, /^Quote$/);
	await expect(finding(page)).toHaveText(
		/^60,000\sm of PX15B in October: [\d.]+\sEUR per km over (the|the plan’s) floor, short of the target$/
	);
	const before = await finding(page).textContent();
	await type(page, /^Quantity/, '9 km');
	await expect(finding(page)).toHaveText(/^9,000\sm of PX15B in October/);
	await expect(field(page, /^Quantity/)).toHaveValue('9,000');
	await expect(field(page, /^Discount by order size/)).toHaveValue('0');
	await fields(page).getByRole('combobox', { name: 'Month of the run' }).selectOption('Feb');
	await expect(finding(page)).toContainText('in February');
	await expect(page.getByRole('main')).toContainText('in February the hours are free');
	await fields(page).getByRole('combobox', { name: 'Product quoted' }).selectOption('PB15B');
	await expect(finding(page)).toContainText('of PB15B');
	// The length that the product is coiled in comes along, and is said; all of it is one step.
	await expect(field(page, /^Coil length/)).toHaveValue('100');
	await expect(fields(page)).toContainText(
		'Coil length is now 100 m/coil, as PB15B has it; it was 50 m/coil.'
	);
	await fields(page).getByRole('button', { name: 'Leave it as it was' }).click();
	await expect(field(page, /^Coil length/)).toHaveValue('50');
	await undo(page);
	for (let i = 0; i < 3; i++) await undo(page);
	await expect(finding(page)).toHaveText(before ?? '');
});

test('an order that does not fit is told what it pushes out of the plan, and what that costs', async ({
	page
}) => {
	await open(page, '/quote');
	await type(page, /^Quantity/, '400 km');
	const month = fields(page).getByRole('combobox', { name: 'Month of the run' });
	await month.selectOption('Jan');
	await expect(finding(page)).toHaveText(/^400,000\sm of PX15B in January/);
	const main = page.getByRole('main');
	await expect(main).toContainText(
		/The \d+ h of L\d in January push out nothing that is sold; other work moves to where it costs more: [\d.,]+ EUR\./
	);
	// The headline goes by the floor of the plan made again, and the line shows both.
	await expect(finding(page)).toContainText('over the plan’s floor');
	await expect(page.getByText(/^Plan’s floor 0\.\d{4}$/)).toBeVisible();
	// What the floor charges is next to what the plan loses, not a month's worth of lost sales.
	await expect(main).toContainText(
		/The floor charges [\d.]+ EUR for them, 1\d\d(?:\.\d)? EUR less: it reckons from the plan as it stands/
	);
	await month.selectOption('Oct');
	await expect(main).toContainText(
		/The \d+ h of L\d in October push out [\d,]+ m of PX\w+, \w+ .*\. With the plan made again around them that costs \d\d,\d{3} EUR\./
	);
});

test('terms and extras change what is left, and a quote under its floor is cautioned', async ({
	page
}) => {
	await open(page, '/quote');
	await expect(finding(page)).toContainText(/over the (plan’s )?floor/);
	await expect(page.getByRole('main')).toContainText('A quote is worked out, not advised');
	await page.getByRole('checkbox', { name: 'own print' }).check();
	await expect(page.getByRole('main').getByRole('row', { name: /^Extras charged/ })).toBeVisible();
	await type(page, /^Extra discount/, '60');
	await expect(finding(page)).toContainText(/under the (plan’s )?floor/);
	await expect(page.getByRole('list', { name: 'Cautions' })).toContainText(
		'The quote leaves less than its floor'
	);
	await expect(strip(page)).toContainText(/cautions?/);
	await type(page, /^Extra discount/, 'much');
	await expect(fields(page)).toContainText('"much" is not a number');
	await expect(finding(page)).toContainText(/under the (plan’s )?floor/);
});

test('a quote is told in words, in full and as files', async ({ page }) => {
	await open(page, '/quote');
	const main = page.getByRole('main');
	await expect(
		main.getByRole('img', { name: /over the (plan’s )?floor/ })
	).toHaveAccessibleDescription(/Floor 0\.\d{4} EUR\/m,.* this quote 0\.\d{4}/);
	await expect(main.getByRole('img', { name: /Price ladder/ })).toBeVisible();
	await expect(main.getByRole('row', { name: /^Contribution over floor/ })).toBeVisible();
	await main.getByText('All figures as a table').click();
	await expect(main.getByRole('region', { name: 'Quote, all figures' })).toContainText(
		'Changeover for this order'
	);
	await expect(main.getByRole('button', { name: 'Print, or save as PDF there' })).toBeVisible();
	const take = async (what: string) => {
		const [download] = await Promise.all([
			page.waitForEvent('download'),
			main.getByRole('button', { name: what }).click()
		]);
		return readFile(await download.path());
	};
	expect((await take('Export table')).toString()).toContain('Contribution over floor');
	const picture = await take('Save picture');
	expect(picture.subarray(0, 8).toString('latin1')).toBe('\x89PNG\r\n\x1a\n');
});

test('options are ranked, held against each alone, and shown in their parts', async ({ page }) => {
	await open(page, '/investment');
	const main = page.getByRole('main');
	const first = main.getByRole('table').first().getByRole('row').nth(1);
	// By the worth a year, as lives differ; by what they are worth in all, when that is chosen.
	const by = main.getByRole('combobox', { name: 'Ranked by' });
	await expect(by).toHaveValue('annualValue');
	await by.selectOption('npv');
	await expect(first).toContainText('New line and rewinder');
	await by.selectOption('payback');
	await expect(first).toContainText('Weekend crews, July to November');
	await expect(
		main.getByRole('heading', {
			name: /^New line and rewinder would be worth .* kEUR\/year more than each alone adds up to/
		})
	).toBeVisible();
	const parts = main.getByRole('region', { name: 'What each net present value is made of' });
	await expect(parts.getByRole('columnheader', { name: /tax shield/ })).toBeAttached();
	await expect(parts.getByRole('row', { name: /^New line −/ })).toContainText('−1,618');
});
