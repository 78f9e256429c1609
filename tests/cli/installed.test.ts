/**
 * The command line as it stands on a server: in a tree that its user can read and not write, without any package that
 * only building needs, called from another folder. The commands are those that `src/ops` documents.
 */
import { spawnSync } from 'node:child_process';
import {
	chmodSync,
	chownSync,
	cpSync,
	existsSync,
	mkdirSync,
	mkdtempSync,
	readFileSync,
	rmSync
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { build } from 'vite';
import { startServer, PASSWORD } from '../server/api';

const NOBODY = 65534;
const isRoot = process.getuid?.() === 0;

/** The packages that an installation without development has, by the lock file. */
function runtimePackages(): string[] {
	const lock = JSON.parse(readFileSync('package-lock.json', 'utf8')) as {
		packages: Record<string, { dev?: boolean; optional?: boolean; devOptional?: boolean }>;
	};
	return (
		Object.entries(lock.packages)
			.filter(([path, { dev, devOptional }]) => path !== '' && !dev && !devOptional)
			.map(([path]) => path)
			// Those of other systems are not installed.
			.filter((path) => existsSync(path))
	);
}

/** The command that a file of `src/ops` tells to make the first account with, from the program on. */
function documented(file: string): string[] {
	const line = readFileSync(file, 'utf8')
		.split('\n')
		.find((text) => text.startsWith('#') && / node \S+ account add-owner /.test(text));
	const command = / node (\S+ account add-owner \S+)/.exec(line ?? '')?.[1];
	if (!command) throw new Error(`${file} tells of no first account.`);
	return command.split(' ');
}

describe('The installed command line', () => {
	const home = mkdtempSync(join(tmpdir(), 'metrewright-installed-'));
	const tree = join(home, 'app');
	const data = join(home, 'data');

	beforeAll(async () => {
		mkdirSync(tree);
		await build({
			configFile: 'vite.cli.config.ts',
			logLevel: 'error',
			build: { outDir: join(tree, 'build/cli') }
		});
		for (const path of ['package.json', 'src/run', ...runtimePackages()])
			cpSync(path, join(tree, path), { recursive: true, force: false });
		mkdirSync(data, { mode: 0o700 });
		if (isRoot) chownSync(data, NOBODY, NOBODY);
		chmodSync(home, 0o755);
		spawnSync('chmod', ['-R', 'a-w,a+rX', tree]);
	});
	afterAll(() => {
		spawnSync('chmod', ['-R', 'u+w', tree]);
		rmSync(home, { recursive: true });
	});

	/** As somebody who owns nothing of the tree where this test may become so, from a folder that is not the tree's. */
	function run(words: readonly string[], cwd = '/') {
		return spawnSync(process.execPath, words, {
			cwd,
			encoding: 'utf8',
			...(isRoot && { uid: NOBODY, gid: NOBODY }),
			env: { PATH: process.env['PATH'], METREWRIGHT_DATA: data, METREWRIGHT_PASSWORD: PASSWORD }
		});
	}

	it.each([
		['src/ops/Containerfile', ''],
		['src/ops/metrewright.service', '/opt/metrewright/']
	])('makes the first account as %s says, and the server then starts', async (file, at) => {
		const [program = '', ...words] = documented(file);
		expect(program.startsWith(at)).toBe(true);
		const path = program.slice(at.length);
		// In the container the program's folder is where one is; under the unit it is named in full.
		const made = at ? run([join(tree, path), ...words]) : run([path, ...words], tree);
		// The second file finds the account that the first made.
		expect(`${made.stdout}${made.stderr}`).toMatch(
			/you@plant\.example has an account(, manages this installation| already)/
		);
		const server = await startServer({ folder: data }, { HOST: '0.0.0.0' });
		await server.stop();
	});

	it('lists, backs up and evaluates from any folder', () => {
		const program = join(tree, 'src/run/metrewright.mjs');
		expect(run([program, 'account', 'list']).stdout).toContain('you@plant.example');
		const backup = run([program, 'backup', 'whole.gz'], data);
		expect(`${backup.stdout}${backup.stderr}`).toContain('whole.gz holds everything');
		const shop = join(process.cwd(), 'scenarios/one-line-shop.json');
		cpSync(shop, join(home, 'shop.json'));
		const evaluated = run([program, 'check', join(home, 'shop.json')]);
		expect(evaluated.stdout).toContain('Nothing fails.');
	});

	it('says what to do where it is not built, and installs nothing', () => {
		const bare = join(home, 'bare');
		cpSync(join(tree, 'src/run'), join(bare, 'src/run'), { recursive: true });
		cpSync(join(tree, 'package.json'), join(bare, 'package.json'));
		const answer = run([join(bare, 'src/run/metrewright.mjs'), 'account', 'list']);
		expect(answer.status).toBe(1);
		expect(answer.stderr).toMatch(/is not built\. In .*bare run "npm ci" and "npm run build"/);
	});
});
