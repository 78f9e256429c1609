/** Starts and kills the process of `api-server.ts`, and speaks with it. */
import { spawn, type ChildProcess } from 'node:child_process';
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

export async function startProcess(where: Where): Promise<ApiProcess> {
	const child = spawn(process.execPath, ['--import', 'tsx', 'tests/bench/api-server.ts'], {
		env: {
			...process.env,
			TSX_TSCONFIG_PATH: 'tsconfig.json',
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
