/** A workbook on the server as one person meets it: revisions, their comparison, ways back, names that hold. */
import { active, expect, find, open } from './app';
import { test } from './own-server';
import { change, inStep, openShared, share, toGrid, toPage } from './sharing';
import type { Page } from 'playwright/test';

/** A line of the page of revisions. */
const revision = (page: Page, number: number) =>
	page
		.getByRole('main')
		.locator('ol > li')
		.filter({ has: page.getByText(String(number), { exact: true }) });

test('a dearer resin becomes a revision in words; revisions are compared, one is brought back', async ({
	someone
}) => {
	const page = await someone();
	await open(page);
	await share(page);
	await expect(page.getByRole('row', { name: /^One-line shop, open here/ })).toBeVisible();
	await toGrid(page);
	await change(page, 'resin_price', '2.10');
	await inStep(page, 2);
	await toPage(page, 'Revisions');
	await expect(revision(page, 2)).toContainText('Resin price: 1.9 to 2.1 EUR/kg');
	await expect(revision(page, 2)).toContainText('You');

	await page.getByLabel('Reason for the next save').fill('meters read in spring');
	await toGrid(page);
	await change(page, 'energy_price', '0.18');
	await inStep(page, 3);
	await toPage(page, 'Revisions');
	await expect(revision(page, 3)).toContainText('meters read in spring');
	await expect(revision(page, 3)).toContainText('Energy price: 0.16 to 0.18 EUR/kWh');
	// Said once, it is not said with every save to come.
	await expect(page.getByLabel('Reason for the next save')).toHaveValue('');

	const compared = page.getByRole('region', { name: 'Compare revisions' });
	await compared.getByLabel('From revision').selectOption({ label: 'revision 1' });
	await expect(compared).toContainText('From revision 1 to 3, 2 changes:');
	await expect(compared.getByRole('listitem')).toHaveText([
		'Resin price: 1.9 to 2.1 EUR/kg',
		'Energy price: 0.16 to 0.18 EUR/kWh'
	]);
	await expect(compared).toContainText(/It moves .*EUR\/m, \+\d+\.\d %/);
	await compared.getByLabel('To revision').selectOption({ label: 'revision 2' });
	await expect(compared).toContainText('From revision 1 to 2, one change:');
	await compared.getByRole('button', { name: 'Compare the results' }).press('Enter');
	const results = compared.getByRole('region', { name: 'Results of revision 1 and 2' });
	await expect(results.getByRole('row', { name: /^Factory cost/ })).toContainText(/\+\d+\.\d %/);
	await results.getByRole('button', { name: /^Bridge of Factory cost/ }).press('Enter');
	await expect(results.getByRole('heading')).toContainText('most of all through resin price');

	await revision(page, 2).getByRole('button', { name: 'Restore' }).click();
	await revision(page, 2).getByRole('button', { name: 'Restore', exact: true }).click();
	await inStep(page, 4);
	await expect(revision(page, 4)).toContainText('back to revision 2');
	await expect(revision(page, 4)).toContainText('Energy price: 0.18 to 0.16 EUR/kWh');
	await toGrid(page);
	await find(page, 'energy_price');
	await expect(active(page)).toContainText('0.16');
	await find(page, 'resin_price');
	await expect(active(page)).toContainText('2.1');

	// An earlier one stands beside the workbook without being brought back.
	await toPage(page, 'Revisions');
	await revision(page, 3)
		.getByRole('button', { name: /^Put beside/ })
		.press('Enter');
	await revision(page, 3).getByLabel('Title of the frozen copy').fill('Dearer energy');
	await revision(page, 3).getByLabel('Title of the frozen copy').press('Enter');
	await expect(revision(page, 3)).toContainText('Dearer energy stands beside the workbook');
	await inStep(page, 5);
	// Another is only read: it stands in this page, and no revision comes of it.
	await revision(page, 1)
		.getByRole('button', { name: /^Put beside/ })
		.press('Enter');
	await revision(page, 1)
		.getByRole('button', { name: 'Put beside in this page only' })
		.press('Enter');
	await expect(revision(page, 1)).toContainText('it goes when the page is left');
	await toPage(page, 'Scenarios');
	await expect(page.getByRole('main')).toContainText('Only in this page, to read: it is not kept.');
	await expect(page.getByRole('checkbox', { name: 'Show a column for Revision 1' })).toBeChecked();
	await toPage(page, 'Revisions');
	await expect(revision(page, 5)).toContainText('add frozen copy Dearer energy');
	await toGrid(page);
	await find(page, 'energy_price');
	await page.keyboard.press('End');
	await expect(active(page)).toContainText('0.18');
});

test('a locked name holds: who renames from an older page is told why, and what was typed stays', async ({
	someone
}) => {
	const [page, other] = [await someone(), await someone()];
	await open(page);
	await share(page);
	await toGrid(page);
	await change(page, 'resin_price', '2.10');
	await inStep(page, 2);
	await open(other);
	await openShared(other, 'One-line shop');
	await toPage(other, 'Revisions');
	await revision(other, 2).getByRole('button', { name: 'Name' }).click();
	await other.getByLabel('Name of revision 2').fill('the cheap year');

	await toPage(page, 'Revisions');
	await revision(page, 2).getByRole('button', { name: 'Name' }).click();
	await page.getByLabel('Name of revision 2').fill('budget 2027');
	await page.getByRole('button', { name: 'Name and lock' }).click();
	await expect(revision(page, 2)).toContainText('budget 2027, locked');
	await expect(revision(page, 2).getByRole('button', { name: /^(Rename|Name)/ })).toHaveCount(0);

	await other.getByRole('button', { name: 'Name and lock' }).click();
	await expect(revision(other, 2).getByRole('alert')).toHaveText(
		'This revision is locked. An owner can take its name away first.'
	);
	await expect(other.getByLabel('Name of revision 2')).toHaveValue('the cheap year');
	await expect(revision(other, 2)).toContainText('budget 2027, locked');

	// Work goes on in new revisions; the named one stays what it was, and is found by its name.
	await toGrid(page);
	await change(page, 'resin_price', '2.40');
	await inStep(page, 3);
	await inStep(other, 3);
	const compared = other.getByRole('region', { name: 'Compare revisions' });
	await compared.getByRole('button', { name: 'Compare' }).click();
	await expect(compared).toContainText('From revision 2 to 3');
	await expect(compared.getByRole('listitem')).toHaveText('Resin price: 2.1 to 2.4 EUR/kg');
	await expect(compared.getByLabel('From revision').locator('option').first()).toHaveText(
		'budget 2027 (revision 2)'
	);
});
