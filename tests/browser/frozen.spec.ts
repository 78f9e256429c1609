/** A budget is frozen, the base moves on, and both stand beside each other: by keys alone, after a reload too. */
import { active, expect, find, goTo, open } from './app';
import { test } from './shop';

test('a frozen copy stays while the base moves, is compared, bridged, and asked what it holds', async ({
	page
}) => {
	await open(page, '/scenarios');
	const main = page.getByRole('main');
	await page.getByRole('button', { name: 'Freeze a copy' }).press('Enter');
	const form = page.getByRole('dialog');
	await form.getByLabel('Title').fill('Budget 2028');
	await form.getByLabel('Of the scenario').selectOption('base');
	await form.getByLabel('Date').fill('2027-11-30');
	await form.getByLabel(/^By/).fill('A. Example');
	await form.getByLabel('Title').press('Enter');
	await expect(form).toBeHidden();
	await expect(main).toContainText('Frozen 2027-11-30, of One shift, by A. Example');
	await expect(main.getByRole('checkbox', { name: 'Show a column for Budget 2028' })).toBeChecked();

	await goTo(page, /^Pipe/);
	await find(page, 'resin_price');
	await page.keyboard.type('2.5');
	await page.keyboard.press('Enter');
	await find(page, 'resin_price');
	await page.keyboard.press('End');
	// The scenario in hand has six tenths more than the copy, and a plus says so.
	await expect(page.getByRole('columnheader', { name: 'Budget 2028' })).toContainText(
		'+ is more in Second shift'
	);
	await expect(active(page)).toContainText(/1\.9\s*\+0\.6/);
	await page.keyboard.type('9');
	await expect(page.getByRole('grid')).toContainText(
		'Budget 2028 is a frozen copy, which no edit changes.'
	);
	await page.keyboard.press('Enter');
	const why = page.getByRole('region', { name: 'Why this number' });
	await expect(why).toContainText('Resin price in Budget 2028');
	await expect(why).toContainText('today, in One shift 2.5 EUR/kg');
	await expect(why).toContainText('entered');
	await page.keyboard.press('Escape');

	await page.reload();
	await expect(page.getByRole('columnheader', { name: 'Budget 2028' })).toContainText(
		'frozen 2027-11-30, of One shift'
	);
	await find(page, 'resin_price');
	await page.keyboard.press('End');
	await expect(active(page)).toContainText(/1\.9\s*\+0\.6/);

	await goTo(page, /^Scenarios/);
	await main.getByRole('button', { name: 'Rename' }).last().press('Enter');
	await form.getByLabel('Compared with').selectOption('Budget 2028');
	await form.getByLabel('Title').press('Enter');
	await expect(main).toContainText('on base, 2 changes, compared with Budget 2028');
	await expect(page.getByRole('region', { name: 'At a glance' })).toContainText(
		'compared with Budget 2028'
	);
	await goTo(page, /^Pipe/);
	await expect(page.getByRole('columnheader', { name: /^Second shift/ })).toContainText(
		'+ is more than in Budget 2028'
	);
	await find(page, 'resin_price');
	await page.keyboard.press('ArrowRight');
	await expect(active(page)).toContainText(/2\.5\s*\+0\.6/);
	await goTo(page, /^Scenarios/);
	await main.getByRole('combobox', { name: 'First scenario' }).selectOption('budget_2028');
	await main.getByRole('combobox', { name: 'Second scenario' }).selectOption('base');
	await expect(main.getByRole('table').last()).toContainText('Resin price');
	await main.getByRole('button', { name: 'Delete' }).last().click();
	await expect(main).toContainText('Second shift: compared with it so far, then with the base.');
	await main.getByRole('button', { name: 'Delete the copy' }).click();
	await expect(main).not.toContainText('Frozen 2027-11-30');
	await page.getByRole('button', { name: 'Undo' }).first().click();
	await expect(main).toContainText('Frozen 2027-11-30');
});
