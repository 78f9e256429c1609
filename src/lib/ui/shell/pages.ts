/**
 * The pages beside the grid, in one place: which picture stands where, what the contents list, and
 * what is fetched ahead so that it opens without a connection.
 */
import type { Picture, Workbook } from '$lib/workbook/schema';
import { texts } from './texts';

export interface PageLink {
	readonly href: string;
	readonly title: string;
}

/** Where each kind of picture is drawn. */
const PICTURE_PLACES: Readonly<Record<Picture['kind'], string>> = {
	cross_section: '/product',
	build_up: '/product',
	items: '/product',
	ranking: '/losses',
	months: '/year',
	waterfall: '/close',
	payback: '/investment',
	audit: '/audit',
	capacity: '/capacity',
	ways_out: '/capacity',
	week: '/week',
	calendar: '/calendar',
	patterns: '/shifts',
	bridge: '/shifts',
	quote: '/quote',
	paper: '/papers'
};

/** The pages about the workbook itself. */
export const WORKBOOK_PAGES: readonly PageLink[] = [
	{ href: '/plan', title: 'Plan' },
	{ href: '/studies', title: 'Studies' },
	{ href: '/scenarios', title: 'Scenarios' },
	{ href: '/papers', title: 'Papers' },
	{ href: '/members', title: 'Lists' },
	{ href: '/review', title: 'Review' },
	{ href: '/begin', title: 'Begin your own' },
	{ href: '/yours', title: 'Your own figures' },
	{ href: '/calibrate', title: 'Entered beside measured' },
	{ href: '/files', title: 'Files in and out' },
	{ href: '/shared', title: 'Share and people' },
	{ href: '/revisions', title: 'Revisions' },
	{ href: '/reference', title: 'Functions and units' }
];

/** Every page, the grid first. */
export const ALL_PATHS: readonly string[] = [
	...new Set(['/', ...Object.values(PICTURE_PLACES), ...WORKBOOK_PAGES.map(({ href }) => href)]),
	'/plan/guide',
	// The page of one study, whatever its name, and of one quote.
	'/studies/any',
	'/quotes',
	'/quotes/any',
	'/prices',
	// Reached from the page of sharing, by those who manage the server.
	'/shared/accounts'
];

/** The pages that the workbook's pictures stand on, each once. */
export function pictureLinks(workbook: Workbook): PageLink[] {
	const links: PageLink[] = [];
	for (const picture of workbook.pictures ?? []) {
		const href = PICTURE_PLACES[picture.kind];
		// Papers are made of any workbook that has something to make one of: their page is the workbook's.
		if (picture.kind === 'paper' || links.some((link) => link.href === href)) continue;
		links.push({ href, title: picture.title });
		if (picture.kind === 'quote') {
			links.push({ href: '/quotes', title: texts.quotes });
			links.push({ href: '/prices', title: texts.prices });
		}
	}
	return links;
}

export interface Place {
	readonly value: string;
	readonly text: string;
	readonly group: string;
}

/** Everywhere that a reader can go, in one list: the sheets, then the pages. A sheet that is called as a page is says so. */
export function placesOf(workbook: Workbook): Place[] {
	const pages = [...pictureLinks(workbook), ...WORKBOOK_PAGES];
	const isPage = (title: string) => pages.some((page) => page.title === title);
	return [
		...workbook.sheets.map(({ title }, i) => ({
			...{ value: `/#${i}`, text: isPage(title) ? texts.asSheet(title) : title },
			group: texts.sheets
		})),
		...pages.map(({ href, title }) => ({ value: href, text: title, group: texts.pages }))
	];
}
