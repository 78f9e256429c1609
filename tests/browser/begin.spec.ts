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

async function bringIn(page: Page, title: string, file: string, { isNew = false }) {
	const part = step(page, new RegExp(title));
	const button = part.getByRole('button', { name: new RegExp(`^${title}: bring in a list `) });
	await act(button.click());
	await act(part.getByLabel('Table to import').setInputFiles(file));
	if (isNew) await act(part.getByRole('button', { name: /^Add all/ }).click());
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
	await bringIn(page, 'Ledger', FILES.ledger, {});
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
	// Last year's totals are summed out of the production log: what no heading says is asked.
	const totals = step(page, /Last year in all/);
	await act(
		totals
			.getByRole('button', { name: 'Last year in all: bring in a list or a log as a file' })
			.click()
	);
	await act(totals.getByLabel('Table to import').setInputFiles(FILES.log));
	await expect(totals).toContainText('Say the unit of good metres; 1 for a plain number.');
	for (const [column, unit] of [
		['good metres', 'm'],
		['line hours', 'h']
	] as const) {
		await totals.getByLabel(`Unit of ${column}`).fill(unit);
		await page.keyboard.press('Enter');
		done.entries++;
	}
	// The hours are an eighth of the typical ones, which say nothing of this plant.
	await act(totals.getByRole('button', { name: 'Enter 4 values' }).click());
	await act(totals.getByRole('button', { name: 'Put the file aside' }).click());
	const year = yearOfLog();
	await expect(main.getByRole('textbox', { name: 'Line hours run in last year' })).toHaveValue(
		new Intl.NumberFormat('en-GB').format(year.hours)
	);
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
