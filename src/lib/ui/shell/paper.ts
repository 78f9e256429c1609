/**
 * What stands in the margins of printed pages: what is printed, of which scenario and revision, when, and which page of how
 * many. The boxes of a page's margin are the browser's (CSS Paged Media, "@top-left"); who has none prints without them.
 */
import { texts } from './paper-texts';

export interface Paper {
	readonly workbook: string;
	/** What the page shows. */
	readonly page: string;
	readonly scenarios: readonly string[];
	/** Null where the workbook is on no server. */
	readonly revision: number | null;
	readonly date: string;
}

/** A text within a style sheet: quotes and backslashes are written so that nothing ends it. */
const quote = (text: string) =>
	`"${text.replace(/["\\]/g, (sign) => `\\${sign}`).replace(/[\n\r\f<]/g, ' ')}"`;

export function paperRules({ workbook, page, scenarios, revision, date }: Paper): string {
	const title = [workbook, page].filter(Boolean).join(': ');
	const state = [texts.printedOf(scenarios), revision === null ? '' : texts.revision(revision)];
	const font = 'font: 8pt sans-serif; color: #444;';
	return `@page {
	@top-left { content: ${quote(title)}; ${font} }
	@top-right { content: ${quote(date)}; ${font} }
	@bottom-left { content: ${quote(state.filter(Boolean).join(', '))}; ${font} }
	@bottom-right { content: ${quote(`${texts.page} `)} counter(page) ${quote(` ${texts.of} `)} counter(pages); ${font} }
}`;
}
