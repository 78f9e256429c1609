/**
 * `npm test`: sets up what is missing, the browser included, and runs every test; at the end the slowest and the sum.
 * Without a browser it runs the rest, names what was skipped and exits 1.
 */
import { ensureBrowser } from './browser.mjs';
import { beginBuild, bin, ensurePackages, requireNode, run } from './setup.mjs';
import { forgetEarlier, PURE, tell } from './slowest.mjs';

requireNode();
ensurePackages();
forgetEarlier();

// The build, which only the journeys need, is made meanwhile.
const building = beginBuild();
const report = ['--reporter=default', '--reporter=json', `--outputFile.json=${PURE}`];
const unit = run(bin('vitest'), ['run', ...report, ...process.argv.slice(2)], { required: false });

if ((await building) !== 0) {
	console.error('The app could not be built, so the tests in tests/browser cannot run.');
	process.exit(1);
}
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
