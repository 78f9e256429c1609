/** The small shop in place of the plant, where the plant's size is beside the point: both engines have it in a moment. */
import type { BrowserContext } from 'playwright/test';
import { test as fresh } from './app';

/** Whoever opens the first screen in this context finds the shop. */
export const serveShop = (context: BrowserContext) =>
	context.route('**/shipped/marram-coil-works.json', (route) =>
		route.fulfill({ path: 'scenarios/one-line-shop.json' })
	);

export const test = fresh.extend({
	page: async ({ page, context }, use) => {
		await serveShop(context);
		await use(page);
	}
});
