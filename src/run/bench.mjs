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
const parts = [
	'edit',
	'opening',
	'growth',
	'large',
	'programmes',
	'studies',
	'tables',
	'weight',
	'page',
	'page-edits',
	'page-close',
	'page-large'
];
const unknown = wanted.filter((part) => !parts.includes(part));
if (unknown.length > 0) {
	console.error(`There is no part ${unknown.join(', ')}. Choose among ${parts.join(', ')}.`);
	process.exit(1);
}

/** Built as the app is, because a loader that translates while it runs adds work of its own to every function. */
const outDir = join(root, 'node_modules/.cache/metrewright-bench');
const entries = [...parts, 'one-large', 'one-opening', 'one-size'];
const { build } = await import('vite');
await build({
	configFile: false,
	root,
	logLevel: 'error',
	publicDir: false,
	resolve: { alias: { $lib: join(root, 'src/lib') } },
	build: {
		ssr: true,
		outDir,
		target: 'node20',
		rollupOptions: { input: entries.map((part) => join(root, `tests/bench/${part}.ts`)) }
	}
});

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
	const env = browser ? { METREWRIGHT_CHROMIUM: browser } : {};
	failed ||= run(process.execPath, [join(outDir, `${part}.js`)], { required: false, env });
}
process.exit(failed);
