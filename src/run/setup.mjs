/**
 * What a fresh clone lacks, brought in once: packages by the lock file, the framework's generated types, the
 * build. Each step is skipped while nothing it depends on has changed. Plain JavaScript without packages,
 * because it runs before there are any.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

const NEEDED_NODE = [20, 19];

/** Ends the program with a sentence when this Node is too old for the packages. */
export function requireNode() {
	const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
	if (major > NEEDED_NODE[0] || (major === NEEDED_NODE[0] && minor >= NEEDED_NODE[1])) return;
	console.error(
		`Metrewright needs Node ${NEEDED_NODE.join('.')} or newer; this is Node ${process.versions.node}. Install a newer Node, then run the command again.`
	);
	process.exit(1);
}

/** Runs a program in the project's folder; ends with its exit code if it fails and `required` is set. */
export function run(program, args, { quiet = false, required = true, env = {} } = {}) {
	const done = spawnSync(program, args, {
		cwd: root,
		stdio: quiet ? ['ignore', 'ignore', 'inherit'] : ['ignore', 'inherit', 'inherit'],
		env: { ...process.env, ...env },
		shell: process.platform === 'win32'
	});
	const code = done.status ?? 1;
	if (code !== 0 && required) {
		console.error(`"${[program, ...args].join(' ')}" did not succeed (exit ${code}).`);
		process.exit(code);
	}
	return code;
}

/** The path of a program that a package brings. */
export const bin = (name) => join(root, 'node_modules', '.bin', name);

function hashOf(parts) {
	const hash = createHash('sha256');
	for (const part of parts) hash.update(part).update('\0');
	return hash.digest('hex');
}

function* filesBelow(folder) {
	for (const entry of readdirSync(join(root, folder), { withFileTypes: true })) {
		const path = `${folder}/${entry.name}`;
		if (entry.isDirectory()) yield* filesBelow(path);
		else yield path;
	}
}

const read = (path) => (existsSync(join(root, path)) ? readFileSync(join(root, path)) : '');
const stampIs = (path, hash) => String(read(path)) === hash;
function stamp(path, hash) {
	mkdirSync(dirname(join(root, path)), { recursive: true });
	writeFileSync(join(root, path), hash);
}

/** Installs the packages that the lock file names, unless that has been done for this very lock file. */
export function ensurePackages({ quiet = false } = {}) {
	const hash = hashOf([read('package-lock.json'), process.versions.modules]);
	const mark = 'node_modules/.metrewright-packages';
	if (!stampIs(mark, hash)) {
		if (!quiet) console.log('Setting up: installing packages (once).');
		run('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error'], { quiet: true });
		stamp(mark, hash);
	}
	if (!existsSync(join(root, '.svelte-kit/tsconfig.json')))
		run(bin('svelte-kit'), ['sync'], { quiet: true });
}

const BUILD_MARK = 'build/.metrewright-sources';

/** Whether the build on disk is of these very sources. */
export const isBuilt = () => stampIs(BUILD_MARK, hashOfSources());

/** Builds the app unless the build on disk is of these very sources. */
export function ensureBuild() {
	if (isBuilt()) return;
	console.log('Setting up: building the app (after each change of its sources).');
	build(['--logLevel', 'error']);
}

/** Builds the app, then the command line into the same folder. */
export function build(options = []) {
	const quiet = options.length > 0;
	const hash = hashOfSources();
	run(bin('vite'), ['build', ...options], { quiet });
	run(bin('vite'), ['build', '--config', 'vite.cli.config.ts', ...options], { quiet });
	stamp(BUILD_MARK, hash);
}

function hashOfSources() {
	const sources = [...filesBelow('src'), ...filesBelow('static'), ...filesBelow('scenarios')]
		.concat('package-lock.json', 'svelte.config.js', 'vite.config.ts', 'vite.cli.config.ts')
		.concat('tsconfig.json')
		.sort();
	const facts = sources.map((path) => {
		const { size, mtimeMs } = statSync(join(root, path));
		return `${path} ${size} ${mtimeMs}`;
	});
	return hashOf(facts);
}
