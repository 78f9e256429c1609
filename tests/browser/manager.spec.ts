/** A plant manager's question, by mouse and by keys alone: what does one line more bring, and why not more? */
import type { Page } from 'playwright/test';
import { active, expect, fact, find, findMember, goTo, open, seek, strip } from './app';
import { test } from './plant';

/** The active cell stands in the column of a scenario. */
async function inColumnOf(page: Page, scenario: string) {
	await expect(async () => {
		// The label is column 1, the base column 2.
		const at = Number(await active(page).getAttribute('aria-colindex')) - 2;
		const titles = page.getByRole('grid').getByRole('columnheader').locator('.title');
		await expect(titles.nth(at)).toHaveText(scenario, { timeout: 5000 });
	}).toPass();
}

/** An outlay in the scenario in hand; what it pays back follows with the plan, and one step on, why it is not better. */
async function readTheCase(page: Page) {
	await inColumnOf(page, 'With L9');
	await page.keyboard.type('1500000');
	await page.keyboard.press('Enter');
	await theCaseIsRead(page);
}

/** The strip tells the case whole, planned and paid back. */
async function theCaseIsRead(page: Page) {
	await expect(strip(page)).toContainText('10 plans proven best');
	await expect(strip(page)).not.toContainText('Out of date');
	await expect(strip(page)).toContainText('years to pay back');
	await expect(fact(page, 2)).toHaveText(/^\d\.\d$/);
}

async function readThePlan(page: Page) {
	await page.waitForURL('/plan#why-not');
	await expect(
		page.getByRole('heading', { name: 'What keeps it from being better' })
	).toBeFocused();
	const plan = page.getByRole('region', { name: 'Who makes what, month by month' });
	await expect(plan.getByRole('heading', { level: 2 })).toHaveText(
		/^With L9: the best plan brings [\d,]+ EUR$/
	);
	const main = page.getByRole('main');
	await expect(main.getByRole('button', { name: /^L9, August: \d+ % used/ })).toBeVisible();
	await expect(main).toContainText('100 % is all that may be used, not all that there is');
	await expect(main).toContainText(/Sold in the month: [\d,]+ m short of what would pay/);
	await expect(main).toContainText(/What a line hour more is worth, L\d: up to [\d,]+ EUR\/h/);
}

test('by mouse: a line is copied into a scenario of its own, and with its outlay the case is read', async ({
	page
}) => {
	await open(page, '/members');
	await seek(page.getByLabel('Set shown'), 'lines');
	await page
		.getByRole('row')
		.filter({ has: page.getByRole('cell', { name: 'L6', exact: true }) })
		.getByRole('button', { name: 'Duplicate' })
		.click();
	const dialog = page.getByRole('dialog');
	// Whoever stands in a scenario is offered a new one, with the words of what stays as it is.
	await expect(dialog.getByRole('radio', { name: 'only in a new scenario' })).toBeChecked();
	await dialog.getByText('in every scenario').click();
	await expect(dialog).toContainText('All 9 scenarios change: Base, ');
	await dialog.getByText('only in a new scenario').click();
	await expect(dialog).toContainText('the 9 that there are stay as they are');
	await dialog.getByRole('button', { name: 'Duplicate' }).click();
	await expect(page.getByText('L9 stands in the scenario “With L9” alone')).toBeVisible();
	await expect(strip(page).getByRole('combobox', { name: 'Scenario shown' })).toHaveValue(
		'with_l9'
	);
	// Without an investment nothing is praised, and it says where one is entered.
	const lacks = 'No investment is entered for what is put in';
	await expect(fact(page, 2)).toHaveText('n/a');
	await expect(strip(page)).toContainText(lacks);
	await expect(page.getByText('Life of the other investment')).toBeVisible();
	await goTo(page, /^Payback$/);
	const main = page.getByRole('main');
	await expect(main.getByRole('heading', { level: 1 })).toHaveText(
		`With L9: ${lacks[0]?.toLowerCase()}${lacks.slice(1)}; nobody is entered for what is put in`
	);
	await expect(main).toContainText(`With L9: ${lacks}.`);
	await strip(page).getByRole('button', { name: 'Other investment', exact: true }).click();
	await readTheCase(page);
	await expect(strip(page)).not.toContainText(lacks);
	// A line that nobody mans says so beside its payback, until somebody says who does.
	const nobody = 'Nobody is entered for what is put in';
	await expect(strip(page)).toContainText(nobody);
	await page.getByRole('button', { name: 'Those who are there man what is put in' }).click();
	await inColumnOf(page, 'With L9');
	await page.keyboard.press('Space');
	await expect(strip(page)).not.toContainText(nobody);
	await expect(strip(page)).toContainText('life 5 year');
	await strip(page).getByRole('link', { name: 'Why not better' }).click();
	await readThePlan(page);
});

test('with the keyboard alone', async ({ page }) => {
	await open(page, '/members');
	await seek(page.getByLabel('Set shown'), 'lines');
	const copy = page
		.getByRole('row')
		.filter({ has: page.getByRole('cell', { name: 'L6', exact: true }) })
		.getByRole('button', { name: 'Duplicate' });
	await copy.focus();
	await page.keyboard.press('Enter');
	const dialog = page.getByRole('dialog');
	await expect(dialog.getByLabel('Name', { exact: true })).toBeFocused();
	for (let i = 0; i < 3; i++) await page.keyboard.press('Tab');
	await expect(dialog.getByRole('radio', { name: 'only in a new scenario' })).toBeFocused();
	await page.keyboard.press('Tab');
	await page.keyboard.type('With L9');
	// What it is and costs is asked in the same form, and refused there.
	await page.keyboard.press('Tab');
	await expect(dialog.getByLabel(/^Running speed over technical limit/)).toBeFocused();
	for (let i = 0; i < 2; i++) await page.keyboard.press('Tab');
	await page.keyboard.type('much');
	await page.keyboard.press('Enter');
	await expect(dialog.getByRole('alert')).toContainText('Other investment: ');
	await page.keyboard.press('Control+a');
	await page.keyboard.type('1500000');
	await page.keyboard.press('Tab');
	await page.keyboard.press('Tab');
	// From which month of its first year it runs is chosen among the months.
	const from = dialog.getByRole('combobox', { name: /^Other investment runs from/ });
	await expect(from).toBeFocused();
	await expect(from.getByRole('option').first()).toHaveText('January, as it stands');
	await page.keyboard.press('Tab');
	await expect(dialog.getByLabel('Life of the other investment, year')).toBeFocused();
	await page.keyboard.type('12');
	await page.keyboard.press('Enter');
	await expect(dialog).toBeHidden();
	await expect(page.getByText('L9 stands in the scenario “With L9” alone')).toContainText(
		'with what it costs'
	);
	await theCaseIsRead(page);
	await find(page, 'life_without_option');
	await page.keyboard.press('End');
	await inColumnOf(page, 'With L9');
	await expect(active(page)).toContainText('12');
	await expect(active(page)).toBeFocused();
	await expect(page.getByRole('main')).toContainText('Ctrl+Enter: why not better');
	await page.keyboard.press('Control+Enter');
	await readThePlan(page);
});

test('half the demand is no comparison with a base that has it whole, and every picture of the case says so', async ({
	page
}) => {
	await open(page);
	await strip(page).getByRole('combobox', { name: 'Scenario shown' }).selectOption('new_line');
	await findMember(page, 'item_demand', 8);
	await page.keyboard.press('End');
	await inColumnOf(page, 'New line');
	await page.keyboard.type('6700000');
	await page.keyboard.press('Enter');
	const differs = 'Demand is not that of the reference: PX15B';
	await expect(strip(page)).toContainText(differs);
	await goTo(page, /^Payback$/);
	const main = page.getByRole('main');
	await expect(main.getByRole('heading', { level: 1 })).toHaveText(
		'New line: demand is not that of the reference: PX15B'
	);
	await expect(main).toContainText(`New line: ${differs}. What the scenario gains`);
	await goTo(page, /^Capacity$/);
	await expect(main).toContainText(`New line: ${differs}.`);
	await expect(main).toContainText('100 is all net hours, of which a plan may fill a share');
	await strip(page).getByRole('button', { name: 'Demand of the item today' }).click();
	await inColumnOf(page, 'New line');
	await expect(active(page)).toContainText('6,700,000');
});
