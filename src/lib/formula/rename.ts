/**
 * Which names a formula uses, and the same formula with one of them changed.
 *
 * A name is found by its place in the tree, not by its letters: the index `l` of `over l in layer` is not the
 * quantity `l`, and the member of `stage.line` is not the set `line`. The author's spacing stays.
 */
import { findFunction } from './functions';
import { freshName, isName, quoteIfNeeded } from './names';
import { printFormula } from './print';
import { tokenize } from './tokens';
import { treeOf } from './tree-of';
import type { Argument, Binding, Call, Expression, Index, Reference, Span } from './tree';
import { children } from './walk';

/**
 * "name": a quantity or a set, where it stands as itself, before a point, in a neighbour or after `over`.
 * "member": a member, where it stands bare, in quotes or after a point.
 */
export type RenameKind = 'name' | 'member';

export interface RenameOptions {
	/** Left out: "name" if `from` can be one, else "member". */
	readonly as?: RenameKind | undefined;
	/** Of a member: its set. `other.m` then stays as it is. */
	readonly set?: string | undefined;
	/** Which bare or quoted references are meant, where two sets share a member's id; all when left out. */
	readonly only?: ((reference: Reference) => boolean) | undefined;
}

type Role = 'bare' | 'quoted' | 'after-point' | 'set' | 'index';

interface Occurrence {
	readonly name: string;
	readonly role: Role;
	readonly span: Span;
	/** The `over … in …` that gives the name its meaning, if one does. */
	readonly bound: Binding | null;
	readonly reference: Reference | null;
}

interface Edit {
	readonly span: Span;
	readonly text: string;
}

/** Every quantity, set and member that a formula names; index names given by `over … in` are left out. */
export function referencedNames(expression: Expression): Set<string> {
	const free = occurrences(expression).filter(({ bound }) => bound === null);
	return new Set(free.map(({ name }) => name));
}

/** The text with one name changed. A text that cannot be read is changed word by word. */
export function renameInText(
	text: string,
	from: string,
	to: string,
	options: RenameOptions = {}
): string {
	const as = options.as ?? (isName(from) ? 'name' : 'member');
	const tree = treeOf(text);
	const edits = tree
		? editsOf(occurrences(tree), from, to, { ...options, as })
		: wordEdits(text, from, to, as);
	return applyEdits(text, edits);
}

/** The tree with one name changed; its spans are those of the printed text. */
export function renameInExpression(
	expression: Expression,
	from: string,
	to: string,
	options: RenameOptions = {}
): Expression {
	return treeOf(renameInText(printFormula(expression), from, to, options)) ?? expression;
}

function editsOf(
	found: readonly Occurrence[],
	from: string,
	to: string,
	options: RenameOptions & { readonly as: RenameKind }
): Edit[] {
	const meant = found.filter((occurrence) => isMeant(occurrence, from, options));
	if (meant.length === 0) return [];
	const edits = meant.map(({ span, role }) => ({ span, text: spelling(to, role, options.as) }));

	// An index that bears the new name would capture it: the index gives way.
	const captors = found.filter(({ bound, name }) => bound !== null && name === to);
	const fresh = freshName(to, new Set([to, ...found.map(({ name }) => name)]));
	return [...edits, ...captors.map(({ span }) => ({ span, text: fresh }))];
}

function isMeant(
	{ name, role, bound, reference }: Occurrence,
	from: string,
	{ as, set, only }: RenameOptions & { readonly as: RenameKind }
): boolean {
	if (name !== from || bound !== null) return false;
	if (as === 'name') return role === 'bare' || role === 'set';
	if (role === 'after-point') return set === undefined || reference?.qualifier === set;
	if (role !== 'quoted' && (role !== 'bare' || reference!.indices.length > 0)) return false;
	return only === undefined || only(reference!);
}

function spelling(to: string, role: Role, as: RenameKind): string {
	if (role === 'quoted') return `'${to}'`;
	return as === 'member' ? quoteIfNeeded(to) : to;
}

function applyEdits(text: string, edits: readonly Edit[]): string {
	const fromTheEnd = [...edits].sort((a, b) => b.span.start - a.span.start);
	return fromTheEnd.reduce(
		(whole, edit) => whole.slice(0, edit.span.start) + edit.text + whole.slice(edit.span.end),
		text
	);
}

function wordEdits(text: string, from: string, to: string, as: RenameKind): Edit[] {
	const tokens = tokenize(text);
	return tokens.flatMap((token, place) => {
		const before = tokens[place - 1];
		const afterPoint = before?.kind === 'mark' && before.text === '.';
		const wanted = as === 'member' || (token.kind === 'name' && !afterPoint);
		if ((token.kind !== 'name' && token.kind !== 'quoted') || token.text !== from || !wanted)
			return [];
		return [
			{ span: token.span, text: spelling(to, token.kind === 'quoted' ? 'quoted' : 'bare', as) }
		];
	});
}

function occurrences(expression: Expression): readonly Occurrence[] {
	const found: Occurrence[] = [];
	collect(expression, new Map(), found);
	return found;
}

type Scope = ReadonlyMap<string, Binding>;

function collect(expression: Expression, scope: Scope, found: Occurrence[]): void {
	if (expression.kind === 'reference') collectReference(expression, scope, found);
	else if (expression.kind === 'call') {
		const shared = findFunction(expression.name)?.paired ? scopeOf(expression, scope) : scope;
		for (const argument of expression.args) collectArgument(argument, shared, found);
	} else for (const child of children(expression)) collect(child, scope, found);
}

/** Where one argument gathers for all of them, its indices are known in each. */
function scopeOf({ args }: Call, scope: Scope): Scope {
	const inner = new Map(scope);
	for (const { over } of args)
		for (const binding of over) if (binding.index !== null) inner.set(binding.index, binding);
	return inner;
}

function collectReference(reference: Reference, scope: Scope, found: Occurrence[]): void {
	const { qualifier, name, quoted, span, nameSpan, indices, otherwise } = reference;
	if (qualifier !== null) {
		const set = { start: span.start, end: span.start + qualifier.length };
		found.push({ name: qualifier, role: 'set', span: set, bound: null, reference: null });
	}
	const role = quoted ? 'quoted' : qualifier === null ? 'bare' : 'after-point';
	const bound = role === 'bare' ? (scope.get(name) ?? null) : null;
	// After a point stands a member, quoted or not; its quotes are kept by the span's own spelling.
	const place = quoted && qualifier !== null ? 'after-point' : role;
	found.push({ name, role: place, span: nameSpan, bound, reference });
	for (const index of indices) collectIndex(index, scope, found);
	if (otherwise !== null) collect(otherwise, scope, found);
}

function collectIndex(index: Index, scope: Scope, found: Occurrence[]): void {
	if (index.kind === 'member') collect(index.value, scope, found);
	if (index.kind !== 'neighbour') return;
	const { axis, span } = index;
	const place = { start: span.start, end: span.start + axis.length };
	const bound = scope.get(axis) ?? null;
	found.push({ name: axis, role: 'set', span: place, bound, reference: null });
}

function collectArgument(argument: Argument, scope: Scope, found: Occurrence[]): void {
	const { value, over, where, otherwise } = argument;
	const inner = new Map(scope);
	for (const binding of over) if (binding.index !== null) inner.set(binding.index, binding);
	collect(value, inner, found);
	for (const binding of over) {
		const { index, axis, span } = binding;
		const axisSpan = { start: span.end - axis.length, end: span.end };
		found.push({ name: axis, role: 'set', span: axisSpan, bound: null, reference: null });
		if (index === null) continue;
		const indexSpan = { start: span.start, end: span.start + index.length };
		found.push({ name: index, role: 'index', span: indexSpan, bound: binding, reference: null });
	}
	if (where !== null) collect(where, inner, found);
	if (otherwise !== null) collect(otherwise, scope, found);
}
