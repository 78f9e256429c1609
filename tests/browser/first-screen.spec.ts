import { firstScreenScripts, weightOf } from '../bench/first-screen';
import { agreement, expect, fact, find, load, open, strip, test } from './app';
import { coil, figure, metre, payback } from './figures';

const ROUTES = {
	'/': 'Marram Coil Works',
	'/product': 'PX15B',
	'/investment': 'pay back',
	'/scenarios': 'Scenarios',
	'/members': 'Lists'
};

const UNSAFE = /unsafe-(inline|eval)|(script|worker)-src[^;]*(data:|blob:|\*)/;

test('the invented plant is open and computed: cost, metres, fullest resource, payback, and each product', async ({
	page
}) => {
	await open(page);
	await expect(page.getByRole('banner')).toContainText('Marram Coil Works (invented)');
	await expect(fact(page, 0)).toHaveText(metre());
	await expect(strip(page)).toContainText('EUR/m');
	await expect(strip(page)).toContainText(`${coil()} EUR/coil`);
	await expect(fact(page, 1)).toHaveText(figure('total_good_metres', [], { digits: 3 }));
	await expect(strip(page)).toContainText(/bottleneck: extrusion at [\d.]+ %, line L\d/);
	const hand = strip(page).getByRole('combobox', { name: 'Scenario shown' });
	await expect(hand).toHaveValue('new_line');
	await expect(fact(page, 2)).toHaveText(payback('new_line'));
	// Of another scenario than the one shown: it says of which.
	await expect(strip(page).locator('.figure').first()).toContainText('Base');
	await expect(strip(page).locator('.figure').nth(2)).not.toContainText('New line');
	await hand.selectOption('better_gauging');
	await expect(fact(page, 2)).toHaveText(payback('better_gauging'));
	await expect(strip(page)).toContainText(/NPV [\d,.]+ .*EUR, life 8 years?/);
	// Another product has another cost of its metre and its coil.
	await strip(page).getByRole('combobox', { name: 'Product shown' }).selectOption('PX28B');
	await expect(fact(page, 0)).toHaveText(figure('cost_per_metre', ['PX28B']));
	await expect(strip(page)).not.toContainText(`${coil()} EUR/coil`);
});

test('every page loads from its own host alone, within the content policy', async ({
	page,
	request
}) => {
	for (const [path, words] of Object.entries(ROUTES)) {
		await load(page, path);
		await expect(page.getByRole('heading', { level: 1 })).toContainText(words);
		await expect(page).toHaveTitle(/Marram Coil Works, Metrewright/);
	}
	for (const path of [...Object.keys(ROUTES), '/no-such-page']) {
		const policy = (await request.get(path)).headers()['content-security-policy'] ?? '';
		expect(policy, path).toContain("script-src 'self' 'nonce-");
		expect(policy, path).not.toMatch(UNSAFE);
	}
});

test("the first screen's scripts stay below 150 kB as they travel", async ({ baseURL }) => {
	expect(weightOf(await firstScreenScripts(`${baseURL}/`))).toBeLessThan(150_000);
});

test.describe('a page whose second engine begins when the page likes', () => {
	test.use({ holdsSecondEngine: false });

	test('the second engine is not among the scripts that the first numbers wait for, computes every value again, and every value of an edit', async ({
		page,
		request
	}) => {
		await page.addInitScript((metre) => {
			const isShown = () => document.querySelector('.strip .number')?.textContent === metre;
			new MutationObserver((_, observer) => {
				if (!isShown()) return;
				performance.mark('first numbers');
				observer.disconnect();
			}).observe(document, { subtree: true, childList: true, characterData: true });
		}, metre());
		await open(page);
		expect(await agreement(page)).toBeGreaterThan(30_000);
		await strip(page).getByRole('button', { name: 'values agree' }).click();
		await expect(page.getByRole('dialog')).toContainText('Every number is computed twice');
		await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();

		const scripts = await page.evaluate(() => {
			const shown = performance.getEntriesByName('first numbers')[0]?.startTime ?? 0;
			return (performance.getEntriesByType('resource') as PerformanceResourceTiming[])
				.filter(({ name }) => name.endsWith('.js'))
				.map(({ name, responseEnd }) => ({ name, early: responseEnd <= shown }));
		});
		const engines: boolean[] = [];
		for (const { name, early } of scripts)
			if ((await (await request.get(name)).text()).includes('HyperFormula')) engines.push(early);
		expect(scripts.some(({ early }) => early)).toBe(true);
		expect(engines).toEqual([false]);

		const workers = page.workers().map((worker) => worker.url());
		// That of the solver is there once it has something to plan.
		for (const name of ['engine.worker', 'verifier.worker'])
			expect(
				workers.some((url) => url.includes(name)),
				name
			).toBe(true);
		for (const url of workers) {
			const policy = (await request.get(url)).headers()['content-security-policy'] ?? '';
			// Fixed loops in WebAssembly are let in, generated code is not.
			expect(policy, url).toContain("script-src 'self' 'wasm-unsafe-eval';");
			expect(policy.replace("'wasm-unsafe-eval'", ''), url).not.toMatch(UNSAFE);
		}

		await find(page, 'speed_ratio');
		await page.keyboard.type('90');
		await page.keyboard.press('Enter');
		await expect(fact(page, 0)).not.toHaveText(metre());
		expect(await agreement(page)).toBeGreaterThan(30_000);
	});
});
