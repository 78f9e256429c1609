/** Holds a cell that a programme decides at what somebody typed, or lets it go where the field was cleared. */
import type { Layout, QuantityLayout } from '$lib/engine/layout';
import { inputAt } from '$lib/workbook/scenario';
import { outside, readEntry, type FieldSpec } from '../entry';
import { fieldSpec } from '../field';
import type { Session } from '../session.svelte';

/** What the field of a decision takes; `stands`: what was decided or held there. */
export const holdSpec = (
	{ units, locale }: Pick<Session, 'units' | 'locale'>,
	layout: Layout,
	quantity: QuantityLayout,
	stands: number | null
): FieldSpec => ({ ...fieldSpec(layout, quantity, units, locale), stands });

/** Gives a sentence where it cannot be, else an empty one. */
export function holdAt(
	session: Session,
	scenario: string,
	quantity: QuantityLayout,
	at: readonly string[],
	text: string,
	stands: number | null
): string {
	if (!session.layout) return '';
	const entry = readEntry(text, holdSpec(session, session.layout, quantity, stands));
	if (!entry.ok) return entry.message;
	const { name } = quantity.quantity;
	const entries = [
		{ quantity: name, at: [...at], value: entry.value ?? cleared(session, scenario, name, at) }
	];
	return session.apply({ kind: 'set_inputs', scenario, entries }) ?? '';
}

/** Holds several cells of a decision at amounts, in one step; gives a sentence where one of them cannot be. */
export function holdAll(
	session: Session,
	scenario: string,
	quantity: QuantityLayout,
	entries: readonly { readonly at: readonly string[]; readonly value: number }[]
): string {
	if (!session.layout) return '';
	const spec = fieldSpec(session.layout, quantity, session.units, session.locale);
	for (const { value } of entries) {
		const entry = outside(value, spec);
		if (entry && !entry.ok) return entry.message;
	}
	const { name } = quantity.quantity;
	const kept = entries.map(({ at, value }) => ({ quantity: name, at: [...at], value }));
	return session.apply({ kind: 'set_inputs', scenario, entries: kept }) ?? '';
}

/** Lets several cells of a decision go, in one step. */
export function releaseAll(
	session: Session,
	scenario: string,
	{ quantity: { name } }: QuantityLayout,
	cells: readonly (readonly string[])[]
): string {
	const entries = cells.map((at) => ({
		...{ quantity: name, at: [...at] },
		value: cleared(session, scenario, name, at)
	}));
	return session.apply({ kind: 'set_inputs', scenario, entries }) ?? '';
}

/** An own entry is taken away; one of a scenario that this one starts from is cleared here. */
function cleared(
	{ workbook }: Session,
	scenario: string,
	name: string,
	at: readonly string[]
): null | undefined {
	return workbook && inputAt(workbook, scenario, name, at).from !== scenario ? null : undefined;
}
