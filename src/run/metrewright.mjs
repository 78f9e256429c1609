/**
 * `npm run -s metrewright -- …`, or this file by its path: the command line, from any folder and as any user who may read
 * the program. It writes nothing beside the program and installs nothing.
 *
 * The build runs. Only where the sources have changed since, and their loader is here, do the sources run instead.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { isBuilt, requireNode, root } from './setup.mjs';

requireNode();
const built = join(root, 'build/cli/main.js');
const loader = sourceLoader();
if (!loader && !existsSync(built)) {
	console.error(
		`The command line is not built. In ${root} run "npm ci" and "npm run build" once, as the user who owns that folder.`
	);
	process.exit(1);
}
const program =
	loader && !(existsSync(built) && isBuilt())
		? ['--import', loader, join(root, 'src/cli/main.ts')]
		: [built];
const done = spawnSync(process.execPath, [...program, ...process.argv.slice(2)], {
	stdio: 'inherit',
	env: {
		METREWRIGHT_DATA: join(root, '.metrewright-data'),
		...process.env,
		// The aliases that the sources use stand in the project's own settings, wherever this is called from.
		TSX_TSCONFIG_PATH: join(root, 'tsconfig.json')
	},
	// npm goes to the program's folder first; files are meant as they stand where it was called.
	cwd: process.env.INIT_CWD ?? process.cwd()
});
process.exit(done.status ?? 1);

/** What lets Node run the sources, by its address; null where it is not installed or they are not set up. */
function sourceLoader() {
	if (!existsSync(join(root, 'src/cli/main.ts'))) return null;
	if (!existsSync(join(root, '.svelte-kit/tsconfig.json'))) return null;
	try {
		return pathToFileURL(createRequire(join(root, 'package.json')).resolve('tsx')).href;
	} catch {
		return null;
	}
}
