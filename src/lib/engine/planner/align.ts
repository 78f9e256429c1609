/**
 * Where each axis of a reference comes from: what its square brackets say, else the axis of the same name that
 * runs at the place, else the aggregate around it gathers it.
 */
import { quoteIfNeeded } from '$lib/formula/names';
import type { Index, Reference } from '$lib/formula/tree';
import { findFrozen } from '$lib/workbook/frozen';
import type { QuantityLayout } from '../layout';
import type { KnownQuantity } from './context';
import { unified } from './branches';
import { takeIndex, type Filling } from './indices';
import { broken, type Proof, type Prove } from './proof';
import type { Scope } from './scope';
import { gather, running } from './running';
import type { AxisIndex, Read, Typed } from './types';

/** A reference to a quantity, with its indices. */
export function readQuantity(
	proof: Proof,
	prove: Prove,
	source: Reference,
	today: KnownQuantity,
	scope: Scope
): Typed {
	if (today.type.kind === 'bad') {
		const message =
			`${source.name} cannot be used before it is mended. ${today.fault ?? ''}`.trim();
		return proof.refuse('broken-quantity', message, source);
	}
	const wheres = source.indices.filter((index) => whereFrom(proof, index) !== null);
	const [where = null, second] = wheres.map((index) => whereFrom(proof, index));
	if (second)
		return proof.refuse(
			'bad-index',
			'A value is taken from one scenario or frozen copy: write one of the two.',
			source
		);
	const scenario = where === 'reference' ? 1 : where === 'base' ? 2 : 0;
	const held = scenario === 0 && where !== null ? proof.context.frozen(where, today) : undefined;
	const known = held ?? today;
	const quantity = known.layout;
	const chosen = source.indices.filter((index) => !wheres.includes(index));
	const filling: Filling = {
		proof,
		prove,
		scope,
		source,
		quantity,
		chosen: chosen.length,
		indices: quantity.axes.map(() => null)
	};
	for (const index of chosen)
		if (index.kind !== 'scenario' && !takeIndex(filling, index)) return broken(source);
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
		fixed:
			known.fixed !== null &&
			!(scenario === 1 && proof.context.isMeasuredByCopies) &&
			isFixed &&
			(otherwise?.fixed ?? true),
		source
	};
	if (!pairExists(proof, read)) return broken(source);
	proof.reads.at(-1)?.push(read);
	return read;
}

/** What an index says of where the value is read: "base", "reference" or a frozen copy; null where it chooses a member. */
function whereFrom({ context }: Proof, index: Index): string | null {
	if (index.kind === 'scenario') return index.which;
	if (index.kind !== 'member' || index.value.kind !== 'reference') return null;
	const { name, quoted, qualifier, indices, otherwise } = index.value;
	const isBare = !quoted && qualifier === null && indices.length === 0 && otherwise === null;
	return isBare && findFrozen(context.workbook, name) ? name : null;
}

function freeOf(index: AxisIndex): number {
	if (index.kind === 'choice') return index.of.free;
	return index.kind === 'member' ? 0 : 1 << index.slot;
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
			? own.map((axis) => axis.name)
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
