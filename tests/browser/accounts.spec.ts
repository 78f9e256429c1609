/** A server with accounts: signing in and out, invitations, roles, and what each role is given to see. */
import { active, expect, find } from './app';
import { test } from './own-server';
import { change, inStep, join, openShared, ownerWithShop, saved, toGrid, toPage } from './sharing';
import type { Response } from 'playwright/test';

const OWN = { 'x-metrewright': 'app' };

test('a viewer without confidential values is given these and nothing of what they come from', async ({
	someone,
	server
}) => {
	const [anna, berg] = [await someone(), await someone()];
	await ownerWithShop(anna, server);
	await toGrid(anna);
	await find(anna, 'cost_per_metre');
	await anna.keyboard.press('Home');
	await anna.keyboard.press('F2');
	await anna
		.getByRole('dialog')
		.getByRole('checkbox', { name: /^not confidential/ })
		.check();
	await anna.getByRole('dialog').getByRole('button', { name: 'Save' }).click();
	await expect(anna.getByRole('dialog')).toBeHidden();
	await inStep(anna, 2);

	const answers: Response[] = [];
	berg.on('response', (response) => {
		if (new URL(response.url()).pathname.startsWith('/api/')) answers.push(response);
	});
	await join(anna, berg, 'berg', 'viewer without confidential values');
	await berg
		.getByRole('button', { name: 'See the values that are not confidential One-line shop' })
		.click();
	const values = berg.getByRole('region', {
		name: /^One-line shop: values that are not confidential, revision 2/
	});
	await expect(values.getByRole('row')).toHaveCount(2);
	await expect(values).toContainText('Factory cost per metre');
	await expect(values).toContainText('EUR/m');

	// What the network brought, word by word.
	expect(answers.length).toBeGreaterThan(3);
	for (const answer of answers) {
		const text = answer.status() === 204 ? '' : await answer.text();
		expect(text, answer.url()).not.toMatch(/formula|resin|anna|savedBy|cost_part|density|inputs/i);
	}
	// And what it does not bring to one who asks by hand.
	const { request } = berg.context();
	const list = await request.get('/api/v1/workbooks');
	const { workbooks } = (await list.json()) as { workbooks: readonly { id: string }[] };
	const path = `/api/v1/workbooks/${workbooks[0]?.id}`;
	for (const part of ['', '/revisions', '/revisions/1', '/revisions/1/workbook', '/people'])
		expect((await request.get(path + part)).status(), part).toBe(403);
	for (const part of ['/compare?from=1', '/history?quantity=resin_price', '/events'])
		expect((await request.get(path + part)).status(), part).toBe(403);
	const asked = await request.post(`${path}/evaluate`, { headers: OWN, data: {} });
	expect(asked.status()).toBe(403);
});

test('an editor works, loses the part, keeps what was done, and signs out', async ({
	someone,
	server
}) => {
	const [anna, berg] = [await someone(), await someone()];
	await ownerWithShop(anna, server);
	await join(anna, berg, 'berg', 'editor');
	await openShared(berg, 'One-line shop');
	await change(berg, 'resin_price', '2.10');
	await inStep(berg, 2);
	await inStep(anna, 2);
	await toPage(anna, 'Revisions');
	const newest = anna.getByRole('main').locator('ol > li').first();
	await expect(newest).toContainText('berg');
	await expect(newest).toContainText('Resin price: 1.9 to 2.1 EUR/kg');

	await toPage(anna, 'Share and people');
	const people = anna.getByRole('region', { name: 'People of this workbook' });
	await people.getByLabel('Role of berg').selectOption('viewer of all values');
	await expect(people).toContainText('berg is now viewer of all values.');
	await people.getByLabel('Role of anna').selectOption('editor');
	await expect(people.getByRole('alert')).toContainText('A workbook needs an owner.');
	await expect(people.getByLabel('Role of anna')).toHaveValue('owner');

	await change(berg, 'energy_price', '0.18');
	await expect(saved(berg)).toHaveText('kept here, not sent');
	// In sight, though the page is scrolled down to the quantity.
	await expect(berg.getByText('Kept here, not sent.')).toBeInViewport();
	await expect(
		berg.getByText('You are a viewer of all values of this workbook; this takes an editor.')
	).toBeVisible();
	await find(berg, 'energy_price');
	await expect(active(berg)).toContainText('0.18');
	await berg.getByRole('button', { name: 'Make it my own copy' }).click();
	await expect(berg.getByText('Kept here, not sent.')).toBeHidden();
	await change(berg, 'energy_price', '0.19');
	await expect(active(berg)).toBeVisible();
	await expect(saved(berg)).toHaveText(/^saved \d\d:\d\d$/);

	await toPage(berg, 'Share and people');
	await expect(berg.getByRole('row', { name: /^One-line shop/ })).toContainText(
		'viewer of all values'
	);
	await berg.getByRole('button', { name: 'Sign out', exact: true }).click();
	await expect(berg.getByRole('heading', { name: 'Sign in' })).toBeVisible();
	await expect(berg.getByRole('row', { name: /^One-line shop/ })).toHaveCount(0);
	expect((await berg.context().request.get('/api/v1/workbooks')).status()).toBe(401);
});
