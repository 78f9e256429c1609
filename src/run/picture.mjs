/** `npm run picture`: takes the README's picture from the built app, as a visitor first sees it. */
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { ensureBrowser } from './browser.mjs';
import { ensureBuild, ensurePackages, requireNode, root } from './setup.mjs';

requireNode();
ensurePackages();
ensureBuild();
const browserPath = await ensureBrowser();
if (!browserPath) {
	console.error('No Chromium could be found or installed; the picture was not taken.');
	process.exit(1);
}
const port = 5182;
const server = spawn(process.execPath, [join(root, 'src/run/serve.mjs')], {
	env: { ...process.env, PORT: String(port) },
	stdio: ['ignore', 'pipe', 'inherit']
});
try {
	await new Promise((resolve) => server.stdout.once('data', resolve));
	const { chromium } = await import('playwright');
	const browser = await chromium.launch({ executablePath: browserPath });
	const page = await browser.newPage({
		viewport: { width: 1440, height: 960 },
		locale: 'en-GB',
		colorScheme: 'light'
	});
	await page.goto(`http://127.0.0.1:${port}`);
	// Both engines are done when the page says how many values agree.
	await page
		.getByText(/values agree|agree in two/)
		.first()
		.waitFor();
	await page.screenshot({ path: join(root, 'static/workbook.png') });
	await browser.close();
	console.log('static/workbook.png is new.');
} finally {
	server.kill();
}
