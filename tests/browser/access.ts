/** What can be judged of a page by program: axe's rules, and whether it runs sideways. */
import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright/test';

/** What axe finds on the page as it stands. */
export async function findings(page: Page) {
	const { violations } = await new AxeBuilder({ page }).analyze();
	return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' | ')}`);
}

/** By how many pixels the page is wider than its window. */
export const sideways = (page: Page) =>
	page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
