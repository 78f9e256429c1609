/** A lost connection and a killed server: what was done is kept here, and arrives once. */
import { active, expect, find, open } from './app';
import { test } from './own-server';
import { change, inStep, pair, saved, share, toGrid, toPage } from './sharing';
import type { Change } from '../../src/lib/workbook/compare/change';
import { changeWords } from '../../src/lib/workbook/compare/change-words';
import type { Page } from 'playwright/test';

interface Told {
	readonly revisions: readonly { readonly number: number; readonly changes: readonly Change[] }[];
}

/** What the server has of its one workbook, oldest first, beside the page. */
async function written(page: Page) {
	const { request } = page.context();
	const list = await request.get('/api/v1/workbooks');
	const { workbooks } = (await list.json()) as { workbooks: readonly { id: string }[] };
	expect(workbooks).toHaveLength(1);
	const answer = await request.get(`/api/v1/workbooks/${workbooks[0]?.id}/revisions`);
	const { revisions } = (await answer.json()) as Told;
	return [...revisions]
		.reverse()
		.flatMap(({ changes }) => changes.map((change) => changeWords(change)));
}

test('an edit without a connection is kept, survives the page being closed, and is sent on return', async ({
	someone
}) => {
	const page = await someone();
	const context = page.context();
	await open(page);
	await share(page);
	await toGrid(page);
	await context.setOffline(true);
	await expect(page.getByText('No connection.')).toBeVisible();
	await change(page, 'resin_price', '2.10');
	await expect(saved(page)).toHaveText('kept here, no connection');
	await change(page, 'energy_price', '0.18');
	await expect(saved(page)).toHaveText('kept here, no connection');
	await page.close();

	await context.setOffline(false);
	const again = await context.newPage();
	await open(again);
	await inStep(again, 2);
	await find(again, 'resin_price');
	await expect(active(again)).toContainText('2.1');
	expect(await written(again)).toEqual([
		'begin One-line shop',
		'Resin price: 1.9 to 2.1 EUR/kg',
		'Energy price: 0.16 to 0.18 EUR/kWh'
	]);
	await context.setOffline(true);
	await change(again, 'density', '945');
	await expect(saved(again)).toHaveText('kept here, no connection');
	await context.setOffline(false);
	await inStep(again, 3);
	await expect(again.getByText('No connection.')).toBeHidden();
});

test('parts whose styles a lost connection kept away are whole once it is back', async ({
	someone
}) => {
	const page = await someone();
	let lost = true;
	const styles: string[] = [];
	await open(page);
	await page.route('**/*.css', (route) => {
		if (!lost) return route.fallback();
		styles.push(route.request().url());
		return route.abort('connectionfailed');
	});
	// They are fetched ahead, a while after the first numbers stand, and asked for again when they failed.
	await expect.poll(() => styles.length > new Set(styles).size).toBe(true);
	lost = false;
	await toPage(page, 'Revisions');
	await expect(page.getByRole('main').locator('.page')).toHaveCSS('padding-top', '16px');
});

test('a server killed in mid-save loses nothing that it acknowledged, and the pages catch up', async ({
	someone,
	server
}) => {
	const [anna, berg] = await pair(someone);
	await change(anna, 'resin_price', '2.10');
	await inStep(anna, 2);

	// The save is written, but its answer never comes.
	let dying: 'after' | 'amid' | null = 'after';
	await anna.route('**/api/v1/workbooks/*', async (route) => {
		if (route.request().method() !== 'PUT' || dying === null) return route.fallback();
		const when = dying;
		dying = null;
		if (when === 'after') await route.fetch();
		else void route.continue();
		await server.kill();
		if (when === 'after') await route.abort('connectionreset');
	});
	await change(anna, 'energy_price', '0.18');
	await expect(saved(anna)).toHaveText('kept here, no connection');
	await expect(saved(berg)).toHaveText('kept here, no connection');
	await server.start();
	await inStep(anna, 3);
	await inStep(berg, 3);

	// Killed while the save is on its way: wherever it was, it stands there once.
	dying = 'amid';
	await change(anna, 'density', '945');
	await expect.poll(() => dying).toBe(null);
	await change(berg, 'eccentricity', '0.07');
	await expect(saved(berg)).toHaveText('kept here, no connection');
	await server.start();
	for (const page of [anna, berg]) await inStep(page, 5);
	expect((await written(anna)).sort()).toEqual([
		'Density: 941 to 945 kg/m^3',
		'Eccentricity: 0.06 to 0.07 mm',
		'Energy price: 0.16 to 0.18 EUR/kWh',
		'Resin price: 1.9 to 2.1 EUR/kg',
		'begin One-line shop'
	]);
	for (const page of [anna, berg]) {
		await find(page, 'density');
		await expect(active(page)).toContainText('945');
		await find(page, 'eccentricity');
		await expect(active(page)).toContainText('0.07');
	}
});
