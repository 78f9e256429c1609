/** The built app in a fresh Chromium with `watch-page.js` in it, at the shipped plant. */
import { chromium, type Page } from 'playwright/test';
import { serveApp } from './serve-app';

export interface WatchedPage {
	readonly page: Page;
	close(): Promise<void>;
}

export async function openWatched(): Promise<WatchedPage> {
	const executablePath = process.env.METREWRIGHT_CHROMIUM;
	const app = await serveApp();
	const browser = await chromium.launch(executablePath ? { executablePath } : {});
	const context = await browser.newContext({
		locale: 'en-GB',
		viewport: { width: 1440, height: 900 }
	});
	const page = await context.newPage();
	await page.addInitScript({ path: 'tests/bench/watch-page.js' });
	await page.goto(app.address);
	return {
		page,
		close: async () => {
			await browser.close();
			app.stop();
		}
	};
}
