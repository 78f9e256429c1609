/**
 * Where formulas mention quantities and members: what a removal would leave without a meaning.
 *
 * An index ("over l in layer") hides a name inside its argument. A text that does not read as a formula
 * is searched word by word. Renaming is `$lib/formula/rename`.
 */
import type { Argument, Expression, Reference } from '$lib/formula/tree';
import { treeOf } from '$lib/formula/tree-of';
import type { Quantity } from './schema';

export interface Mention {
	readonly name: string;
	readonly quoted: boolean;
	/** The set in `stage.line`. */
	readonly qualifier: string | null;
	/** Index names that hold here: a bare name among them means the index. */
	readonly indices: ReadonlySet<string>;
}

/** Every name in a formula that may mean a quantity or a member. */
export function mentionsIn(text: string): Mention[] {
	const tree = treeOf(text);
	if (!tree) return words(text);
	const found: Mention[] = [];
	walk(tree, new Set(), found);
	return found;
}

export const mentionsQuantity = (text: string, name: string): boolean =>
	text.includes(name) && mentionsIn(text).some((mention) => isQuantity(mention, name));

/** Whether a formula names this member, be it only perhaps (another set may have one of the same id). */
export const mentionsMember = (text: string, set: string, id: string): boolean =>
	text.includes(id) && mentionsIn(text).some((mention) => isMember(mention, set, id));

/** Whether it does so without saying which set is meant. */
export const mentionsMemberAlone = (text: string, set: string, id: string): boolean =>
	text.includes(id) &&
	mentionsIn(text).some((mention) => isMember(mention, set, id) && mention.qualifier === null);

/** The formulas of a quantity, all of them. */
export function formulasOf({ formula, where }: Quantity): string[] {
	const own = typeof formula === 'object' ? Object.values(formula.cases) : [formula];
	return [...own, where].filter((text) => text !== undefined);
}

/** The quantity with each of its formulas changed; itself where none changes. */
export function withFormulas(quantity: Quantity, change: (text: string) => string): Quantity {
	const { formula, where } = quantity;
	let next = quantity;
	if (typeof formula === 'string') {
		const text = change(formula);
		if (text !== formula) next = { ...next, formula: text };
	} else if (formula) {
		const cases = Object.entries(formula.cases).map(([id, text]) => [id, change(text)] as const);
		if (cases.some(([id, text]) => text !== formula.cases[id]))
			next = { ...next, formula: { ...formula, cases: Object.fromEntries(cases) } };
	}
	if (where !== undefined && change(where) !== where) next = { ...next, where: change(where) };
	return next;
}

const isQuantity = ({ name, quoted, qualifier, indices }: Mention, wanted: string): boolean =>
	name === wanted && !quoted && qualifier === null && !indices.has(name);

const isMember = ({ name, quoted, qualifier, indices }: Mention, set: string, id: string) =>
	name === id &&
	(qualifier === null || qualifier === set) &&
	(quoted || qualifier !== null || !indices.has(name));

function walk(node: Expression, indices: ReadonlySet<string>, found: Mention[]): void {
	switch (node.kind) {
		case 'number':
			return;
		case 'reference':
			return walkReference(node, indices, found);
		case 'call':
			for (const argument of node.args) walkArgument(argument, indices, found);
			return;
		case 'negation':
		case 'percent':
			return walk(node.of, indices, found);
		case 'binary':
			walk(node.left, indices, found);
			walk(node.right, indices, found);
	}
}

function walkReference(node: Reference, indices: ReadonlySet<string>, found: Mention[]): void {
	const { name, quoted, qualifier } = node;
	found.push({ name, quoted, qualifier, indices });
	for (const index of node.indices) if (index.kind === 'member') walk(index.value, indices, found);
	if (node.otherwise) walk(node.otherwise, indices, found);
}

function walkArgument(argument: Argument, indices: ReadonlySet<string>, found: Mention[]): void {
	const own = argument.over.flatMap(({ index }) => (index === null ? [] : [index]));
	const inside = own.length === 0 ? indices : new Set([...indices, ...own]);
	walk(argument.value, inside, found);
	if (argument.where) walk(argument.where, inside, found);
	// What holds when nothing is left to gather stands outside the gathering.
	if (argument.otherwise) walk(argument.otherwise, indices, found);
}

/** Names of a text that is no formula yet; units after numbers are none. */
function words(text: string): Mention[] {
	const pattern = /'([^']*)'|\d[\d.]*\[[^\]]*\]|\p{L}[\p{L}\p{N}_]*/gu;
	return [...text.matchAll(pattern)].flatMap((match) => {
		const [whole, inQuotes] = match;
		if (/^\d/.test(whole)) return [];
		const quoted = inQuotes !== undefined;
		return { name: inQuotes ?? whole, quoted, qualifier: null, indices: new Set<string>() };
	});
}
