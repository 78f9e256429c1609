/** `npm run -s metrewright -- …`: the command line, after setting up what is missing. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { ensurePackages, requireNode, root } from './setup.mjs';

requireNode();
ensurePackages({ quiet: true });
const done = spawnSync(
	process.execPath,
	['--import', 'tsx', join(root, 'src/cli/main.ts'), ...process.argv.slice(2)],
	{
		stdio: 'inherit',
		// The aliases that the sources use stand in the project's own settings, wherever this is called from.
		env: {
			METREWRIGHT_DATA: join(root, '.metrewright-data'),
			...process.env,
			TSX_TSCONFIG_PATH: join(root, 'tsconfig.json')
		},
		cwd: process.env.INIT_CWD ?? process.cwd()
	}
);
process.exit(done.status ?? 1);
