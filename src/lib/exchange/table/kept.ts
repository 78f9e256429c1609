/**
 * What a table was matched to, kept by its headings, and given to the next file that has them. Whatever is another
 * thing in that file or in the workbook since is told: headings that are new or gone, meanings that are no longer
 * there, numbers that are written otherwise.
 */
import { axesOf } from '$lib/workbook/axes';
import { findQuantity, findScenario, findSet } from '$lib/workbook/lookup';
import { LIMITS, type KeptColumn, type KeptTable, type Workbook } from '$lib/workbook/schema';
import type { ColumnSign } from './decimals';
import { askedColumns, type Column, type Mapping, type Meaning } from './mapping';

/** Null while a column waits for a person to say what it holds. */
export function keptOf(title: string, head: readonly string[], mapping: Mapping): KeptTable | null {
	if (askedColumns(mapping).length > 0) return null;
	return {
		title,
		...(mapping.quantity !== null && { quantity: mapping.quantity }),
		// Which member it was is of this file: the next one is of another month, and is asked about.
		...(mapping.all?.length && { all: mapping.all.map(({ of }) => of) }),
		columns: mapping.columns.map((column, at) => ({
			heading: shortened(head[at] ?? ''),
			...keptMeaning(column)
		}))
	};
}

export const shortened = (heading: string) => heading.slice(0, LIMITS.label);

type Kept = KeptColumn extends infer K ? (K extends unknown ? Omit<K, 'heading'> : never) : never;

function keptMeaning({ meaning, unit, decimal, dayFirst }: Column): Kept {
	if (meaning.is === 'asked') throw new RangeError('What a column holds is not said yet.');
	if (meaning.is !== 'value') return meaning;
	const { scenario, quantity, member } = meaning;
	return {
		is: 'value',
		scenario,
		...(quantity !== null && { quantity }),
		...(member && { member: { of: member.of, id: member.id } }),
		...(unit !== '' && { unit }),
		...(decimal !== null && { decimal }),
		...(dayFirst !== null && { day_first: dayFirst })
	};
}

export interface HeadingsCompared {
	/** Headings of the file that the kept table has not, and the other way round. */
	readonly fresh: readonly string[];
	readonly gone: readonly string[];
}

/** The place of each column of the file in the kept table; null for one that is new. */
export interface Places extends HeadingsCompared {
	readonly places: readonly (number | null)[];
}

export function headingsCompared(head: readonly string[], table: KeptTable): HeadingsCompared {
	const { fresh, gone } = placesIn(head, table);
	return { fresh, gone };
}

/** Whatever their order; of several alike the first goes to the first. */
export function placesIn(head: readonly string[], { columns }: KeptTable): Places {
	const open = new Map<string, number[]>();
	columns.forEach(({ heading }, at) => {
		const key = alike(heading);
		open.set(key, [...(open.get(key) ?? []), at]);
	});
	const places = head.map((heading) => open.get(alike(heading))?.shift() ?? null);
	const gone = [...open.values()].flat().sort((a, b) => a - b);
	return {
		places,
		fresh: head.filter((_, at) => places[at] === null),
		gone: gone.map((at) => columns[at]!.heading)
	};
}

const alike = (heading: string) =>
	shortened(heading).toLowerCase().normalize('NFC').replace(/\s+/g, ' ').trim();

export interface Reused extends HeadingsCompared {
	readonly mapping: Mapping;
	/** Headings of columns whose quantity, scenario, set or member the workbook has no more: they are asked about. */
	readonly lost: readonly string[];
	/** Headings of columns whose numbers show another sign before decimals, or another order of dates, than was kept. */
	readonly otherwise: readonly string[];
}

/** `proposed` is the program's own reading of the file: it speaks for columns that are new. */
export function reuse(
	table: KeptTable,
	head: readonly string[],
	signs: readonly ColumnSign[],
	proposed: Mapping,
	workbook: Workbook
): Reused {
	const { places, fresh, gone } = placesIn(head, table);
	const lost: string[] = [];
	const otherwise: string[] = [];
	const columns = head.map((heading, at): Column => {
		const own = proposed.columns[at] ?? NOTHING;
		const place = places[at];
		const kept = place === null || place === undefined ? null : table.columns[place]!;
		if (!kept) return own;
		const meaning = meaningOf(kept, workbook);
		if (!meaning) lost.push(heading);
		const value = kept.is === 'value' ? kept : null;
		const decimal = said(signs[at]?.own ? signs[at].sign : null, value?.decimal, own.decimal);
		const dayFirst = said(own.dayFirst, value?.day_first, null);
		if (decimal.differs || dayFirst.differs) otherwise.push(heading);
		return {
			meaning: meaning ?? { is: 'asked', between: stillThere(kept, workbook) },
			unit: value?.unit ?? '',
			decimal: decimal.is,
			dayFirst: dayFirst.is
		};
	});
	const quantity =
		table.quantity !== undefined && findQuantity(workbook, table.quantity) ? table.quantity : null;
	const apart = withoutTwins(columns, places);
	const all = (table.all ?? []).flatMap((of) =>
		isSetOrAxis(workbook, of) ? [{ of, id: proposedOfAll(proposed, of) }] : []
	);
	return {
		mapping: { quantity, columns: apart, ...(all.length > 0 && { all }) },
		...{ fresh, gone, lost, otherwise }
	};
}

const proposedOfAll = ({ all = [] }: Mapping, of: string): string | null =>
	all.find((one) => one.of === of)?.id ?? null;

const NOTHING: Column = { meaning: { is: 'nothing' }, unit: '', decimal: null, dayFirst: null };

/** What the file itself shows goes before what was kept, and that before a guess from other columns. */
function said<T>(shown: T | null, kept: T | undefined, guessed: T | null) {
	return {
		is: shown ?? kept ?? guessed,
		differs: shown !== null && kept !== undefined && shown !== kept
	};
}

/** Null where the workbook has no longer what the column meant. */
function meaningOf(kept: KeptColumn, workbook: Workbook): Meaning | null {
	switch (kept.is) {
		case 'member':
		case 'label':
			return isSetOrAxis(workbook, kept.of) ? { is: kept.is, of: kept.of } : null;
		case 'value': {
			const { scenario, quantity = null, member = null } = kept;
			if (!findScenario(workbook, scenario)) return null;
			if (quantity !== null && !findQuantity(workbook, quantity)) return null;
			if (member && !hasMember(workbook, member)) return null;
			return { is: 'value', scenario, quantity, member };
		}
		// Of a log, which is summed and not entered row by row.
		case 'date':
		case 'number':
			return { is: 'nothing' };
		default:
			return { is: kept.is };
	}
}

const hasMember = (workbook: Workbook, { of, id }: { of: string; id: string }) =>
	findSet(workbook, of)?.members.some((member) => member.id === id) ?? false;

const isSetOrAxis = (workbook: Workbook, name: string) =>
	findSet(workbook, name) !== undefined ||
	workbook.sheets.some(({ quantities }) =>
		quantities.some((quantity) => axesOf(quantity).some((axis) => axis.name === name))
	);

/** The quantity, where it is the scenario or the member that is gone. */
const stillThere = (kept: KeptColumn, workbook: Workbook): string[] =>
	kept.is === 'value' && kept.quantity !== undefined && findQuantity(workbook, kept.quantity)
		? [kept.quantity]
		: [];

/** A new column cannot hold what a known one holds: then it is asked about, or left out. */
function withoutTwins(columns: readonly Column[], places: readonly (number | null)[]): Column[] {
	const known = new Set(
		columns.flatMap(({ meaning }, at) => (places[at] === null ? [] : [JSON.stringify(meaning)]))
	);
	return columns.map((column, at) => {
		const { meaning } = column;
		const isTwin =
			places[at] === null && meaning.is !== 'nothing' && known.has(JSON.stringify(meaning));
		if (!isTwin) return column;
		return {
			...column,
			meaning:
				meaning.is === 'value'
					? { is: 'asked', between: meaning.quantity === null ? [] : [meaning.quantity] }
					: { is: 'nothing' }
		};
	});
}
