/**
 * `npm run bench`: how fast the two engines and the page are beside each other, on this machine, now. It
 * judges nothing by the clock: what counts are the ratios, measured in one run. What is measured stands in
 * tests/bench; each part runs alone, so that none slows another.
 */
import { join } from 'node:path';
import { ensureBrowser } from './browser.mjs';
import { ensureBuild, ensurePackages, requireNode, root, run } from './setup.mjs';

requireNode();
ensurePackages();
ensureBuild();
const browser = await ensureBrowser();

const wanted = process.argv.slice(2);
const parts = ['edit', 'opening', 'growth', 'studies', 'weight', 'page', 'page-edits'];
const unknown = wanted.filter((part) => !parts.includes(part));
if (unknown.length > 0) {
	console.error(`There is no part ${unknown.join(', ')}. Choose among ${parts.join(', ')}.`);
	process.exit(1);
}

let failed = 0;
for (const part of parts) {
	if (wanted.length > 0 && !wanted.includes(part)) continue;
	if (part.startsWith('page') && !browser) {
		console.error(
			'Left out: the page, because no Chromium could be found or installed. Install Chromium, or set METREWRIGHT_CHROMIUM to its path.'
		);
		failed = 1;
		continue;
	}
	const env = { TSX_TSCONFIG_PATH: join(root, 'tsconfig.json') };
	if (browser) env.METREWRIGHT_CHROMIUM = browser;
	const args = ['--import', 'tsx', `tests/bench/${part}.ts`];
	failed ||= run(process.execPath, args, { required: false, env });
}
process.exit(failed);
