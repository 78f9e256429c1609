/** The week painted and the calendar edited, by mouse and by keys; a check that fails is counted and opened. */
import type { Page } from 'playwright/test';
import { findings, sideways } from './access';
import { active, expect, find, open, rowOf, strip, undo } from './app';
import { test } from './plant';

const title = (page: Page) => page.getByRole('heading', { level: 1 });
const hour = (page: Page, words: RegExp) => page.getByRole('gridcell', { name: words });
const day = (page: Page, words: RegExp) =>
	page.getByRole('grid', { name: /^Days of/ }).getByRole('gridcell', { name: words });

test('a stroke of the mouse paints a block of hours, and one undo takes all of it back', async ({
	page
}) => {
	await open(page, '/week');
	await expect(title(page)).toContainText('120 of 168 hours worked');
	await hour(page, /^Sunday 13:00/).scrollIntoViewIfNeeded();
	const from = await hour(page, /^Saturday 06:00/).boundingBox();
	const to = await hour(page, /^Sunday 13:00/).boundingBox();
	if (!from || !to) throw new Error('the week is not drawn');
	await page.mouse.move(from.x + 4, from.y + 16);
	await page.mouse.down();
	await page.mouse.move(to.x + to.width / 2, to.y + 20, { steps: 8 });
	await expect(page.getByRole('main')).toContainText('Sat to Sun 06:00 to 14:00, +16 h');
	await page.mouse.up();
	await expect(title(page)).toContainText('136 of 168 hours worked');
	await expect(hour(page, /^Sunday 13:00/)).toHaveAccessibleName(/worked, weekend crews/);
	await expect(
		page
			.getByRole('row', { name: /^Saturday/ })
			.getByRole('cell')
			.last()
	).toHaveText(/^[\d,]{5}$/);
	await undo(page);
	await expect(title(page)).toContainText('120 of 168 hours worked');
	await expect(hour(page, /^Saturday 06:00/)).toHaveAccessibleName(/nobody/);
});

test('keys move over the week, mark a block, choose the brush and paint; Escape lets the block go', async ({
	page
}) => {
	await open(page, '/week');
	await page.getByRole('radio', { name: 'worked' }).focus();
	await page.keyboard.press('ArrowRight');
	await expect(page.getByRole('radio', { name: 'nobody' })).toBeChecked();
	await page.keyboard.press('Tab');
	await expect(hour(page, /^Monday 06:00/)).toBeFocused();
	await page.keyboard.press('Shift+ArrowRight');
	await page.keyboard.press('Shift+ArrowDown');
	await expect(page.getByRole('gridcell', { selected: true })).toHaveCount(4);
	await page.keyboard.press('Escape');
	await expect(page.getByRole('gridcell', { selected: true })).toHaveCount(0);
	await page.keyboard.press('Home');
	await page.keyboard.press('Shift+End');
	await page.keyboard.press('Space');
	await expect(title(page)).toContainText('96 of 168 hours worked');
	await expect(hour(page, /^Tuesday 23:00/)).toBeFocused();
	await page.keyboard.press('Control+z');
	await expect(title(page)).toContainText('120 of 168 hours worked');
	await page.getByRole('combobox', { name: 'Shift pattern' }).selectOption('7x24');
	await expect(title(page)).toContainText('168 of 168 hours worked on continuous');
});

test('a holiday is made of a day by keys, a shut-down of a run by mouse; the year turns and comes back', async ({
	page
}) => {
	await open(page, '/calendar');
	await expect(title(page)).toContainText('242 working days from Monday to Friday in 2027');
	await day(page, /^Friday 1 January/).focus();
	for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowRight');
	await expect(day(page, /^Monday 4 January, week 1$/)).toBeFocused();
	await page.keyboard.press('Enter');
	await page.keyboard.type('Day after the party');
	await page.keyboard.press('Enter');
	await expect(title(page)).toContainText('241 working days');
	await expect(day(page, /^Monday 4 January/)).toHaveAccessibleName(/Day after the party/);
	await undo(page);
	await expect(title(page)).toContainText('242 working days');

	await day(page, /^Monday 20 December/).click();
	await day(page, /^Friday 31 December/).click({ modifiers: ['Shift'] });
	await expect(page.getByRole('main')).toContainText('20 December to 31 December, 12 days');
	await page.getByRole('button', { name: 'Shut down these days' }).click();
	await page.getByRole('dialog').getByRole('textbox', { name: 'Name' }).fill('Winter');
	await page.getByRole('dialog').getByRole('button', { name: 'Keep' }).click();
	await expect(title(page)).toContainText('234 working days');
	await expect(title(page)).toContainText('two shut-downs');
	await page.getByRole('button', { name: 'Remove Winter' }).click();
	await expect(title(page)).toContainText('242 working days');

	await page.getByRole('button', { name: 'Year after' }).click();
	await expect(title(page)).toContainText('in 2028');
	await expect(day(page, /^Thursday 25 May/)).toHaveAccessibleName(/Ascension Day/);
	await expect(day(page, /^Tuesday 29 February/)).toBeVisible();
	await page.getByRole('textbox', { name: 'Year' }).fill('27');
	await page.keyboard.press('Enter');
	await expect(page.getByRole('alert')).toContainText('permitted');
});

test('a check that does not hold is counted, and one press of a key goes to it', async ({
	page
}) => {
	await open(page);
	await expect(strip(page)).toContainText(/(\d+) of \1/);
	await find(page, 'calendar_year');
	await page.keyboard.type('2027.5');
	await page.keyboard.press('Enter');
	const failing = strip(page).getByRole('button', { name: /^\d+ of \d+$/ });
	await expect(failing).toBeVisible();
	await failing.focus();
	await page.keyboard.press('Enter');
	await expect(rowOf(active(page))).toContainText('The year is a whole number');
	await expect(page.getByRole('main')).toContainText('The calendar year has a fraction');
	await page.keyboard.press('Control+z');
	await expect(failing).toHaveCount(0);
});

test('both screens hold at every width, and neither has a finding of axe', async ({ page }) => {
	// Hundreds of cells, each looked at: one width and one theme for each screen.
	const looks = [
		{ path: '/week', axeAt: 390, colorScheme: 'dark' },
		{ path: '/calendar', axeAt: 1440, colorScheme: 'light' }
	] as const;
	for (const { path, axeAt, colorScheme } of looks) {
		await page.setViewportSize({ width: 1440, height: 1000 });
		await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
		await open(page, path);
		for (const width of [1440, 1024, 390]) {
			await page.setViewportSize({ width, height: 844 });
			await expect.poll(() => sideways(page), `${path} at ${width}`).toBeLessThanOrEqual(0);
			if (width !== axeAt) continue;
			expect(await findings(page, 'figure'), `${path} at ${width}`).toEqual([]);
		}
	}
});
