/** Taking the workbook along with live formulas, and bringing a table of values in. */
import { readFileSync } from 'node:fs';
import { readFile, Recalculation } from '../exchange/recalculate';
import type { Page } from 'playwright/test';
import {
	active,
	agreement,
	expect,
	find,
	findMember,
	open,
	row,
	rowOf,
	seek,
	undo,
	value
} from './app';
import { findings } from './access';
import { test } from './plant';
import { test as shop } from './shop';

shop(
	'the file with live formulas holds the numbers of the screen, and recalculates to them',
	async ({ page }) => {
		await open(page);
		await findMember(page, 'cost_per_metre', 1);
		// The title has the number in full.
		const onScreen = parseFloat((await value(rowOf(active(page)), 1).getAttribute('title')) ?? '');
		await open(page, '/files');
		const [download] = await Promise.all([
			page.waitForEvent('download'),
			page.getByRole('button', { name: 'Take with formulas' }).click()
		]);
		expect(download.suggestedFilename()).toBe('one-line-shop.xlsx');
		const { sheets } = readFile(readFileSync(await download.path()));
		const base = sheets.get('One shift')!;
		const cell = [...base].find(
			([at, { formula }]) =>
				formula !== null &&
				base.get(`B${at.slice(1)}`)?.value === 'R16' &&
				base.get(`A${at.slice(1)}`)?.value === 'Factory cost per metre'
		);
		const address = `C${cell![0].slice(1)}`;
		expect(Number(base.get(address)!.value)).toBeCloseTo(onScreen, 9);
		expect(Number(new Recalculation(sheets).value('One shift', address))).toBeCloseTo(
			Number(base.get(address)!.value),
			9
		);
	}
);

const bringIn = (page: Page, name: string, text: string) =>
	page
		.getByLabel('Table to import')
		.setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });

test('a table is mapped, looked over and entered as one step, with the keyboard alone', async ({
	page
}) => {
	await open(page, '/files');
	await bringIn(
		page,
		'repairs.csv',
		'Machine;Hours to repair;remark\nL1;2,75;new gearbox\nL2;2,5;\nL99;1,5;\n'
	);
	await expect(page.getByText('Say first what Hours to repair holds')).toBeVisible();
	await seek(page.getByLabel('Hours to repair is taken as'), 'time to repair');
	await expect(page.getByText('2 changed, 0 new, 0 the same, 1 refused.')).toBeVisible();
	await expect(page.getByText('Left out: the column remark.')).toBeVisible();
	await expect(page.getByText('2,75 is 2.75 h')).toBeVisible();
	const lines = page.getByLabel('What cannot be taken').getByRole('listitem');
	await expect(lines).toHaveText([/^Line 4\. There is no line "L99"/]);
	await expect(
		page.getByRole('row', { name: /2 Time to repair L1 Base 1.9 2.75 h/ })
	).toBeVisible();
	await page.getByRole('button', { name: 'Enter 2 values' }).focus();
	await page.keyboard.press('Enter');
	await expect(page.getByText('2 values from repairs.csv entered')).toBeVisible();
	await page.keyboard.press('Control+z');
	await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();

	// Which product runs on which line, as a cross table of marks.
	await bringIn(page, 'runs.csv', 'Product;L1;L2;L9\nPX10B;x;x;\nPX15P;x;-;x\n');
	await page.getByLabel('The table holds').focus();
	await page.keyboard.type('Lines a product');
	await expect(page.getByLabel('Which line')).toHaveValue('heads');
	await expect(page.getByText('1 pair new, 1 taken out, 2 the same.')).toBeVisible();
	await expect(page.getByText('1 name that no line has')).toBeVisible();
	await expect(page.getByRole('checkbox', { name: 'Take out PX15P and L2' })).toBeChecked();
	const unnamed = page.getByRole('checkbox', { name: 'Take out PX15P and L8' });
	await expect(unnamed).not.toBeChecked();
	await unnamed.focus();
	await page.keyboard.press('Space');
	await page.getByRole('button', { name: 'Enter 1 new, take out 2' }).focus();
	await page.keyboard.press('Enter');
	await expect(page.getByText('1 pair from runs.csv entered, 2 taken out')).toBeVisible();
	await open(page, '/members');
	const pair = page.getByRole('checkbox', { name: 'PX10B with L2' });
	await expect(pair).toBeChecked();
	await page.keyboard.press('Control+z');
	await expect(pair).not.toBeChecked();
	await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
});

test('an item table comes in whole: prices per 100 m, an item that is new, a slip that is stopped', async ({
	page
}) => {
	await open(page, '/files');
	await bringIn(
		page,
		'items.csv',
		[
			'Product;List price (EUR/100 m);price;Outside diameter;Colour',
			'PX15B;52,40;0,31;15,0;white',
			'PX22B;9510;0,58;22,0;grey',
			'RT20B;61,00;0,40;20,0;natural'
		].join('\n')
	);
	// A heading that fits several quantities is asked about, and nothing goes in before it is answered.
	const enter = page.getByRole('button', { name: /^Enter \d+ values?$/ });
	await expect(page.getByText('Say first what price holds, or leave it out.')).toBeVisible();
	await expect(enter).toBeDisabled();
	await seek(page.getByLabel('price is taken as', { exact: true }), 'left out');
	await expect(page.getByText('52,40 is 0.524 EUR/m')).toBeVisible();
	await expect(page.getByText('Left out: the columns price, Colour.')).toBeVisible();
	await page.getByLabel('Keep these matches for the next file').fill('Price list');
	await page.getByRole('button', { name: 'Keep matches' }).click();
	await expect(page.getByText('Kept in the workbook as Price list.')).toBeVisible();

	await seek(page.getByLabel('What RT20B is'), 'add, like RT15B');
	const slip = page.getByRole('checkbox', { name: 'Enter List price, PX22B all the same' });
	await expect(slip).not.toBeChecked();
	await expect(page.getByRole('row', { name: /this is 125 times as much/ })).toBeVisible();
	await expect(page.getByText('Product: 8 of the workbook are not in the file')).toBeVisible();
	await enter.click();
	await expect(page.getByText(/values from items.csv entered/)).toBeVisible();

	// Next month's file is matched by one click, by its headings.
	await bringIn(
		page,
		'items-02.csv',
		'Product;price;List price (EUR/100 m);Remark\nPX15B;0,31;52,90;new\n'
	);
	const kept = page.getByRole('list', { name: 'Kept matches' });
	await expect(page.getByText('Say first what price holds')).toBeVisible();
	await expect(kept).toContainText(
		'new in this file: "Remark"; not in this file: "Outside diameter", "Colour"'
	);
	await kept.getByRole('button', { name: 'Match as Price list' }).click();
	await expect(page.getByText('Say first what price holds')).toHaveCount(0);
	await expect(page.getByText('1 changed, 0 new, 0 the same.')).toBeVisible();
	await page.getByRole('button', { name: 'Cancel' }).click();
	await kept.getByRole('button', { name: 'Rename Price list' }).click();
	await page.getByLabel('Name', { exact: true }).fill('Prices of the month');
	await page.keyboard.press('Enter');
	await kept.getByRole('button', { name: 'Remove Prices of the month' }).click();
	await expect(kept).not.toContainText('Prices of the month');
	await undo(page);
	await undo(page);
	await expect(kept).toContainText('by product: List price, Outside diameter');

	const prices = async () => {
		await find(page, 'List price');
		await page.keyboard.press('Enter');
		return page.getByRole('grid');
	};
	const grid = await prices();
	await expect(value(row(page, /^PX15B/), 1)).toHaveText(/0\.524/);
	await expect(value(row(page, /^RT20B/), 1)).toHaveText(/0\.61/);
	await expect(value(row(page, /^PX22B/), 1)).not.toHaveText(/95/);
	await undo(page);
	await expect(grid.getByRole('rowheader', { name: /^RT20B/ })).toHaveCount(0);
	await undo(page);
	await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
});

test('a spreadsheet file comes in sheet by sheet, and what its cells hold is said', async ({
	page
}) => {
	await open(page, '/files');
	await page
		.getByLabel('Table to import')
		.setInputFiles('tests/exchange/table/files/items-by-openpyxl.xlsx');
	// The sheet of notes holds no table.
	const sheet = page.getByLabel('Sheet to bring in');
	await expect(sheet.getByRole('option')).toHaveText(['Notes', 'Items', 'Old']);
	await expect(sheet).toHaveValue('1');
	await expect(page.getByText('One formula has no value in the file (B3).')).toBeVisible();
	await expect(page.getByText('3 changed, 0 new, 2 the same, 1 refused.')).toBeVisible();
	await sheet.focus();
	await page.keyboard.type('Notes');
	await expect(page.getByText(/Notes" holds no rows below the names/)).toBeVisible();
	await expect(page.getByRole('button', { name: /^Enter 0/ })).toBeDisabled();
	await sheet.selectOption('Old');
	await expect(page.getByText('1 changed, 0 new, 0 the same.')).toBeVisible();
	await page.getByRole('button', { name: 'Cancel' }).click();
	await expect(page.getByRole('table', { name: 'What the columns mean' })).toHaveCount(0);
});

test('a file of a hundred thousand rows leaves the page free, and one that is none says so', async ({
	page
}) => {
	await open(page, '/files');
	const rows = Array.from({ length: 100_000 }, (_, i) => `${i < 2 ? 'PX15B' : `X${i}`};${i + 1}`);
	await bringIn(page, 'log.csv', `Product;List price\n${rows.join('\n')}\n`);
	await expect(page.getByText('99999 refused.')).toBeVisible();
	const lines = page.getByLabel('What cannot be taken').getByRole('listitem');
	await expect(lines.first()).toHaveText(
		/^Line 3, "List price"\. List price of PX15B is given on line 2/
	);
	await expect(page.getByText('and 99799 more')).toBeVisible();
	await bringIn(page, 'old.xls', '\u00d0');
	await expect(page.getByRole('alert')).toHaveText(/"old.xls" holds no rows below/);
});

shop(
	'both engines agree on a table that was brought in, with a new name and one that goes',
	async ({ page }) => {
		await open(page, '/files');
		await bringIn(
			page,
			'coils.csv',
			'Product;Standard coil length;Scrap (%);Demand (km/year)\nR16;120;3,5;1600\nR25;60;5;9e9\n'
		);
		const refused = page.getByLabel('What cannot be taken').getByRole('listitem');
		await expect(refused).toHaveText([/^Line 3\. There is no product "R25"/]);
		await page.getByLabel('What R25 is').selectOption('new name of R20');
		await expect(refused).toHaveCount(0);
		await expect(page.getByRole('heading', { name: '1 implausible value' })).toBeVisible();
		expect(await findings(page, 'section:has(input[type="file"])')).toEqual([]);
		await page.getByRole('button', { name: 'Enter 5 values' }).click();
		await expect(page.getByText('5 values from coils.csv entered')).toBeVisible();
		expect(await agreement(page)).toBeGreaterThan(100);

		await bringIn(page, 'one.csv', 'Product;Standard coil length\nR16;110\n');
		await page.getByText('Product: 1 of the workbook is not in the file').click();
		await page.getByLabel('remove R25, with all that is entered for it').check();
		await page.getByRole('button', { name: 'Enter 1 value' }).click();
		await find(page, 'Standard coil length');
		await expect(row(page, /^Standard coil length/)).toBeVisible();
		await page.keyboard.press('Enter');
		await expect(row(page, /^R16/)).toHaveCount(1);
		await expect(row(page, /^R25/)).toHaveCount(0);
	}
);

shop(
	'a log is summed by product and year, looked over, entered with its source, and next month it is one click',
	async ({ page }) => {
		await open(page, '/files');
		const log = (rows: readonly string[]) => ['Item;Sold on;Length (km);Kind', ...rows].join('\n');
		await bringIn(
			page,
			'sold-2026.csv',
			log([
				'R16;2026-01-10 06:00;1500,5;sale',
				'R16;2026-12-20 14:30;499,5;sale',
				'R20;2026-06-01;1300;sale',
				'R20;2026-06-02;40;sample',
				'R99;2026-06-03;7;sale'
			])
		);
		await page.getByLabel('The table holds').focus();
		await page.keyboard.type('a log');
		await expect(page.getByText('Say first what is summed')).toBeVisible();
		await page.getByRole('button', { name: 'Add what is entered' }).focus();
		await page.keyboard.press('Enter');
		await seek(page.getByLabel('Quantity, 1'), 'demand');
		await page.getByLabel('Divided by, 1').focus();
		await page.keyboard.type('years');
		await expect(page.getByText('Say which period the log covers')).toBeVisible();
		await page.getByLabel('The log covers').selectOption('the whole years of its rows');
		await page.getByLabel('Rows that are taken').selectOption('those chosen by Kind');
		await page.getByRole('checkbox', { name: /^sale/ }).focus();
		await page.keyboard.press('Space');
		await expect(page.getByText('3 of 5 rows used, 1 not chosen, 1 left out.')).toBeVisible();
		await expect(page.getByLabel('Rows that are left out')).toContainText(
			'1 row (line 6). There is no product "R99"'
		);
		await page.getByLabel('Keep how it is summed').fill('Sales');
		await page.getByRole('button', { name: 'Keep matches' }).click();
		await expect(page.getByText('Kept in the workbook as Sales.')).toBeVisible();
		await expect(
			page.getByRole('row', { name: /^2 Demand R16 One shift 2[,.]?200[,.]?000 2[,.]?000[,.]?000/ })
		).toBeVisible();
		await page.getByRole('button', { name: 'Enter 2 values' }).focus();
		await page.keyboard.press('Enter');
		await expect(
			page.getByText('2 values from sold-2026.csv entered, with the file')
		).toBeVisible();

		await bringIn(page, 'sold-2027.csv', log(['R16;2027-02-10;2100,5;sale']));
		await page.getByRole('button', { name: 'Sum as Sales' }).click();
		await expect(page.getByText('Summed as Sales: all headings are the same.')).toBeVisible();
		await expect(page.getByText('1 of 1 row used.')).toBeVisible();
		await page.getByRole('button', { name: 'Cancel' }).click();

		await findMember(page, 'demand', 0);
		await page.keyboard.press('F2');
		await page.keyboard.press('Escape');
		await undo(page);
		await expect(value(rowOf(active(page)), 1)).toHaveText(/2,200,000/);
	}
);
