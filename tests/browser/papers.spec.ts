/** A paper is chosen by keys, seen with the figures of the page of payback, and taken as PDF. */
import { readFile } from 'node:fs/promises';
import { expect, goTo, open } from './app';
import { findings } from './access';
import { test } from './shop';

test('the case for the board is made by keys, says what decides first, and is taken as a PDF', async ({
	page
}) => {
	await open(page);
	await goTo(page, /^Papers$/);
	const main = page.getByRole('main');
	const paper = main.getByRole('article');
	await main.getByRole('combobox', { name: /^Paper/ }).selectOption('investment');
	await expect(paper.getByRole('heading', { level: 1 })).toHaveText(
		'Investment paper: Second shift'
	);
	await expect(paper).toContainText(/Second shift would (not )?earn its cost of capital/);
	await expect(paper).toContainText('The figures of this workbook are invented.');

	await main.getByLabel('Made by').focus();
	await page.keyboard.type('A. Person');
	await main.getByLabel(/^The question/).focus();
	await page.keyboard.type('Do we run a second shift?');
	await main.getByLabel(/^Open points/).focus();
	await page.keyboard.type('Who leads it');
	await expect(paper).toContainText('made by A. Person');
	await expect(paper.getByRole('heading', { name: 'The question' })).toBeVisible();
	await expect(paper.getByRole('listitem').filter({ hasText: 'Who leads it' })).toBeVisible();
	expect(await findings(page)).toEqual([]);

	const [taken] = await Promise.all([
		page.waitForEvent('download'),
		main.getByRole('button', { name: 'Save as PDF' }).press('Enter')
	]);
	expect(taken.suggestedFilename()).toBe('investment-paper-second-shift.pdf');
	const bytes = await readFile(await taken.path());
	expect(bytes.subarray(0, 8).toString('latin1')).toBe('%PDF-1.7');
	expect(bytes.toString('latin1')).toContain('pdfuaid:part');
	await expect(main.getByRole('status').filter({ hasText: 'Saved.' })).toBeVisible();

	// What was written stays while somebody looks elsewhere.
	await goTo(page, /^Scenarios$/);
	await goTo(page, /^Papers$/);
	await expect(main.getByLabel('Made by')).toHaveValue('A. Person');
});
