/** Edits of read-only lists, each giving a new list; an index beyond the end means the end. */

export function inserted<T>(list: readonly T[], index: number, entry: T): T[] {
	const place = Math.max(0, Math.min(index, list.length));
	return [...list.slice(0, place), entry, ...list.slice(place)];
}

export const without = <T>(list: readonly T[], index: number): T[] => [
	...list.slice(0, index),
	...list.slice(index + 1)
];

export const withEntry = <T>(list: readonly T[], index: number, entry: T): T[] =>
	list.map((old, i) => (i === index ? entry : old));

/** The same list if every entry stays itself. */
export function mapped<T>(list: readonly T[], change: (entry: T, index: number) => T): T[] {
	const next = list.map(change);
	return next.every((entry, i) => entry === list[i]) ? (list as T[]) : next;
}

/** "a", "a and b", "a, b and 3 more" */
export function listed(names: readonly string[], most = 3): string {
	if (names.length <= 1) return names[0] ?? '';
	const first = names.length > most ? names.slice(0, most) : names.slice(0, -1);
	const last = names.length > most ? `${names.length - most} more` : names.at(-1);
	return `${first.join(', ')} and ${last}`;
}
