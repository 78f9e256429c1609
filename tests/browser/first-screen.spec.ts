import { agreement, expect, fact, open, test } from './app';

test('the invented plant is open and computed', async ({ app: { page } }) => {
	await expect(page.getByRole('banner')).toContainText('Marram Coil Works (invented)');
	const strip = page.getByRole('region', { name: 'At a glance' });
	await expect(fact(page, 0)).toHaveText('0.2965');
	await expect(strip).toContainText('14.82 EUR/coil');
	await expect(fact(page, 1)).toHaveText('51.0');
	await expect(strip).toContainText('fullest: extrusion');
	await page.getByRole('combobox', { name: 'Scenario in hand' }).selectOption('better_gauging');
	await expect(fact(page, 2)).toHaveText('1.7');
});

test('every value is computed twice, and all agree', async ({ app: { page } }) => {
	const words = await agreement(page);
	const [agreeing, all] = words.match(/[\d,]+/g) ?? [];
	expect(agreeing).toBe(all);
	expect(Number(all?.replace(/,/g, ''))).toBeGreaterThan(30_000);
});

test('another product changes the strip', async ({ app: { page } }) => {
	await page.getByRole('combobox', { name: 'Product shown' }).selectOption('PX28B');
	await expect(fact(page, 0)).toHaveText('0.8758');
});

for (const path of ['/', '/product', '/investment', '/scenarios', '/members'])
	test(`${path} asks its own host alone and keeps to the content policy`, async ({ app }) => {
		await open(app.page, path);
		await agreement(app.page);
		expect([...app.hosts]).toEqual([new URL(app.page.url()).host]);
	});

test('page and workers come with a policy that allows no inline and no generated code', async ({
	app: { page },
	request
}) => {
	const policy = (await request.get('/')).headers()['content-security-policy'] ?? '';
	expect(policy).toContain("script-src 'self' 'nonce-");
	expect(policy).not.toMatch(/unsafe-(inline|eval)/);
	await agreement(page);
	const workers = page.workers().map((worker) => worker.url());
	expect(workers).toHaveLength(2);
	for (const url of workers) {
		const own = (await request.get(url)).headers()['content-security-policy'] ?? '';
		expect(own).toContain("script-src 'self'");
		expect(own).not.toMatch(/unsafe-(inline|eval)/);
	}
});

test('the second engine is no part of the first load', async ({ request }) => {
	const page = await (await request.get('/')).text();
	const scripts = [...page.matchAll(/href="([^"]+\.js)"/g)].map(([, path]) => path!);
	const linked = (await request.get('/')).headers()['link'] ?? '';
	for (const [, path] of linked.matchAll(/<([^>]+\.js)>/g)) scripts.push(path!);
	expect(scripts.length).toBeGreaterThan(5);
	for (const path of scripts) {
		const text = await (await request.get(path.replace(/^\.\//, '/'))).text();
		expect(text.includes('HyperFormula'), path).toBe(false);
	}
});
