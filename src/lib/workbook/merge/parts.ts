/**
 * A workbook taken apart for comparing and merging: quantities by name rather than by their place on a sheet, and
 * sheets under a key that outlives a new title.
 */
import type { Json } from '../json';
import type { Sheet, Workbook } from '../schema';
import type { Fields } from './same';

export interface Parts {
	/** All but sheets. */
	readonly rest: Fields;
	/** By key, in their order, without their quantities. */
	readonly sheets: ReadonlyMap<string, Fields>;
	readonly quantities: Fields;
	/** Key of the sheet that a quantity stands on. */
	readonly sheetOf: Fields;
	/** Names in their order, by sheet. */
	readonly names: ReadonlyMap<string, readonly string[]>;
}

/** `like` is the version that this one came from: a sheet that was only renamed keeps its key there. */
export function takeApart(workbook: Workbook, like: Workbook = workbook): Parts {
	const { sheets, ...rest } = workbook;
	const keys = sheetKeys(sheets, like.sheets);
	const named = sheets.map((sheet, i) => [keys[i]!, sheet] as const);
	const entries = named.flatMap(([key, { quantities }]) =>
		quantities.map((quantity) => ({ key, quantity }))
	);
	return {
		rest: rest as unknown as Fields,
		sheets: new Map(
			named.map(([key, { quantities: _quantities, ...sheet }]) => [key, sheet as unknown as Fields])
		),
		// `fromEntries` makes own properties of every name.
		quantities: Object.fromEntries(
			entries.map(({ quantity }) => [quantity.name, quantity as unknown as Json])
		),
		sheetOf: Object.fromEntries(entries.map(({ key, quantity }) => [quantity.name, key])),
		names: new Map(named.map(([key, { quantities }]) => [key, quantities.map(({ name }) => name)]))
	};
}

/** Its title in the version before; for one not there, the sheet with which it shares most quantities. */
function sheetKeys(sheets: readonly Sheet[], before: readonly Sheet[]): string[] {
	const free = new Map(unique(before.map(({ title }) => title)).map((key, i) => [key, before[i]!]));
	const keys = new Map<number, string>();
	unique(sheets.map(({ title }) => title)).forEach((key, i) => {
		if (free.delete(key)) keys.set(i, key);
	});
	sheets.forEach((sheet, i) => {
		if (keys.has(i)) return;
		const names = new Set(sheet.quantities.map(({ name }) => name));
		const shared = (other: Sheet) => other.quantities.filter(({ name }) => names.has(name)).length;
		const [best] = [...free].sort(([, a], [, b]) => shared(b) - shared(a));
		if (!best || shared(best[1]) === 0) return;
		free.delete(best[0]);
		keys.set(i, best[0]);
	});
	const taken = new Set(keys.values());
	return sheets.map(({ title }, i) => {
		const known = keys.get(i);
		if (known !== undefined) return known;
		let key = title;
		while (taken.has(key)) key += '′';
		taken.add(key);
		return key;
	});
}

/** Two sheets may have the same title. */
function unique(titles: readonly string[]): string[] {
	const seen = new Set<string>();
	return titles.map((title) => {
		let key = title;
		while (seen.has(key)) key += '′';
		seen.add(key);
		return key;
	});
}
