/**
 * Journeys of sharing: each has a built server of its own on a folder of its own, which may be killed and started
 * again, and as many people as it needs, each in a browser that shares nothing with the others. The small shop is
 * what they find on their first screen, because the plant's size is beside the point here and would be waited for.
 */
import { execFile, spawn, type ChildProcess } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import type { Browser, Page } from 'playwright/test';
import { expect, test as plain, watch } from './app';
import { freePort } from './machine';
import { holdSecondEngine } from './second-engine';
import { serveShop } from './shop';

export const PASSWORD = 'nine grey herons by the weir';

export class OwnServer {
	#child: ChildProcess | null = null;

	private constructor(
		readonly folder: string,
		readonly port: number
	) {}

	static async begin(): Promise<OwnServer> {
		const folder = await mkdtemp(join(tmpdir(), 'metrewright-'));
		return new OwnServer(folder, await freePort());
	}

	get address(): string {
		return `http://127.0.0.1:${this.port}`;
	}

	get #settings() {
		const { DATABASE_URL: _, ...environment } = process.env;
		return { ...environment, PORT: String(this.port), METREWRIGHT_DATA: this.folder };
	}

	/** Resolves once it answers. */
	async start(): Promise<void> {
		const child = spawn(process.execPath, ['src/run/serve.mjs'], {
			env: this.#settings,
			stdio: ['ignore', 'pipe', 'inherit']
		});
		this.#child = child;
		await new Promise<void>((resolve, reject) => {
			child.stdout.once('data', () => resolve());
			child.once('exit', (code) => reject(new Error(`The server ended with ${code}.`)));
		});
	}

	/** Without warning, as a crash would. */
	async kill(): Promise<void> {
		const child = this.#child;
		this.#child = null;
		if (!child) return;
		await new Promise((resolve) => {
			child.once('exit', resolve);
			child.kill('SIGKILL');
		});
	}

	async end(): Promise<void> {
		await this.kill();
		await rm(this.folder, { recursive: true, force: true });
	}

	/** An account made on the command line. */
	async addOwner(email: string): Promise<void> {
		const words = ['src/run/metrewright.mjs', 'account', 'add-owner', email];
		await promisify(execFile)(process.execPath, words, {
			env: { ...this.#settings, METREWRIGHT_PASSWORD: PASSWORD }
		});
	}
}

interface Sharing {
	/** Runs already, with nobody and nothing on it. */
	readonly server: OwnServer;
	/** A person's browser with one page, not opened yet. */
	readonly someone: () => Promise<Page>;
}

export const test = plain.extend<Sharing>({
	// eslint-disable-next-line no-empty-pattern -- Playwright reads which fixtures are asked for from the pattern
	server: async ({}, use) => {
		const server = await OwnServer.begin();
		try {
			await server.start();
			await use(server);
		} finally {
			await server.end();
		}
	},
	someone: async ({ browser, server }, use) => {
		const all: Awaited<ReturnType<typeof personAt>>[] = [];
		await use(async () => {
			const person = await personAt(browser, server);
			all.push(person);
			return person.page;
		});
		for (const { context } of all) await context.close();
		// The browser itself notes each refusal and each lost connection, which these journeys are about.
		const told = all.flatMap(({ seen }) => seen).filter((line) => !/Failed to load/.test(line));
		expect(told).toEqual([]);
	}
});

async function personAt(browser: Browser, server: OwnServer) {
	const context = await browser.newContext({ baseURL: server.address, locale: 'en-GB' });
	const seen = await watch(context);
	await holdSecondEngine(context);
	await serveShop(context);
	return { context, seen, page: await context.newPage() };
}
