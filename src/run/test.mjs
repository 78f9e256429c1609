/**
 * `npm test`: sets up what is missing, the browser included, and runs every test; at the end the slowest and the sum.
 * Without a browser it runs the rest, names what was skipped and exits 1.
 */
import { ensureBrowser } from './browser.mjs';
import { bin, ensureBuild, ensurePackages, requireNode, run } from './setup.mjs';
import { forgetEarlier, PURE, tell } from './slowest.mjs';

requireNode();
ensurePackages();
forgetEarlier();

// Before the pure tests and not beside them: both have the framework write what it generates into one folder, and a
// build made of a mixture opens no page.
ensureBuild();
const report = ['--reporter=default', '--reporter=json', `--outputFile.json=${PURE}`];
const unit = run(bin('vitest'), ['run', ...report, ...process.argv.slice(2)], { required: false });

const browser = await ensureBrowser();
const journeys = browser
	? run(bin('playwright'), ['test'], {
			required: false,
			env: { METREWRIGHT_CHROMIUM: browser }
		})
	: 1;

if (!browser)
	console.error(
		'Skipped: the tests in tests/browser, because no Chromium could be found or installed. Install Chromium, or set METREWRIGHT_CHROMIUM to its path, then run npm test again.'
	);
const { failed } = tell();
process.exit(unit || journeys || (failed > 0 ? 1 : 0));
