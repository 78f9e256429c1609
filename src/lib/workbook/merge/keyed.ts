/**
 * Lists whose entries have a name: members by id, scenarios by id, changes by quantity, pairs by themselves.
 * In such a list two people can each change an entry of their own.
 */
import type { Json } from '../json';
import { isFields } from './same';

/** In this order: the first that every entry has, each another. */
const NAMING_FIELDS = ['id', 'name', 'symbol', 'quantity', 'title', 'label'] as const;

export type Keyed = ReadonlyMap<string, Json>;

/** The lists by key, all by the same one; null where some entry has no name of its own. */
export function keyedAll(lists: readonly (readonly Json[])[]): Keyed[] | null {
	if (lists.every((list) => list.every(Array.isArray)))
		return all(lists, (entry) => JSON.stringify(entry));
	for (const field of NAMING_FIELDS) {
		const keyed = all(lists, (entry) => {
			const name = isFields(entry) && Object.hasOwn(entry, field) ? entry[field] : undefined;
			return typeof name === 'string' ? name : null;
		});
		if (keyed) return keyed;
	}
	return null;
}

function all(
	lists: readonly (readonly Json[])[],
	keyOf: (entry: Json) => string | null
): Keyed[] | null {
	const keyed: Keyed[] = [];
	for (const list of lists) {
		const map = new Map<string, Json>();
		for (const entry of list) {
			const key = keyOf(entry);
			if (key === null || map.has(key)) return null;
			map.set(key, entry);
		}
		keyed.push(map);
	}
	return keyed;
}
