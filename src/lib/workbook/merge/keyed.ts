/**
 * Lists whose entries have a name: members by id, scenarios by id, changes by quantity, pairs by themselves.
 * In such a list two people can each change an entry of their own.
 */
import type { Json } from '../json';
import { isFields } from './same';

/** In this order: the first that every entry has, each another. */
const NAMING_FIELDS = ['id', 'name', 'symbol', 'quantity', 'title', 'label'] as const;

/** The field that names the entries; "itself" for lists of lists. */
export type Naming = (typeof NAMING_FIELDS)[number] | 'itself';
export type Keyed = ReadonlyMap<string, Json>;

/** The lists by key, all by the same one; null where some entry has no name of its own. */
export function keyedAll(lists: readonly (readonly Json[])[]): Keyed[] | null {
	const naming = namingOf(lists);
	return naming && lists.map((list) => keyedBy(list, naming)!);
}

/** What names every entry of all the lists, each another in its own list; null where nothing does. */
export function namingOf(lists: readonly (readonly Json[])[]): Naming | null {
	if (lists.every((list) => list.every(Array.isArray)))
		return lists.every((list) => keyedBy(list, 'itself')) ? 'itself' : null;
	return NAMING_FIELDS.find((field) => lists.every((list) => keyedBy(list, field))) ?? null;
}

/** One list by key; null where an entry has none, or that of another. */
export function keyedBy(list: readonly Json[], naming: Naming): Keyed | null {
	const keyed = new Map<string, Json>();
	for (const entry of list) {
		const key = keyOf(entry, naming);
		if (key === null || keyed.has(key)) return null;
		keyed.set(key, entry);
	}
	return keyed;
}

function keyOf(entry: Json, naming: Naming): string | null {
	if (naming === 'itself') return JSON.stringify(entry);
	const name = isFields(entry) && Object.hasOwn(entry, naming) ? entry[naming] : undefined;
	return typeof name === 'string' ? name : null;
}
