import AxeBuilder from '@axe-core/playwright';
import { expect, open, test } from './app';

const PAGES = ['/', '/product', '/investment', '/scenarios', '/members'];

for (const scheme of ['light', 'dark'] as const)
	for (const path of PAGES)
		test(`${path} in ${scheme} has no finding of axe`, async ({ app: { page } }) => {
			await page.emulateMedia({ colorScheme: scheme });
			await open(page, path);
			const { violations } = await new AxeBuilder({ page }).analyze();
			expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`)).toEqual([]);
		});

for (const width of [390, 1024])
	for (const path of PAGES)
		test(`${path} at ${width} pixels does not scroll sideways`, async ({ app: { page } }) => {
			await page.setViewportSize({ width, height: 844 });
			await page.goto(path);
			await expect(page.getByRole('region', { name: 'At a glance' })).toContainText('EUR/m');
			const [inside, outside] = await page.evaluate(() => [
				document.documentElement.scrollWidth,
				document.documentElement.clientWidth
			]);
			expect(inside).toBeLessThanOrEqual(outside);
		});
