import { defineConfig } from 'playwright/test';
import { findBrowser } from './src/run/browser.mjs';
import { browsersAtOnce, freePort, slowness } from './tests/browser/machine';

// The runner reads this first and its workers read it again: what was found once is handed on.
process.env.JOURNEYS_PORT ??= String(await freePort());
process.env.JOURNEYS_SLOWNESS ??= slowness().toFixed(2);
process.env.METREWRIGHT_CHROMIUM ??= (await findBrowser()) ?? '';

const port = process.env.JOURNEYS_PORT;
const slower = Number(process.env.JOURNEYS_SLOWNESS);
const executablePath = process.env.METREWRIGHT_CHROMIUM;

/**
 * A page that lives for seconds does not repay its last step of translation, which takes a fifth of the processor's
 * time of opening one. What the page does is the same; speed is for the benchmarks.
 */
const ENGINE = '--js-flags=--no-opt';

export default defineConfig({
	testDir: 'tests/browser',
	// Guards against a journey that hangs: a quiet machine needs a twentieth of it. Speed is for the benchmarks.
	timeout: 180_000 * slower,
	expect: { timeout: 60_000 * slower },
	// What fails everywhere has one cause, and its first failures tell it.
	maxFailures: 20,
	fullyParallel: true,
	workers: browsersAtOnce(),
	reporter: [['list'], ['json', { outputFile: 'test-results/journeys.json' }]],
	reportSlowTests: null,
	// Emptied by each run: what the pure tests wrote down lies beside it.
	outputDir: 'test-results/journeys',
	use: {
		baseURL: `http://127.0.0.1:${port}`,
		locale: 'en-GB',
		launchOptions: { ...(executablePath && { executablePath }), args: [ENGINE] }
	},
	webServer: {
		command: 'node src/run/serve.mjs',
		env: { PORT: port, METREWRIGHT_DATA: 'test-results/journeys/data' },
		url: `http://127.0.0.1:${port}`,
		timeout: 60_000 * slower,
		reuseExistingServer: false
	}
});
