/**
 * Which values may be absent while the workbook is computed, and what says so: members that are present in some
 * scenarios only, a quantity's `where`, and formulas that only pass on what they read.
 */
import type { Expression } from '$lib/formula/tree';
import { Op } from '../operations';
import { ABSENT } from '../state';
import type { Context, KnownQuantity } from './context';
import type { Proof } from './proof';
import type { QuantityLayout } from '../layout';
import type { Typed, ValueType } from './types';

/** An axis of a quantity whose members come and go, and the yes/no quantity that says so. */
export interface PresenceAxis {
	readonly axis: number;
	readonly present: QuantityLayout;
}

/** One formula, proven. */
export interface ProvenPart {
	readonly proof: Proof;
	readonly typed: Typed;
	/** Null where it could not be read. */
	readonly expression: Expression | null;
	/** What the formula gives before it is fitted to its quantity. */
	readonly given: ValueType | null;
}

export interface ProvenQuantity {
	readonly known: KnownQuantity;
	/** By part, as in `rules.parts`. */
	readonly parts: readonly ProvenPart[];
	readonly where: ProvenPart | null;
}

/** The axes along which a quantity's values come and go with their members. */
export function presenceAxesOf(context: Context, quantity: QuantityLayout): PresenceAxis[] {
	return quantity.axes.flatMap((axis, at) => {
		const present = context.sets.get(axis.set)?.present;
		return present && present.index !== quantity.index ? [{ axis: at, present }] : [];
	});
}

/**
 * By quantity index, whether a value that its members allow can still be absent: it has a `where`, or a formula
 * of it is a reference to such a value.
 */
export function maybeAbsent(context: Context, proven: readonly ProvenQuantity[]): Uint8Array {
	const absent = new Uint8Array(context.quantities.length);
	for (const { known, where } of proven) if (where) absent[known.layout.index] = 1;
	let changed = true;
	while (changed) {
		changed = false;
		for (const { known, parts } of proven) {
			const { index } = known.layout;
			if (absent[index] === 1) continue;
			if (!parts.some(({ typed }) => passesAbsence(context, typed, known.layout, absent))) continue;
			absent[index] = 1;
			changed = true;
		}
	}
	return absent;
}

function passesAbsence(
	context: Context,
	typed: Typed,
	owner: QuantityLayout,
	absent: Uint8Array
): boolean {
	if (typed.kind === 'list')
		return (
			typed.op === Op.If &&
			typed.items.slice(1).some((item) => passesAbsence(context, item, owner, absent))
		);
	if (typed.kind === 'binary')
		return typed.op === Op.IfError && passesAbsence(context, typed.right, owner, absent);
	if (typed.kind === 'aggregate')
		return typed.otherwise !== null && passesAbsence(context, typed.otherwise, owner, absent);
	if (typed.kind !== 'read') return false;
	if (typed.otherwise && passesAbsence(context, typed.otherwise, owner, absent)) return true;
	const read = typed.quantity;
	const known = context.at(read.index);
	if (known?.frozen !== undefined) return known.fixed?.states.includes(ABSENT) === true;
	if (absent[read.index] === 1) return true;
	const ownAxes = owner.axes.map((axis) => axis.name);
	const alike = typed.indices.every((index) => index.kind === 'variable');
	const relations = owner.quantity.in ?? [];
	const exists =
		!read.cellOfPlace ||
		(alike && (read.quantity.in ?? []).every((name) => relations.includes(name)));
	const comes = presenceAxesOf(context, read).every(({ axis }) => {
		const name = read.axes[axis]?.name ?? '';
		const index = typed.indices[axis];
		return index?.kind === 'variable' && ownAxes.indexOf(name) === index.slot;
	});
	return !exists || !comes || typed.scenario !== 0;
}
