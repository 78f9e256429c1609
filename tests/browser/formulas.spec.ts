import { agreement, expect, fact, find, findMember, open, row, strip } from './app';
import { coil, figure, metre } from './figures';
import { test } from './plant';
import { test as shop } from './shop';
import type { Page } from 'playwright/test';

const leaf = (page: Page) => page.getByRole('dialog');
const formula = (page: Page) => leaf(page).getByLabel('Formula', { exact: true });

/** Opens a quantity's leaf with the keyboard. */
async function edit(page: Page, name: string) {
	await find(page, name);
	await page.keyboard.press('Home');
	await page.keyboard.press('F2');
	await expect(leaf(page)).toBeVisible();
}

/** Writes a formula and puts the list of names away. */
async function write(page: Page, text: string) {
	await formula(page).fill(text);
	await formula(page).blur();
}

/** Adds a quantity over products, computed, to a sheet. */
async function addMassOfACoil(page: Page, sheet: RegExp) {
	await find(page, 'total_good_metres');
	const heading = page.getByRole('row', { name: sheet });
	await heading.hover();
	await heading.getByRole('button', { name: 'Add quantity' }).click();
	await leaf(page).getByLabel('Label', { exact: true }).fill('Mass of a coil');
	await leaf(page).getByLabel('Unit').fill('kg/coil');
	await leaf(page).getByText('One value in all').click();
	await leaf(page).getByRole('checkbox', { name: 'product', exact: true }).check();
	await leaf(page).getByLabel('Its values are').selectOption('computed by one formula');
	await write(page, 'mass_per_metre * coil_length');
	await expect(leaf(page)).toContainText('gives kg/coil');
	await leaf(page).getByRole('button', { name: 'Add quantity' }).click();
	await expect(leaf(page)).toBeHidden();
}

test('an unknown name is marked, and the one that was meant is offered', async ({ page }) => {
	await open(page);
	await edit(page, 'cost_per_metre');
	await write(page, 'variable_cost_per_metre + line_labor_cost');
	await expect(formula(page)).toHaveAccessibleDescription(/line_labor_cost/);
	await expect(formula(page)).toHaveAttribute('aria-invalid', 'true');
	await leaf(page).getByRole('button', { name: 'Write line_labour_cost' }).click();
	await expect(formula(page)).toHaveValue('variable_cost_per_metre + line_labour_cost');
	await expect(leaf(page)).toContainText('gives EUR/m');
	await leaf(page).getByRole('button', { name: 'Save' }).click();
	await expect(leaf(page)).toBeHidden();
	await expect(fact(page, 0)).toHaveText('0.2128'); // 0.1950 + 0.0178, once the plan has followed
	await page.keyboard.press('Control+z');
	await expect(fact(page, 0)).toHaveText(metre());
});

test('units that do not add up are told as they are typed, and left without loss', async ({
	page
}) => {
	await open(page);
	await edit(page, 'cost_per_metre');
	const before = await formula(page).inputValue();
	await write(page, 'variable_cost_per_metre + mass_per_metre');
	await expect(formula(page)).toHaveAccessibleDescription(/EUR\/m.*kg\/m/);
	await write(page, 'variable_cost_per_metre +');
	await expect(formula(page)).toHaveAttribute('aria-invalid', 'true');
	await leaf(page).getByRole('button', { name: 'Cancel' }).click();
	await expect(leaf(page)).toBeHidden();
	await expect(fact(page, 0)).toHaveText(metre());
	await edit(page, 'cost_per_metre');
	await expect(formula(page)).toHaveValue(before);
});

test('what an aggregate gathers is written out when the formula is kept', async ({ page }) => {
	await open(page);
	await edit(page, 'mass_per_metre');
	await write(page, 'SUM(layer_mass)');
	await leaf(page).getByRole('button', { name: 'Save' }).click();
	await expect(leaf(page)).toBeHidden();
	await edit(page, 'mass_per_metre');
	await expect(formula(page)).toHaveValue('SUM(layer_mass over layer)');
});

test('Escape, however often, drops no formula that was written', async ({ page }) => {
	await open(page);
	await edit(page, 'cost_per_metre');
	await write(page, 'variable_cost_per_metre + line_labour_cost');
	for (let pressed = 0; pressed < 3; pressed++) await page.keyboard.press('Escape');
	await expect(leaf(page)).toContainText('Your changes are not kept yet');
	await expect(formula(page)).toHaveValue('variable_cost_per_metre + line_labour_cost');
});

test('a faulty formula that is kept takes no other work with it, and can be mended', async ({
	page
}) => {
	await open(page);
	await edit(page, 'cost_per_coil');
	await write(page, 'cost_per_metre * coil_lenght');
	await expect(formula(page)).toHaveAttribute('aria-invalid', 'true');
	await leaf(page).getByRole('button', { name: 'Save' }).click();
	// What is wrong with it stood there to be read, so it is kept at once.
	await expect(leaf(page)).toBeHidden();
	await expect(fact(page, 0)).toHaveText(metre());
	await page.getByRole('button', { name: 'Fix the formula' }).click();
	await expect(leaf(page)).toBeVisible();
	await write(page, 'cost_per_metre * coil_length * 2');
	await leaf(page).getByRole('button', { name: 'Save' }).click();
	await expect(leaf(page)).toBeHidden();
	await expect(strip(page)).toContainText(
		`${(2 * Number(figure('cost_per_coil', ['PX15B'], { digits: 8 }))).toPrecision(4)} EUR/coil`
	);
});

test('a new quantity follows its formula, its renamed parts, and goes again', async ({ page }) => {
	await open(page);
	await addMassOfACoil(page, /^The plant/);
	await findMember(page, 'mass_of_a_coil', 0);
	await expect(row(page, /^PX15B/).first()).toContainText('3.295'); // 0.065902 kg/m × 50 m

	await edit(page, 'coil_length');
	await leaf(page).getByLabel('Name in formulas').fill('metres_on_a_coil');
	await leaf(page).getByRole('button', { name: 'Save' }).click();
	await expect(leaf(page)).toBeHidden();
	await expect(strip(page)).toContainText(`${coil()} EUR/coil`);
	await edit(page, 'mass_of_a_coil');
	await expect(formula(page)).toHaveValue(/^mass_per_metre [*×] metres_on_a_coil$/);
	await leaf(page).getByRole('button', { name: 'Remove' }).click();
	await expect(leaf(page)).toBeHidden();
	await expect(row(page, /^Mass of a coil/)).toHaveCount(0);
});

shop(
	'both engines agree on a new quantity, on renamed parts, and without it again',
	async ({ page }) => {
		await open(page);
		const without = await agreement(page);
		await addMassOfACoil(page, /^The shop/);
		// One value for each of two products, in each of two scenarios.
		await expect.poll(() => agreement(page)).toBe(without + 4);
		await edit(page, 'coil_length');
		await leaf(page).getByLabel('Name in formulas').fill('metres_on_a_coil');
		await leaf(page).getByRole('button', { name: 'Save' }).click();
		await expect(leaf(page)).toBeHidden();
		expect(await agreement(page)).toBe(without + 4);
		await edit(page, 'mass_of_a_coil');
		await leaf(page).getByRole('button', { name: 'Remove' }).click();
		await expect(leaf(page)).toBeHidden();
		await expect.poll(() => agreement(page)).toBe(without);
	}
);

test('a quantity that others use is removed only when that is confirmed', async ({ page }) => {
	await open(page);
	await edit(page, 'packaging_cost');
	await leaf(page).getByRole('button', { name: 'Remove' }).click();
	await expect(leaf(page).getByRole('alert')).toContainText(/variable_cost_on_line|Variable cost/);
	await leaf(page).getByRole('button', { name: 'Go ahead' }).click();
	await expect(leaf(page)).toBeHidden();
	await expect(fact(page, 0)).toContainText('No value');
	await page.keyboard.press('Control+z');
	await expect(fact(page, 0)).toHaveText(metre());
});

test('a product is duplicated with all its values, ordered, and removed again', async ({
	page
}) => {
	await open(page, '/members');
	const members = page.getByRole('table').first();
	const line = (id: string) =>
		members.getByRole('row').filter({ has: page.getByRole('cell', { name: id, exact: true }) });
	await line('PX15B').getByRole('button', { name: 'Duplicate' }).click();
	await leaf(page).getByLabel('Name', { exact: true }).fill('PX15C');
	await leaf(page).getByRole('button', { name: 'Duplicate' }).click();
	await expect(leaf(page)).toBeHidden();
	await expect(members.getByRole('row').nth(3)).toContainText('PX15C');
	await strip(page).getByRole('combobox', { name: 'Product shown' }).selectOption('PX15C');
	await expect(strip(page)).toContainText('PX15C, factory cost per metre');
	await expect(fact(page, 0)).toHaveText(/^0\.\d{4}$/);
	await line('PX15C').getByRole('button', { name: 'Up', exact: true }).click();
	await expect(members.getByRole('row').nth(2)).toContainText('PX15C');
	await line('PX15C').getByRole('button', { name: 'Remove' }).click();
	await expect(line('PX15C')).toHaveCount(0);
	await strip(page).getByRole('combobox', { name: 'Product shown' }).selectOption('PX15B');
	await expect(fact(page, 0)).toHaveText(metre());
});

shop(
	'both engines agree on a product that is duplicated, and without it again',
	async ({ page }) => {
		await open(page, '/members');
		const without = await agreement(page);
		const members = page.getByRole('table').first();
		await members.getByRole('button', { name: 'Duplicate' }).first().click();
		await leaf(page).getByLabel('Name', { exact: true }).fill('R16C');
		await leaf(page).getByRole('button', { name: 'Duplicate' }).click();
		await expect(leaf(page)).toBeHidden();
		await expect.poll(() => agreement(page)).toBeGreaterThan(without);
		await page.keyboard.press('Control+z');
		await expect.poll(() => agreement(page)).toBe(without);
	}
);
