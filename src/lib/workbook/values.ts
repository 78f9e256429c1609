/**
 * Reading and writing nested values: one scalar, or objects by member id, sparse.
 *
 * Nothing is changed in place, and what is not touched is shared. Member ids may be any text
 * ("__proto__" and "constructor" too), so only own properties count. Which member ids belong to a
 * quantity is for `consistency.ts`.
 */
import type { Scalar, Values } from './schema';

export type ValueTree = { readonly [member: string]: Values };
type OpenTree = { [member: string]: Values };

/** One cell: the members it belongs to, in the order of `per`, and what stands there. */
export interface ValueEntry {
	readonly at: readonly string[];
	/** Left out: nothing stands there; the cell follows the parent. Null: cleared. */
	readonly value?: Scalar | undefined;
}

export const isTree = (values: Values | undefined): values is ValueTree =>
	typeof values === 'object' && values !== null;

/** The value below one member, and nothing of what every object inherits. */
export const branch = (tree: ValueTree, member: string): Values | undefined =>
	Object.hasOwn(tree, member) ? tree[member] : undefined;

/** What stands at these members; undefined where nothing does (null is an entry: cleared). */
export function valueAt(values: Values | undefined, at: readonly string[]): Scalar | undefined {
	let here = values;
	for (const member of at) {
		if (!isTree(here)) return undefined;
		here = branch(here, member);
	}
	return isTree(here) ? undefined : here;
}

/** The values with one cell set, or taken out where the scalar is undefined. Undefined when none is left. */
export function withValueAt(
	values: Values | undefined,
	at: readonly string[],
	value: Scalar | undefined
): Values | undefined {
	return withValues(values, [{ at, value }]);
}

/** The same for many cells, in time that grows with the number of cells alone: each object is copied once. */
export function withValues(
	values: Values | undefined,
	entries: Iterable<ValueEntry>
): Values | undefined {
	const fresh = new Set<OpenTree>();
	const opened = (tree: Values | undefined): OpenTree => {
		if (isTree(tree) && fresh.has(tree as OpenTree)) return tree as OpenTree;
		const copy: OpenTree = isTree(tree) ? { ...tree } : {};
		fresh.add(copy);
		return copy;
	};
	let root = values;
	for (const { at, value } of entries) {
		if (at.length === 0) {
			root = value;
			continue;
		}
		if (value === undefined && valueAt(root, at) === undefined) continue;
		let here = opened(root);
		root = here;
		for (const member of at.slice(0, -1)) {
			const next = opened(branch(here, member));
			put(here, member, next);
			here = next;
		}
		const last = at[at.length - 1] ?? '';
		if (value === undefined) delete here[last];
		else put(here, last, value);
	}
	return pruned(root, fresh);
}

/** Sets an own property, whatever its name: plain assignment to "__proto__" would set the prototype. */
export function put<T>(object: { [key: string]: T }, key: string, value: T): void {
	if (key !== '__proto__') object[key] = value;
	else
		Object.defineProperty(object, key, {
			value,
			writable: true,
			enumerable: true,
			configurable: true
		});
}

/** Takes out objects that hold nothing, among those that this edit has made. */
function pruned(values: Values | undefined, fresh: ReadonlySet<OpenTree>): Values | undefined {
	if (!isTree(values) || !fresh.has(values as OpenTree)) return values;
	const tree = values as OpenTree;
	let left = 0;
	for (const member of Object.keys(tree)) {
		const kept = pruned(tree[member], fresh);
		if (kept === undefined) delete tree[member];
		else left++;
	}
	return left > 0 ? tree : undefined;
}

/** Every cell that holds something, in the order in which it is written. */
export function flatten(values: Values | undefined): { at: string[]; value: Scalar }[] {
	const cells: { at: string[]; value: Scalar }[] = [];
	const walk = (here: Values, at: readonly string[]): void => {
		if (!isTree(here)) cells.push({ at: [...at], value: here });
		else for (const member of Object.keys(here)) walk(here[member] as Values, [...at, member]);
	};
	if (values !== undefined) walk(values, []);
	return cells;
}

/** The upper values, and the lower ones wherever the upper say nothing. */
export function layered(lower: Values | undefined, upper: Values | undefined): Values | undefined {
	if (lower === undefined) return upper;
	if (upper === undefined || lower === upper) return lower;
	if (!isTree(lower) || !isTree(upper)) return upper;
	const both: OpenTree = { ...lower };
	for (const member of Object.keys(upper))
		put(both, member, layered(branch(lower, member), upper[member]) as Values);
	return both;
}

/** The values without objects that hold nothing; undefined when nothing is left. */
export function withoutEmptyObjects(values: Values | undefined): Values | undefined {
	if (!isTree(values)) return values;
	let changed = false;
	const kept: OpenTree = {};
	for (const member of Object.keys(values)) {
		const value = withoutEmptyObjects(values[member]);
		if (value !== values[member]) changed = true;
		if (value !== undefined) put(kept, member, value);
	}
	if (Object.keys(kept).length === 0) return undefined;
	return changed ? kept : values;
}
