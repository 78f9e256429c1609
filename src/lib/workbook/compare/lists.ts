/** Everything beside sheets that differs between two versions, in words: sets, relations, scenarios, studies … */
import type { Json } from '../json';
import { keyedAll, type Keyed } from '../merge/keyed';
import { fieldOf, isFields, same, type Fields, type Node } from '../merge/same';
import type { Workbook } from '../schema';
import { comparePlans } from './plans';

/** The parts of a workbook that are lists; whoever adds one is asked for its word. */
type ListName = {
	[Name in keyof Workbook]-?: NonNullable<Workbook[Name]> extends readonly unknown[] ? Name : never;
}[keyof Workbook];

/** The word for one entry of a list. */
const ENTRY_WORDS: Readonly<Record<Exclude<ListName, 'sheets' | 'plans'>, string>> = {
	units: 'unit',
	sets: 'set',
	relations: 'relation',
	scenarios: 'scenario',
	pictures: 'picture',
	studies: 'study',
	starts: 'starting view',
	programmes: 'programme'
};
/** The word for each other part that can change. */
const PART_WORDS: Readonly<
	Record<Exclude<keyof Workbook, ListName | '$schema' | 'format' | 'version'>, string>
> = {
	title: 'title',
	about: 'description of the workbook',
	invented: 'whether its figures are invented',
	front: 'what the first screen says'
};
const wordFor = (words: Readonly<Record<string, string>>, name: string) => words[name] ?? name;
/** Pairs or members told one by one; more are told by their number. */
const MOST = 8;

export function compareLists(before: Workbook, after: Workbook): string[] {
	const old = before as unknown as Fields;
	const now = after as unknown as Fields;
	const names = [...new Set([...Object.keys(old), ...Object.keys(now)])];
	return names.flatMap((name) => {
		if (name === 'sheets' || name === '$schema' || name === 'version') return [];
		const [was, is] = [fieldOf(old, name), fieldOf(now, name)];
		if (same(was, is)) return [];
		if (name === 'plans') return comparePlans(before, after);
		if (name === 'title') return [`title: ${before.title} to ${after.title}`];
		const isList = (node: Node) => node === undefined || Array.isArray(node);
		if (!isList(was) || !isList(is)) return [`${wordFor(PART_WORDS, name)}: changed`];
		const word = wordFor(ENTRY_WORDS, name);
		return entryLines(word, (was ?? []) as Json[], (is ?? []) as Json[], (old, now) =>
			withinEntry(name, word, old, now)
		);
	});
}

/** What was added to a list, taken out of it, changed in it, moved in it. */
function entryLines(
	word: string,
	before: readonly Json[],
	after: readonly Json[],
	changed: (old: Fields, now: Fields) => string[]
): string[] {
	const keyed = keyedAll([before, after]);
	if (!keyed) return [`${word}: changed`];
	const [old, now] = keyed as [Keyed, Keyed];
	const lines: string[] = [];
	for (const [key, entry] of now) {
		const was = old.get(key);
		if (was === undefined) lines.push(`add ${word} ${nameOf(entry, key)}`);
		else if (!same(was, entry) && isFields(was) && isFields(entry))
			lines.push(...changed(was, entry));
	}
	for (const [key, entry] of old)
		if (!now.has(key)) lines.push(`remove ${word} ${nameOf(entry, key)}`);
	const order = (list: Keyed, other: Keyed) =>
		[...list.keys()].filter((key) => other.has(key)).join('\u0001');
	if (order(old, now) !== order(now, old)) lines.push(`${word}: put in another order`);
	return lines;
}

function withinEntry(list: string, word: string, old: Fields, now: Fields): string[] {
	const name = nameOf(now, '');
	if (list === 'sets' || list === 'relations') {
		const inner = list === 'sets' ? 'members' : 'pairs';
		const entries = (fields: Fields) => (fieldOf(fields, inner) ?? []) as Json[];
		const lines = entryLines(
			list === 'sets' ? name : `pair of ${name}`,
			entries(old),
			entries(now),
			(_was, member) => [`describe ${name} ${String(fieldOf(member, 'id'))}`]
		);
		const told = lines.length > MOST ? [`${name}: ${lines.length} ${inner} changed`] : lines;
		return sameBut(old, now, inner) ? told : [...told, `${word} ${name}: changed`];
	}
	const [was, is] = [nameOf(old, ''), name];
	if (was !== is) return [`${word} ${was}: renamed to ${is}`];
	// A scenario's values are told one by one; here what else is said of it.
	if (list === 'scenarios' && sameBut(withoutValues(old), withoutValues(now))) return [];
	return [`${word} ${name}: changed`];
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
	for (const field of ['title', 'label', 'symbol', 'id', 'name']) {
		const text = fieldOf(entry, field);
		if (typeof text === 'string' && text !== '') return text;
	}
	return key;
}
