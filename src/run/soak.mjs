/**
 * `npm run soak -- [kills|editors|fuzz] [COUNT]`: the server under killing, crowds and nonsense, on each store that is
 * here. COUNT is of saves, seconds or requests; tests/server runs the same, shortened.
 */
import { join } from 'node:path';
import { ensurePackages, requireNode, root, run } from './setup.mjs';

requireNode();
ensurePackages();
process.exit(
	run(
		process.execPath,
		['--expose-gc', '--import', 'tsx', 'tests/bench/soak.ts', ...process.argv.slice(2)],
		{ required: false, env: { TSX_TSCONFIG_PATH: join(root, 'tsconfig.json') } }
	)
);
