/** The page as a person finds it: opened, computed, and watched for anything it should not do. */
import { expect, test as plain, type Locator, type Page } from '@playwright/test';

export interface App {
	readonly page: Page;
	/** Console errors, uncaught errors and policy violations so far. */
	readonly complaints: string[];
	/** Hosts asked for anything. */
	readonly hosts: Set<string>;
}

export const test = plain.extend<{ app: App }>({
	app: async ({ page }, use) => {
		const complaints: string[] = [];
		const hosts = new Set<string>();
		page.on('console', (message) => {
			if (message.type() === 'error') complaints.push(message.text());
		});
		page.on('pageerror', (error) => complaints.push(error.message));
		page.on('request', (request) => {
			if (/^https?:/.test(request.url())) hosts.add(new URL(request.url()).host);
		});
		await page.addInitScript(() => {
			document.addEventListener('securitypolicyviolation', (event) =>
				console.error(`policy: ${event.violatedDirective} ${event.blockedURI}`)
			);
		});
		await open(page);
		await use({ page, complaints, hosts });
		expect(complaints).toEqual([]);
	}
});

/** Opens the first screen and waits for the base's numbers. */
export async function open(page: Page, path = '/') {
	await page.goto(path);
	await expect(fact(page, 0)).not.toHaveText('…', { timeout: 30_000 });
}

/** The figure of one fact in the strip, from 0. */
export const fact = (page: Page, at: number): Locator =>
	page.getByRole('region', { name: 'At a glance' }).getByRole('button').nth(at);

/** Waits until both engines have answered; gives what the page says of it. */
export async function agreement(page: Page): Promise<string> {
	const words = page.getByText(/values agree/).first();
	await expect(words).toBeVisible({ timeout: 45_000 });
	return (await words.textContent()) ?? '';
}

/** Goes to a quantity by its name; its row is in view and its first column is active. */
export async function find(page: Page, name: string) {
	const box = page.getByRole('combobox', { name: 'Find a quantity' });
	await box.fill(name);
	await expect(page.getByRole('option').first()).toBeVisible();
	await page.keyboard.press('Enter');
	await expect(active(page)).toBeFocused();
}

/** The active cell of the grid. */
export const active = (page: Page): Locator => page.locator('[role=gridcell][data-active=true]');

/** Unfolds the active row and goes down to its member in place `down`, from 1. */
export async function unfold(page: Page, down: number) {
	await page.keyboard.press('Enter');
	for (let i = 0; i < down; i++) await page.keyboard.press('ArrowDown');
}

export { expect };
