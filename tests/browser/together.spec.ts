/** Two people at one workbook: what each does arrives at the other; what both did is asked about. */
import { active, expect, fact, find } from './app';
import { test } from './own-server';
import { change, disagree, inStep, pair, saved } from './sharing';
import type { Page } from 'playwright/test';

test('different quantities merge by themselves, and nothing disturbs an entry being typed', async ({
	someone
}) => {
	const [anna, berg] = await pair(someone);
	await find(berg, 'energy_price');
	await berg.keyboard.type('0.2');
	const field = berg.getByRole('grid').getByRole('textbox');
	await expect(field).toHaveValue('0.2');
	const before = await fact(berg, 0).textContent();

	await change(anna, 'resin_price', '2.10');
	await inStep(anna, 2);
	await inStep(berg, 2);
	await expect(fact(berg, 0)).not.toHaveText(before ?? '');
	await expect(berg.getByText('Another browser: Resin price: 1.9 to 2.1 EUR/kg')).toBeVisible();
	await expect(field).toBeFocused();
	await expect(field).toHaveValue('0.2');
	await berg.keyboard.type('1');
	await berg.keyboard.press('Enter');
	await inStep(berg, 3);
	await inStep(anna, 3);
	for (const page of [anna, berg]) {
		await find(page, 'energy_price');
		await expect(active(page)).toContainText('0.21');
		await find(page, 'resin_price');
		await expect(active(page)).toContainText('2.1');
	}
	await expect(fact(anna, 0)).toHaveText((await fact(berg, 0).textContent()) ?? '');
});

test('the same quantity is asked about side by side; theirs is taken, after a while', async ({
	someone
}) => {
	const [anna, berg] = await disagree(someone);
	await berg.getByRole('button', { name: 'Choose' }).click();
	const dialog = berg.getByRole('dialog', { name: 'Someone else changed the same thing' });
	await expect(dialog).toContainText('It was 1.9 EUR/kg.');
	await expect(dialog.getByRole('radio', { name: /^Mine/ })).toHaveAccessibleName(
		'Mine 2.2 EUR/kg'
	);
	await expect(dialog.getByRole('radio', { name: /^Theirs/ })).toHaveAccessibleName(
		'Theirs 2.1 EUR/kg'
	);
	await dialog.getByRole('button', { name: 'Save with these choices' }).click();
	await expect(dialog.getByRole('alert')).toHaveText(
		'One choice is still to be made. Nothing is sent before.'
	);
	await dialog.getByRole('button', { name: 'Choose later' }).click();
	await expect(dialog).toBeHidden();
	// Work goes on, and the question stands.
	await change(berg, 'energy_price', '0.18');
	await expect(saved(berg)).toHaveText('kept here, waits for your choice');
	await berg.getByRole('button', { name: 'Choose' }).click();
	await dialog.getByRole('radio', { name: /^Theirs/ }).check();
	await dialog.getByRole('button', { name: 'Save with these choices' }).click();
	await inStep(berg, 3);
	await inStep(anna, 3);
	for (const page of [anna, berg]) {
		await find(page, 'resin_price');
		await expect(active(page)).toContainText('2.1');
		await find(page, 'energy_price');
		await expect(active(page)).toContainText('0.18');
	}
});

test('mine is taken with the keyboard alone, and arrives at the other', async ({ someone }) => {
	const [anna, berg] = await disagree(someone);
	const press = async (key: string, until: ReturnType<Page['getByRole']>) => {
		for (let presses = 0; presses < 60; presses++) {
			if (await until.evaluate((node) => node === document.activeElement)) return;
			await berg.keyboard.press(key);
		}
		await expect(until).toBeFocused();
	};
	await press('Shift+Tab', berg.getByRole('button', { name: 'Choose' }));
	await berg.keyboard.press('Enter');
	const dialog = berg.getByRole('dialog', { name: 'Someone else changed the same thing' });
	await expect(dialog).toBeVisible();
	await press('Tab', dialog.getByRole('radio', { name: /^Mine/ }));
	await berg.keyboard.press('Space');
	await press('Tab', dialog.getByRole('button', { name: 'Save with these choices' }));
	await berg.keyboard.press('Enter');
	await expect(dialog).toBeHidden();
	await inStep(berg, 3);
	// The keyboard goes on at the page's heading, not at the top of the window.
	await expect(berg.getByRole('main').getByRole('heading').first()).toBeFocused();
	await inStep(anna, 3);
	await find(anna, 'resin_price');
	await expect(active(anna)).toContainText('2.2');
});
