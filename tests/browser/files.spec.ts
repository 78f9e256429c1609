/** Taking the workbook along with live formulas, and bringing a table of values in. */
import { readFileSync } from 'node:fs';
import { readFile, Recalculation } from '../exchange/recalculate';
import { agreement, expect, open } from './app';
import { figure } from './figures';
import { test } from './plant';
import { test as shop } from './shop';

test('the file with live formulas holds the numbers of the screen, and recalculates to them', async ({
	page
}) => {
	await open(page, '/files');
	const [download] = await Promise.all([
		page.waitForEvent('download'),
		page.getByRole('button', { name: 'Take with formulas' }).click()
	]);
	expect(download.suggestedFilename()).toBe('marram-coil-works.xlsx');
	const { sheets } = readFile(readFileSync(await download.path()));
	const base = sheets.get('Base')!;
	const row = [...base].find(
		([at]) =>
			base.get(`A${at.slice(1)}`)?.value === 'Factory cost per metre' &&
			base.get(`B${at.slice(1)}`)?.value === 'PX15B'
	);
	const address = `C${row![0].slice(1)}`;
	expect(Number(base.get(address)!.value)).toBeCloseTo(
		Number(figure('cost_per_metre', ['PX15B'], { digits: 9 })),
		7
	);
	expect(Number(new Recalculation(sheets).value('Base', address))).toBeCloseTo(
		Number(base.get(address)!.value),
		9
	);
});

test('a table is mapped, looked over and entered as one step, with the keyboard alone', async ({
	page
}) => {
	await open(page, '/files');
	const text = 'Machine;Hours to repair;remark\nL1;2,75;new gearbox\nL2;2,5;\nL99;1;\n';
	await page
		.getByLabel('Table to import')
		.setInputFiles({ name: 'repairs.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
	await expect(page.getByText('0 values would change, 0 are the same')).toBeVisible();
	await page.getByLabel('Quantity of every row').focus();
	await page.keyboard.type('Time to repair');
	const lines = page.getByLabel('Rows that cannot be taken').getByRole('listitem');
	await expect(lines).toHaveText([/^Line 4\. There is no line "L99"/]);
	await expect(
		page.getByRole('row', { name: /2 Time to repair L1 Base 1.9 2.75 h/ })
	).toBeVisible();
	await page.getByRole('button', { name: 'Enter 2 values' }).focus();
	await page.keyboard.press('Enter');
	await expect(page.getByText('2 values from repairs.csv entered')).toBeVisible();
	await page.keyboard.press('Control+z');
	await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
});

shop('both engines agree on a table that was brought in', async ({ page }) => {
	await open(page, '/files');
	const text = 'Product;metres\nR16;120\nR20;60\n';
	await page
		.getByLabel('Table to import')
		.setInputFiles({ name: 'coils.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
	await page.getByLabel('Quantity of every row').focus();
	await page.keyboard.type('Standard coil length');
	await page.getByRole('button', { name: 'Enter 2 values' }).click();
	await expect(page.getByText('2 values from coils.csv entered')).toBeVisible();
	expect(await agreement(page)).toBeGreaterThan(100);
});
