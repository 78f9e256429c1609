import { active, agreement, expect, fact, find, test, unfold } from './app';

test('a resin price typed with the keyboard reaches the cost of a metre, and back', async ({
	app: { page }
}) => {
	await find(page, 'main_price');
	await unfold(page, 1);
	await page.keyboard.type('2.10');
	await page.keyboard.press('Enter');
	await expect(fact(page, 0)).toHaveText('0.3011');
	await page.keyboard.press('Control+z');
	await expect(fact(page, 0)).toHaveText('0.2965');
	await page.keyboard.press('Control+y');
	await expect(fact(page, 0)).toHaveText('0.3011');
	expect(await agreement(page)).toContain('values agree');
});

test('a value in another unit is converted', async ({ app: { page } }) => {
	await find(page, 'main_price');
	await unfold(page, 1);
	await page.keyboard.type('2100 EUR/t');
	await expect(page.getByText('= 2.1 EUR/kg')).toBeVisible();
	await page.keyboard.press('Enter');
	await expect(fact(page, 0)).toHaveText('0.3011');
});

for (const [typed, words] of [
	['1,2,3', /comma/i],
	['abc', /abc/],
	['5 kg', /kg/],
	['-3', /above 0|greater than 0|more than 0/i]
] as const)
	test(`"${typed}" is refused with a reason, and Escape keeps what was there`, async ({
		app: { page }
	}) => {
		await find(page, 'main_price');
		await unfold(page, 1);
		await page.keyboard.type(typed);
		await page.keyboard.press('Enter');
		await expect(page.getByText(words).first()).toBeVisible();
		await page.keyboard.press('Escape');
		await expect(active(page)).toContainText('2.02');
		await expect(fact(page, 0)).toHaveText('0.2965');
	});

test('a cleared input leaves no value, names whose error it is, and comes back', async ({
	app: { page }
}) => {
	await find(page, 'main_price');
	await unfold(page, 1);
	await page.keyboard.press('Delete');
	await expect(page.getByRole('region', { name: 'At a glance' })).toContainText('No value');
	await page.keyboard.press('Control+z');
	await expect(fact(page, 0)).toHaveText('0.2965');
});

test('a shift pattern changes hours, people and energy together', async ({ app: { page } }) => {
	await find(page, 'total_heads');
	await expect(active(page)).toContainText('39');
	await find(page, 'weekend_crew_hours');
	await expect(active(page)).toContainText('0');
	await find(page, 'pattern_of_line');
	await unfold(page, 5);
	await page.keyboard.press('Enter');
	const choice = page.getByRole('gridcell').getByRole('combobox');
	await choice.selectOption('7x24');
	if (await choice.isVisible()) await page.keyboard.press('Enter');
	await find(page, 'weekend_crew_hours');
	await expect(active(page)).toContainText('2,448');
});

test('a block of tab-separated text lands in rows and scenarios', async ({ app: { page } }) => {
	await find(page, 'main_price');
	await unfold(page, 1);
	await paste(page, '2.10\n3.30\n1.95');
	await expect(fact(page, 0)).toHaveText('0.3011');
	await page.keyboard.press('ArrowDown');
	await expect(active(page)).toContainText('3.30');
});

test('100,000 pasted cells are answered in words and the page stays at hand', async ({
	app: { page }
}) => {
	await find(page, 'main_price');
	await unfold(page, 1);
	await paste(page, Array.from({ length: 100_000 }, (_, i) => String(i)).join('\n'));
	await page.getByRole('combobox', { name: 'Product shown' }).selectOption('PX10B');
	await expect(page.getByRole('region', { name: 'At a glance' })).toContainText('PX10B');
	await expect(page.getByText(/100,000|99,9\d\d/).first()).toBeVisible();
});

test('a number explains itself, and Escape puts the reason away', async ({ app: { page } }) => {
	await fact(page, 0).click();
	const why = page.getByRole('region', { name: /Why this number/ });
	await expect(why).toContainText('variable_cost_per_metre');
	await expect(why).toContainText('0.1949');
	await page.keyboard.press('Escape');
	await expect(why).toBeHidden();
});

async function paste(page: import('@playwright/test').Page, text: string) {
	await page.evaluate((words) => {
		const data = new DataTransfer();
		data.setData('text/plain', words);
		document.activeElement?.dispatchEvent(
			new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true })
		);
	}, text);
}
