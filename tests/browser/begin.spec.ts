/** The first hour of a plant of one's own, by mouse and keyboard: from an empty plant to the first cost card, left and taken up again. */
import type { Locator, Page } from 'playwright/test';
import { findings, sideways } from './access';
import { expect, open, test } from './app';
import { FILES, KNOWN, yearOfLog } from '../begin/second-plant';

/** What is typed, and whatever else a hand does: a press, a file chosen, a tick. */
const done = { entries: 0, actions: 0 };
async function act(deed: Promise<unknown>) {
	done.actions++;
	await deed;
}
const step = (page: Page, title: RegExp): Locator =>
	page.getByRole('main').getByRole('region', { name: title });

async function bringIn(page: Page, title: string, file: string, { isNew = false, far = false }) {
	const part = step(page, new RegExp(title));
	await act(part.getByRole('button', { name: `${title}: bring in a list as a file` }).click());
	await act(part.getByLabel('Table to import').setInputFiles(file));
	if (isNew) await act(part.getByRole('button', { name: /^Add all/ }).click());
	if (far) await act(part.getByRole('button', { name: /^Tick all/ }).click());
	await act(part.getByRole('button', { name: /^Enter \d+ values$/ }).click());
	await expect(part.getByRole('button', { name: /^Enter \d+ values$/ })).toBeHidden();
	await act(part.getByRole('button', { name: 'Put the file aside' }).click());
}

test('whoever has an item list, a machine list and a ledger comes to a cost card in an hour', async ({
	page
}) => {
	await open(page, '/begin');
	const main = page.getByRole('main');
	await act(main.getByRole('button', { name: 'Begin from the plant’s structure' }).click());
	const asked = main.getByText(/^\d+ of \d+ asked for are yours$/);
	await expect(asked).toHaveText(/^0 of/);
	await expect(
		main.getByText(/^The cost card of P1 stands here once these are yours/)
	).toBeVisible();

	await bringIn(page, 'Pipes', FILES.items, { isNew: true });
	await bringIn(page, 'Lines', FILES.machines, { isNew: true });
	await bringIn(page, 'Ledger', FILES.ledger, { far: true });
	const pipes = step(page, /^1\. Pipes/);
	await expect(pipes.getByRole('textbox', { name: /^Code of G/ })).toHaveCount(7);
	await expect(pipes).toContainText('35 of 35 yours');
	// Which runs where: the smallest not on the wide line.
	await act(main.getByRole('checkbox', { name: 'G28 with E2' }).uncheck());

	// What is known by heart, from field to field with Enter.
	for (const [label, values] of Object.entries(KNOWN)) {
		const field = main.getByRole('textbox', { name: new RegExp(`^${label}(,|$)`) }).first();
		await act(field.focus());
		for (const value of values) {
			await page.keyboard.type(String(value));
			await page.keyboard.press('Enter');
			done.entries++;
		}
	}
	const year = yearOfLog();
	for (const [label, value] of [
		['Good metres of last year', year.metres / 1e6],
		['Mass dosed in last year', year.dosed / 1000],
		['Electricity of last year', year.electricity / 1000],
		['Line hours run in last year', year.hours]
	] as const) {
		await main.getByRole('textbox', { name: label }).fill(String(value));
		await page.keyboard.press('Enter');
		done.entries++;
	}
	await expect(asked).toHaveText(/^(\d+) of \1 asked for are yours$/);

	const card = main.getByRole('table', { name: 'Cost card of G10' });
	await expect(card.getByRole('row', { name: /^Factory cost per metre/ })).toContainText(/\d/);
	const books = main.getByRole('table', { name: 'Beside the books' });
	await expect(books.getByRole('row', { name: /^EBIT by the ledger/ })).toContainText('320,300');
	await expect(books.getByRole('row', { name: /^EBIT EUR/ })).toContainText(/\d/);
	await expect(
		main.getByRole('region', { name: 'Replace these first' }).getByRole('row')
	).toHaveCount(11);

	// Left, and taken up again as it was.
	await page.reload();
	await expect(asked).toHaveText(/^(\d+) of \1 asked for are yours$/);
	expect(await findings(page)).toEqual([]);
	await page.setViewportSize({ width: 390, height: 800 });
	expect(await sideways(page)).toBe(0);

	const brought = 35 + 10 + 8;
	expect(done.entries + brought).toBeLessThanOrEqual(130);
	expect(done.actions).toBeLessThanOrEqual(40);
});
