/**
 * Where each axis of a reference comes from: what its square brackets say, else the axis of the same name that
 * runs at the place, else the aggregate around it gathers it.
 */
import { nearest, quoteIfNeeded } from '$lib/formula/names';
import type { Expression, Index, Reference } from '$lib/formula/tree';
import type { QuantityLayout } from '../layout';
import type { KnownQuantity } from './context';
import { unified } from './branches';
import { broken, type Proof } from './proof';
import type { Prove } from './prove';
import type { Scope } from './scope';
import type { AxisIndex, Read, Typed, Variable } from './types';

/** The axes of one reference, filled one by one. */
interface Filling {
	readonly proof: Proof;
	readonly prove: Prove;
	readonly scope: Scope;
	readonly source: Reference;
	readonly quantity: QuantityLayout;
	readonly indices: (AxisIndex | null)[];
}

/** A reference to a quantity, with its indices. */
export function readQuantity(
	proof: Proof,
	prove: Prove,
	source: Reference,
	known: KnownQuantity,
	scope: Scope
): Typed {
	if (known.type.kind === 'bad') {
		const message =
			`${source.name} cannot be used before it is mended. ${known.fault ?? ''}`.trim();
		return proof.refuse('broken-quantity', message, source);
	}
	const quantity = known.layout;
	const filling: Filling = {
		proof,
		prove,
		scope,
		source,
		quantity,
		indices: quantity.axes.map(() => null)
	};
	let scenario: 0 | 1 | 2 = 0;
	for (const index of source.indices) {
		if (index.kind === 'scenario') scenario = index.which === 'reference' ? 1 : 2;
		else if (!takeIndex(filling, index)) return broken(source);
	}
	if (!alignRest(filling)) return broken(source);
	const indices = filling.indices.flatMap((index) => index ?? []);
	const otherwise = provenEnd(filling, known);
	if (otherwise === undefined) return broken(source);
	const isFixed = indices.every((index) => index.kind !== 'choice' || index.of.fixed);
	const read: Read = {
		kind: 'read',
		quantity,
		indices,
		scenario,
		otherwise,
		type: known.type,
		free: indices.reduce((mask, index) => mask | freeOf(index), otherwise?.free ?? 0),
		fixed: known.fixed !== null && isFixed && (otherwise?.fixed ?? true),
		source
	};
	if (!pairExists(proof, read)) return broken(source);
	proof.reads.at(-1)?.push(read);
	return read;
}

function freeOf(index: AxisIndex): number {
	if (index.kind === 'choice') return index.of.free;
	return index.kind === 'member' ? 0 : 1 << index.slot;
}

function takeIndex(filling: Filling, index: Exclude<Index, { kind: 'scenario' }>): boolean {
	if (index.kind === 'neighbour') return takeNeighbour(filling, index);
	const { value } = index;
	if (value.kind === 'reference' && value.indices.length === 0 && value.otherwise === null)
		return value.qualifier === null ? takeName(filling, value) : takeQualified(filling, value);
	return takeChoice(filling, value);
}

/** The free axis that an index of this set stands for; null after a problem. */
function axisFor(filling: Filling, set: string, source: Expression | Index, name?: string) {
	const { proof, quantity, indices, scope } = filling;
	const free = quantity.axes.flatMap((axis, at) =>
		axis.set === set && indices[at] === null ? [at] : []
	);
	const named = free.find((at) => quantity.axes[at]?.name === name);
	if (named !== undefined) return named;
	if (free.length <= 1) return free[0];
	const unaligned = free.filter((at) => !running(scope, quantity, at));
	if (unaligned.length === 1) return unaligned[0];
	if (filling.source.indices.filter((one) => one.kind !== 'scenario').length >= free.length)
		return free[0];
	const names = quantity.axes.filter((axis) => axis.set === set).map((axis) => axis.name);
	const example = proof.context.sets.get(set)?.ids[0] ?? '';
	proof.report(
		'which-axis',
		`${quantity.quantity.name} is per ${names.join(' and ')}, both of ${set}: say which, as in ${quantity.quantity.name}[${names[0]}.${quoteIfNeeded(example)}], or give all of them in order.`,
		source.span
	);
	return null;
}

/** The variable that a quantity's axis aligns with, if one runs. */
function running(scope: Scope, quantity: QuantityLayout, at: number): Variable | undefined {
	const axis = quantity.axes[at];
	const variable = axis && scope.find(axis.name);
	return variable && variable.set === axis.set ? variable : undefined;
}

function takeNeighbour(filling: Filling, index: Extract<Index, { kind: 'neighbour' }>): boolean {
	const { proof, scope, quantity, indices } = filling;
	let variable = scope.find(index.axis);
	const own = quantity.axes.find((axis) => axis.name === index.axis);
	if (!variable && own && scope.collector) variable = gather(proof, scope, own.name, own.set);
	if (!variable) {
		const isSet = proof.context.sets.has(index.axis) || own !== undefined;
		proof.report(
			'not-an-axis',
			isSet
				? `${proof.name} is ${proof.perWords}, so there is no current ${index.axis} to step from: make it per ${index.axis}, or choose a member.`
				: `${index.axis} is no set, and only a set has neighbours: write the set's name, as in month - 1.`,
			index.span
		);
		return false;
	}
	const at = axisFor(filling, variable.set, index, variable.name);
	if (at === null) return false;
	if (at === undefined) return notPer(filling, variable.set, index.axis, index);
	indices[at] = { kind: 'neighbour', slot: variable.slot, offset: index.offset };
	scope.use(variable);
	return true;
}

/** A bare name in brackets: a member of one of the quantity's sets first, then an axis that runs, then a choice. */
function takeName(filling: Filling, value: Reference): boolean {
	const { proof, quantity, indices, scope } = filling;
	const free = quantity.axes.flatMap((axis, at) => (indices[at] === null ? [axis] : []));
	const sets = [...new Set(free.map((axis) => axis.set))].filter((set) =>
		proof.context.sets.get(set)?.ordinals.has(value.name)
	);
	if (sets.length > 1) {
		const message = `${value.name} is a member of ${sets.join(' and of ')}: write ${sets.map((set) => `${set}.${quoteIfNeeded(value.name)}`).join(' or ')}.`;
		proof.report('ambiguous-member', message, value.span);
		return false;
	}
	if (sets[0] !== undefined) return takeMember(filling, sets[0], value);
	const variable = value.quoted ? undefined : scope.find(value.name);
	if (variable) {
		const at = axisFor(filling, variable.set, value, variable.name);
		if (at === null) return false;
		if (at === undefined) return notPer(filling, variable.set, value.name, value);
		indices[at] = { kind: 'variable', slot: variable.slot };
		scope.use(variable);
		return true;
	}
	if (value.quoted || !proof.context.quantity(value.name)) return unknownIndex(filling, value);
	return takeChoice(filling, value);
}

function takeMember(filling: Filling, set: string, value: Reference): boolean {
	const ordinal = filling.proof.context.sets.get(set)?.ordinals.get(value.name);
	const at = axisFor(filling, set, value, value.qualifier ?? undefined);
	if (at === null || at === undefined || ordinal === undefined) return false;
	filling.indices[at] = { kind: 'member', ordinal };
	return true;
}

/** `stage.line` or, where a set is used twice, `from.PX15B`. */
function takeQualified(filling: Filling, value: Reference): boolean {
	const { proof, quantity } = filling;
	const axis = quantity.axes.find((one) => one.name === value.qualifier);
	const set = proof.context.sets.get(axis?.set ?? value.qualifier ?? '');
	if (!set) return unknownSet(proof, value);
	if (!quantity.axes.some((one, at) => one.set === set.name && filling.indices[at] === null))
		return notPer(filling, set.name, proof.words(value), value);
	if (!set.ordinals.has(value.name)) return unknownMember(proof, set.name, value);
	return takeMember(filling, set.name, value);
}

export function unknownSet(proof: Proof, value: Reference): false {
	const qualifier = value.qualifier ?? '';
	const near = nearest(qualifier, proof.context.sets.keys());
	const message = `There is no set ${qualifier}${near ? `: ${near}?` : ', and only a set stands before a point: check the name.'}`;
	proof.report('unknown-set', message, value.span, near && `${near}.${quoteIfNeeded(value.name)}`);
	return false;
}

export function unknownMember(proof: Proof, set: string, value: Reference): false {
	const known = proof.context.sets.get(set);
	const near = known && nearest(value.name, known.ids);
	const message = `${value.name} is no member of ${set}; ${membersWords(proof, set)}.${near ? ` ${near}?` : ''}`;
	proof.report('unknown-member', message, value.nameSpan, near && quoteIfNeeded(near));
	return false;
}

/** "the stages are extrude, rewind, crosslink". */
export function membersWords(proof: Proof, set: string): string {
	const known = proof.context.sets.get(set);
	if (!known || known.ids.length === 0) return `${set} has no members yet`;
	const shown = known.ids.slice(0, 8).map(quoteIfNeeded).join(', ');
	return `the ${known.plural.toLowerCase()} are ${shown}${known.ids.length > 8 ? ', …' : ''}`;
}

function unknownIndex({ proof, quantity }: Filling, value: Reference): false {
	const name = quantity.quantity.name;
	const ids = quantity.axes.flatMap((axis) => proof.context.sets.get(axis.set)?.ids ?? []);
	const near = nearest(value.name, ids);
	const kinds = quantity.axes.map((axis) => membersWords(proof, axis.set)).join('; ');
	if (quantity.axes.length === 0) {
		proof.report(
			'not-per',
			`${name} has one value, so nothing is chosen from it: leave the brackets out.`,
			value.span
		);
		return false;
	}
	const isSet = !value.quoted && proof.context.sets.has(value.name);
	const what = isSet
		? `${value.name} is a set here`
		: `There is no ${value.name} to choose from ${name}`;
	proof.report(
		isSet ? 'set-as-member' : 'unknown-member',
		`${what}; ${kinds}.${near && !isSet ? ` ${near}?` : ''}`,
		value.span,
		near && !isSet ? quoteIfNeeded(near) : undefined
	);
	return false;
}

/** Any other expression in brackets is a choice: its value is a member. */
function takeChoice(filling: Filling, value: Expression): boolean {
	const { proof, quantity, indices } = filling;
	const free = quantity.axes.filter((_axis, at) => indices[at] === null);
	const sets = new Set(free.map((axis) => axis.set));
	const of = filling.prove(proof, value, filling.scope, sets.size === 1 ? free[0]?.set : undefined);
	if (of.type.kind === 'bad') return false;
	if (of.type.kind !== 'member') {
		const what = of.type.kind === 'number' ? 'a number' : 'yes or no';
		proof.report(
			'not-a-member',
			`${proof.words(value)} is ${what}, and an index is a member: a choice such as ${quantity.quantity.name}[choice], a member's name, or a neighbour such as month - 1.`,
			value.span
		);
		return false;
	}
	const at = axisFor(filling, of.type.set, value);
	if (at === null) return false;
	if (at === undefined) return notPer(filling, of.type.set, proof.words(value), value);
	indices[at] =
		of.kind === 'constant' ? { kind: 'member', ordinal: of.value } : { kind: 'choice', of };
	return true;
}

function notPer(
	{ proof, quantity, source, indices }: Filling,
	set: string,
	words: string,
	at: { readonly span: Expression['span'] }
): false {
	const name = quantity.quantity.name;
	const taken = quantity.axes.some((axis, place) => axis.set === set && indices[place] !== null);
	const per = quantity.axes.map((axis) => axis.name).join(' and ');
	const free = quantity.axes.find((_axis, place) => indices[place] === null);
	const setItself = proof.context.sets.has(words);
	proof.report(
		'not-per',
		taken
			? `${proof.words(source)} says twice which ${set} is meant: leave one out.`
			: setItself && free
				? `${words} is a set here; ${membersWords(proof, free.set)}.`
				: `${words} is a member of ${set}, but ${name} ${per === '' ? 'has one value' : `is per ${per}`}: choose by one of its own sets, or leave the brackets out.`,
		at.span
	);
	return false;
}

function gather(proof: Proof, scope: Scope, name: string, set: string): Variable | undefined {
	const collector = scope.collector;
	if (!collector) return undefined;
	const variable = proof.variable(name, set);
	collector.add(variable);
	return variable;
}

/** A set's own name where nothing of that name runs: the aggregate around gathers it. */
export function gatherAxis(proof: Proof, scope: Scope, set: string): Variable | undefined {
	return gather(proof, scope, set, set);
}

function alignRest({ proof, scope, source, quantity, indices }: Filling): boolean {
	for (let at = 0; at < indices.length; at++) {
		if (indices[at]) continue;
		const axis = quantity.axes[at];
		if (!axis) continue;
		const variable =
			running(scope, quantity, at) ??
			(scope.find(axis.name) ? undefined : gather(proof, scope, axis.name, axis.set));
		if (!variable) {
			reportUnaligned(proof, source, quantity, axis);
			return false;
		}
		indices[at] = { kind: 'variable', slot: variable.slot };
		scope.use(variable);
	}
	return true;
}

function reportUnaligned(
	proof: Proof,
	source: Reference,
	quantity: QuantityLayout,
	axis: QuantityLayout['axes'][number]
): void {
	const words = source.name;
	const example = quoteIfNeeded(proof.context.sets.get(axis.set)?.ids[0] ?? '…');
	const isTwice = quantity.axes.filter((one) => one.set === axis.set).length > 1;
	const own = proof.owner.layout.axes.filter((one) => one.set === axis.set);
	const choices = isTwice
		? [`${axis.name}.${example}`]
		: own.length > 0
			? own.map((one) => one.name)
			: [example];
	const choose = choices.map((choice) => `${words}[${choice}]`).join(' or ');
	const per = proof.owner.layout.axes.length === 0 ? 'one value for all' : proof.perWords;
	proof.report(
		'not-aligned',
		`${words} is per ${axis.name}, but ${proof.name} is ${per}: choose one, as in ${choose}, or gather, as in SUM(${words} over ${axis.name}).`,
		source.span
	);
}

/** The `else` of the brackets; undefined after a problem. */
function provenEnd(filling: Filling, known: KnownQuantity): Typed | null | undefined {
	const { proof, prove, scope, source, indices } = filling;
	if (!source.otherwise) return null;
	if (!indices.some((index) => index?.kind === 'neighbour')) {
		proof.report(
			'else-without-neighbour',
			`The else in ${proof.words(source)} never holds: it stands for what lies off the end of a neighbour such as month - 1. Leave it out, or use IFERROR.`,
			source.otherwise.span
		);
		return undefined;
	}
	const expected = known.type.kind === 'member' ? known.type.set : undefined;
	const otherwise = prove(proof, source.otherwise, scope, expected);
	const model: Typed = { kind: 'broken', type: known.type, free: 0, fixed: false, source };
	return unified(proof, [model, otherwise])?.[1];
}

/** A pair that is written down must exist. */
function pairExists(proof: Proof, { quantity, indices, source }: Read): boolean {
	if (!quantity.cellOfPlace) return true;
	let place = 0;
	for (const [at, index] of indices.entries()) {
		if (index.kind !== 'member') return true;
		place = place * (quantity.sizes[at] ?? 0) + index.ordinal;
	}
	if ((quantity.cellOfPlace[place] ?? -1) >= 0) return true;
	const members = indices.map((index, at) =>
		index.kind === 'member'
			? (proof.context.sets.get(quantity.axes[at]?.set ?? '')?.ids[index.ordinal] ?? '')
			: ''
	);
	const relations = (quantity.quantity.in ?? []).join(' and ');
	if (source)
		proof.report(
			'no-such-pair',
			`${quantity.quantity.name} has no value for ${members.join(' and ')}: they are no pair of the relation ${relations}. Choose another pair, or add this one to ${relations}.`,
			source.span
		);
	return false;
}
