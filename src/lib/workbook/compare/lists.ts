/** Everything beside sheets that differs between two versions: sets, relations, scenarios, studies … */
import type { Json } from '../json';
import { keyedAll, type Keyed } from '../merge/keyed';
import { fieldOf, isFields, same, type Fields, type Node } from '../merge/same';
import type { Workbook } from '../schema';
import type { Change, EntryList, Listed, PartName } from './change';
import { comparePlans } from './plans';

/** Pairs or members told one by one; more are told by their number. */
const MOST = 8;

export function compareLists(before: Workbook, after: Workbook): Change[] {
	const old = before as unknown as Fields;
	const now = after as unknown as Fields;
	const names = [...new Set([...Object.keys(old), ...Object.keys(now)])] as (keyof Workbook)[];
	return names.flatMap((name): Change[] => {
		if (name === 'sheets' || name === '$schema' || name === 'version') return [];
		const [was, is] = [fieldOf(old, name), fieldOf(now, name)];
		if (same(was, is)) return [];
		if (name === 'plans') return comparePlans(before, after);
		if (name === 'title') return [{ kind: 'title', was: before.title, now: after.title }];
		const isList = (node: Node) => node === undefined || Array.isArray(node);
		if (!isList(was) || !isList(is)) return [{ kind: 'part', part: name as PartName }];
		const list = name as EntryList;
		return entryLines({ list }, (was ?? []) as Json[], (is ?? []) as Json[], (old, now) =>
			withinEntry(list, old, now)
		);
	});
}

/** What was added to a list, taken out of it, changed in it, moved in it. */
function entryLines(
	where: Listed,
	before: readonly Json[],
	after: readonly Json[],
	changed: (old: Fields, now: Fields) => Change[]
): Change[] {
	const keyed = keyedAll([before, after]);
	if (!keyed) return [{ kind: 'list_changed', ...where }];
	const [old, now] = keyed as [Keyed, Keyed];
	const lines: Change[] = [];
	for (const [key, entry] of now) {
		const was = old.get(key);
		if (was === undefined) lines.push({ kind: 'added', ...where, name: nameOf(entry, key) });
		else if (!same(was, entry) && isFields(was) && isFields(entry))
			lines.push(...changed(was, entry));
	}
	for (const [key, entry] of old)
		if (!now.has(key)) lines.push({ kind: 'removed', ...where, name: nameOf(entry, key) });
	const order = (list: Keyed, other: Keyed) =>
		[...list.keys()].filter((key) => other.has(key)).join('\u0001');
	if (order(old, now) !== order(now, old)) lines.push({ kind: 'reordered', ...where });
	return lines;
}

const INNER = { sets: 'members', relations: 'pairs' } as const;

function withinEntry(list: EntryList, old: Fields, now: Fields): Change[] {
	const name = nameOf(now, '');
	if (list === 'sets' || list === 'relations') {
		const entries = (fields: Fields) => (fieldOf(fields, INNER[list]) ?? []) as Json[];
		const where = { list, of: name };
		const lines = entryLines(where, entries(old), entries(now), (_was, member) => [
			{ kind: 'changed', ...where, name: String(fieldOf(member, 'id')) }
		]);
		const told: Change[] =
			lines.length > MOST ? [{ kind: 'many_changed', ...where, count: lines.length }] : lines;
		return sameBut(old, now, INNER[list]) ? told : [...told, { kind: 'changed', list, name }];
	}
	const was = nameOf(old, '');
	if (was !== name) return [{ kind: 'renamed', list, from: was, to: name }];
	// A scenario's values are told one by one; here what else is said of it.
	if (list === 'scenarios' && sameBut(withoutValues(old), withoutValues(now))) return [];
	return [{ kind: 'changed', list, name }];
}

function sameBut(old: Fields, now: Fields, left?: string): boolean {
	const rest = (fields: Fields) =>
		Object.fromEntries(Object.entries(fields).filter(([field]) => field !== left));
	return same(rest(old), rest(now));
}

/** The notes of its changes stay, by quantity. */
function withoutValues(scenario: Fields): Fields {
	const changes = (fieldOf(scenario, 'changes') ?? []) as readonly Fields[];
	const notes = changes.flatMap((change) => {
		const note = fieldOf(change, 'note');
		return note === undefined ? [] : [[String(fieldOf(change, 'quantity')), note] as const];
	});
	return { ...scenario, changes: Object.fromEntries(notes) };
}

function nameOf(entry: Json, key: string): string {
	if (Array.isArray(entry)) return entry.join(', ');
	if (!isFields(entry)) return key;
	// A member has a number too, which is none.
	for (const field of ['title', 'label', 'symbol', 'number', 'id', 'name']) {
		const text = fieldOf(entry, field);
		if (typeof text === 'string' && text !== '') return text;
	}
	return key;
}
