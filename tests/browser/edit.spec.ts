import {
	active,
	expect,
	fact,
	find,
	findMember,
	open,
	paste,
	row,
	rowOf,
	strip,
	value
} from './app';
import { figure, figureWith, metre } from './figures';
import { test } from './plant';
import type { Page } from 'playwright/test';

/*
 * The resin of a metre of PX15B weighs 46.37 g inside and 12.24 g in the cover; 95 % of it is the main
 * component, and 4.0 % of the mass is scrapped on top: 0.05861 kg × 0.95 × 1.040 = 0.0579 kg bought. So
 * 0.08 EUR/kg more make 0.0046 EUR/m, and 0.07 EUR/kg less take 0.0041.
 */
const at = (price: number) =>
	figureWith([{ quantity: 'main_price', at: ['PEXB'], value: price }], 'cost_per_metre', 'PX15B');

const typed = async (page: Page, price: string, before: string, after: string) => {
	await open(page);
	await expect(fact(page, 0)).toHaveText(before);
	await findMember(page, 'main_price', 1);
	await page.keyboard.type(price);
	await page.keyboard.press('Enter');
	await expect(fact(page, 0)).toHaveText(after);
	const contents = page.getByRole('navigation', { name: 'Contents' });
	await expect(contents.getByRole('link', { name: /^Plant cost/ })).toContainText(after);
	const moves = page.getByRole('status', { name: 'What the last edit moves' });
	await expect(moves).toContainText(/ 2[.,]02 to 2[.,]1.* EUR\/kg: moves .+; .+/);
	await page.keyboard.press('Control+z');
	await expect(fact(page, 0)).toHaveText(before);
	await expect(moves).toContainText(/^\s*Undone: .+: moves /);
	await page.keyboard.press('Control+y');
	await expect(fact(page, 0)).toHaveText(after);
	await page.keyboard.press('Control+z');
	await expect(fact(page, 0)).toHaveText(before);
	await page.keyboard.press('Control+Shift+z');
	await expect(contents.getByRole('link', { name: /^Plant cost/ })).toContainText(after);
	await findMember(page, 'cost_per_metre', 3);
	// The title has the number in full.
	const point = (text: string | null) => parseFloat((text ?? '').replace(',', '.'));
	const full = async () => point(await value(rowOf(active(page)), 1).getAttribute('title'));
	await expect.poll(async () => (await full()).toFixed(4)).toBe(after.replace(',', '.'));
};

test('a resin price of 2.10, typed with the keyboard alone, reaches every cost', ({ page }) =>
	typed(page, '2.10', metre(), at(2.1)));

test.describe('in German', () => {
	test.use({ locale: 'de-DE' });
	test('a resin price of 2,10, typed with the keyboard alone, reaches every cost', ({ page }) =>
		typed(page, '2,10', metre().replace('.', ','), at(2.1).replace('.', ',')));
});

test('1950 EUR/t typed into EUR/kg is taken as 1.95', async ({ page }) => {
	await open(page);
	await findMember(page, 'main_price', 1);
	await page.keyboard.type('1950 EUR/t');
	await expect(page.getByText('= 1.95 EUR/kg')).toBeVisible();
	await page.keyboard.press('Enter');
	await expect(fact(page, 0)).toHaveText(at(1.95));
	await expect(value(row(page, /^PEXB/), 1)).toContainText('1.95');
});

for (const [typed, words] of [
	['1,2,3', /"1,2,3" has two commas/],
	['abc', /"abc" is not a number/],
	['5 kg', /kg.*EUR\/kg/],
	['-3', /3 EUR\/kg is outside what is permitted: above 0/]
] as const)
	test(`a price of "${typed}" is refused with its reason, and nothing is lost`, async ({
		page
	}) => {
		await open(page);
		await findMember(page, 'main_price', 1);
		await page.keyboard.type(typed);
		await page.keyboard.press('Enter');
		const field = page.getByRole('grid').getByRole('textbox');
		await expect(field).toHaveAccessibleDescription(words);
		await expect(field).toHaveAttribute('aria-invalid', 'true');
		await expect(field).toBeFocused();
		await expect(field).toHaveValue(typed);
		await page.keyboard.press('Escape');
		await expect(active(page)).toContainText('2.02');
		await expect(fact(page, 0)).toHaveText(metre());
	});

test('a cleared price leaves no value and says whose error it is, until undo', async ({ page }) => {
	await open(page);
	await findMember(page, 'main_price', 1);
	await page.keyboard.press('Delete');
	await expect(fact(page, 0)).toContainText('No value');
	await expect(strip(page)).toContainText('inherits the error of resin or compound price');
	await find(page, 'material_cost_per_kilogram');
	// The five products that start with PX are made of it.
	await expect(active(page)).toContainText('5 of 10 no value');
	await expect(active(page)).toContainText('error of resin or compound price');
	await expect(active(page)).toHaveAttribute(
		'title',
		'5 of 10 have no value, error of resin or compound price'
	);
	// It ends where its column does.
	const beyond = await active(page).evaluate((cell) => {
		const said = cell.querySelector('.bad')!.getBoundingClientRect();
		return said.right - cell.getBoundingClientRect().right;
	});
	expect(beyond).toBeLessThanOrEqual(0);
	await page.keyboard.press('Enter');
	await page.keyboard.press('ArrowDown');
	await expect(active(page)).toContainText('No value');
	await page.keyboard.press('Control+z');
	await expect(fact(page, 0)).toHaveText(metre());
	await expect(active(page)).not.toContainText('No value');
});

test('a shift pattern of a line changes its hours and the people', async ({ page }) => {
	await open(page);
	await find(page, 'all_heads');
	await expect(active(page)).toContainText(figure('all_heads', [], { digits: 3 }));
	await find(page, 'weekend_crew_hours');
	await expect(active(page)).toContainText('0');
	await findMember(page, 'scheduled_hours', 5);
	await expect(active(page)).toContainText('5,808');
	await findMember(page, 'pattern_of_line', 5);
	await page.keyboard.press('Enter');
	await page.getByRole('gridcell').getByRole('combobox').selectOption('7x24');
	await expect(value(row(page, /^L5/).last(), 1)).toContainText('8,256');
	await find(page, 'weekend_crew_hours');
	await expect(active(page)).toContainText('2,448'); // 8,256 h on seven days less 5,808 on five
	await find(page, 'all_heads');
	await expect(active(page)).not.toContainText(figure('all_heads', [], { digits: 3 }));
	expect(parseFloat((await active(page).getAttribute('title')) ?? '')).toBeGreaterThan(40);
});

test('a pasted block lands in rows and scenarios, in one step of undo', async ({ page }) => {
	await open(page);
	await findMember(page, 'main_price', 1);
	await paste(page, '2.10\t2.20\n3.30\t3.40');
	await expect(fact(page, 0)).toHaveText(at(2.1));
	await expect(value(row(page, /^PEXB/), 1)).toContainText('2.10');
	await expect(value(row(page, /^PEXB/), 2)).toContainText('2.20');
	await expect(value(row(page, /^PB1/), 1)).toContainText('3.30');
	await expect(value(row(page, /^PB1/), 2)).toContainText('3.40');
	await page.keyboard.press('Control+z');
	await expect(fact(page, 0)).toHaveText(metre());
	await expect(value(row(page, /^PB1/), 1)).toContainText('3.28');
	// One value that is pasted where more is marked fills it, whichever corner was marked first.
	await findMember(page, 'main_price', 3);
	await page.keyboard.press('Shift+ArrowUp');
	await page.keyboard.press('Shift+ArrowUp');
	await paste(page, '2.10');
	await expect(value(row(page, /^PEXB/), 1)).toContainText('2.10');
	await expect(value(row(page, /^PB1/), 1)).toContainText('2.10');
	await page.keyboard.press('Control+z');
	await expect(value(row(page, /^PB1/), 1)).toContainText('3.28');
	await expect(fact(page, 0)).toHaveText(metre());
});

test('of a pasted block, what cannot be taken is listed and what stood there is kept', async ({
	page
}) => {
	await open(page);
	await findMember(page, 'main_price', 1);
	await paste(page, '2.10\nabc\n-1');
	await expect(fact(page, 0)).toHaveText(at(2.1));
	await expect(page.getByText('1 of 3 values were pasted; 2 could not be taken')).toBeVisible();
	await expect(page.getByText(/Line 2, column 1, "abc"/)).toBeVisible();
	await expect(value(row(page, /^PB1/), 1)).toContainText('3.28');
});

test('100,000 pasted cells are answered in words while the page stays at hand', async ({
	page
}) => {
	await open(page);
	await findMember(page, 'main_price', 1);
	await paste(page, Array.from({ length: 100_000 }, (_, i) => String(i + 1)).join('\n'));
	await strip(page).getByRole('combobox', { name: 'Product shown' }).selectOption('PX10B');
	await expect(strip(page)).toContainText('PX10B');
	await expect(page.getByText(/of 100,000 values were pasted/)).toBeVisible();
	await page.keyboard.press('Control+z');
	await expect(value(row(page, /^PEXB/), 1)).toContainText('2.02');
});
