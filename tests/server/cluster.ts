/**
 * A throw-away PostgreSQL for tests: a cluster in a temporary folder, on a socket of its own, run by an
 * unprivileged user (its server refuses to run as root).
 */
import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { chmodSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Where Debian and its like put the programs; the newest first. */
function programs(): string | null {
	const named = process.env['METREWRIGHT_POSTGRES_BIN'];
	if (named) return existsSync(join(named, 'initdb')) ? named : null;
	const root = '/usr/lib/postgresql';
	if (!existsSync(root)) return null;
	const versions = readdirSync(root).sort((a, b) => Number(b) - Number(a));
	return (
		versions
			.map((version) => join(root, version, 'bin'))
			.find((bin) => existsSync(join(bin, 'initdb'))) ?? null
	);
}

export const hasPostgres = (): boolean => programs() !== null;

export interface Cluster {
	/** A database of its own, empty. */
	database(name: string): string;
	stop(): Promise<void>;
}

export async function startCluster(): Promise<Cluster> {
	const bin = programs();
	if (!bin) throw new Error('PostgreSQL is not installed here.');
	const folder = mkdtempSync(join(tmpdir(), 'metrewright-pg-'));
	const user = process.getuid?.() === 0 ? 'postgres' : null;
	const as = (program: string, args: string[]): [string, string[]] =>
		user
			? ['setpriv', [`--reuid=${user}`, `--regid=${user}`, '--clear-groups', program, ...args]]
			: [program, args];
	const run = (program: string, args: string[]) => {
		const done = spawnSync(...as(join(bin, program), args), { encoding: 'utf8', cwd: folder });
		if (done.status !== 0) throw new Error(`${program}: ${done.stderr || done.error?.message}`);
	};
	if (user) spawnSync('chown', [user, folder]);
	else chmodSync(folder, 0o700);
	const data = join(folder, 'data');
	run('initdb', ['-D', data, '-U', 'tester', '-A', 'trust', '-E', 'UTF8', '--no-sync']);
	const args = ['-D', data, '-k', folder, '-c', 'listen_addresses=', '-c', 'max_connections=60'];
	const server = spawn(...as(join(bin, 'postgres'), args), { stdio: 'ignore', cwd: folder });
	const url = (name: string) =>
		`postgresql://tester@/${name}?host=${encodeURIComponent(folder)}&port=5432`;
	for (let tries = 0; ; tries++) {
		const ready = spawnSync(join(bin, 'pg_isready'), ['-h', folder, '-q']);
		if (ready.status === 0) break;
		if (tries > 200) throw new Error('PostgreSQL did not start.');
		await new Promise((resolve) => setTimeout(resolve, 50));
	}
	return {
		database(name) {
			run('createdb', ['-h', folder, '-U', 'tester', name]);
			return url(name);
		},
		async stop() {
			await ended(server);
			rmSync(folder, { recursive: true, force: true });
		}
	};
}

/** Its fast shutdown: open connections are cut. */
function ended(server: ChildProcess): Promise<void> {
	return new Promise((resolve) => {
		server.once('exit', () => resolve());
		server.kill('SIGINT');
	});
}
