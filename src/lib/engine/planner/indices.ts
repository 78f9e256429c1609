/** What stands in the square brackets of a reference: which axis each index stands for, and what it says. */
import { nearest, quoteIfNeeded } from '$lib/formula/names';
import type { Expression, Index, Reference } from '$lib/formula/tree';
import type { QuantityLayout } from '../layout';
import { membersWords, unknownMember, unknownSet } from './member-words';
import type { Proof, Prove } from './proof';
import { gather, running } from './running';
import type { Scope } from './scope';
import type { AxisIndex } from './types';

/** The axes of one reference, filled one by one. */
export interface Filling {
	readonly proof: Proof;
	readonly prove: Prove;
	readonly scope: Scope;
	readonly source: Reference;
	readonly quantity: QuantityLayout;
	/** How many indices choose along an axis. */
	readonly chosen: number;
	readonly indices: (AxisIndex | null)[];
}

/** Reads one index into its axis; false after a problem. */
export function takeIndex(filling: Filling, index: Exclude<Index, { kind: 'scenario' }>): boolean {
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
	if (filling.chosen >= free.length) return free[0];
	const names = quantity.axes.filter((axis) => axis.set === set).map((axis) => axis.name);
	const example = proof.context.sets.get(set)?.ids[0] ?? '';
	proof.report(
		'which-axis',
		`${quantity.quantity.name} is per ${names.join(' and ')}, both of ${set}: say which, as in ${quantity.quantity.name}[${names[0]}.${quoteIfNeeded(example)}], or give all of them in order.`,
		source.span
	);
	return null;
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
	const axis = quantity.axes.find((axis) => axis.name === value.qualifier);
	const set = proof.context.sets.get(axis?.set ?? value.qualifier ?? '');
	if (!set) return unknownSet(proof, value);
	if (!quantity.axes.some((axis, at) => axis.set === set.name && filling.indices[at] === null))
		return notPer(filling, set.name, proof.words(value), value);
	if (!set.ordinals.has(value.name)) return unknownMember(proof, set.name, value);
	return takeMember(filling, set.name, value);
}

function unknownIndex({ proof, quantity }: Filling, value: Reference): false {
	const name = quantity.quantity.name;
	const ids = quantity.axes.flatMap((axis) => proof.context.sets.get(axis.set)?.ids ?? []);
	const copies = (proof.context.workbook.frozen ?? []).map(({ id }) => id);
	const near = nearest(value.name, [...ids, ...copies]);
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
