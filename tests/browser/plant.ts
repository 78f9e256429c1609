/**
 * A workbook opened once by each browser and handed from journey to journey, because opening it takes ten times as long
 * as what most of them do in it: the shipped plant, or what `opens` says. Before each, it is brought to where a reader
 * finds it: every step undone, the choices of the strip as they were. Where that cannot be had, after a failure or with
 * the second engine running, it is opened anew. A journey about opening or keeping takes `test` of `app.ts` and has a
 * page of its own.
 */
import type { Browser, BrowserContext, Page } from 'playwright/test';
import { expect, follow, open, strip, test as fresh, undoButton, watch } from './app';
import { hasSecondEngineBegun, holdSecondEngine } from './second-engine';
import { serveInstead } from './shop';

declare global {
	interface Window {
		isAsOpened?: boolean;
	}
}

/** A page that waits for nothing and that no journey here begins on: what is open on it is made anew by leaving it. */
const NEUTRAL = '/files';

class Handed {
	#context: BrowserContext | null = null;
	#page: Page | null = null;
	#glance: readonly string[] = [];
	#choices: readonly string[] = [];
	#columns: readonly string[] = [];
	seen: readonly string[] = [];

	/** `text`: of the workbook in place of the plant; null: the plant. */
	constructor(
		readonly browser: Browser,
		readonly locale: string,
		readonly text: string | null
	) {}

	/** The workbook as a reader finds it. */
	async asFound(): Promise<Page> {
		const page = this.#page;
		if (page && (await this.#isBack(page))) return page;
		await this.leave();
		return this.#open();
	}

	/** The next journey has it opened anew. */
	async leave() {
		await this.#context?.close();
		this.#context = this.#page = null;
	}

	async #open(): Promise<Page> {
		const size = { width: 1280, height: 720 };
		this.#context = await this.browser.newContext({
			...address(),
			locale: this.locale,
			viewport: size
		});
		this.seen = await watch(this.#context);
		await holdSecondEngine(this.#context);
		if (this.text !== null) await serveInstead(this.#context, this.text);
		const page = (this.#page = await this.#context.newPage());
		await open(page);
		await page.evaluate(() => (window.isAsOpened = true));
		this.#choices = await choices(page);
		this.#glance = await strip(page).locator('.number').allTextContents();
		this.#columns = await columns(page).allTextContents();
		return page;
	}

	async #isBack(page: Page): Promise<boolean> {
		try {
			if (page.isClosed() || (await hasSecondEngineBegun(page))) return false;
			// Loaded anew by its journey, it knows no step back.
			if (!(await page.evaluate(() => window.isAsOpened))) return false;
			await page.unrouteAll();
			await page.setViewportSize({ width: 1280, height: 720 });
			await page.emulateMedia({ media: null, colorScheme: null, reducedMotion: null });
			await page.keyboard.press('Escape');
			if ((await page.getByRole('dialog').count()) > 0) return false;
			await follow(page, '/');
			await undoButton(page).evaluate(async (button: HTMLButtonElement) => {
				for (; !button.disabled; await new Promise(requestAnimationFrame)) button.click();
			});
			// What a journey or this took back is told once the plan has followed; an edit before that would be told together with it.
			await expect(moves(page)).toHaveAttribute('aria-busy', 'false');
			if ((await startOf(page).count()) > 0) await startOf(page).check({ force: true });
			const boxes = strip(page).getByRole('combobox');
			for (const [at, choice] of this.#choices.entries()) await boxes.nth(at).selectOption(choice);
			await expect(strip(page).locator('.number')).toHaveText([...this.#glance]);
			// Nothing brings them back: waiting for it is of no use.
			const shown = await columns(page).allTextContents();
			if (shown.join('\n') !== this.#columns.join('\n')) return false;
			await follow(page, NEUTRAL);
			return true;
		} catch {
			return false;
		}
	}
}

const address = () => ({ baseURL: `http://127.0.0.1:${process.env.JOURNEYS_PORT}` });

/** How a reader finds the first screen: no starting view is chosen. */
const startOf = (page: Page) => page.getByRole('radio', { name: 'The grid alone', exact: true });

const moves = (page: Page) => page.getByRole('status', { name: 'What the last edit moves' });

/** A scenario that was gone for a while is back, but not among those shown. What is said of an undo stands in the first head for seconds, and is no matter. */
const columns = (page: Page) => page.getByRole('grid').locator('[role=columnheader].column');

const choices = (page: Page) =>
	strip(page)
		.getByRole('combobox')
		.evaluateAll((boxes) => boxes.map((box) => (box as HTMLSelectElement).value));

interface Opens {
	/** The text of the workbook that is found on the first screen; null: the shipped plant. */
	readonly opens: string | null;
	readonly found: Handed;
}

export const test = fresh.extend<Opens, { handed: Map<string, Handed> }>({
	opens: [null, { option: true }],
	/** One for each workbook and language. */
	handed: [
		// eslint-disable-next-line no-empty-pattern -- Playwright reads which fixtures are asked for from the pattern
		async ({}, use) => {
			const handed = new Map<string, Handed>();
			await use(handed);
			for (const each of handed.values()) await each.leave();
		},
		{ scope: 'worker' }
	],
	found: async ({ handed, browser, opens, locale }, use) => {
		const key = `${locale} ${opens ?? ''}`;
		const found = handed.get(key) ?? new Handed(browser, locale ?? 'en-GB', opens);
		handed.set(key, found);
		await use(found);
	},
	page: async ({ found }, use, info) => {
		const page = await found.asFound();
		const before = found.seen.length;
		await use(page);
		if (info.status !== info.expectedStatus) await found.leave();
		expect(found.seen.slice(before)).toEqual([]);
	},
	context: async ({ page }, use) => use(page.context()),
	/** Of the page's own context, above. */
	watched: async ({ found }, use) => use(found.seen)
});
