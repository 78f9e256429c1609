/**
 * Three versions of one piece of a workbook made into one: field by field, entry by entry, cell by cell. It
 * knows no meaning beyond which pieces hold together.
 */
import type { Json } from '../json';
import { put } from '../values';
import type { Conflicts } from './conflict';
import { keyedAll } from './keyed';
import { mergedOrder, ordersDiffer } from './order';
import { mergePlans } from './plans';
import { fieldOf, isFields, same, type Node } from './same';

export interface Versions {
	readonly base: Node;
	readonly mine: Node;
	readonly theirs: Node;
}

/** Fields of a quantity that say one thing together: half of one and half of the other would say a third. */
const WHOLE = new Set(['type', 'range', 'usual', 'spread', 'check', 'caution', 'per', 'in']);

/** Whether a piece is taken from one side or the other, never put together from both. */
function isWhole(path: readonly string[]): boolean {
	const [list, , field] = path;
	if (list === 'quantities') return path.length === 3 && WHOLE.has(field!);
	if (list === 'relations') return path.length === 3 && field === 'sets';
	if (list === 'front') return path.length >= 2;
	// The settings of a study, a picture or a view belong together, field by field.
	return path.length >= 3 && list !== 'sets' && list !== 'scenarios' && list !== 'sheets';
}

export function mergeNodes(versions: Versions, path: readonly string[], asks: Conflicts): Node {
	const { base, mine, theirs } = versions;
	if (same(mine, theirs) || same(base, theirs)) return mine;
	if (same(base, mine)) return theirs;
	// What the last run of a study found: made from the rest, and it says itself what it stood on.
	if (path[0] === 'studies' && path.length === 3 && path[2] === 'ran') return mine;
	if (path[0] === 'plans') return mergePlans(versions);
	const isValues = holdsValues(path);
	if (isValues || !isWhole(path)) {
		if (isValues ? canSplit(versions) : isFields(mine) && isFields(theirs)) {
			const both = base === undefined || isFields(base);
			if (both && (isValues || (!isNewTwice(versions, path) && !isOtherCases(versions, path))))
				return mergeFields(versions, path, asks);
		}
		if (Array.isArray(mine) && Array.isArray(theirs) && (base === undefined || Array.isArray(base)))
			return mergeLists({ base: base ?? [], mine, theirs }, path, asks);
	}
	const reason =
		mine === undefined || theirs === undefined ? 'removed_and_changed' : 'both_changed';
	return asks.ask(reason, path, versions) === 'mine' ? mine : theirs;
}

/** Whether the path leads to or into entered values, whose fields are members and may have any name. */
function holdsValues(path: readonly string[]): boolean {
	if (path[0] === 'quantities') return path[2] === 'value';
	return path[0] === 'scenarios' && path[2] === 'changes' && path[4] === 'value';
}

/** Values by member on both sides; nothing at all is values for no member. */
const canSplit = ({ base, mine, theirs }: Versions): boolean =>
	[base, mine, theirs].every((node) => node === undefined || isFields(node));

/** Both added an entry of the same name: two things, not one thing changed twice. */
const isNewTwice = ({ base }: Versions, path: readonly string[]): boolean =>
	base === undefined && path.length >= 2 && !isChange(path);

const isChange = (path: readonly string[]): boolean =>
	path[0] === 'scenarios' && path[2] === 'changes' && path.length === 4;

/** Cases by another axis are other cases. */
function isOtherCases({ base, mine, theirs }: Versions, path: readonly string[]): boolean {
	if (path[0] !== 'quantities' || path.length !== 3 || path[2] !== 'formula') return false;
	const by = [base, mine, theirs].map((node) => (isFields(node) ? fieldOf(node, 'by') : undefined));
	return new Set(by).size > 1;
}

function mergeFields(versions: Versions, path: readonly string[], asks: Conflicts): Node {
	const base = isFields(versions.base) ? versions.base : {};
	const mine = isFields(versions.mine) ? versions.mine : {};
	const theirs = isFields(versions.theirs) ? versions.theirs : {};
	const merged: { [field: string]: Json } = {};
	for (const field of new Set([...Object.keys(theirs), ...Object.keys(mine)])) {
		const node = mergeNodes(
			{
				base: fieldOf(base, field),
				mine: fieldOf(mine, field),
				theirs: fieldOf(theirs, field)
			},
			[...path, field],
			asks
		);
		if (node !== undefined) put(merged, field, node);
	}
	// Values of no member are no values.
	return Object.keys(merged).length === 0 && holdsValues(path) ? undefined : merged;
}

function mergeLists(
	lists: { readonly base: Json[]; readonly mine: Json[]; readonly theirs: Json[] },
	path: readonly string[],
	asks: Conflicts
): Node {
	const keyed = keyedAll([lists.base, lists.mine, lists.theirs]);
	if (!keyed) return asks.ask('both_changed', path, lists) === 'mine' ? lists.mine : lists.theirs;
	const [base, mine, theirs] = keyed as [
		ReadonlyMap<string, Json>,
		ReadonlyMap<string, Json>,
		ReadonlyMap<string, Json>
	];
	const merged = new Map<string, Json>();
	for (const key of new Set([...theirs.keys(), ...mine.keys()])) {
		const versions = { base: base.get(key), mine: mine.get(key), theirs: theirs.get(key) };
		const node = mergeEntry(versions, [...path, key], asks);
		if (node !== undefined) merged.set(key, node);
	}
	const orders = { base: [...base.keys()], mine: [...mine.keys()], theirs: [...theirs.keys()] };
	// A scenario's changes and a relation's pairs have an order only on paper.
	const isLoose = path.length === 3 && (path[2] === 'changes' || path[2] === 'pairs');
	const leader =
		!isLoose && ordersDiffer(orders)
			? asks.ask('order', [...path, 'order'], orders as never)
			: 'theirs';
	return mergedOrder(orders, new Set(merged.keys()), leader).map((key) => merged.get(key)!);
}

/** A change of a scenario is taken apart even where one side took it back: its cells are asked about one by one. */
function mergeEntry(versions: Versions, path: readonly string[], asks: Conflicts): Node {
	const { mine, theirs } = versions;
	if (!isChange(path) || (mine !== undefined && theirs !== undefined))
		return mergeNodes(versions, path, asks);
	const empty = (node: Node) => node ?? { quantity: path.at(-1)! };
	const merged = mergeNodes(
		{ base: versions.base, mine: empty(mine), theirs: empty(theirs) },
		path,
		asks
	);
	return isFields(merged) && fieldOf(merged, 'value') !== undefined ? merged : undefined;
}
