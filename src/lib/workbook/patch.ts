/**
 * The difference between two states of a workbook as plain data: small, since what both share is passed over
 * unread, and able to go both ways, since each piece says what stood there and what stands there now.
 *
 * Entries of lists are found by their names and not by their places, so that a patch still fits when others have
 * changed something else meanwhile. Where what it would change has become another thing, it does not fit.
 */
import type { Json } from './json';
import { keyedBy, namingOf, type Naming } from './merge/keyed';
import { mergedOrder } from './merge/order';
import { fieldOf, isFields, same, type Node } from './merge/same';
import type { Workbook } from './schema';

export type Patch =
	/** One piece in place of another; left out where there was or is none. */
	| { readonly was?: Json | undefined; readonly is?: Json | undefined }
	/** Of an object. */
	| { readonly fields: readonly (readonly [field: string, patch: Patch])[] }
	/** Of a list of named entries; the order before and after where it is another one. */
	| {
			readonly by: Naming;
			readonly entries: readonly (readonly [key: string, patch: Patch])[];
			readonly order?: readonly [was: readonly string[], is: readonly string[]] | undefined;
	  };

/** What leads from one workbook to the other; null where they are the same. */
export const patchBetween = (before: Workbook, after: Workbook): Patch | null =>
	between(before as unknown as Json, after as unknown as Json);

/** The way back. */
export function inverted(patch: Patch): Patch {
	const each = (parts: readonly (readonly [string, Patch])[]) =>
		parts.map(([key, part]) => [key, inverted(part)] as const);
	if ('fields' in patch) return { fields: each(patch.fields) };
	if ('by' in patch) {
		const { by, entries, order } = patch;
		return { by, entries: each(entries), ...(order && { order: [order[1], order[0]] as const }) };
	}
	return { ...present('was', patch.is), ...present('is', patch.was) };
}

/** The workbook with the patch in it; where it does not fit, the path to the first thing that is another by now. */
export function patched(
	workbook: Workbook,
	patch: Patch
): { readonly workbook: Workbook } | { readonly changed: readonly string[] } {
	try {
		return { workbook: apply(workbook as unknown as Json, patch, []) as unknown as Workbook };
	} catch (thrown) {
		if (thrown instanceof Changed) return { changed: thrown.path };
		throw thrown;
	}
}

/** Whether nothing but the order of lists differs. */
export function isOrderAlone(patch: Patch): boolean {
	if ('fields' in patch) return patch.fields.every(([, part]) => isOrderAlone(part));
	return 'by' in patch && patch.entries.every(([, part]) => isOrderAlone(part));
}

class Changed extends Error {
	constructor(readonly path: readonly string[]) {
		super('the patch does not fit');
	}
}

const present = <K extends string>(key: K, node: Node) =>
	node === undefined ? {} : ({ [key]: node } as { [key in K]: Json });

function between(before: Node, after: Node): Patch | null {
	if (before === after) return null;
	if (isFields(before) && isFields(after)) {
		const names = [...new Set([...Object.keys(before), ...Object.keys(after)])];
		const fields = parts(names, (name) => between(fieldOf(before, name), fieldOf(after, name)));
		return fields.length > 0 ? { fields } : null;
	}
	if (Array.isArray(before) && Array.isArray(after)) {
		const by = namingOf([before, after]);
		if (by) return betweenLists(before, after, by);
	}
	return same(before, after) ? null : { ...present('was', before), ...present('is', after) };
}

function betweenLists(before: Json[], after: Json[], by: Naming): Patch | null {
	const [was, is] = [keyedBy(before, by)!, keyedBy(after, by)!];
	const keys = [...new Set([...was.keys(), ...is.keys()])];
	const entries = parts(keys, (key) => between(was.get(key), is.get(key)));
	const order = [[...was.keys()], [...is.keys()]] as const;
	if (same([...order[0]], [...order[1]])) return entries.length > 0 ? { by, entries } : null;
	return { by, entries, order };
}

function parts(
	keys: readonly string[],
	patchOf: (key: string) => Patch | null
): (readonly [string, Patch])[] {
	return keys.flatMap((key) => {
		const patch = patchOf(key);
		return patch ? [[key, patch] as const] : [];
	});
}

function apply(node: Node, patch: Patch, path: readonly string[]): Node {
	if ('fields' in patch) {
		if (!isFields(node)) throw new Changed(path);
		return fieldsWith(node, patch.fields, path);
	}
	if ('by' in patch) {
		const keyed = Array.isArray(node) ? keyedBy(node, patch.by) : null;
		if (!keyed) throw new Changed(path);
		const entries = new Map(keyed);
		for (const [key, part] of patch.entries) {
			const entry = apply(entries.get(key), part, [...path, key]);
			if (entry === undefined) entries.delete(key);
			else entries.set(key, entry);
		}
		if (!patch.order) return [...entries.values()];
		const orders = { base: patch.order[0], mine: patch.order[1], theirs: [...keyed.keys()] };
		return mergedOrder(orders, new Set(entries.keys()), 'mine').map((key) => entries.get(key)!);
	}
	if (!same(node, patch.was)) throw new Changed(path);
	return patch.is;
}

/** Plans follow from the rest: those that were made anew since stay, and nothing fails for them. */
function plansAfter(plans: Node, patch: Patch): Node {
	try {
		return apply(plans, patch, ['plans']);
	} catch (thrown) {
		if (thrown instanceof Changed) return plans;
		throw thrown;
	}
}

/** Fields keep their order; what comes anew comes last. Any name may be a field's, "constructor" as well. */
function fieldsWith(
	node: { readonly [field: string]: Json },
	fields: readonly (readonly [string, Patch])[],
	path: readonly string[]
): Json {
	const entries = new Map<string, Json>(Object.entries(node));
	for (const [name, patch] of fields) {
		const field =
			path.length === 0 && name === 'plans'
				? plansAfter(fieldOf(node, name), patch)
				: apply(fieldOf(node, name), patch, [...path, name]);
		if (field === undefined) entries.delete(name);
		else entries.set(name, field);
	}
	return Object.fromEntries(entries) as Json;
}
