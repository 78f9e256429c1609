/**
 * Journeys of sharing: each has a built server of its own on a folder of its own, which may be killed and started
 * again, and as many people as it needs, each in a browser that shares nothing with the others. The small shop is
 * what they find on their first screen, because the plant's size is beside the point here and would be waited for.
 */
import { execFile, spawn, type ChildProcess } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import type { Browser, Page } from '@playwright/test';
import { expect, find, open, test as plain, watch } from './app';

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
		const words = ['--import', 'tsx', 'src/cli/main.ts', 'account', 'add-owner', email];
		await promisify(execFile)(process.execPath, words, {
			env: {
				...this.#settings,
				METREWRIGHT_PASSWORD: PASSWORD,
				TSX_TSCONFIG_PATH: 'tsconfig.json'
			}
		});
	}
}

async function freePort(): Promise<number> {
	const probe = createServer();
	await new Promise<void>((resolve) => probe.listen(0, '127.0.0.1', resolve));
	const address = probe.address();
	await new Promise((resolve) => probe.close(resolve));
	if (address === null || typeof address === 'string') throw new Error('No port is free.');
	return address.port;
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
	await context.route('**/shipped/marram-coil-works.json', (route) =>
		route.fulfill({ path: 'scenarios/one-line-shop.json' })
	);
	return { context, seen, page: await context.newPage() };
}

/** What the head says of the open workbook's whereabouts. */
export const saved = (page: Page) => page.getByRole('banner').getByRole('status');

/** The workbook here is the server's revision of that number, and nothing waits. */
export const inStep = (page: Page, revision: number) =>
	expect(saved(page)).toHaveText(new RegExp(`^saved \\d\\d:\\d\\d, revision ${revision}$`));

/** Puts the open workbook on the server. */
export async function share(page: Page) {
	await toPage(page, 'Share and people');
	await page.getByRole('button', { name: 'Share on this server' }).click();
	await inStep(page, 1);
}

/** Opens a workbook of the server, from any page. */
export async function openShared(page: Page, title: string) {
	await toPage(page, 'Share and people');
	await page.getByRole('button', { name: `Open ${title}` }).click();
	await expect(page.getByRole('grid')).toBeVisible();
	await expect(page.getByRole('banner')).toContainText(title);
}

/** Two browsers with the same workbook open at its first revision, each at the grid. */
export async function pair(someone: () => Promise<Page>) {
	const [anna, berg] = [await someone(), await someone()];
	await open(anna);
	await share(anna);
	await toGrid(anna);
	await open(berg);
	await openShared(berg, 'One-line shop');
	await inStep(berg, 1);
	return [anna, berg] as const;
}

/** Follows a line of the contents to a page beside the grid. */
export async function toPage(page: Page, title: string) {
	const contents = page.getByRole('navigation', { name: 'Contents' });
	await contents.getByRole('link', { name: title, exact: true }).click();
	await expect(page.getByRole('heading', { level: 1, name: title })).toBeVisible();
}

/** Goes to the grid. */
export async function toGrid(page: Page) {
	await page.getByRole('link', { name: 'Metrewright' }).click();
	await expect(page.getByRole('grid')).toBeVisible();
}

/** Types a value into a quantity's base, with the keyboard. */
export async function change(page: Page, name: string, typed: string) {
	await find(page, name);
	await page.keyboard.type(typed);
	await page.keyboard.press('Enter');
	await expect(page.getByRole('grid').getByRole('textbox')).toBeHidden();
}
