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
