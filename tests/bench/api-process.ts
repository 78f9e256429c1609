/**
 * Starts and kills the process of `api-server.ts`, and speaks with it. It is bundled once: read from the sources, each of its
 * many starts would take seconds, and each of its threads as long again.
 */
import { spawn, type ChildProcess } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { OWN_HEADER } from '$lib/server/http/guard';
import type { Where } from '$lib/server/store/open';

export interface ApiProcess {
	readonly port: number;
	/** Without warning, as a crash would. */
	kill(): Promise<void>;
	ask(
		method: string,
		path: string,
		text?: string,
		headers?: Record<string, string>
	): Promise<Response>;
}

const FOLDER = 'test-results/api-server';
let bundled: Promise<unknown> | undefined;

const bundle = () =>
	build({
		configFile: false,
		logLevel: 'error',
		publicDir: false,
		resolve: { alias: { $lib: fileURLToPath(new URL('../../src/lib', import.meta.url)) } },
		build: { ssr: 'tests/bench/api-server.ts', outDir: FOLDER, emptyOutDir: true, target: 'node20' }
	});

export async function startProcess(where: Where): Promise<ApiProcess> {
	await (bundled ??= bundle());
	const child = spawn(process.execPath, [`${FOLDER}/api-server.js`], {
		env: {
			...process.env,
			METREWRIGHT_LOG: 'silent',
			METREWRIGHT_REQUESTS_PER_MINUTE: '1000000',
			...('url' in where ? { DATABASE_URL: where.url } : { METREWRIGHT_DATA: where.folder })
		},
		stdio: ['ignore', 'pipe', 'inherit']
	});
	const port = await portOf(child);
	return {
		port,
		kill: () =>
			new Promise((resolve) => {
				child.once('exit', () => resolve());
				child.kill('SIGKILL');
			}),
		ask: (method, path, text, headers = {}) =>
			fetch(`http://127.0.0.1:${port}${path}`, {
				method,
				headers: { 'content-type': 'application/json', [OWN_HEADER]: '1', ...headers },
				...(text !== undefined && { body: text })
			})
	};
}

function portOf(child: ChildProcess): Promise<number> {
	return new Promise((resolve, reject) => {
		child.once('exit', (code) => reject(new Error(`The server ended with ${code}.`)));
		let said = '';
		child.stdout?.on('data', (piece: Buffer) => {
			said += piece.toString();
			const port = /port (\d+)/.exec(said)?.[1];
			if (port) resolve(Number(port));
		});
	});
}
