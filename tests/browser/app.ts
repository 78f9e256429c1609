/**
 * The page as a person finds it. Every tab of every journey is watched: nothing may be asked of another
 * host, and nothing may complain, be it the console, an uncaught error or the content policy.
 */
import {
	expect,
	test as plain,
	type BrowserContext,
	type Locator,
	type Page
} from 'playwright/test';
import { PATIENCE_FOR_SECOND_ENGINE } from './machine';
import { holdSecondEngine, letSecondEngineBegin } from './second-engine';

export { expect };

/** What went wrong in a context so far: complaints, and requests to others. */
export async function watch(context: BrowserContext): Promise<readonly string[]> {
	const seen: string[] = [];
	context.on('console', (message) => {
		if (message.type() === 'error') seen.push(`console: ${message.text()}`);
	});
	context.on('weberror', (error) => seen.push(`uncaught: ${error.error().message}`));
	context.on('request', (request) => {
		const { protocol, host, hostname } = new URL(request.url());
		if (/^(https?|wss?):$/.test(protocol) && hostname !== '127.0.0.1') seen.push(`asked ${host}`);
	});
	await context.addInitScript(() => {
		document.addEventListener('securitypolicyviolation', (event) =>
			console.error(`policy: ${event.violatedDirective} ${event.blockedURI}`)
		);
	});
	return seen;
}

export interface App {
	readonly page: Page;
}

interface Given {
	readonly watched: readonly string[];
	readonly app: App;
	/** Whether the second engine waits until `agreement` asks for it. */
	readonly holdsSecondEngine: boolean;
}

export const test = plain.extend<Given>({
	holdsSecondEngine: [true, { option: true }],
	/** For journeys that begin on the first screen. */
	app: async ({ page }, use) => {
		await open(page);
		await use({ page });
	},
	watched: [
		async ({ context, holdsSecondEngine }, use) => {
			const seen = await watch(context);
			if (holdsSecondEngine) await holdSecondEngine(context);
			await use(seen);
			expect(seen).toEqual([]);
		},
		{ auto: true }
	]
});

/** Goes to a page, by its link where the app is open already, and waits for the base's numbers. */
export async function open(page: Page, path = '/') {
	if ((await linkTo(page, path).count()) > 0) await follow(page, path);
	else await page.goto(path);
	await numbers(page);
}

const linkTo = (page: Page, path: string) => page.locator(`a[href="${path}"]`).first();

/** Follows the link to a page, wherever it stands on the screen. */
export async function follow(page: Page, path: string) {
	await linkTo(page, path).dispatchEvent('click');
	await page.waitForURL((url) => url.pathname === path);
}

/** Loads a page by its address, as one who types it, and waits for the base's numbers. */
export async function load(page: Page, path = '/') {
	await page.goto(path);
	await numbers(page);
}

async function numbers(page: Page) {
	await expect(fact(page, 0)).not.toHaveText('…');
	await expect(fact(page, 0)).toHaveText(/\d/);
}

export const strip = (page: Page): Locator => page.getByRole('region', { name: 'At a glance' });

/** The figure of one fact in the strip, from 0. */
export const fact = (page: Page, at: number): Locator => strip(page).locator('.number').nth(at);

/** Lets the second engine begin, and waits until it has judged the last edit, and every value agrees. */
export async function agreement(page: Page): Promise<number> {
	await letSecondEngineBegin(page);
	const words = strip(page).getByRole('button', { name: 'values agree' });
	const all = /^([\d,]+) of \1 values agree, computed twice$/;
	await expect(words).toHaveText(all, { timeout: PATIENCE_FOR_SECOND_ENGINE });
	return Number(all.exec((await words.textContent()) ?? '')?.[1]?.replaceAll(',', ''));
}

/** Goes to a quantity by its name, with the keyboard: its base column has the focus. */
export async function find(page: Page, name: string) {
	const box = page.getByRole('combobox', { name: 'Find a quantity' });
	const first = page.getByRole('listbox', { name: 'Quantities found' }).getByRole('option').first();
	// A person looks whether the list is the right one before pressing Enter.
	await expect(async () => {
		await page.keyboard.press('Control+k');
		await page.keyboard.type(name);
		await expect(box).toHaveValue(name, { timeout: 5000 });
		await expect(first).toHaveAttribute('aria-selected', 'true', { timeout: 5000 });
		await expect(box).toHaveValue(name, { timeout: 5000 });
	}).toPass();
	await page.keyboard.press('Enter');
	await expect(box).toHaveValue('');
	await expect(active(page)).toBeFocused();
}

/** Takes the first that a long list finds, by its keys alone. */
export async function seek(list: Locator, words: string) {
	await list.focus();
	await list.fill(words);
	await expect(list).toHaveAttribute('aria-activedescendant', /./);
	await list.press('Enter');
	await expect(list).toHaveAttribute('aria-expanded', 'false');
}

/** Follows a line of the contents; the new page has drawn itself. */
export async function goTo(page: Page, name: RegExp) {
	const link = page.getByRole('navigation', { name: 'Contents' }).getByRole('link', { name });
	await link.click();
	await expect(link).toHaveAttribute('aria-current', /page|location/);
	await expect(page.getByRole('main').getByRole('heading').first()).toBeAttached();
}

/** The active cell of the grid. */
export const active = (page: Page): Locator => page.getByRole('grid').locator('[data-active=true]');

/** Goes to a quantity, unfolds it, and goes down to its member in place `down`, from 1. */
export async function findMember(page: Page, name: string, down: number) {
	await find(page, name);
	const head = rowOf(active(page)).getByRole('rowheader');
	// Where it is unfolded already, its first member has the focus.
	const folded = (await head.getAttribute('aria-expanded')) === 'false';
	if (folded) {
		await page.keyboard.press('Enter');
		await expect(head).toHaveAttribute('aria-expanded', 'true');
	}
	for (let at = folded ? 0 : 1; at < down; at++) await page.keyboard.press('ArrowDown');
}

/** The page's own button for taking the last step back. */
export const undoButton = (page: Page): Locator =>
	page.getByRole('navigation', { name: 'Workbook' }).getByRole('button', { name: 'Undo' });

export const undo = (page: Page) => undoButton(page).click();

/** The row of the grid that a cell stands in. */
export const rowOf = (cell: Locator): Locator =>
	cell.locator('xpath=ancestor-or-self::*[@role="row"]');

/** The value of a row in a column: 1 is the base's. */
export const value = (row: Locator, column: number): Locator =>
	row.getByRole('gridcell').nth(column);

/** The rows of the grid whose label begins so. */
export const row = (page: Page, label: RegExp): Locator =>
	page
		.getByRole('grid')
		.getByRole('row')
		.filter({ has: page.getByRole('rowheader', { name: label }) });

/** Copies a text elsewhere and pastes it here, as a person does. */
export async function paste(page: Page, text: string) {
	await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
	await page.evaluate((words) => navigator.clipboard.writeText(words), text);
	await page.keyboard.press('Control+v');
}
