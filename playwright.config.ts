import { defineConfig } from '@playwright/test';

const port = 5181;
const executablePath = process.env.METREWRIGHT_CHROMIUM;

export default defineConfig({
	testDir: 'tests/browser',
	timeout: 60_000,
	workers: 1,
	reporter: 'list',
	use: {
		baseURL: `http://127.0.0.1:${port}`,
		locale: 'en-GB',
		launchOptions: executablePath ? { executablePath } : {}
	},
	webServer: {
		command: 'node src/run/serve.mjs',
		env: { PORT: String(port), METREWRIGHT_DATA: 'test-results/data' },
		url: `http://127.0.0.1:${port}`,
		reuseExistingServer: false
	}
});
