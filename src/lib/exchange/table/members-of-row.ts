/** Whose value a row holds: the members that its cells name, for the axes of a quantity. */
import type { Layout, QuantityLayout } from '$lib/engine/layout';
import { nearest } from '$lib/formula/names';
import { takesEntry } from '$lib/workbook/cells';
import { pairKey, relationAxes } from '$lib/workbook/axes';
import { findRelation, pairsOf } from '$lib/workbook/lookup';
import type { SetDefinition } from '$lib/workbook/schema';
import { memberNamed } from './member-named';

export interface NamedMembers {
	/** All members in one cell, in the order of the quantity's sets. */
	readonly together: readonly string[] | null;
	/** By set or axis. */
	readonly bySet: ReadonlyMap<string, string>;
}

export type MembersRead =
	| { readonly ok: true; readonly at: readonly string[] }
	| {
			readonly ok: false;
			readonly message: string;
			/** The name that the set has not. */
			readonly unknown?: { readonly set: string; readonly text: string };
	  };

export function membersOfRow(
	{ quantity, axes }: QuantityLayout,
	row: NamedMembers,
	ofColumn: { readonly of: string; readonly id: string } | null,
	layout: Layout
): MembersRead {
	const at: string[] = [];
	let place = 0;
	for (const axis of axes) {
		const set = layout.sets.get(axis.set);
		const isOfColumn = ofColumn && (ofColumn.of === axis.set || ofColumn.of === axis.name);
		const text = isOfColumn
			? ofColumn.id
			: (row.bySet.get(axis.name) ?? row.bySet.get(axis.set) ?? row.together?.[place++]);
		if (text === '' && !row.together)
			return {
				ok: false,
				message: `The row names no ${set?.label.toLowerCase() ?? axis.name}. Write it, or leave the row out.`
			};
		if (text === undefined || text === '')
			return {
				ok: false,
				message: `${quantity.label} is per ${axes.map(({ name }) => name).join(' and ')}: no column gives the ${axis.name}.`
			};
		const member = set ? memberNamed(set, text) : null;
		if (member === null) {
			const near = set && nearestMember(set, text);
			return {
				ok: false,
				message: `There is no ${set?.label.toLowerCase() ?? axis.set} "${text}". ${near ? `Did you mean ${near}?` : 'Write it as it stands in the workbook.'}`,
				unknown: { set: axis.set, text }
			};
		}
		at.push(member);
	}
	return noPair(quantity, axes, at, layout) ?? { ok: true, at };
}

/** Of a file with thousands of unknown names, the first few are likened: more are not read. */
const LIKENED = 300;
const likened = new WeakMap<SetDefinition, Map<string, string | undefined>>();
function nearestMember(set: SetDefinition, text: string): string | undefined {
	let known = likened.get(set);
	if (!known) likened.set(set, (known = new Map()));
	if (!known.has(text) && known.size < LIKENED)
		known.set(
			text,
			nearest(
				text,
				set.members.map(({ id }) => id)
			)
		);
	return known.get(text);
}

function noPair(
	quantity: QuantityLayout['quantity'],
	axes: QuantityLayout['axes'],
	at: readonly string[],
	{ workbook }: Layout
): MembersRead | null {
	for (const name of quantity.in ?? []) {
		const relation = findRelation(workbook, name);
		const bound = relation && relationAxes(axes, relation);
		if (!relation || !bound) continue;
		const pair = bound.map((axis) => at[axis] ?? '');
		if (!pairsOf(relation).has(pairKey(pair)))
			return {
				ok: false,
				message: `${pair.join(' and ')} do not go together in ${relation.label ?? name}, so ${quantity.label} has no value for them. Add the pair first, or leave the row out.`
			};
	}
	return null;
}

/** Where a quantity has a formula by member, some of its cells may be entered. */
export function isEntered({ quantity, axes }: QuantityLayout, at: readonly string[]): boolean {
	const { formula } = quantity;
	const by = typeof formula === 'object' ? formula.by : null;
	return takesEntry(quantity, at[axes.findIndex(({ name }) => name === by)] ?? '');
}
