/** The built app on a free port, as `npm start` serves it. */
import { spawn } from 'node:child_process';
import { createServer } from 'node:net';

export interface Served {
	readonly address: string;
	stop(): void;
}

export async function serveApp(): Promise<Served> {
	const port = await freePort();
	const child = spawn(process.execPath, ['src/run/serve.mjs'], {
		env: { ...process.env, HOST: '127.0.0.1', PORT: String(port) },
		stdio: ['ignore', 'pipe', 'inherit']
	});
	// However the bench ends, nothing of it stays behind.
	process.once('exit', () => child.kill());
	await new Promise<void>((resolve, reject) => {
		child.stdout.once('data', () => resolve());
		child.once('exit', (code) => reject(new Error(`The server ended with exit code ${code}.`)));
	});
	return { address: `http://127.0.0.1:${port}/`, stop: () => void child.kill() };
}

function freePort(): Promise<number> {
	return new Promise((resolve, reject) => {
		const server = createServer();
		server.once('error', reject);
		server.listen(0, '127.0.0.1', () => {
			const address = server.address();
			server.close(() => resolve(typeof address === 'object' && address ? address.port : 0));
		});
	});
}
