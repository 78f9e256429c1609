/**
 * Files of older versions, brought up to the present one step at a time. Upwards only.
 *
 * Every released version has a file frozen in `tests/workbook/saved/`, and a test opens them all.
 */
import type { Json } from './json';
import { VERSION } from './schema';

export type JsonObject = { [name: string]: Json };

export interface Upgrade {
	/** The version that it leads to, from the one before. */
	readonly to: number;
	/** What changed, as said to the person who opens the file. */
	readonly why: string;
	readonly up: (document: JsonObject) => JsonObject;
}

/** Oldest first, one for each version after 1, the first released. Never edit an entry; append the next. */
export const UPGRADES: readonly Upgrade[] = [
	{
		to: 2,
		why: 'it may hold studies, starting views, and pictures of weeks, months and quotes',
		up: (document) => ({ ...document, version: 2 })
	},
	{
		to: 3,
		why: 'it may hold programmes, which decide what nobody entered, and their plans',
		up: (document) => ({ ...document, version: 3 })
	},
	{
		to: 4,
		why: 'entered dates are written as dates, such as "2027-05-06"',
		up: (document) => ({ ...document, version: 4 })
	},
	{
		to: 5,
		why: 'it may hold usual ranges, lines of the review list that were ticked off, and what it was begun from; pictures and quotes say more of what they stand on',
		up: (document) => ({ ...document, version: 5 })
	},
	{
		to: 6,
		why: 'a caution may say which figures mislead without it, and which inputs mend it',
		up: (document) => ({ ...document, version: 6 })
	},
	{
		to: 7,
		why: 'it may keep by name what the columns of imported tables mean',
		up: (document) => ({ ...document, version: 7 })
	},
	{
		to: 8,
		why: 'it may say whose members are a plant’s own, what one more of them calls for, and what its first hour asks for',
		up: (document) => ({ ...document, version: 8 })
	},
	{
		to: 9,
		why: 'a kept table may be a log, with how its rows are summed',
		up: (document) => ({ ...document, version: 9 })
	},
	{
		to: 10,
		why: 'it may hold fits: which figures are found from which points that were measured',
		up: (document) => ({ ...document, version: 10 })
	},
	{
		to: 11,
		why: 'it may show what lies under each product, as coils under a pipe, with its figures',
		up: (document) => ({ ...document, version: 11 })
	},
	{
		to: 12,
		why: 'a quantity may have other names, by which it is found',
		up: (document) => ({ ...document, version: 12 })
	},
	{
		to: 13,
		why: 'a kept table may say which members go together',
		up: (document) => ({ ...document, version: 13 })
	},
	{
		to: 14,
		why: 'it may hold frozen copies: values as they stood on a day',
		up: (document) => ({ ...document, version: 14 })
	},
	{
		to: 15,
		why: 'figures may follow dated steps and be closed month by month',
		up: (document) => ({ ...document, version: 15 })
	},
	{
		to: 16,
		why: 'a decided case may be followed month by month, frozen copies take less room, and papers say what they are made of',
		up: (document) => ({ ...document, version: 16 })
	}
];

export interface Upgraded {
	readonly document: JsonObject;
	/** One line for each step taken. */
	readonly notices: string[];
}

/** Takes every step from the document's version up. */
export function upgradeDocument(
	document: JsonObject,
	version: number,
	upgrades: readonly Upgrade[] = UPGRADES
): Upgraded {
	const notices: string[] = [];
	let here = document;
	for (const { to, why, up } of upgrades) {
		if (to <= version) continue;
		here = { ...up(here), version: to };
		notices.push(`Brought from file version ${to - 1} to ${to}: ${why}.`);
	}
	return { document: here, notices };
}

/** The version that these upgrades lead to. */
export const latestVersion = (upgrades: readonly Upgrade[]): number =>
	upgrades.at(-1)?.to ?? VERSION;
