/** The page of plans, on two lines and two months that are solved by hand in tests/programmes/planning.test.ts. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright/test';
import { agreement, expect, fact, follow, open, row, strip, undo, value } from './app';
import { test } from './plant';

test.use({ opens: readFileSync(new URL('two-lines.json', import.meta.url), 'utf8') });

/** The small workbook open, on its page of plans, in its base. */
async function openPlan(page: Page) {
	await open(page);
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
	// 20 h sell 100 m at 2 EUR; the 150 m of 30 h more need not lie in stock for a month.
	await expect(panel(page).getByRole('row').filter({ hasText: '50 h' })).toContainText('215');
	await page.keyboard.press('Escape');
	await expect(panel(page)).toBeHidden();
	await page.getByRole('button', { name: /^Sold: 100 m short/ }).click();
	await expect(panel(page)).toContainText('nothing is left over');
	await panel(page).getByRole('button', { name: 'Made: B, L2, February' }).click();
	await expect(panel(page).getByRole('heading', { level: 3 })).toHaveText(
		'Why not more: Made: B, L2, February'
	);
});

test('a piece is dragged to another month: both figures are held, what that costs is told, and it is one step', async ({
	page
}) => {
	await openPlan(page);
	const february = board(page).getByRole('button', { name: /^L1, February: / });
	const piece = await february.locator('.piece').nth(1).boundingBox();
	const january = await board(page)
		.getByRole('button', { name: /^L1, January: / })
		.boundingBox();
	const middle = (box: typeof piece) => [box!.x + box!.width / 2, box!.y + 8] as const;
	await page.mouse.move(...middle(piece));
	await page.mouse.down();
	await page.mouse.move(...middle(january), { steps: 5 });
	await expect(page.getByText('600 m to L1, January')).toBeVisible();
	await page.mouse.up();
	await expect(made(page, 'B, L1, February, held')).toHaveValue('0');
	await expect(made(page, 'B, L1, January, held')).toHaveValue('700');
	// 300 m of A less at 3 EUR, and 600 m of B in stock for a month instead of 300 m of A: 0.1 EUR each.
	await expect(
		page.getByText('600 m B of L1, February moved to L1, January; both figures are held.')
	).toContainText('That costs 930 EUR.');
	await undo(page);
	await expect(made(page, 'B, L1, February')).toHaveValue('600');
	await expect(page.getByText('both figures are held')).toBeHidden();
	// A does not run on L2.
	await made(page, 'B, L2, January').scrollIntoViewIfNeeded();
	const first = await board(page)
		.getByRole('button', { name: /^L1, January: / })
		.locator('.piece')
		.first()
		.boundingBox();
	const l2 = await board(page)
		.getByRole('button', { name: /^L2, January: / })
		.boundingBox();
	await page.mouse.move(...middle(first));
	await page.mouse.down();
	await page.mouse.move(...middle(l2), { steps: 5 });
	await page.mouse.up();
	await expect(page.getByRole('alert')).toContainText('A cannot run on L2');
	await expect(made(page, 'A, L1, January')).toHaveValue('900');
});

test('a piece is moved with the keyboard alone, and both figures are let go again', async ({
	page
}) => {
	await openPlan(page);
	await made(page, 'B, L1, February').focus();
	await page.keyboard.press('m');
	await expect(page.getByText('600 m B of L1, February taken up.')).toBeAttached();
	await page.keyboard.press('Escape');
	await expect(page.getByText('Left where it was.')).toBeAttached();
	await page.keyboard.press('m');
	await page.keyboard.press('ArrowLeft');
	await page.keyboard.press('Enter');
	await expect(made(page, 'B, L1, January, held')).toHaveValue('700');
	await expect(finding(page)).toHaveText('Base: the best plan brings 6,340 EUR');
	await page.getByRole('button', { name: 'Let both go' }).click();
	await expect(finding(page)).toHaveText('Base: the best plan brings 7,270 EUR');
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

test('figures that rest on a plan which cannot be had are marked, with one step to the plan, until there is one', async ({
	page
}) => {
	await openPlan(page);
	await made(page, 'A, L1, January').fill('2000');
	await page.keyboard.press('Enter');
	await expect(page.getByRole('main')).toContainText(/hours hold, .*by 100 h/);
	await expect(finding(page)).toHaveText('Base: no plan fits');
	await expect(page.getByRole('button', { name: 'Keep this plan' })).toHaveCount(0);
	// In view where it was typed: what lacks, whose plan it is, and the way back.
	await expect(panel(page)).toContainText('in Base');
	await expect(panel(page).getByRole('alert')).toContainText(
		/Held at 2,000 m by an entry, and no plan fits\. .*by 100 h/
	);
	await panel(page).getByRole('button', { name: 'Let go' }).click();
	await expect(finding(page)).toHaveText('Base: the best plan brings 7,270 EUR');
	await undo(page);
	await expect(finding(page)).toHaveText('Base: no plan fits');
	await follow(page, '/');
	await expect(page.getByLabel('What the last edit moves')).toContainText(/ to no plan/);
	const contribution = row(page, /^Contribution/);
	await expect(value(contribution, 1)).toContainText('out of date');
	await expect(value(row(page, /^Hours offered/), 1)).not.toContainText('out of date');
	await expect(page.getByRole('columnheader', { name: 'Base' })).toContainText(
		'Out of date: no plan fits'
	);
	await strip(page).getByRole('link', { name: 'no plan fits' }).first().click();
	await page.waitForURL('/plan');
	await page.getByRole('main').getByLabel('Scenario').selectOption('Base');
	await page
		.getByRole('listitem')
		.filter({ hasText: 'Made: A, L1, January' })
		.getByRole('button', { name: 'Let go' })
		.click();
	await expect(finding(page)).toHaveText('Base: the best plan brings 7,270 EUR');
	await follow(page, '/');
	await expect(value(contribution, 1)).not.toContainText('out of date');
	await expect(strip(page)).not.toContainText('Out of date');
});

test('a programme is changed where its plan stands: what is wrong is said at once, and it is one step of undo', async ({
	page
}) => {
	await openPlan(page);
	await page.getByRole('button', { name: 'Change the programme' }).click();
	const form = page.getByRole('form', { name: 'Change the programme' });
	await expect(form).toContainText('14 decisions, 12 requirements, 26 factors.');
	// Solved apart for each line and month, what is sold belongs to none of them.
	await form.getByRole('combobox', { name: 'What shall be best' }).selectOption('Hours planned');
	await expect(form).toContainText('sold is not per line');
	await form.getByRole('combobox', { name: 'What shall be best' }).selectOption('Contribution');
	await form.getByRole('button', { name: 'Take out Stock balances' }).click();
	await expect(form).toContainText('8 requirements');
	await form.getByRole('button', { name: 'Keep the programme' }).click();
	// What is sold need not be made: 3 × 1,300 + 2 × 1,800.
	await expect(finding(page)).toHaveText('Base: the best plan brings 7,500 EUR');
	await undo(page);
	await expect(finding(page)).toHaveText('Base: the best plan brings 7,270 EUR');
});

test('a programme is removed, offered back, and another one written in its place', async ({
	page
}) => {
	await openPlan(page);
	await page.getByRole('button', { name: 'Remove it' }).click();
	await expect(page.getByText('This workbook plans nothing by itself')).toBeVisible();
	await page.getByRole('button', { name: 'Add a programme' }).click();
	const form = page.getByRole('form', { name: 'Change the programme' });
	await expect(form).toContainText('Give it a name.');
	await form.getByRole('textbox', { name: 'Name' }).fill('What to sell');
	await form.getByRole('combobox', { name: 'What shall be best' }).selectOption('Contribution');
	const decided = form.getByRole('combobox', { name: 'Add an input that may be chosen' });
	await decided.selectOption('Sold');
	await expect(form).toContainText('contribution has no value');
	await decided.selectOption('In stock');
	await form
		.getByRole('combobox', { name: 'Add something that must hold' })
		.selectOption('No more than is asked for');
	await expect(form).toContainText('8 decisions, 4 requirements');
	await form.getByRole('button', { name: 'Keep the programme' }).click();
	await expect(page.getByRole('region', { name: 'What to sell' })).toContainText('holds, 4 of 4');
	await expect(finding(page)).toHaveText('Base: the best plan brings 7,500 EUR');
});

test('why it is not better is one step from the first screen, with the words in view and the focus on them', async ({
	page
}) => {
	await openPlan(page);
	await follow(page, '/');
	await strip(page).getByRole('link', { name: 'Why not better' }).click();
	await page.waitForURL('/plan#why-not');
	const heading = page.getByRole('heading', { name: 'What keeps it from being better' });
	await expect(heading).toBeFocused();
	await expect(heading).toBeInViewport();
	// It is asked for once: the next edit leaves the focus where it is.
	await made(page, 'B, L2, January').fill('0');
	await page.keyboard.press('Enter');
	await expect(finding(page)).toHaveText('More hours: the best plan brings 6,500 EUR');
	await expect(heading).not.toBeFocused();
});

test('the reference page is one step away, and back', async ({ page }) => {
	await openPlan(page);
	await page.getByRole('link', { name: 'How a workbook decides by itself' }).click();
	await expect(page.getByRole('heading', { level: 1 })).toHaveText(
		'Programmes: how a workbook decides by itself'
	);
	await page.getByRole('link', { name: 'Back to the plan' }).click();
	await page.waitForURL('/plan');
	await expect(finding(page)).toBeVisible();
});

test('a study says whether it plans anew in every draw and how long that takes, can be stopped, and tells what that is worth', async ({
	page
}) => {
	await openPlan(page);
	await follow(page, '/studies');
	await page.getByRole('button', { name: 'New study' }).click();
	const dialog = page.getByRole('dialog');
	await dialog.getByRole('radio', { name: /^Risk/ }).check();
	await dialog.getByLabel('Title').fill('How sure');
	await dialog.getByLabel('Title').press('Enter');
	await page.waitForURL('/studies/how_sure');
	const plans = page.getByLabel('What the workbook decides by itself');
	await expect(plans).toHaveValue('keep');
	await page.getByRole('button', { name: 'Add an input' }).click();
	await plans.selectOption('planned anew in every draw');
	await expect(page.getByText(/^Takes .+ for 10,000 draws on this machine/)).toBeVisible();
	const draws = page.getByLabel('Draws', { exact: true });
	await draws.fill('100000');
	await draws.press('Enter');
	await page.getByRole('button', { name: 'Run and keep' }).click();
	await expect(page.getByText(/^Running, \d+ %, about .+ left$/)).toBeVisible();
	await page.getByRole('button', { name: 'Cancel' }).click();
	await expect(page.getByText(/^Running/)).toBeHidden();
	await draws.fill('20');
	await draws.press('Enter');
	for (const choice of ['follow', 'keep']) {
		await plans.selectOption(choice);
		await page.getByRole('button', { name: 'Run and keep' }).click();
		await expect(page.getByText('Up to date')).toBeVisible();
	}
	await expect(
		page.getByText(/^Being able to plan anew is worth \S+ EUR on average/)
	).toBeVisible();
});
