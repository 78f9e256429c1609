/** What can be judged of a page by program: axe's rules, and whether it runs sideways. */
import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright/test';

/**
 * What axe finds on the page, or in a part of it, as it stands. The app has no frames, so all rules run in one piece; and
 * only what breaks a rule is written out: describing the thousands of nodes that hold takes longer than judging them.
 */
export async function findings(page: Page, part?: string) {
	const axe = new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ['violations'] });
	const { violations } = await (part ? axe.include(part) : axe).analyze();
	return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' | ')}`);
}

/** By how many pixels the page is wider than its window. */
export const sideways = (page: Page) =>
	page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
