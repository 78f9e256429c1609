/** The small shop in place of the plant, where the plant's size is beside the point: both engines have it in a moment. */
import { readFileSync } from 'node:fs';
import type { BrowserContext } from 'playwright/test';
import { test as fresh } from './app';

/** The text of the shop's workbook. */
export const shopText = () => readFileSync('scenarios/one-line-shop.json', 'utf8');

/** Whoever opens the first screen in this context finds this workbook in place of the plant. */
export const serveInstead = (context: BrowserContext, body: string) =>
	context.route('**/shipped/marram-coil-works.json', (route) =>
		route.fulfill({ body, contentType: 'application/json' })
	);

export const serveShop = (context: BrowserContext) => serveInstead(context, shopText());

export const test = fresh.extend({
	page: async ({ page, context }, use) => {
		await serveShop(context);
		await use(page);
	}
});
