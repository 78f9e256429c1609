import { sideways } from './access';
import { expect, follow, open, strip, undo } from './app';
import { test } from './plant';

test('campaigns are switched on in one click: the changeovers of cost, capacity and plan are theirs, and undo brings lots back', async ({
	page
}) => {
	await open(page, '/plan');
	const campaigns = page.getByRole('region', { name: 'How often each product is run' });
	const allocation = page.getByRole('region', { name: 'Who makes what, month by month' });
	const finding = (of: typeof campaigns) => of.getByRole('heading', { level: 2 });
	await expect(finding(allocation)).toHaveText(/^New line: the best plan brings/);
	const byLot = await finding(allocation).textContent();
	await expect(campaigns).toContainText('Switched off: nothing is decided by it.');
	// Twelve months and what is left out of them are in view at 1400; on a phone their names stay where they are.
	const sold = allocation.getByRole('table', { name: 'Sold in the month, m' });
	await page.setViewportSize({ width: 1400, height: 900 });
	await expect(sold.getByRole('columnheader', { name: 'costs, EUR' })).toBeVisible();
	expect(
		await sold.evaluate(
			(table) => table.parentElement!.scrollWidth - table.parentElement!.clientWidth
		)
	).toBe(0);
	await page.setViewportSize({ width: 390, height: 844 });
	const board = allocation.getByRole('region', { name: 'What runs where' });
	await board.evaluate((box) => box.scrollTo(300, 400));
	const stays = async (name: string, side: 'x' | 'y') => {
		const head = board.getByRole(side === 'y' ? 'columnheader' : 'rowheader', { name });
		return (await head.boundingBox())![side] - (await board.boundingBox())![side];
	};
	expect(await stays('Aug', 'y')).toBeCloseTo(0, 0);
	expect(await stays('L3', 'x')).toBeCloseTo(0, 0);
	// Names are whole words, in a column that leaves room for four months.
	const named = await board.getByRole('rowheader', { name: 'Rewinder hours hold' }).boundingBox();
	expect(named!.width).toBeLessThan(110);
	expect(named!.height).toBeLessThan(90);
	await expect.poll(() => sideways(page)).toBeLessThanOrEqual(0);
	await page.setViewportSize({ width: 1440, height: 900 });

	const cost = strip(page).locator('.number');
	const before = await cost.allTextContents();

	await campaigns.getByRole('button', { name: 'Switch on' }).click();
	await expect(finding(campaigns)).toHaveText(
		/^New line: the best plan comes to [\d,]+ EUR\/year$/
	);
	await expect(campaigns).toContainText('Proven best in whole numbers');
	const table = campaigns.getByRole('table', { name: 'Run so often' });
	await expect(table.getByRole('textbox', { name: 'PX28B, L4, 26 a year' })).toHaveValue('yes');
	await expect(finding(allocation)).not.toHaveText(byLot!);
	await expect(finding(allocation)).toHaveText(/^New line: the best plan brings/);
	await expect.poll(() => cost.allTextContents()).not.toEqual(before);

	await undo(page);
	await expect(campaigns).toContainText('Switched off: nothing is decided by it.');
	await expect(finding(allocation)).toHaveText(byLot!);
	await expect.poll(() => cost.allTextContents()).toEqual(before);
	await follow(page, '/');
});
